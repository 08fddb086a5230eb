package lampwright.exporters.packed.encode;

import com.google.common.collect.Lists;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Predicate;
import lampwright.engine.check.Fault;
import lampwright.engine.rig.Centre;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.Start;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.ShowFormat;

/** Codes a show as the tables that are behind those of the scenes. Of one use. */
final class ShowCoder {
  private static final BigDecimal LONGEST_TAP_MS = BigDecimal.valueOf(400);
  private static final BigDecimal TAP_PAUSE_MS = BigDecimal.valueOf(500);
  private static final int BYTE = 0xFF;
  private static final int SHORT = 0xFFFF;

  private final Show show;
  private final List<String> scenes;
  private final Predicate<Scene> steady;
  private final Map<String, Integer> inputs = new HashMap<>();
  private final Map<String, Integer> situations = new HashMap<>();
  private final Map<String, Integer> askedFrames = new HashMap<>();
  private final Map<String, Integer> askedSlots = new HashMap<>();
  private final List<OptionalInt> clocks = new ArrayList<>();
  private int slots;
  private int conditionBits;
  private int longest;
  private int timeBytes;
  private ByteSink out = new ByteSink();

  private ShowCoder(Show show, List<String> scenes, Predicate<Scene> steady) {
    this.show = show;
    this.scenes = scenes;
    this.steady = steady;
    for (int i = 0; i < show.inputs().size(); i++) {
      inputs.put(show.inputs().get(i).id(), i);
    }
    for (int i = 0; i < show.situations().size(); i++) {
      situations.put(show.situations().get(i).id(), i);
    }
    show.situations().stream()
        .flatMap(situation -> situation.trigger().conditions().stream())
        .map(Condition::criterion)
        .filter(Criterion.EndedWithin.class::isInstance)
        .map(Criterion.EndedWithin.class::cast)
        .forEach(ended -> askedFrames.merge(ended.other(), frames(ended.withinMs()), Integer::max));
  }

  /**
   * The tables of a show.
   *
   * @param scenes ids of the packed scenes, among them all that situations name
   * @param lamps that are packed: those of the rig, and perhaps one more
   * @param steady whether all frames of a scene are equal
   * @throws PackRefusedException if there is more of something than the tables can number
   */
  static byte[] code(Show show, List<String> scenes, int lamps, Predicate<Scene> steady) {
    // The bytes of a time follow from the longest, which is known once all are coded.
    ShowCoder trial = new ShowCoder(show, scenes, steady);
    trial.write(Integer.BYTES, lamps);
    int longest = trial.longest;
    ShowCoder coder = new ShowCoder(show, scenes, steady);
    coder.slots = 0;
    coder.write(longest <= BYTE ? 1 : longest <= SHORT ? 2 : Integer.BYTES, lamps);
    ByteSink whole = new ByteSink().u8(coder.timeBytes).u8(show.inputs().size());
    whole.u8(coder.centres()).u8(show.situations().size()).u8(coder.slots);
    whole.u8((coder.conditionBits + 7) / 8);
    return whole.all(coder.out.toBytes()).toBytes();
  }

  private void write(int bytes, int lamps) {
    timeBytes = bytes;
    limit("inputs", show.inputs().size(), ShowFormat.MOST);
    limit("inputs with centre power-up", centres(), ShowFormat.MOST_CENTRES);
    limit("situations", show.situations().size(), ShowFormat.MOST);
    inputs();
    ByteSink head = out;
    out = new ByteSink();
    show.situations().forEach(this::situation);
    ByteSink records = out;
    out = head;
    for (int i = 0; i < clocks.size(); i++) {
      out.u8(show.scene(i).map(scene -> scenes.indexOf(scene.id())).orElse(ShowFormat.NONE));
      out.u8(clocks.get(i).orElse(ShowFormat.NONE));
    }
    limit("times of situations", slots, ShowFormat.MOST);
    limit("conditions with a memory", conditionBits, BYTE * Byte.SIZE);
    out.all(records.toBytes());
    for (int lamp = 0; lamp < lamps; lamp++) {
      List<Integer> wanting =
          lamp < show.rig().lamps().size() ? show.wanting(lamp) : List.<Integer>of();
      out.u8(wanting.size());
      Lists.reverse(wanting).forEach(out::u8);
    }
  }

  private static void limit(String what, int count, int most) {
    if (count > most) {
      throw new PackRefusedException(
          new Fault(what, Integer.toString(count), "must be at most " + most + " in a player"));
    }
  }

  private static boolean learns(Input input) {
    return input.isChannel() && input.centre() == Centre.POWER_UP;
  }

  private int centres() {
    return (int) show.inputs().stream().filter(ShowCoder::learns).count();
  }

  private int frames(BigDecimal ms) {
    return show.clock().ceiling(ms);
  }

  private ByteSink time(int frames) {
    longest = Math.max(longest, frames);
    return out.number(frames, timeBytes);
  }

  private int slot() {
    return slots++;
  }

