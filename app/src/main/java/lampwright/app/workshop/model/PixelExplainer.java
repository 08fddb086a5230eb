package lampwright.app.workshop.model;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.render.FrameTable;
import lampwright.engine.render.PixelAccount;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.words.AccountWords;
import lampwright.engine.work.LatestWorker;

/**
 * Why a pixel shows what it shows at an instant, in the words of the command line. Found in the
 * background, since a frame of lamps with a warm-up rests on all before it.
 */
public final class PixelExplainer implements AutoCloseable {
  /** Lines that are shown; a lamp can have many cues. */
  static final int LINES = 24;

  private static final Duration REST = Duration.ofMillis(120);

  /**
   * A pixel at a frame.
   *
   * @param lamp its id
   * @param pixel of the lamp, from 0
   */
  public record Spot(String lamp, int pixel, int frame) {}

  /** A spot and the words about it. */
  public record Explained(Spot spot, String words) {}

  private final Texts texts = Texts.of("scene");
  private final Bench bench;
  private final LatestWorker worker;
  private final ReadOnlyObjectWrapper<Optional<Explained>> explained =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Spot> requested = Optional.empty();

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public PixelExplainer(Bench bench, Executor screen) {
    this.bench = bench;
    this.worker = LatestWorker.named("explainer", screen, LatestWorker.Ending.INTERRUPT);
    bench.watch(BenchState::contents, (before, now) -> forget());
  }

  /** What was explained last; none once the project has changed. */
  public ReadOnlyObjectProperty<Optional<Explained>> explainedProperty() {
    return explained.getReadOnlyProperty();
  }

  /** Asks for a spot of the scene on the bench; the answer is a property. */
  public void request(Spot spot) {
    Optional<Scene> scene = bench.scene();
    Rig rig = bench.project().rig();
    Optional<Lamp> lamp = rig.lamp(spot.lamp());
    if (scene.isEmpty() || lamp.isEmpty() || requested.equals(Optional.of(spot))) {
      return;
    }
    requested = Optional.of(spot);
    worker.request(
        REST,
        turn -> {
          PixelAccount account =
              FrameTable.of(rig, scene.get()).account(spot.frame(), spot.lamp(), spot.pixel());
          String words = words(rig, scene.get(), lamp.get(), account);
          turn.show(() -> explained.set(Optional.of(new Explained(spot, words))));
        });
  }

  private String words(Rig rig, Scene scene, Lamp lamp, PixelAccount account) {
    List<String> lines = AccountWords.lines(rig, scene, lamp, account);
    String all = String.join("\n", lines.subList(0, Math.min(LINES, lines.size())));
    return texts.get(
            "why",
            Integer.toString(account.frame()),
            Integer.toString(account.pixel()),
            AccountWords.bytes(account))
        + "\n"
        + all
        + (lines.size() > LINES ? "\n\u2026" : "");
  }

  private void forget() {
    worker.cancel();
    requested = Optional.empty();
    explained.set(Optional.empty());
  }

  @Override
  public void close() {
    worker.close();
  }
}
