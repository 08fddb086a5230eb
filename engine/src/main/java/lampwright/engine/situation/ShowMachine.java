package lampwright.engine.situation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import lampwright.engine.scene.Scene;

/**
 * Works out which situations are active, frame by frame, in whole numbers alone: the players of
 * controllers do the same from tables. Not safe for use by several threads.
 */
public final class ShowMachine {
  private final Show show;
  private final List<InputReading> inputs;
  private final List<SituationState> situations = new ArrayList<>();
  private int frame = -1;

  ShowMachine(Show show) {
    this.show = show;
    this.inputs = show.readings();
    Map<String, InputReading> byId = new HashMap<>();
    for (int i = 0; i < inputs.size(); i++) {
      byId.put(show.inputs().get(i).id(), inputs.get(i));
    }
    Map<String, SituationState> earlier = new HashMap<>();
    for (Situation situation : show.situations()) {
      List<Probe> conditions =
          situation.trigger().conditions().stream()
              .map(condition -> probe(condition, byId, earlier))
              .toList();
      SituationState state = new SituationState(situation, conditions, show.clock());
      situations.add(state);
      earlier.put(situation.id(), state);
    }
  }

  private Probe probe(
      Condition condition, Map<String, InputReading> inputs, Map<String, SituationState> earlier) {
    Probe probe = probe(condition.criterion(), inputs, earlier);
    return condition.taps().isPresent()
        ? new TapCounter(probe, condition.taps().getAsInt(), show.clock())
        : probe;
  }

  private Probe probe(
      Criterion criterion, Map<String, InputReading> inputs, Map<String, SituationState> earlier) {
    if (criterion instanceof Criterion.Width width) {
      return new WidthProbe(named(inputs, criterion.input().orElseThrow()), width);
    } else if (criterion instanceof Criterion.Lost lost) {
      return named(inputs, lost.channel())::lost;
    } else if (criterion instanceof Criterion.SwitchIs contact) {
      InputReading reading = named(inputs, contact.contact());
      return () -> (reading.value() != 0) == contact.on();
    } else if (criterion instanceof Criterion.SituationIs other) {
      SituationState state = named(earlier, other.other());
      return () -> state.active() == other.active();
    }
    Criterion.EndedWithin ended = (Criterion.EndedWithin) criterion;
    SituationState state = named(earlier, ended.other());
    int frames = show.clock().ceiling(ended.withinMs());
    return () -> state.endedWithin(frames);
  }

  // A show has only what names what there is.
  private static <T> T named(Map<String, T> parts, String id) {
    return Objects.requireNonNull(parts.get(id), id);
  }

  /**
   * Takes a reading that ends before the next frame, or at its instant.
   *
   * @param input by its place in the rig
   * @param value the width of a servo pulse in us, or the level of a switch's pin, 0 or 1
   */
  public void take(int input, int value) {
    inputs.get(input).take(value);
  }

  /** Works out the next frame, and gives what begins or ends in it, in the order of the list. */
  public List<Change> next() {
    frame++;
    inputs.forEach(InputReading::frame);
    List<Change> changes = List.of();
    for (int i = 0; i < situations.size(); i++) {
      SituationState state = situations.get(i);
      if (state.frame()) {
        changes = changes.isEmpty() ? new ArrayList<>() : changes;
        changes.add(state.change(frame, show.situations().get(i)));
      }
    }
    return changes;
  }

  /** The frame worked out last; -1 before the first. */
  public int frame() {
    return frame;
  }

  /** Whether a situation is active in this frame. */
  public boolean active(int situation) {
    return situations.get(situation).active();
  }

  /** The situation that has a lamp in this frame, by its place; empty if the lamp is dark. */
  public OptionalInt having(int lamp) {
    for (int situation : show.wanting(lamp)) {
      if (active(situation)) {
        return OptionalInt.of(situation);
      }
    }
    return OptionalInt.empty();
  }

  /**
   * The frame of its scene that an active situation shows.
   *
   * @throws java.util.NoSuchElementException if it has no scene
   */
  public int sceneFrame(int situation) {
    Scene scene = show.scene(situation).orElseThrow();
    boolean restarts = show.situations().get(situation).start() == Start.RESTART;
    int at = restarts ? situations.get(situation).sinceOnset() : frame;
    int count = scene.frameCount();
    return scene.loop() ? at % count : Math.min(at, count - 1);
  }

  /** Whether a channel is lost in this frame. */
  public boolean lost(int input) {
    return inputs.get(input).lost();
  }

  /** What is read of an input: a width in us from a centre of 1,500, or 1 or 0 of a switch. */
  public int value(int input) {
    return inputs.get(input).value();
  }
}
