package lampwright.app.workshop.model.situation;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.ShowMachine;
import lampwright.engine.situation.Situation;

/**
 * What a recorded drive does to a show, from its first frame to its last.
 *
 * @param frames how many
 * @param rate of them per second
 * @param inputs what is read of each
 * @param bars when each situation is active
 */
public record DriveRun(int frames, double rate, List<Trace> inputs, List<Bar> bars) {
  /** The value of an input that is lost. */
  public static final int LOST = -1;

  /**
   * An input over time.
   *
   * @param stick whether it has a width in us; else it is 0 or 1
   * @param steps where it changes, in order; the first at frame 0
   */
  public record Trace(String input, boolean stick, List<Step> steps) {
    public Trace {
      steps = List.copyOf(steps);
    }
  }

  /** From this frame on it has this value; {@link #LOST} for none. */
  public record Step(int frame, int value) {}

  /** When a situation is active. */
  public record Bar(String situation, List<Span> spans) {
    public Bar {
      spans = List.copyOf(spans);
    }
  }

  /** Frames, {@code to} not among them. */
  public record Span(int from, int to) {}

  public DriveRun {
    inputs = List.copyOf(inputs);
    bars = List.copyOf(bars);
  }

  /** Plays a drive to its last row; nothing of it is rendered. */
  static DriveRun of(Show show, Drive drive) {
    int frames = drive.frames(show.clock()).orElse(1);
    ShowMachine machine = show.machine();
    Drive.Player readings = new Drive.Player(drive, show.clock());
    List<List<Step>> steps = new ArrayList<>();
    show.inputs().forEach(input -> steps.add(new ArrayList<>()));
    List<List<Span>> spans = new ArrayList<>();
    show.situations().forEach(situation -> spans.add(new ArrayList<>()));
    int[] since = new int[spans.size()];
    for (int frame = 0; frame < frames; frame++) {
      readings.feed(machine);
      machine.next();
      for (int i = 0; i < steps.size(); i++) {
        add(steps.get(i), frame, machine.lost(i) ? LOST : machine.value(i));
      }
      for (int i = 0; i < since.length; i++) {
        if (machine.active(i)) {
          since[i]++;
        } else if (since[i] > 0) {
          spans.get(i).add(new Span(frame - since[i], frame));
          since[i] = 0;
        }
      }
    }
    List<Trace> inputs = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      inputs.add(
          new Trace(show.inputs().get(i).id(), show.inputs().get(i).isChannel(), steps.get(i)));
    }
    List<Bar> bars = new ArrayList<>();
    for (int i = 0; i < since.length; i++) {
      if (since[i] > 0) {
        spans.get(i).add(new Span(frames - since[i], frames));
      }
      Situation situation = show.situations().get(i);
      bars.add(new Bar(situation.id(), spans.get(i)));
    }
    return new DriveRun(frames, show.clock().framesPerSecond().doubleValue(), inputs, bars);
  }

  private static void add(List<Step> steps, int frame, int value) {
    if (steps.isEmpty() || steps.get(steps.size() - 1).value() != value) {
      steps.add(new Step(frame, value));
    }
  }
}
