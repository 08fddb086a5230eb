package lampwright.engine.situation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.StringJoiner;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.rig.Centre;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;

/**
 * The rules of DESIGN.md section 8 worked through by hand, at 50 frames/s: frame n is at 20 n ms.
 */
class SituationByHandTest {
  private static final Criterion WIDE = new Criterion.Above("throttle", 1500, 20);
  private static final String LONG = "60000";

  private final List<Drive.Row> rows = new ArrayList<>();
  private Input throttle = channel("100", Centre.FIXED);
  private Input tow = Input.of("tow", InputKind.SWITCH);

  private static Input channel(String lostAfterMs, Centre centre) {
    return Input.SHAPE
        .draft()
        .set(Input.ID, "throttle")
        .set(Input.KIND, InputKind.SERVO_PULSE)
        .set(Input.LOST_AFTER_MS, new BigDecimal(lostAfterMs))
        .set(Input.CENTRE, centre)
        .make();
  }

  private SituationByHandTest pulse(String ms, int us) {
    rows.add(new Drive.Row(new BigDecimal(ms), 0, us));
    return this;
  }

  private SituationByHandTest pulse(int frame, int us) {
    return pulse(Integer.toString(20 * frame), us);
  }

  private SituationByHandTest level(int frame, int level) {
    rows.add(new Drive.Row(BigDecimal.valueOf(20L * frame), 1, level));
    return this;
  }

  private static Scene scene(String id, String fps, String... lamps) {
    return Scene.SHAPE
        .draft()
        .set(Scene.ID, id)
        .set(Scene.LENGTH_MS, BigDecimal.valueOf(60))
        .set(Scene.FRAMES_PER_SECOND, new BigDecimal(fps))
        .set(Scene.TRACKS, List.of(Track.of(List.of(lamps))))
        .make();
  }

  private Show show(Situation... situations) {
    Rig rig =
        Rig.INPUTS.with(
            Rig.of(
                List.of(),
                List.of(DriverOutput.of("o"), DriverOutput.of("p")),
                List.of(Lamp.ofOutput("l", "o"), Lamp.ofOutput("m", "p"))),
            List.of(throttle, tow));
    return Show.of(
            rig, List.of(scene("s", "50", "l"), scene("both", "50", "l", "m")), List.of(situations))
        .orElseThrow();
  }

  private static Situation of(String id, Criterion... criteria) {
    return Situation.of(
        id, new Trigger(Join.ALL, List.of(criteria).stream().map(Condition::of).toList()));
  }

  private static Situation shown(Situation situation) {
    return Situation.SCENE.with(situation, Optional.of("s"));
  }

  /** The frames in which the last of these is active, as {@code 2-4 7}. */
  private String active(int frames, Situation... situations) {
    Situation[] all = situations.clone();
    all[all.length - 1] = shown(all[all.length - 1]);
    Show show = show(all);
    ShowMachine machine = show.machine();
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    StringJoiner spells = new StringJoiner(" ");
    int from = -1;
    for (int n = 0; n <= frames; n++) {
      player.feed(machine);
      machine.next();
      boolean on = n < frames && machine.active(all.length - 1);
      if (on && from < 0) {
        from = n;
      } else if (!on && from >= 0) {
        spells.add(from == n - 1 ? "" + from : from + "-" + (n - 1));
        from = -1;
      }
    }
    return spells.toString();
  }

  @Test
  void frameSeesWhatEndedAtItsInstant() {
    assertThat(pulse("20", 1600).active(4, of("t", WIDE))).isEqualTo("1-3");
  }

  @Test
  void frameDoesNotSeeWhatEndsJustAfter() {
    assertThat(pulse("20.000001", 1600).active(4, of("t", WIDE))).isEqualTo("2-3");
  }

  @Test
  void ofSeveralReadingsTheLastIsSeen() {
    assertThat(pulse("1", 1600).pulse("2", 1400).active(3, of("t", WIDE))).isEmpty();
    rows.clear();
    assertThat(pulse("1", 1600).pulse("2", 2201).active(3, of("t", WIDE))).isEqualTo("1-2");
  }

