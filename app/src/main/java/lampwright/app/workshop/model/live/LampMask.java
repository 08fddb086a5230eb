package lampwright.app.workshop.model.live;

import java.util.List;
import java.util.function.Predicate;
import lampwright.engine.render.Column;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Rig;

/**
 * Which bytes of a frame are sent, and which are dark.
 *
 * @param rig of the frame
 * @param sent for each byte whether it is
 */
record LampMask(Rig rig, List<Boolean> sent) {
  LampMask {
    sent = List.copyOf(sent);
  }

  /** The bytes of some lamps; what no lamp has is sent where all lamps may be. */
  static LampMask of(Rig rig, Predicate<String> lamps, boolean rest) {
    return new LampMask(
        rig,
        new FrameLayout(rig)
            .columns().stream()
                .map(
                    column ->
                        column.lamp().map(Column.LampPixel::lamp).map(lamps::test).orElse(rest))
                .toList());
  }

  /** Darkens the rest of a frame. */
  void apply(byte[] frame) {
    for (int i = 0; i < frame.length; i++) {
      if (!sent.get(i)) {
        frame[i] = 0;
      }
    }
  }
}
