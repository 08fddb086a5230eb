package lampwright.engine.situation;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lampwright.engine.render.FrameTable;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.rig.Lamp;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** The machine does in every frame what the rules say, as a plain reading of them has it. */
class ShowComparisonTest {
  private static final int FRAMES = 90;

  @Property(tries = 1500, seed = "15")
  void framesAreThoseOfThePlainReading(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    List<Drive.Row> rows = chance.rows(FRAMES);
    PlainShow plain = new PlainShow(chance.rig, chance.scenes, chance.situations, rows);
    Show show = show(chance);
    ShowFrames frames = new ShowFrames(show);
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    Map<String, FrameTable> tables = new HashMap<>();
    chance.scenes.forEach(scene -> tables.put(scene.id(), FrameTable.of(chance.rig, scene)));
    byte[] bytes = new byte[frames.frameBytes()];
    for (int n = 0; n < FRAMES; n++) {
      plain.frame(n);
      player.feed(frames.machine());
      List<Change> changes = frames.next(bytes);
      for (int s = 0; s < chance.situations.size(); s++) {
        assertThat(frames.machine().active(s))
            .as("situation %d at frame %d", s, n)
            .isEqualTo(plain.isActive(s, n));
        boolean changed = plain.isActive(s, n) != (n > 0 && plain.isActive(s, n - 1));
        Situation situation = chance.situations.get(s);
        assertThat(changes.stream().filter(c -> c.situation().equals(situation)).count())
            .isEqualTo(changed ? 1 : 0);
      }
      byte[] expected = new byte[3];
      for (int lamp = 0; lamp < 3; lamp++) {
        Lamp of = chance.rig.lamps().get(lamp);
        Optional<PlainShow.Showing> showing = plain.showing(of, n);
        if (showing.isPresent()) {
          FrameTable table = tables.get(showing.get().scene().id());
          expected[lamp] = table.frame(showing.get().frame())[lamp];
        }
      }
      assertThat(bytes).as("frame %d", n).isEqualTo(expected);
    }
  }

  private static Show show(ShowChance chance) {
    return Show.of(chance.rig, chance.scenes, chance.situations).orElseThrow();
  }

  /** All frames of a drive. */
  private static List<byte[]> play(Show show, List<Drive.Row> rows, int count) {
    ShowFrames frames = new ShowFrames(show);
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    List<byte[]> all = new ArrayList<>();
    for (int n = 0; n < count; n++) {
      byte[] bytes = new byte[frames.frameBytes()];
      player.feed(frames.machine());
      frames.next(bytes);
      all.add(bytes);
    }
    return all;
  }

  @Property(tries = 300, seed = "16")
  void driveThatIsCutGivesTheSameFramesUpToThere(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    List<Drive.Row> rows = chance.rows(FRAMES);
    int cut = random.nextInt(rows.size());
    Show show = show(chance);
    // What the first row that is missing would have changed is seen from this frame on.
    int same = Math.min(FRAMES, show.clock().ceiling(rows.get(cut).ms()));

    List<byte[]> whole = play(show, rows, same);
    List<byte[]> start = play(show, rows.subList(0, cut), same);

    for (int n = 0; n < same; n++) {
      assertThat(start.get(n)).isEqualTo(whole.get(n));
    }
  }

  @Property(tries = 300, seed = "17")
  void raisingAPriorityTakesNoLampAway(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    int raised = random.nextInt(chance.situations.size());
    List<Situation> changed = new ArrayList<>(chance.situations);
    int higher = chance.situations.get(raised).priority() + random.nextInt(1000) + 1;
    boolean free =
        higher <= 1000 && changed.stream().noneMatch(other -> other.priority() == higher);
    if (!free) {
      return;
    }
    changed.set(raised, Situation.PRIORITY.with(changed.get(raised), higher));
    Show after = Show.of(chance.rig, chance.scenes, changed).orElseThrow();
    ShowMachine one = show(chance).machine();
    ShowMachine two = after.machine();
    Drive drive = new Drive(chance.rows(FRAMES));
    Drive.Player toOne = new Drive.Player(drive, after.clock());
    Drive.Player toTwo = new Drive.Player(drive, after.clock());
    for (int n = 0; n < FRAMES; n++) {
      toOne.feed(one);
      toTwo.feed(two);
      one.next();
      two.next();
      for (int lamp = 0; lamp < 3; lamp++) {
        if (one.having(lamp).orElse(-1) == raised) {
          assertThat(two.having(lamp)).hasValue(raised);
        }
      }
    }
  }

  @Property(tries = 500, seed = "18")
  void whatCannotBeSeenIsNotSeen(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    List<Optional<SituationReach.Unseen>> reach =
        SituationReach.of(chance.rig, chance.scenes, chance.situations);
    ShowMachine machine = show(chance).machine();
    Drive.Player player = new Drive.Player(new Drive(chance.rows(400)), show(chance).clock());
    for (int n = 0; n < 400; n++) {
      player.feed(machine);
      machine.next();
      for (int s = 0; s < reach.size(); s++) {
        if (reach.get(s).equals(Optional.of(SituationReach.Unseen.IMPOSSIBLE))) {
          assertThat(machine.active(s)).isFalse();
        }
      }
      for (int lamp = 0; lamp < 3; lamp++) {
        if (machine.having(lamp).isPresent()) {
          assertThat(reach.get(machine.having(lamp).getAsInt())).isEmpty();
        }
      }
    }
  }

  @Property(tries = 200, seed = "19")
  void lossEndsInTheLostSituationWithinItsTimeAndAFrame(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    String channel = chance.rig.inputs().get(0).id();
    Situation lost =
        Situation.of(
            "lost", new Trigger(Join.ALL, List.of(Condition.of(new Criterion.Lost(channel)))));
    List<Situation> situations = new ArrayList<>(chance.situations);
    situations.add(lost);
    Show show = Show.of(chance.rig, chance.scenes, situations).orElseThrow();
    List<Drive.Row> rows = chance.rows(FRAMES);
    BigDecimal last =
        rows.stream()
            .filter(row -> row.input() == 0 && row.value() >= 800 && row.value() <= 2200)
            .map(Drive.Row::ms)
            .reduce((a, b) -> b)
            .orElse(BigDecimal.ZERO);
    BigDecimal frameMs = BigDecimal.valueOf(1000).divide(chance.fps, 9, java.math.RoundingMode.UP);
    // The first frame at or after the pulse sees it: that is the frame of grace.
    BigDecimal latest =
        last.add(chance.rig.inputs().get(0).lostAfterMs()).add(frameMs).add(frameMs);
    int by = show.clock().floor(latest);
    ShowMachine machine = show.machine();
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    for (int n = 0; n <= by; n++) {
      player.feed(machine);
      machine.next();
    }
    assertThat(machine.active(situations.size() - 1)).isTrue();
  }

  @Property(tries = 5, seed = "20")
  void sharedClockDoesNotDriftInAnHour(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    Situation situation =
        Situation.SHAPE
            .draft()
            .set(Situation.ID, "t")
            .set(Situation.SCENE, Optional.of("s0"))
            .set(Situation.START, Start.SHARED)
            .make();
    Show show = Show.of(chance.rig, chance.scenes, List.of(situation)).orElseThrow();
    ShowMachine machine = show.machine();
    int hour = show.clock().floor(BigDecimal.valueOf(3_600_000));
    for (int n = 0; n <= hour; n++) {
      machine.next();
    }
    int count = chance.scenes.get(0).frameCount();
    assertThat(machine.sceneFrame(0))
        .isEqualTo(chance.scenes.get(0).loop() ? hour % count : Math.min(hour, count - 1));
  }
}