  @Test
  void channelIsLostWhenNothingValidEndedForItsTime() {
    // Seen at frame 2; 100 ms are 5 frames.
    Situation lost = of("t", new Criterion.Lost("throttle"));
    assertThat(pulse(2, 1500).pulse(4, 799).active(10, lost)).isEqualTo("0-1 7-9");
  }

  @Test
  void lossRoundsUpToTheFrameThatIsPastIt() {
    throttle = channel("100.5", Centre.FIXED);
    assertThat(pulse(0, 1500).active(8, of("t", new Criterion.Lost("throttle")))).isEqualTo("6-7");
  }

  @Test
  void widthsFrom800To2200AreValid() {
    Situation heard = of("t", new Criterion.Below("throttle", 5000, 0));
    assertThat(pulse(0, 799).active(2, heard)).isEmpty();
    assertThat(pulse(0, 800).active(2, heard)).isEqualTo("0-1");
    rows.clear();
    assertThat(pulse(0, 2201).active(2, heard)).isEmpty();
    assertThat(pulse(0, 2200).active(2, heard)).isEqualTo("0-1");
  }

  private SituationByHandTest widths(int... us) {
    for (int i = 0; i < us.length; i++) {
      pulse(i, us[i]);
    }
    return this;
  }

  @Test
  void aboveHasItsHysteresisBelow() {
    assertThat(widths(1500, 1501, 1480, 1479, 1500, 1501).active(6, of("t", WIDE)))
        .isEqualTo("1-2 5");
  }

  @Test
  void belowHasItsHysteresisAbove() {
    Situation narrow = of("t", new Criterion.Below("throttle", 1500, 20));
    assertThat(widths(1500, 1499, 1520, 1521, 1500, 1499).active(6, narrow)).isEqualTo("1-2 5");
  }

  @Test
  void betweenIncludesItsEndsAndHasHysteresisOutside() {
    Situation rest = of("t", new Criterion.Between("throttle", 1460, 1540, 20));
    assertThat(widths(1459, 1460, 1440, 1439, 1459, 1540, 1560, 1561, 1541, 1540).active(10, rest))
        .isEqualTo("1-2 5-6 9");
  }

  @Test
  void whatIsLostComesBackAsOff() {
    // Lost at frame 5; 1490 would keep it on, and does not turn it on.
    assertThat(pulse(0, 1501).pulse(6, 1490).pulse(7, 1501).active(9, of("t", WIDE)))
        .isEqualTo("0-4 7-8");
  }

  private SituationByHandTest sixteen(int us, int last) {
    throttle = channel(LONG, Centre.POWER_UP);
    for (int i = 0; i < 15; i++) {
      pulse(i, us);
    }
    return pulse(15, last);
  }

  private static Situation at(int us) {
    return of("t", new Criterion.Between("throttle", us, us, 0));
  }

  @Test
  void centreIsTheMeanOfTheFirstSixteen() {
    assertThat(sixteen(1540, 1540).active(17, at(1500))).isEqualTo("15-16");
    assertThat(active(17, of("t", new Criterion.Lost("throttle")))).isEqualTo("0-14");
  }

  @Test
  void meanIsRoundedDown() {
    // (15 x 1500 + 1515) / 16 = 1500.9
    assertThat(sixteen(1500, 1515).active(16, at(1515))).isEqualTo("15");
  }

  @Test
  void centreTooFarOffIs1500() {
    assertThat(sixteen(1601, 1601).active(16, at(1601))).isEqualTo("15");
    rows.clear();
    assertThat(sixteen(1600, 1600).active(16, at(1500))).isEqualTo("15");
    rows.clear();
    assertThat(sixteen(1400, 1400).active(16, at(1500))).isEqualTo("15");
    rows.clear();
    assertThat(sixteen(1399, 1399).active(16, at(1399))).isEqualTo("15");
  }

  @Test
  void widthIsJudgedBeforeTheCentre() {
    // 2200 - 1400 + 1500 = 2300 is not cut; 2210 is no pulse.
    sixteen(1400, 1400).pulse(16, 2200).pulse(17, 2210);
    assertThat(active(19, at(2300))).isEqualTo("16-18");
  }

