package lampwright.exporters.firmware;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.ShowClock;

/**
 * A recorded drive as levels on the pins of a controller. A reading that ends close to the instant
 * of a frame is moved away from it, so that the frame that sees it first is the same.
 *
 * @param edges in order of time
 * @param problems rows that can't be on a pin, with their numbers in the drive, from 1
 */
public record DriveSignal(List<Edge> edges, List<Integer> problems) {
  /** How far from a frame's instant readings end: more than the firmware is late, ns. */
  private static final long GUARD_NS = 150_000;

  /** The shortest low time between two pulses, ns. */
  private static final long PAUSE_NS = 50_000;

  private static final BigDecimal NS_PER_MS = BigDecimal.valueOf(1_000_000);
  private static final BigDecimal NS_PER_SECOND = BigDecimal.valueOf(1_000_000_000);
  private static final long NS_PER_US = 1000;

  /** Long before the first frame. */
  private static final long BEFORE_NS = -60 * NS_PER_SECOND.longValue();

  /** A level of a pin from an instant on, ns after the first frame. */
  public record Edge(long ns, Pin pin, boolean level) {}

  public DriveSignal {
    edges = List.copyOf(edges);
    problems = List.copyOf(problems);
  }

  /**
   * The signal of a drive.
   *
   * @param rig each of whose inputs has a pin
   */
  public static DriveSignal of(Rig rig, Drive drive, ShowClock clock) {
    List<Edge> edges = new ArrayList<>();
    List<Integer> problems = new ArrayList<>();
    Map<Integer, Long> free = new HashMap<>();
    for (Input input : rig.inputs()) {
      boolean rest = !input.isChannel() && input.activeLow();
      edges.add(new Edge(BEFORE_NS, input.pin().orElseThrow(), rest));
    }
    for (int i = 0; i < drive.rows().size(); i++) {
      Drive.Row row = drive.rows().get(i);
      Input input = rig.inputs().get(row.input());
      Pin pin = input.pin().orElseThrow();
      boolean pulse = input.isChannel();
      int frame = clock.ceiling(row.ms());
      long least = instant(frame - 1, clock) + GUARD_NS;
      long most = instant(frame, clock) - GUARD_NS;
      long width = pulse ? row.value() * NS_PER_US : 0;
      long at = row.ms().multiply(NS_PER_MS).setScale(0, RoundingMode.FLOOR).longValueExact();
      at = Math.max(least, Math.min(most, at));
      at = Math.max(at, free.getOrDefault(row.input(), BEFORE_NS) + width);
      if (at > most) {
        problems.add(i + 1);
        continue;
      }
      free.put(row.input(), at + (pulse ? PAUSE_NS : 0));
      if (!pulse) {
        edges.add(new Edge(at, pin, row.value() == 1));
      } else if (width > 0) {
        edges.add(new Edge(at - width, pin, true));
        edges.add(new Edge(at, pin, false));
      }
    }
    edges.sort(Comparator.comparingLong(Edge::ns));
    return new DriveSignal(edges, problems);
  }

  private static long instant(int frame, ShowClock clock) {
    return BigDecimal.valueOf(frame)
        .multiply(NS_PER_SECOND)
        .divide(clock.framesPerSecond(), 0, RoundingMode.FLOOR)
        .longValueExact();
  }

  /** As the prover reads it: {@code 20000000 D2 1} in each line. */
  public String text() {
    StringBuilder text = new StringBuilder();
    for (Edge edge : edges) {
      text.append(edge.ns()).append(' ').append(edge.pin().port().orElseThrow());
      text.append(edge.pin().number()).append(' ');
      text.append(edge.level() ? '1' : '0').append('\n');
    }
    return text.toString();
  }
}
