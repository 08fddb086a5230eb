package lampwright.engine.meter;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Coexistence;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.ShowChance;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Currents of shows that come out by hand, and frames of random drives, which no bound is below.
 *
 * <p>Scene {@code rest}, 10 frames: lamp a (30 mA) in its first half, b (20 mA) in its second.
 * Scene {@code late}, 10 frames: lamp c (50 mA) in its second half. Scene {@code other}: c at 50
 * mA, d at 40 mA.
 */
class ShowMeasureTest {
  private static final String PROJECT =
      """
      {"lampwright": 1, "rig": {"outputs": [{"id": "a", "milliamps": 30},
        {"id": "b", "milliamps": 20}, {"id": "c", "milliamps": 50}, {"id": "d", "milliamps": 40}],
       "lamps": [{"id": "a", "output": "a"}, {"id": "b", "output": "b"}, {"id": "c", "output": "c"},
        {"id": "d", "output": "d"}],
       "inputs": [{"id": "x", "kind": "switch"}, {"id": "y", "kind": "switch"},
        {"id": "t", "kind": "servo-pulse"}]},
       "scenes": [
        {"id": "rest", "lengthMs": 200, "tracks": [
          {"lamps": ["a"], "cues": [{"lengthMs": 100, "pattern": {"kind": "steady"}}]},
          {"lamps": ["b"], "cues": [{"startMs": 100, "lengthMs": 100,
            "pattern": {"kind": "steady"}}]}]},
        {"id": "late", "lengthMs": 200, "tracks": [
          {"lamps": ["c"], "cues": [{"startMs": 100, "lengthMs": 100,
            "pattern": {"kind": "steady"}}]}]},
        {"id": "other", "lengthMs": 200, "tracks": [
          {"lamps": ["c", "d"], "cues": [{"lengthMs": 200, "pattern": {"kind": "steady"}}]}]},
        {"id": "just-d", "lengthMs": 200, "tracks": [
          {"lamps": ["d"], "cues": [{"lengthMs": 200, "pattern": {"kind": "steady"}}]}]},
        {"id": "dark", "lengthMs": 200, "tracks": [{"lamps": ["a", "c"]}]}],
       "situations": [%s]}
      """;

  private static final String REST = "{\"id\": \"rest\", \"scene\": \"rest\"}";

  private static Show show(String situations) {
    ReadResult read = ProjectReader.read("p", PROJECT.formatted(situations).getBytes(UTF_8));
    assertThat(read.problems()).isEmpty();
    Project project = read.project().orElseThrow();
    return Show.of(project.rig(), project.scenes(), project.situations()).orElseThrow();
  }

  private static String situation(String id, int priority, String scene, String more) {
    return ", {\"id\": \"%s\", \"priority\": %d, \"scene\": \"%s\"%s}"
        .formatted(id, priority, scene, more);
  }

  private static String on(String input) {
    return ", \"all\": [{\"input\": \"" + input + "\", \"is\": \"on\"}]";
  }

  private static double most(Show show, List<Drive.Row> rows, int count) {
    FrameCurrent current = new FrameCurrent(new FrameLayout(show.rig()));
    ShowFrames frames = new ShowFrames(show);
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    byte[] bytes = new byte[frames.frameBytes()];
    double most = 0;
    for (int n = 0; n < count; n++) {
      player.feed(frames.machine());
      frames.next(bytes);
      most = Math.max(most, current.milliamps(bytes));
    }
    return most;
  }

  @Test
  void oneSituationThatAlwaysIsHasTheCurrentOfItsScene() {
    ShowMeasure.Bound supply = ShowMeasure.of(show(REST)).supply();

    assertThat(supply.milliamps()).isCloseTo(30, within(1e-9));
    assertThat(supply.exact()).isTrue();
    assertThat(supply.situations()).containsExactly("rest");
    assertThat(supply.exceeds(29)).isFalse();
  }

  // Lamps of one scene are never both on; a scene that starts by itself can meet either.
  @Test
  void sceneThatStartsByItselfMeetsTheWorstFrame() {
    Show show = show(REST + situation("late", 1, "late", on("x")));
    ShowMeasure.Bound supply = ShowMeasure.of(show).supply();

    assertThat(supply.milliamps()).isCloseTo(80, within(1e-9));
    assertThat(supply.exact()).isFalse();
    assertThat(supply.situations()).containsExactly("rest", "late");
    assertThat(supply.exceeds(70)).isTrue();
    assertThat(supply.exceeds(80)).isFalse();
    // Two samples agree in frame 5, in which rest is in its second half; five frames later c is on.
    List<Drive.Row> rows = List.of(new Drive.Row(BigDecimal.valueOf(80), 0, 1));
    assertThat(most(show, rows, 40)).isCloseTo(80, within(1e-9));
  }

