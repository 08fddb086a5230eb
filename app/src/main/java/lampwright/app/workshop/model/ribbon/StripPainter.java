package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.rig.Lamp;
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
   * @param lamps for each strip, indices in the rig
   * @param unfolded those of them whose duties are wanted
   */
  record Request(
      SceneLight light,
      int rendered,
      TimeAxis axis,
      int width,
      List<List<Integer>> lamps,
      List<List<Integer>> unfolded) {
    Request {
      lamps = List.copyOf(lamps);
      unfolded = List.copyOf(unfolded);
    }

    /**
     * What the rows and folded groups in sight want.
     *
     * @param rig ids of its lamps
     * @param top how far the rows are scrolled, in pixels
     * @param width of the rows' pane, in pixels
     * @param height of it
     */
    static Request of(
        SceneLight light,
        RibbonLayout layout,
        List<String> rig,
        TimeAxis axis,
        double top,
        double width,
        double height) {
      List<Lamp> known = light.screen().lamps();
      List<List<Integer>> lamps = new ArrayList<>();
      List<List<Integer>> open = new ArrayList<>();
      for (RibbonLayout.Row row : layout.between(top, top + height)) {
        // The light may still be that of the rig before an edit.
        if (row.index() < known.size() && known.get(row.index()).id().equals(row.lamp().id())) {
          lamps.add(row.lights());
          if (row.curves() > 0) {
            open.add(row.lights());
          }
        }
      }
      boolean sameRig = known.stream().map(Lamp::id).toList().equals(rig);
      for (RibbonLayout.Heading heading : layout.headings()) {
        if (heading.folded() && sameRig) {
          lamps.add(heading.lights());
        }
      }
      int pixels = (int) Math.ceil(width);
      double perMs = light.frames().table().framesPerSecond() / 1000;
      int needed = (int) Math.min(light.frames().frameCount(), axis.ms(pixels) * perMs + 2);
      // More frames than are in sight change nothing.
      int rendered = Math.min(light.frames().rendered(), needed);
      return new Request(light, rendered, axis, pixels, lamps, open);
    }

    private boolean sameLook(Request other) {
      return light.equals(other.light) && axis.equals(other.axis) && width == other.width;
    }
  }

  private final LatestWorker painter;
  private final ReadOnlyObjectWrapper<Map<List<Integer>, Strip>> strips =
      new ReadOnlyObjectWrapper<>(Map.of());
  private @Nullable Request last;

  StripPainter(Executor screen) {
    painter = LatestWorker.named("strip-painter", screen, LatestWorker.Ending.INTERRUPT);
  }

  /** The strips by lamp, for lamps that were in sight last. */
  ReadOnlyObjectProperty<Map<List<Integer>, Strip>> stripsProperty() {
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
    List<List<Integer>> lamps = request.lamps();
    boolean[] duties = new boolean[lamps.size()];
    for (int i = 0; i < lamps.size(); i++) {
      duties[i] = request.unfolded().contains(lamps.get(i));
    }
    Strip[] painted = Strip.paint(request.light(), request.axis(), request.width(), lamps, duties);
    Map<List<Integer>, Strip> byLamp = new HashMap<>();
    for (int i = 0; i < lamps.size(); i++) {
      byLamp.put(lamps.get(i), painted[i]);
    }
    turn.show(() -> strips.set(byLamp));
  }
}