  @Test
  void switchChangesWhenTwoFramesAgree() {
    Situation on = of("t", new Criterion.SwitchIs("tow", true));
    assertThat(level(3, 1).level(4, 0).level(5, 1).level(8, 0).active(12, on)).isEqualTo("6-8");
  }

  @Test
  void switchIsAtRestBeforeItsFirstReading() {
    tow = Input.ACTIVE_LOW.with(tow, true);
    Situation on = of("t", new Criterion.SwitchIs("tow", true));
    assertThat(active(4, on)).isEmpty();
    assertThat(level(0, 1).level(2, 0).active(6, on)).isEqualTo("3-5");
    assertThat(active(6, of("t", new Criterion.SwitchIs("tow", false)))).isEqualTo("0-2");
    assertThat(active(6, of("t", new Criterion.Lost("tow")))).isEmpty();
  }

  private SituationByHandTest spell(int from, int to) {
    throttle = channel(LONG, Centre.FIXED);
    return pulse(from, 1600).pulse(to, 1400);
  }

  private static Situation taps(int k) {
    return Situation.of("t", new Trigger(Join.ALL, List.of(Condition.taps(k, WIDE))));
  }

  @Test
  void tapsAreToldHalfASecondAfterTheLast() {
    // 500 ms are 25 frames after frame 25, where the second ends.
    spell(5, 10).spell(15, 25);
    assertThat(active(80, taps(2))).isEqualTo("50");
    assertThat(active(80, taps(1))).isEmpty();
    assertThat(active(80, taps(3))).isEmpty();
  }

  @Test
  void tapIsAtMost400Ms() {
    assertThat(spell(5, 25).active(80, taps(1))).isEqualTo("50");
    rows.clear();
    assertThat(spell(5, 26).active(80, taps(1))).isEmpty();
  }

  @Test
  void longSpellEndsTheCount() {
    spell(5, 10).spell(12, 40).spell(45, 50);
    assertThat(active(99, taps(1))).isEqualTo("75");
    assertThat(active(99, taps(2))).isEmpty();
  }

  @Test
  void nextTapMayBeginUntilThePauseIsOver() {
    // At frame 35 the pause would be over; a spell that is on there goes on counting.
    assertThat(spell(5, 10).spell(35, 40).active(99, taps(2))).isEqualTo("65");
    rows.clear();
    assertThat(spell(5, 10).spell(36, 40).active(99, taps(1))).isEqualTo("35 65");
  }

  @Test
  void delayCountsFromTheFirstFrameThatHolds() {
    throttle = channel(LONG, Centre.FIXED);
    Situation late = Situation.AFTER_MS.with(of("t", WIDE), new BigDecimal("100"));
    assertThat(pulse(2, 1600).pulse(9, 1400).active(12, late)).isEqualTo("7-8");
    assertThat(active(12, Situation.AFTER_MS.with(late, new BigDecimal("80.001"))))
        .isEqualTo("7-8");
    assertThat(active(12, Situation.AFTER_MS.with(late, new BigDecimal("80")))).isEqualTo("6-8");
    assertThat(active(12, Situation.AFTER_MS.with(late, new BigDecimal("121")))).isEmpty();
  }

  @Test
  void lingerCountsFromTheLastFrameThatHolds() {
    throttle = channel(LONG, Centre.FIXED);
    pulse(0, 1600).pulse(5, 1400);
    Situation slow = Situation.LINGER_MS.with(of("t", WIDE), new BigDecimal("600"));
    // Frame 4 holds last; 33 - 4 = 29 frames are less than 30.
    assertThat(active(60, slow)).isEqualTo("0-33");
    assertThat(active(60, Situation.LINGER_MS.with(slow, new BigDecimal("600.5"))))
        .isEqualTo("0-34");
    assertThat(active(60, Situation.LINGER_MS.with(slow, new BigDecimal("20")))).isEqualTo("0-4");
  }