  private void inputs() {
    int centre = 0;
    for (Input input : show.inputs()) {
      if (input.kind() == InputKind.SWITCH) {
        out.u8(input.activeLow() ? ShowFormat.ACTIVE_LOW : ShowFormat.SWITCH);
        time(0);
        continue;
      }
      out.u8(
          learns(input)
              ? ShowFormat.LEARNS | centre++ << ShowFormat.CENTRE_SHIFT
              : ShowFormat.CHANNEL);
      int lost = frames(input.lostAfterMs());
      // The player counts down from one more.
      longest = Math.max(longest, lost + 1);
      time(lost);
    }
  }

  private void situation(Situation situation) {
    int place = clocks.size();
    List<Condition> conditions = situation.trigger().conditions();
    int after = frames(situation.afterMs());
    int linger = situation.toggle() ? 0 : frames(situation.lingerMs());
    int asked = askedFrames.getOrDefault(situation.id(), 0);
    boolean clock =
        situation.start() == Start.RESTART && show.scene(place).filter(steady.negate()).isPresent();
    boolean loops = clock && show.scene(place).orElseThrow().loop();
    out.u8(
        (situation.trigger().join() == Join.ANY ? ShowFormat.ANY : 0)
            | (situation.toggle() ? ShowFormat.TOGGLES : 0)
            | (after > 0 ? ShowFormat.AFTER : 0)
            | (linger > 0 ? ShowFormat.LINGERS : 0)
            | (clock ? ShowFormat.CLOCK : 0)
            | (loops ? ShowFormat.LOOPS : 0)
            | (asked > 0 ? ShowFormat.ASKED : 0));
    out.u8(conditions.size());
    conditions.forEach(this::condition);
    timer(after);
    timer(linger);
    clocks.add(clock ? OptionalInt.of(slots) : OptionalInt.empty());
    if (clock) {
      out.u8(slot());
      time(show.scene(place).orElseThrow().frameCount() - 1);
    }
    if (asked > 0) {
      // A clock runs only while the situation is active, this time only while it is not.
      int slot = clock ? slots - 1 : slot();
      askedSlots.put(situation.id(), slot);
      out.u8(slot);
      time(asked);
    }
  }

  private void timer(int frames) {
    if (frames > 0) {
      out.u8(slot());
      time(frames);
    }
  }

  private void condition(Condition condition) {
    boolean counts = condition.taps().isPresent();
    int more = counts ? ShowFormat.TAPS : 0;
    Criterion criterion = condition.criterion();
    if (counts || criterion instanceof Criterion.Width) {
      conditionBits++;
    }
    if (criterion instanceof Criterion.Width width) {
      kind(ShowFormat.WIDTH | more, input(criterion));
      width(width);
    } else if (criterion instanceof Criterion.Lost lost) {
      // A switch never is.
      boolean never = show.inputs().get(input(lost)).kind() == InputKind.SWITCH;
      kind((never ? ShowFormat.NEVER : ShowFormat.LOST) | more, never ? 0 : input(lost));
    } else if (criterion instanceof Criterion.SwitchIs contact) {
      kind(ShowFormat.ON | (contact.on() ? 0 : ShowFormat.NOT) | more, input(criterion));
    } else if (criterion instanceof Criterion.SituationIs other) {
      kind(
          ShowFormat.ACTIVE | (other.active() ? 0 : ShowFormat.NOT), situations.get(other.other()));
    } else {
      ended((Criterion.EndedWithin) criterion);
    }
    condition.taps().ifPresent(this::taps);
  }

  private void taps(int taps) {
    int tap = show.clock().floor(LONGEST_TAP_MS);
    // The player counts one further.
    longest = Math.max(longest, tap + 1);
    out.u8(slot());
    time(tap);
    out.u8(slot());
    time(frames(TAP_PAUSE_MS)).u8(taps);
  }

  private int input(Criterion criterion) {
    return inputs.get(criterion.input().orElseThrow());
  }

  private void kind(int kind, int subject) {
    out.u8(kind).u8(subject);
  }

  private void ended(Criterion.EndedWithin ended) {
    int frames = frames(ended.withinMs());
    if (frames == 0) {
      kind(ShowFormat.NEVER, 0);
      return;
    }
    kind(ShowFormat.ENDED, situations.get(ended.other()));
    out.u8(askedSlots.get(ended.other()));
    time(askedFrames.get(ended.other()) - frames);
  }

  private void width(Criterion.Width width) {
    int from = -ShowFormat.WIDEST_US;
    int to = ShowFormat.WIDEST_US;
    int hysteresis = width.hysteresisUs();
    if (width instanceof Criterion.Above above) {
      from = above.aboveUs() + 1;
      hysteresis++;
    } else if (width instanceof Criterion.Below below) {
      to = below.belowUs() - 1;
      hysteresis++;
    } else if (width instanceof Criterion.Between between) {
      from = between.fromUs();
      to = between.toUs();
    }
    out.u16(from).u16(to).u16(hysteresis);
  }
}
