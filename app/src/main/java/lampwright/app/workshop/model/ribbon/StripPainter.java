package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.work.LatestWorker;
import org.jspecify.annotations.Nullable;

/**
 * Paints the strips of light that are in sight, in the background. What was painted last stays
 * until the next is there, so that nothing flickers while a hand drags.
 */
final class StripPainter implements AutoCloseable {
  /**
   * What is wanted.
   *
   * @param rendered frames that were there; more of them make another request
   * @param lamps indices in the rig
   * @param unfolded those of them whose duties are wanted
   */
  record Request(
      SceneLight light,
      int rendered,
      TimeAxis axis,
      int width,
      List<Integer> lamps,
      List<Integer> unfolded) {
    Request {
      lamps = List.copyOf(lamps);
      unfolded = List.copyOf(unfolded);
    }

    private boolean sameLook(Request other) {
      return light.equals(other.light) && axis.equals(other.axis) && width == other.width;
    }
  }

  private final LatestWorker painter;
  private final ReadOnlyObjectWrapper<Map<Integer, Strip>> strips =
      new ReadOnlyObjectWrapper<>(Map.of());
  private @Nullable Request last;

  StripPainter(Executor screen) {
    painter = LatestWorker.named("strip-painter", screen, LatestWorker.Ending.INTERRUPT);
  }

  /** The strips by lamp, for lamps that were in sight last. */
  ReadOnlyObjectProperty<Map<Integer, Strip>> stripsProperty() {
    return strips.getReadOnlyProperty();
  }

  void request(Request request) {
    if (request.equals(last) || request.width() < 1) {
      return;
    }
    // Where only more frames came, what is in hand is still of use; what is old light is not.
    boolean overtaken = last == null || !request.sameLook(last);
    last = request;
    if (overtaken) {
      painter.request(turn -> paint(request, turn));
    } else {
      painter.requestNext(turn -> paint(request, turn));
    }
  }

  void forget() {
    last = null;
    painter.cancel();
    strips.set(Map.of());
  }

  @Override
  public void close() {
    painter.close();
  }

  private void paint(Request request, LatestWorker.Turn turn) {
    int[] lamps = request.lamps().stream().mapToInt(Integer::intValue).toArray();
    boolean[] duties = new boolean[lamps.length];
    for (int i = 0; i < lamps.length; i++) {
      duties[i] = request.unfolded().contains(lamps[i]);
    }
    Strip[] painted = Strip.paint(request.light(), request.axis(), request.width(), lamps, duties);
    Map<Integer, Strip> byLamp = new TreeMap<>();
    for (int i = 0; i < lamps.length; i++) {
      byLamp.put(lamps[i], painted[i]);
    }
    turn.show(() -> strips.set(byLamp));
  }
}
