package lampwright.exporters.packed.play;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.exporters.packed.format.ShowFormat;

/** The tables of a show, read and checked as a whole. Immutable once read. */
final class ShowTables {
  final int inputs;
  final int centres;
  final int slots;
  final List<TableInput> inputTables = new ArrayList<>();
  final List<TableSituation> situations = new ArrayList<>();

  /** For each lamp the situations that may have it, the highest priority last. */
  final List<List<Integer>> lamps = new ArrayList<>();

  final int conditionBits;

  private final PackedBytes data;
  final int timeBytes;
  private int at;
  private int bits;

  /** An input: its kind, the number of its centre, and when it is lost. */
  record TableInput(int kind, int centre, int lost) {}

  /** A counter and what it counts to. */
  record Timer(int slot, int frames) {}

  /** A width condition's two ends and its hysteresis. */
  record Width(int from, int to, int hysteresis) {}

  /** A count of short spells. */
  record Taps(int slot, int longest, int countSlot, int pause, int count) {}

  /** A condition; its bit is -1 if it has no memory. */
  record TableCondition(
      int kind,
      boolean not,
      int subject,
      Optional<Width> width,
      Optional<Timer> ended,
      Optional<Taps> taps,
      int bit) {}

  /** A situation; scene and clock may be {@link ShowFormat#NONE}. */
  record TableSituation(
      int scene,
      int clock,
      int flags,
      Optional<Timer> after,
      Optional<Timer> linger,
      Optional<Timer> last,
      Optional<Timer> asked,
      List<TableCondition> conditions) {
    boolean has(int flag) {
      return (flags & flag) != 0;
    }
  }

  private record Directory(int scene, int clock) {}

  ShowTables(PackedBytes data, int[] framesOfScenes) {
    this.data = data;
    at = data.showAt;
    timeBytes = u8();
    must(timeBytes == 1 || timeBytes == 2 || timeBytes == Integer.BYTES);
    inputs = u8();
    centres = u8();
    int count = u8();
    slots = u8();
    conditionBits = u8() * Byte.SIZE;
    must(inputs <= ShowFormat.MOST && count <= ShowFormat.MOST && slots <= ShowFormat.MOST);
    must(centres <= ShowFormat.MOST_CENTRES);
    for (int i = 0; i < inputs; i++) {
      inputTables.add(input());
    }
    List<Directory> directory = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      directory.add(new Directory(u8(), u8()));
    }
    for (Directory entry : directory) {
      situations.add(situation(entry, framesOfScenes));
    }
    for (int lamp = 0; lamp < data.lamps; lamp++) {
      List<Integer> wanting = new ArrayList<>();
      for (int left = u8(); left > 0; left--) {
        int situation = u8();
        must(situation < count && situations.get(situation).scene() != ShowFormat.NONE);
        wanting.add(situation);
      }
      lamps.add(List.copyOf(wanting));
    }
    must(at == data.ceilingAt);
  }

  private void must(boolean holds) {
    if (!holds) {
      throw PackedBytes.badContents(at);
    }
  }

  private int number(int bytes) {
    must(at <= data.ceilingAt - bytes);
    int value = data.table(at, bytes);
    at += bytes;
    return value;
  }

  private int u8() {
    return number(1);
  }

  private int time() {
    int frames = number(timeBytes);
    must(frames >= 0);
    return frames;
  }

  private int slot() {
    int slot = u8();
    must(slot < slots);
    return slot;
  }

  private Optional<Timer> timer(int flags, int flag) {
    return (flags & flag) == 0 ? Optional.empty() : Optional.of(new Timer(slot(), time()));
  }

  private TableInput input() {
    int kind = u8();
    int centre = kind >> ShowFormat.CENTRE_SHIFT;
    boolean learns = (kind & ShowFormat.INPUT_KIND_MASK) == ShowFormat.LEARNS;
    must(learns ? centre < centres : centre == 0);
    return new TableInput(kind & ShowFormat.INPUT_KIND_MASK, centre, time());
  }

  private TableSituation situation(Directory entry, int[] framesOfScenes) {
    int flags = u8();
    int count = u8();
    must(flags <= ShowFormat.SITUATION_FLAGS);
    must((flags & ShowFormat.TOGGLES) == 0 || (flags & ShowFormat.LINGERS) == 0);
    must(entry.scene() == ShowFormat.NONE || entry.scene() < framesOfScenes.length);
    List<TableCondition> conditions = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      conditions.add(condition());
    }
    Optional<Timer> after = timer(flags, ShowFormat.AFTER);
    Optional<Timer> linger = timer(flags, ShowFormat.LINGERS);
    Optional<Timer> last = timer(flags, ShowFormat.CLOCK);
    Optional<Timer> asked = timer(flags, ShowFormat.ASKED);
    must(entry.clock() == last.map(Timer::slot).orElse(ShowFormat.NONE));
    must(
        last.isEmpty()
            || (entry.scene() != ShowFormat.NONE
                && last.get().frames() < framesOfScenes[entry.scene()]));
    return new TableSituation(
        entry.scene(), entry.clock(), flags, after, linger, last, asked, List.copyOf(conditions));
  }

  private TableCondition condition() {
    int coded = u8();
    int subject = u8();
    int kind = coded & ShowFormat.CONDITION_KIND_MASK;
    boolean counts = (coded & ShowFormat.TAPS) != 0;
    boolean not = (coded & ShowFormat.NOT) != 0;
    must(kind <= ShowFormat.ENDED);
    must(!not || kind == ShowFormat.ON || kind == ShowFormat.ACTIVE);
    if (kind == ShowFormat.ACTIVE || kind == ShowFormat.ENDED) {
      must(subject < situations.size());
    } else if (kind != ShowFormat.NEVER) {
      must(subject < inputs);
    }
    Optional<Width> width =
        kind == ShowFormat.WIDTH
            ? Optional.of(new Width((short) number(2), (short) number(2), number(2)))
            : Optional.empty();
    width.ifPresent(
        w ->
            must(
                Math.abs(w.from()) <= ShowFormat.WIDEST_US
                    && Math.abs(w.to()) <= ShowFormat.WIDEST_US
                    && w.hysteresis() <= ShowFormat.WIDEST_US));
    Optional<Timer> ended =
        kind == ShowFormat.ENDED ? Optional.of(new Timer(slot(), time())) : Optional.empty();
    Optional<Taps> taps =
        counts ? Optional.of(new Taps(slot(), time(), slot(), time(), u8())) : Optional.empty();
    boolean remembers = counts || kind == ShowFormat.WIDTH;
    must(!remembers || bits < conditionBits);
    return new TableCondition(kind, not, subject, width, ended, taps, remembers ? bits++ : -1);
  }
}