  @Test
  void toggleTurnsOverAtEachRise() {
    throttle = channel(LONG, Centre.FIXED);
    pulse(0, 1600).pulse(2, 1400).pulse(6, 1600).pulse(8, 1400).pulse(9, 1600);
    Situation toggled =
        Situation.LINGER_MS.with(
            Situation.TOGGLE.with(of("t", WIDE), true), new BigDecimal("1000"));
    assertThat(active(12, toggled)).isEqualTo("0-5 9-11");
  }

  @Test
  void withoutConditionsASituationIsAlwaysActive() {
    assertThat(active(3, Situation.of("t", Trigger.ALWAYS))).isEqualTo("0-2");
  }

  @Test
  void anyNeedsOneAndAllNeedsEach() {
    pulse(0, 1600);
    Condition no = Condition.of(new Criterion.SwitchIs("tow", true));
    Condition yes = Condition.of(WIDE);
    assertThat(active(2, Situation.of("t", new Trigger(Join.ANY, List.of(no, yes)))))
        .isEqualTo("0-1");
    assertThat(active(2, Situation.of("t", new Trigger(Join.ALL, List.of(no, yes))))).isEmpty();
  }

  @Test
  void endedWithinBeginsWhereTheOtherIsNoLongerActive() {
    throttle = channel(LONG, Centre.FIXED);
    pulse(1, 1600).pulse(5, 1400);
    // Ended at frame 5; 44 - 5 = 39 frames are less than 40. Before, it had never been active.
    Situation after = of("t", new Criterion.EndedWithin("driving", new BigDecimal("800")));
    assertThat(active(60, of("driving", WIDE), after)).isEqualTo("5-44");
  }

  @Test
  void earlierSituationIsSeenAsInTheSameFrame() {
    pulse(2, 1600);
    Situation follows = of("t", new Criterion.SituationIs("driving", true));
    assertThat(active(5, of("driving", WIDE), follows)).isEqualTo("2-4");
    Situation rests = of("t", new Criterion.SituationIs("driving", false));
    assertThat(active(9, of("driving", WIDE), rests)).isEqualTo("0-1 7-8");
  }

  /** Braking, as the example of section 8 has it: neutral, within 800 ms after driving. */
  @Test
  void brakingLastsAsLongAsItLingers() {
    throttle = channel(LONG, Centre.FIXED);
    pulse(0, 1500).pulse(10, 1700).pulse(20, 1500);
    Situation driving = of("driving", new Criterion.Above("throttle", 1540, 20));
    Situation braking =
        Situation.LINGER_MS.with(
            of(
                "braking",
                new Criterion.Between("throttle", 1460, 1540, 20),
                new Criterion.EndedWithin("driving", new BigDecimal("800"))),
            new BigDecimal("600"));
    // Driving ends at frame 20; braking holds until 59, and lingers 29 frames more.
    assertThat(active(200, driving, braking)).isEqualTo("20-88");
  }

  @Test
  void restartCountsFromTheOnsetAndSharedFromTheShow() {
    throttle = channel(LONG, Centre.FIXED);
    pulse(2, 1600).pulse(6, 1400).pulse(7, 1600);
    Situation restarts =
        Situation.LINGER_MS.with(shown(of("restarts", WIDE)), new BigDecimal("40"));
    Situation shares =
        Situation.START.with(
            Situation.SCENE.with(
                Situation.PRIORITY.with(of("shares", WIDE), 1), Optional.of("both")),
            Start.SHARED);
    Show show = show(restarts, shares);
    ShowMachine machine = show.machine();
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    List<Integer> first = new ArrayList<>();
    List<Integer> second = new ArrayList<>();
    for (int n = 0; n < 10; n++) {
      player.feed(machine);
      machine.next();
      first.add(machine.active(0) ? machine.sceneFrame(0) : -1);
      second.add(machine.active(1) ? machine.sceneFrame(1) : -1);
    }
    // Scenes of three frames. At frame 6 the first lingers: its rise at 7 is no new onset.
    assertThat(first).containsExactly(-1, -1, 0, 1, 2, 0, 1, 2, 0, 1);
    assertThat(second).containsExactly(-1, -1, 2, 0, 1, 2, -1, 1, 2, 0);
  }

