package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/** A hand that holds a keyframe of a cue. It stays between its neighbours. */
public final class KeyframeDrag {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;
  private final Scene scene;
  private final CueRef cue;
  private final int frame;
  private final Object gesture = new Object();

  /**
   * @param cue whose pattern has keyframes
   * @param frame index of one of them
   */
  public KeyframeDrag(RibbonsModel model, CueRef cue, int frame) {
    this.model = model;
    this.bench = model.bench();
    this.scene = bench.scene().orElseThrow();
    this.cue = cue;
    this.frame = frame;
  }

  /** Moves it to a time of the scene. */
  public void to(double ms, boolean free) {
    BigDecimal at = model.snapping().of(List.of(cue), free).edge(ms, 0);
    bench.applyToCues(
        texts.get("edit.keyframe.move"),
        Optional.of(gesture),
        now -> CueEdits.each(scene, List.of(cue), held -> moved(held, at)));
  }

  /** Lets go. */
  public void end() {
    bench.endGesture();
  }

  private Cue moved(Cue held, BigDecimal at) {
    Keyframes pattern = (Keyframes) held.pattern();
    List<Keyframe> frames = new ArrayList<>(pattern.frames());
    BigDecimal least = frame == 0 ? BigDecimal.ZERO : frames.get(frame - 1).atMs();
    BigDecimal most = frame == frames.size() - 1 ? held.lengthMs() : frames.get(frame + 1).atMs();
    BigDecimal to = at.subtract(held.startMs()).min(most).max(least);
    frames.set(frame, Keyframe.AT_MS.with(frames.get(frame), to));
    return with(held, frames);
  }

  /**
   * Puts a keyframe into a cue at a time of the scene, at the level between its neighbours; before
   * and after the cue there is none.
   */
  public static void add(RibbonsModel model, CueRef ref, double ms) {
    Bench bench = model.bench();
    BigDecimal at = model.snapping().of(List.of(ref), false).edge(ms, 0);
    bench.applyToCues(
        Texts.of("ribbons").get("edit.keyframe.add"),
        Optional.empty(),
        now -> CueEdits.each(now, List.of(ref), held -> added(held, at)));
  }

  private static Cue added(Cue held, BigDecimal at) {
    Keyframes pattern = (Keyframes) held.pattern();
    List<Keyframe> frames = new ArrayList<>(pattern.frames());
    BigDecimal to = at.subtract(held.startMs()).max(BigDecimal.ZERO);
    int place = 0;
    while (place < frames.size() && frames.get(place).atMs().compareTo(to) <= 0) {
      place++;
    }
    Keyframe before = frames.get(Math.max(0, place - 1));
    Keyframe after = frames.get(Math.min(place, frames.size() - 1));
    double span = after.atMs().subtract(before.atMs()).doubleValue();
    double share = span == 0 ? 0 : Math.min(1, to.subtract(before.atMs()).doubleValue() / span);
    double from = before.level().orElse(pattern.look().level());
    double level = from + (after.level().orElse(pattern.look().level()) - from) * share;
    frames.add(
        place,
        new Keyframe(
            to,
            before.colour(),
            OptionalDouble.of(Math.round(level * 1000) / 1000.0),
            Easing.LINEAR));
    return with(held, frames);
  }

  /** Takes a keyframe out of a cue; the last one stays. */
  public static void remove(RibbonsModel model, CueRef ref, int frame) {
    model
        .bench()
        .applyToCues(
            Texts.of("ribbons").get("edit.keyframe.remove"),
            Optional.empty(),
            now ->
                CueEdits.each(
                    now,
                    List.of(ref),
                    held -> {
                      List<Keyframe> frames =
                          new ArrayList<>(((Keyframes) held.pattern()).frames());
                      if (frames.size() > 1) {
                        frames.remove(frame);
                      }
                      return with(held, frames);
                    }));
  }

  private static Cue with(Cue cue, List<Keyframe> frames) {
    Keyframes pattern = (Keyframes) cue.pattern();
    return Cue.PATTERN.with(
        cue, new Keyframes(pattern.look(), pattern.phase(), frames, pattern.repeat()));
  }
}
