package lampwright.engine.situation;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Centre;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/**
 * The rules of situations as DESIGN.md section 8 has them, sentence by sentence, with decimals and
 * the whole history looked through again in every frame. It shares nothing with the machine but the
 * records of the project.
 */
final class PlainShow {
  private static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);

  private final Rig rig;
  private final List<Scene> scenes;
  private final List<Situation> situations;
  private final List<Drive.Row> rows;
  private final BigDecimal fps;

  /** By situation, condition and frame: the rest of the condition, and the condition. */
  private final List<List<List<Boolean>>> rests = new ArrayList<>();

  private final List<List<List<Boolean>>> conditions = new ArrayList<>();

  /** By situation and frame. */
  private final List<List<Boolean>> holds = new ArrayList<>();

  private final List<List<Boolean>> actives = new ArrayList<>();
  private final List<List<Boolean>> joins = new ArrayList<>();

  PlainShow(Rig rig, List<Scene> scenes, List<Situation> situations, List<Drive.Row> rows) {
    this.rig = rig;
    this.scenes = scenes;
    this.situations = situations;
    this.rows = rows;
    this.fps =
        situations.stream()
            .flatMap(s -> s.scene().stream())
            .map(this::scene)
            .findFirst()
            .orElseThrow()
            .framesPerSecond();
    for (Situation situation : situations) {
      rests.add(lists(situation.trigger().conditions().size()));
      conditions.add(lists(situation.trigger().conditions().size()));
      joins.add(new ArrayList<>());
      holds.add(new ArrayList<>());
      actives.add(new ArrayList<>());
    }
  }

  private static List<List<Boolean>> lists(int count) {
    List<List<Boolean>> lists = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      lists.add(new ArrayList<>());
    }
    return lists;
  }

  private Scene scene(String id) {
    return scenes.stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
  }

  // frames x 1000 against ms x fps
  private int compare(int frames, BigDecimal ms) {
    return BigDecimal.valueOf(frames).multiply(THOUSAND).compareTo(ms.multiply(fps));
  }

  /** Works out frame n; all before it have been. */
  void frame(int n) {
    for (int s = 0; s < situations.size(); s++) {
      Situation situation = situations.get(s);
      List<Condition> all = situation.trigger().conditions();
      int on = 0;
      for (int c = 0; c < all.size(); c++) {
        rests.get(s).get(c).add(rest(all.get(c).criterion(), rests.get(s).get(c), n));
        boolean is =
            all.get(c).taps().isPresent()
                ? tapped(rests.get(s).get(c), all.get(c).taps().getAsInt(), n)
                : rests.get(s).get(c).get(n);
        conditions.get(s).get(c).add(is);
        on += is ? 1 : 0;
      }
      joins
          .get(s)
          .add(
              all.isEmpty()
                  || (situation.trigger().join() == Join.ALL ? on == all.size() : on > 0));
      holds.get(s).add(hold(s, n));
      actives.get(s).add(active(s, n));
    }
  }

  private boolean seen(Drive.Row row, int n) {
    return compare(n, row.ms()) >= 0;
  }

  private List<Drive.Row> seen(String input, int n) {
    return rows.stream()
        .filter(row -> rig.inputs().get(row.input()).id().equals(input) && seen(row, n))
        .toList();
  }

  private Input input(String id) {
    return rig.inputs().stream().filter(i -> i.id().equals(id)).findFirst().orElseThrow();
  }

  private List<Drive.Row> valid(String input, int n) {
    return seen(input, n).stream().filter(r -> r.value() >= 800 && r.value() <= 2200).toList();
  }

  boolean lost(String id, int n) {
    Input input = input(id);
    if (input.kind() == InputKind.SWITCH) {
      return false;
    }
    List<Drive.Row> valid = valid(id, n);
    if (valid.isEmpty() || (input.centre() == Centre.POWER_UP && valid.size() < 16)) {
      return true;
    }
    int p = 0;
    while (!seen(valid.get(valid.size() - 1), p)) {
      p++;
    }
    return compare(n - p, input.lostAfterMs()) >= 0;
  }

  private int width(String id, int n) {
    List<Drive.Row> valid = valid(id, n);
    int width = valid.get(valid.size() - 1).value();
    if (input(id).centre() == Centre.FIXED) {
      return width;
    }
    int sum = valid.stream().limit(16).mapToInt(Drive.Row::value).sum();
    int centre = Math.floorDiv(sum, 16);
    return width - (centre >= 1400 && centre <= 1600 ? centre : 1500) + 1500;
  }

  private boolean sample(String id, int n) {
    List<Drive.Row> seen = seen(id, n);
    if (seen.isEmpty()) {
      return false;
    }
    return (seen.get(seen.size() - 1).value() == 1) != input(id).activeLow();
  }

  private boolean contact(String id, int n) {
    for (int i = n; i >= 1; i--) {
      if (sample(id, i) == sample(id, i - 1)) {
        return sample(id, i);
      }
    }
    return false;
  }

  private boolean rest(Criterion criterion, List<Boolean> before, int n) {
    if (criterion instanceof Criterion.Lost lost) {
      return lost(lost.channel(), n);
    } else if (criterion instanceof Criterion.SwitchIs is) {
      return contact(is.contact(), n) == is.on();
    } else if (criterion instanceof Criterion.SituationIs is) {
      return actives.get(place(is.other())).get(n) == is.active();
    } else if (criterion instanceof Criterion.EndedWithin ended) {
      List<Boolean> other = actives.get(place(ended.other()));
      if (other.get(n)) {
        return false;
      }
      for (int e = n; e >= 1; e--) {
        if (!other.get(e) && other.get(e - 1)) {
          return compare(n - e, ended.withinMs()) < 0;
        }
      }
      return false;
    }
    String id = criterion.input().orElseThrow();
    if (lost(id, n)) {
      return false;
    }
    int v = width(id, n);
    boolean was = n > 0 && before.get(n - 1);
    if (criterion instanceof Criterion.Above a) {
      return v > a.aboveUs() || (v >= a.aboveUs() - a.hysteresisUs() && was);
    } else if (criterion instanceof Criterion.Below b) {
      return v < b.belowUs() || (v <= b.belowUs() + b.hysteresisUs() && was);
    }
    Criterion.Between w = (Criterion.Between) criterion;
    boolean within = w.fromUs() <= v && v <= w.toUs();
    boolean near = v >= w.fromUs() - w.hysteresisUs() && v <= w.toUs() + w.hysteresisUs();
    return within || (near && was);
  }

  private int place(String situation) {
    for (int i = 0; i < situations.size(); i++) {
      if (situations.get(i).id().equals(situation)) {
        return i;
      }
    }
    throw new AssertionError(situation);
  }

  private boolean tapped(List<Boolean> q, int k, int n) {
    int count = 0;
    int b = 0;
    int e = 0;
    boolean on = false;
    for (int i = 0; i <= n; i++) {
      boolean was = i > 0 && q.get(i - 1);
      on = false;
      if (q.get(i) && !was) {
        b = i;
      }
      if (!q.get(i) && was) {
        e = i;
        count = compare(e - b, BigDecimal.valueOf(400)) <= 0 ? count + 1 : 0;
      }
      if (!q.get(i) && count != 0 && compare(i - e, BigDecimal.valueOf(500)) >= 0) {
        on = count == k;
        count = 0;
      }
    }
    return on;
  }

  private boolean hold(int s, int n) {
    for (int m = n; m >= 0 && joins.get(s).get(m); m--) {
      if (compare(n - m, situations.get(s).afterMs()) >= 0) {
        return true;
      }
    }
    return false;
  }

  private boolean active(int s, int n) {
    List<Boolean> h = holds.get(s);
    if (situations.get(s).toggle()) {
      int rises = 0;
      for (int i = 0; i <= n; i++) {
        rises += h.get(i) && (i == 0 || !h.get(i - 1)) ? 1 : 0;
      }
      return rises % 2 == 1;
    }
    for (int p = 0; p <= n; p++) {
      if (h.get(p) && (p == n || compare(n - p, situations.get(s).lingerMs()) < 0)) {
        return true;
      }
    }
    return false;
  }

  boolean isActive(int situation, int n) {
    return actives.get(situation).get(n);
  }

  /** The scene and its frame that a lamp shows; empty if it is dark. */
  Optional<Showing> showing(Lamp lamp, int n) {
    Optional<Integer> best = Optional.empty();
    for (int s = 0; s < situations.size(); s++) {
      boolean wants =
          isActive(s, n)
              && situations.get(s).scene().isPresent()
              && scene(situations.get(s).scene().get()).tracks().stream()
                  .anyMatch(track -> track.lamps().contains(lamp.id()));
      if (wants
          && (best.isEmpty()
              || situations.get(s).priority() > situations.get(best.get()).priority())) {
        best = Optional.of(s);
      }
    }
    return best.map(s -> new Showing(scene(situations.get(s).scene().orElseThrow()), at(s, n)));
  }

  private int at(int s, int n) {
    int onset = n;
    while (onset > 0 && isActive(s, onset - 1)) {
      onset--;
    }
    int frame = situations.get(s).start() == Start.RESTART ? n - onset : n;
    Scene scene = scene(situations.get(s).scene().orElseThrow());
    return scene.loop() ? frame % scene.frameCount() : Math.min(frame, scene.frameCount() - 1);
  }

  /** A frame of a scene. */
  record Showing(Scene scene, int frame) {}
}