  @Test
  void highestPriorityHasTheLamp() {
    Situation low = shown(Situation.of("low", Trigger.ALWAYS));
    Situation high =
        Situation.SCENE.with(
            Situation.PRIORITY.with(of("high", new Criterion.SwitchIs("tow", true)), 1),
            Optional.of("both"));
    level(0, 1);
    Show show = show(low, high);
    ShowMachine machine = show.machine();
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    player.feed(machine);
    List<Change> begins = machine.next();
    assertThat(machine.having(0)).hasValue(0);
    assertThat(machine.having(1)).isEqualTo(OptionalInt.empty());
    assertThat(begins)
        .containsExactly(new Change(0, low, true, Change.Cause.CONDITIONS_HOLD, List.of()));
    List<Change> next = machine.next();
    assertThat(machine.having(0)).hasValue(1);
    assertThat(machine.having(1)).hasValue(1);
    assertThat(next)
        .containsExactly(new Change(1, high, true, Change.Cause.CONDITIONS_HOLD, List.of(0)));
  }

  /** Of the last of these in each frame. */
  private List<Change> changes(int frames, Situation... situations) {
    Show show = show(situations);
    ShowMachine machine = show.machine();
    Drive.Player player = new Drive.Player(new Drive(rows), show.clock());
    List<Change> all = new ArrayList<>();
    for (int n = 0; n < frames; n++) {
      player.feed(machine);
      all.addAll(machine.next());
    }
    return all.stream()
        .filter(c -> c.situation().equals(situations[situations.length - 1]))
        .toList();
  }

  @Test
  void changeNamesItsCauseAndTheConditionsThatDecide() {
    throttle = channel(LONG, Centre.FIXED);
    pulse(1, 1600).pulse(4, 1400).pulse(8, 1600).pulse(10, 1400);
    Condition wide = Condition.of(WIDE);
    Condition off = Condition.of(new Criterion.SwitchIs("tow", false));
    Situation plain = shown(Situation.of("t", new Trigger(Join.ALL, List.of(off, wide))));
    assertThat(changes(6, plain))
        .containsExactly(
            new Change(1, plain, true, Change.Cause.CONDITIONS_HOLD, List.of(0, 1)),
            new Change(4, plain, false, Change.Cause.CONDITIONS_ENDED, List.of(1)));
    Situation slow = Situation.LINGER_MS.with(plain, new BigDecimal("40"));
    assertThat(changes(7, slow))
        .containsExactly(
            new Change(1, slow, true, Change.Cause.CONDITIONS_HOLD, List.of(0, 1)),
            new Change(5, slow, false, Change.Cause.LINGER_OVER, List.of(1)));
    Situation toggled = Situation.TOGGLE.with(plain, true);
    assertThat(changes(12, toggled))
        .containsExactly(
            new Change(1, toggled, true, Change.Cause.TOGGLED, List.of(0, 1)),
            new Change(8, toggled, false, Change.Cause.TOGGLED, List.of(0, 1)));
  }

  @Test
  void criteriaRefuseWhatIsOutsideTheirRanges() {
    assertThatThrownBy(() -> new Criterion.Above("t", 5001, 0)).hasMessageContaining("aboveUs");
    assertThatThrownBy(() -> new Criterion.Above("t", 5000, 5001))
        .hasMessageContaining("hysteresisUs");
    assertThatThrownBy(() -> new Criterion.Below("t", -1, 0)).hasMessageContaining("belowUs");
    assertThatThrownBy(() -> new Criterion.Between("t", -1, 5, 0)).hasMessageContaining("[0]");
    assertThatThrownBy(() -> new Criterion.Between("t", 5, 5001, 0)).hasMessageContaining("[1]");
    assertThatThrownBy(() -> new Criterion.Between("t", 6, 5, 0))
        .hasMessageContaining("must be the lesser width first");
    assertThatThrownBy(() -> new Criterion.EndedWithin("s", new BigDecimal("-1")))
        .hasMessageContaining("endedWithinMs");
    assertThatThrownBy(() -> new Criterion.EndedWithin("s", new BigDecimal("86400001")))
        .hasMessageContaining("endedWithinMs");
    assertThatThrownBy(() -> Condition.taps(1, new Criterion.SituationIs("s", true)))
        .hasMessageContaining("must be used with an input");
    assertThatThrownBy(() -> Condition.taps(21, WIDE)).hasMessageContaining("taps");
    Situation plain = Situation.of("t", Trigger.ALWAYS);
    assertThatThrownBy(() -> Situation.PRIORITY.with(plain, 1001)).hasMessageContaining("priority");
  }