  // In step, c is only on with b.
  @ParameterizedTest
  @CsvSource({"shared, 70", "restart, 80"})
  void scenesInStepAreMeasuredInStep(String start, double milliamps) {
    String more = ", \"start\": \"" + start + "\"" + on("x");
    Show show = show(REST + situation("late", 1, "late", more));

    assertThat(ShowMeasure.of(show).supply().milliamps()).isCloseTo(milliamps, within(1e-9));
    assertThat(new ShowMeter(show, 0).measure().supply().milliamps()).isCloseTo(100, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // Both at once: c and d.
        "{\"input\": \"x\", \"is\": \"on\"}|{\"input\": \"y\", \"is\": \"on\"}|90",
        "{\"input\": \"x\", \"is\": \"on\"}|{\"input\": \"x\", \"is\": \"off\"}|50",
        "{\"input\": \"x\", \"is\": \"on\"}|{\"situation\": \"one\", \"is\": \"inactive\"}|50",
        "{\"input\": \"x\", \"is\": \"on\"}|{\"situation\": \"one\", \"endedWithinMs\": 100}|50",
        "{\"input\": \"t\", \"aboveUs\": 1600}|{\"input\": \"t\", \"belowUs\": 1400}|50",
        // The one keeps on down to 1,580 us, the other up to 1,590 us.
        "{\"input\": \"t\", \"aboveUs\": 1600}|{\"input\": \"t\", \"belowUs\": 1570}|90",
        "{\"input\": \"t\", \"aboveUs\": 1600}|{\"input\": \"t\", \"lost\": true}|50",
        "{\"input\": \"t\", \"aboveUs\": 1600, \"taps\": 1}|{\"input\": \"t\", \"lost\": true}|90",
        "{\"input\": \"t\", \"lost\": true}|{\"input\": \"x\", \"lost\": true}|50"
      })
  void whatExcludesEachOtherIsNotAdded(String one, String other, double milliamps) {
    String late =
        situation("one", 1, "late", ", \"all\": [" + one + "]").substring(2)
            + situation("two", 2, "just-d", ", \"all\": [" + other + "]");

    assertThat(ShowMeasure.of(show(late)).supply().milliamps()).isCloseTo(milliamps, within(1e-9));
  }

  // Whoever lingers or toggles is active when its conditions are not.
  @ParameterizedTest
  @CsvSource({"lingerMs, 20", "toggle, true"})
  void whoLastsExcludesNobody(String field, String value) {
    String lasts = ", \"" + field + "\": " + value;
    String off = ", \"all\": [{\"input\": \"x\", \"is\": \"off\"}]";
    String both =
        situation("one", 1, "late", lasts + on("x")).substring(2)
            + situation("two", 2, "just-d", off);

    assertThat(ShowMeasure.of(show(both)).supply().milliamps()).isCloseTo(90, within(1e-9));
  }

  // The higher one has c whenever the lower one is active.
  @Test
  void situationThatIsOnlyThereWithAnotherIsMeasuredWithIt() {
    String both =
        situation("one", 2, "dark", on("x")).substring(2)
            + situation(
                "two", 1, "late", ", \"all\": [{\"situation\": \"one\", \"is\": \"active\"}]")
            + situation("three", 0, "just-d", on("y"));
    ShowMeasure measure = ShowMeasure.of(show(both));

    assertThat(measure.supply().milliamps()).isCloseTo(40, within(1e-9));
    assertThat(measure.supply().situations()).contains("three");
  }

  @Test
  void lampThatNobodyLightsIsDark() {
    assertThat(ShowMeasure.of(show(REST + situation("s", 9, "dark", on("x")))).darkLamps())
        .containsExactly("c");
    assertThat(ShowMeasure.of(show(REST + situation("s", 9, "dark", ""))).darkLamps())
        .containsExactly("a", "c");
    assertThat(ShowMeasure.of(show(REST)).darkLamps()).isEmpty();
  }

  // Late flashes five times a second; of rest one lamp is always on.
  @Test
  void flashesNeedFramesThatAreKept() {
    Show show = show(REST + situation("late", 1, "late", on("x")));

    assertThat(ShowMeasure.of(show).flashes().orElseThrow().perSecond()).isEqualTo(5);
    assertThat(ShowMeasure.of(show).flashes().orElseThrow().situations())
        .containsExactly("rest", "late");
    // Of rest the sum is always the same.
    assertThat(ShowMeasure.of(show).flashes().orElseThrow().perSecondAlone()).isEqualTo(5);
    assertThat(ShowMeasure.of(show(REST)).flashes().orElseThrow().perSecondAlone()).isZero();
    assertThat(new ShowMeter(show, 0).measure().flashes()).isEmpty();
  }

