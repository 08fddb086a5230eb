package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicReference;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.model.SceneLight;
import org.jspecify.annotations.Nullable;

/**
 * Paints the strips of light that are in sight, in the background. What was painted last stays
 * until the next is there, so that nothing flickers while a hand drags.
 */
final class StripRoom implements AutoCloseable {
  /**
   * What is wanted.
   *
   * @param rendered frames that were there; more of them are another wish
   * @param lamps indices in the rig
   * @param unfolded those of them whose duties are wanted
   */
  record Wish(
      SceneLight light,
      int rendered,
      TimeAxis axis,
      int width,
      List<Integer> lamps,
      List<Integer> unfolded) {
    Wish {
      lamps = List.copyOf(lamps);
      unfolded = List.copyOf(unfolded);
    }

    private boolean sameLook(Wish other) {
      return light == other.light && axis.equals(other.axis) && width == other.width;
    }
  }

  private final Executor screen;
  private final ExecutorService painter =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "strip-room");
            thread.setDaemon(true);
            return thread;
          });
  private final ReadOnlyObjectWrapper<Map<Integer, Strip>> strips =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final AtomicReference<@Nullable Wish> next = new AtomicReference<>();
  private @Nullable Wish last;
  private @Nullable Future<?> painting;

  StripRoom(Executor screen) {
    this.screen = screen;
  }

  /** The strips by lamp, for lamps that were in sight last. */
  ReadOnlyObjectProperty<Map<Integer, Strip>> stripsProperty() {
    return strips.getReadOnlyProperty();
  }

  void want(Wish wish) {
    if (wish.equals(last) || wish.width() < 1) {
      return;
    }
    // Where only more frames came, what is in hand is still of use; what is old light is not.
    boolean overtaken = last == null || !wish.sameLook(last);
    last = wish;
    if (painting != null && overtaken) {
      painting.cancel(true);
    }
    if (next.getAndSet(wish) == null || overtaken) {
      painting = painter.submit(this::paintNext);
    }
  }

  private void paintNext() {
    Wish wish = next.getAndSet(null);
    if (wish != null) {
      paint(wish);
    }
  }

  void forget() {
    last = null;
    strips.set(Map.of());
  }

  @Override
  public void close() {
    painter.shutdownNow();
  }

  private void paint(Wish wish) {
    try {
      int[] lamps = wish.lamps().stream().mapToInt(Integer::intValue).toArray();
      boolean[] duties = new boolean[lamps.length];
      for (int i = 0; i < lamps.length; i++) {
        duties[i] = wish.unfolded().contains(lamps[i]);
      }
      Strip[] painted = Strip.paint(wish.light(), wish.axis(), wish.width(), lamps, duties);
      Map<Integer, Strip> byLamp = new TreeMap<>();
      for (int i = 0; i < lamps.length; i++) {
        byLamp.put(lamps[i], painted[i]);
      }
      screen.execute(
          () -> {
            Wish now = last;
            if (now != null && wish.sameLook(now)) {
              strips.set(byLamp);
            }
          });
    } catch (CancellationException overtaken) {
      // A newer wish is there.
    }
  }
}