  @Test
  void criteriaNameWhatTheyLookAt() {
    assertThat(new Criterion.SituationIs("s", true).situation()).contains("s");
    assertThat(new Criterion.EndedWithin("s", BigDecimal.ONE).situation()).contains("s");
    assertThat(new Criterion.SituationIs("s", true).input()).isEmpty();
    assertThat(WIDE.input()).contains("throttle");
    assertThat(new Criterion.Lost("tow").input()).contains("tow");
    assertThat(new Criterion.SwitchIs("tow", true).situation()).isEmpty();
  }

  @Test
  void showRefusesWhatIsNamedAndNotThere() {
    assertThatThrownBy(() -> show(shown(of("t", new Criterion.SwitchIs("door", true)))))
        .hasMessageContaining("situations[0].all[0].input")
        .hasMessageContaining("must be the id of an input of this rig");
    assertThatThrownBy(() -> show(shown(of("t", new Criterion.SwitchIs("throttle", true)))))
        .hasMessageContaining("must be the id of a switch input with is");
    assertThatThrownBy(() -> show(shown(of("t", new Criterion.Above("tow", 1500, 0)))))
        .hasMessageContaining("must be the id of a servo-pulse input with aboveUs");
    assertThatThrownBy(() -> show(shown(of("t", new Criterion.SituationIs("t", true)))))
        .hasMessageContaining("must be the id of a situation earlier in the list");
    Situation elsewhere =
        Situation.SCENE.with(Situation.of("t", Trigger.ALWAYS), Optional.of("gone"));
    assertThatThrownBy(() -> show(elsewhere)).hasMessageContaining("must be the id of a scene");
    Situation one = shown(Situation.of("t", Trigger.ALWAYS));
    assertThatThrownBy(() -> show(one, one)).hasMessageContaining("situations[1].id");
    assertThat(
            SituationFaults.find(
                List.of(throttle, tow), List.of(), List.of(of("t", new Criterion.Lost("tow")))))
        .isEmpty();
  }

  @Test
  void showRefusesEqualPrioritiesAndUnlikeRates() {
    Situation one = shown(Situation.of("one", Trigger.ALWAYS));
    Situation other = Situation.SCENE.with(Situation.of("b", Trigger.ALWAYS), Optional.of("both"));
    assertThatThrownBy(() -> show(one, other))
        .isInstanceOf(InvalidModelException.class)
        .hasMessageContaining("situations[1].priority: 0: must differ from situations[0]");
    List<Scene> scenes = List.of(scene("s", "50", "l"), scene("both", "49.99", "m"));
    Rig rig = show(one).rig();
    assertThatThrownBy(() -> Show.of(rig, scenes, List.of(one, other)))
        .hasMessageContaining("situations[1].scene: both: must have the frame rate of scene s");
    assertThat(Show.of(rig, scenes, List.of(Situation.of("t", Trigger.ALWAYS)))).isEmpty();
  }

  @Test
  void framesReachTheLastRow() {
    ShowClock clock = new ShowClock(new BigDecimal("50"));
    assertThat(new Drive(pulse("40", 1500).rows).frames(clock)).hasValue(3);
    assertThat(new Drive(pulse("59.999", 1500).rows).frames(clock)).hasValue(3);
    assertThat(new Drive(pulse("60", 1500).rows).frames(clock)).hasValue(4);
    assertThat(new Drive(List.of()).frames(clock)).isEmpty();
  }
}