  /** Without trying combinations each lamp is at its most, whoever has it: 30 + 20 + 50 mA. */
  @Test
  void coarseBoundAddsTheMostOfEachLamp() {
    String situations =
        REST + situation("late", 1, "late", on("x")) + situation("dim", 2, "dark", on("y"));
    ShowMeasure.Bound supply = new ShowMeter(show(situations), 0).measure().supply();
    assertThat(supply.milliamps()).isCloseTo(100, within(1e-9));
    assertThat(supply.situations()).containsExactly("rest", "late");
    assertThat(supply.exact()).isFalse();
    assertThat(supply.sceneMilliamps()).isCloseTo(50, within(1e-9));
  }

  /** One that is always active is in every combination and doubles none. */
  @Test
  void situationThatAlwaysIsDoesNotCountAsFree() {
    Show show = show(REST + situation("late", 1, "late", on("x")));
    assertThat(new ShowMeter(show, 1).measure().supply().milliamps()).isCloseTo(80, within(1e-9));
  }

  /**
   * Dark, 3 WS2812B draw about 1 mA each and 5 WS2815 2.1 mA (common practice, users'
   * measurements): the supply's bound is that of the outputs, 30 mA, and of all packages; a chain's
   * is of its own.
   */
  @Test
  void chainsHaveTheirOwnBoundsAndTheirIdleCurrent() {
    ShowMeasure dark = measureOfChains("dark");
    assertThat(dark.supply().milliamps()).isCloseTo(3 + 10.5 + 30, within(1e-9));
    assertThat(dark.supply().situations()).containsExactly("lit");
    assertThat(dark.supply().exact()).isTrue();
    assertThat(dark.chain("near").milliamps()).isCloseTo(3, within(1e-9));
    assertThat(dark.chain("near").sceneMilliamps()).isCloseTo(3, within(1e-9));
    assertThat(dark.chain("near").situations()).isEmpty();
    assertThat(dark.chain("far").milliamps()).isCloseTo(10.5, within(1e-9));
    assertThat(dark.darkLamps()).containsExactly("p", "q");

    // Two packages of three 10 mA emitters draw at most 60 mA more, and some of it.
    ShowMeasure lit = measureOfChains("pixels");
    ShowMeasure.Bound far = lit.chain("far");
    assertThat(far.milliamps()).isGreaterThan(10.5 + 10).isLessThanOrEqualTo(10.5 + 60);
    assertThat(far.situations()).containsExactly("lit");
    assertThat(far.sceneMilliamps()).isCloseTo(far.milliamps(), within(1e-9));
    assertThat(lit.chain("near").milliamps()).isCloseTo(3, within(1e-9));
    assertThat(lit.supply().milliamps()).isCloseTo(3 + far.milliamps(), within(1e-9));
    assertThat(lit.darkLamps()).containsExactly("o", "p");
  }

  private static ShowMeasure measureOfChains(String scene) {
    String project =
        """
        {"lampwright": 1, "rig": {"supplyVolts": 12, "chains": [{"id": "near", "pixelType": "ws2812b", "pixels": 3},
          {"id": "far", "pixelType": "ws2815", "pixels": 5}],
         "outputs": [{"id": "o", "milliamps": 30}],
         "lamps": [{"id": "o", "output": "o"},
          {"id": "p", "pixels": [{"chain": "near", "count": 3}]},
          {"id": "q", "pixels": [{"chain": "far", "from": 2, "count": 2}]}]},
         "scenes": [
          {"id": "dark", "lengthMs": 200, "tracks": [{"lamps": ["p", "q"]},
            {"lamps": ["o"], "cues": [{"lengthMs": 200, "pattern": {"kind": "steady"}}]}]},
          {"id": "pixels", "lengthMs": 200, "tracks": [{"lamps": ["p", "o"]},
            {"lamps": ["q"], "cues": [{"lengthMs": 200, "pattern": {"kind": "steady"}}]}]}],
         "situations": [{"id": "lit", "scene": "SCENE"}]}
        """
            .replace("SCENE", scene);
    ReadResult read = ProjectReader.read("p", project.getBytes(UTF_8));
    assertThat(read.problems()).isEmpty();
    Project found = read.project().orElseThrow();
    return ShowMeasure.of(Show.of(found.rig(), found.scenes(), found.situations()).orElseThrow());
  }

