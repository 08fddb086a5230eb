package lampwright.app.workshop.model.shelf;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.work.LatestWorker;

/** Renders what is on the shelf, each pattern once, in the background. For the screen's thread. */
public final class ShelfLights implements AutoCloseable {
  private final LatestWorker worker;
  private final Map<Pattern, ShelfLight> lights = new HashMap<>();
  private final ReadOnlyIntegerWrapper count = new ReadOnlyIntegerWrapper();

  /**
   * @param screen runs what it is given on the screen's thread
   */
  ShelfLights(Executor screen) {
    worker = LatestWorker.named("shelf-painter", screen, LatestWorker.Ending.INTERRUPT);
  }

  /** The light of a pattern, once it is rendered. */
  public Optional<ShelfLight> find(Pattern pattern) {
    return Optional.ofNullable(lights.get(pattern));
  }

  /** How many are rendered; changes as they come in. */
  public ReadOnlyIntegerProperty countProperty() {
    return count.getReadOnlyProperty();
  }

  /** Asks for these, in this order. What is asked for no more is kept no longer. */
  void request(List<Pattern> patterns) {
    Set<Pattern> wanted = new LinkedHashSet<>(patterns);
    lights.keySet().retainAll(wanted);
    wanted.removeAll(lights.keySet());
    count.set(lights.size());
    if (wanted.isEmpty()) {
      return;
    }
    worker.request(
        turn -> {
          for (Pattern pattern : wanted) {
            if (turn.overtaken()) {
              return;
            }
            ShelfLight light = ShelfLight.of(pattern);
            turn.show(
                () -> {
                  lights.put(pattern, light);
                  count.set(lights.size());
                });
          }
        });
  }

  @Override
  public void close() {
    worker.close();
  }
}