  @Test
  void chainThatIsNotThereIsRefused() {
    assertThatThrownBy(() -> measureOfChains("dark").chain("nope"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("chain: nope: must be of the rig");
  }

  // What a scene draws alone is told by its own findings.
  @ParameterizedTest
  @CsvSource({
    "80, 75, 70, true",
    "80, 75, 79.9, true",
    "80, 75, 80, false",
    "80, 80, 70, false",
    "80, 90, 70, false",
    "80.00000001, 75, 80, false",
    "80.0001, 75, 80, true"
  })
  void boundExceedsWhatEverySceneAloneKeeps(
      double milliamps, double alone, double limit, boolean exceeds) {
    ShowMeasure.Bound bound =
        new ShowMeasure.Bound("supply", milliamps, true, List.of("rest"), alone);
    assertThat(bound.exceeds(limit)).isEqualTo(exceeds);
  }

  // WCAG 2.2, success criterion 2.3.1: no more than three flashes in any second.
  @ParameterizedTest
  @CsvSource({"3, 0, false", "4, 0, true", "4, 4, false", "6, 5, true", "2, 1, false"})
  void flashesAddWhereTogetherThereAreTooMany(int together, int alone, boolean adds) {
    assertThat(new ShowMeasure.Flashes(together, List.of(), alone).adds()).isEqualTo(adds);
  }

  /** Limit 100 mA, 20 packages of 1 mA: of the 180 mA above them 80 are left, 4 of 9. */
  @ParameterizedTest
  @CsvSource({"20, 200, 0.4444444444", "0, 200, 0.5", "100, 200, 0", "0, 100.0001, 0.999999"})
  void ceilingDimsWhatIsAboveIdle(int pixels, double milliamps, double share) {
    Rig rig = limited(pixels, true);
    ShowMeasure measure = drawing(milliamps);
    assertThat(measure.ceilingShare(rig).orElseThrow()).isCloseTo(share, within(1e-8));
    assertThat(measure.sent(rig, measure.supply()))
        .isEqualTo(new ShowMeasure.Bound("supply", 100, false, List.of("rest"), 60));
    ShowMeasure.Bound less = new ShowMeasure.Bound("c", 40, true, List.of("rest"), 30);
    assertThat(measure.sent(rig, less).milliamps()).isEqualTo(40);
  }

  @ParameterizedTest
  @CsvSource({"20, 200, false", "20, 100, true", "101, 200, true", "0, 50, true"})
  void nothingIsDimmedWithoutACeilingOrNeed(int pixels, double milliamps, boolean ceiling) {
    Rig rig = limited(pixels, ceiling);
    ShowMeasure measure = drawing(milliamps);
    assertThat(measure.ceilingShare(rig)).isEmpty();
    assertThat(measure.sent(rig, measure.supply())).isEqualTo(measure.supply());
  }

  private static Rig limited(int pixels, boolean ceiling) {
    List<Chain> chains =
        pixels == 0
            ? List.of()
            : List.of(new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), pixels));
    return Rig.SHAPE
        .draft(Rig.of(chains, List.of(DriverOutput.of("o")), List.of()))
        .set(Rig.SUPPLY_LIMIT_MILLIAMPS, 100.0)
        .set(Rig.CEILING, ceiling)
        .make();
  }

  private static ShowMeasure drawing(double milliamps) {
    return new ShowMeasure(
        new ShowMeasure.Bound("supply", milliamps, true, List.of("rest"), 60),
        List.of(),
        Optional.empty(),
        List.of());
  }

  @Property(tries = 600, seed = "38")
  void noFrameOfADriveIsOverTheBound(@ForAll Random random) {
    ShowChance chance = new ShowChance(random);
    Show show = Show.of(chance.rig, chance.scenes, chance.situations).orElseThrow();
    ShowMeasure close = ShowMeasure.of(show);
    ShowMeasure coarse = new ShowMeter(show, 0).measure();
    Coexistence known = Coexistence.of(show);
    List<Drive.Row> rows = chance.rows(300);
    FrameCurrent current = new FrameCurrent(new FrameLayout(show.rig()));
    ShowFrames frames = new ShowFrames(show);
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    byte[] bytes = new byte[frames.frameBytes()];
    BitSet all = new BitSet();
    all.set(0, chance.situations.size());
    List<Integer> dark = new ArrayList<>();
    close.darkLamps().forEach(id -> dark.add(Integer.parseInt(id.substring(1))));
    double most = 0;
    for (int n = 0; n < 300; n++) {
      player.feed(frames.machine());
      frames.next(bytes);
      BitSet active = new BitSet();
      IntStream.range(0, chance.situations.size())
          .filter(frames.machine()::active)
          .forEach(active::set);
      assertThat(known.possible(active, all)).as("active %s", active).isTrue();
      most = Math.max(most, current.milliamps(bytes));
      for (int lamp : dark) {
        assertThat(bytes[lamp]).isZero();
      }
    }
    assertThat(most).isLessThanOrEqualTo(close.supply().milliamps() * (1 + 1e-9));
    assertThat(close.supply().milliamps())
        .isLessThanOrEqualTo(coarse.supply().milliamps() * (1 + 1e-9));
    if (close.supply().exact()) {
      assertThat(most).isCloseTo(close.supply().milliamps(), within(1e-9));
    }
  }
}
