package lampwright.engine.situation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Look;
import lampwright.engine.rig.Centre;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** Random shows whose inputs, times and widths are near what conditions ask about. */
final class ShowChance {
  private final Random random;
  final BigDecimal fps;
  final Rig rig;
  final List<Scene> scenes = new ArrayList<>();
  final List<Situation> situations = new ArrayList<>();

  ShowChance(Random random) {
    this.random = random;
    this.fps = new BigDecimal(of("1", "7", "10", "12.5", "25", "29.97", "50", "60", "1000"));
    List<DriverOutput> outputs = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      outputs.add(DriverOutput.of("o" + i));
      lamps.add(Lamp.ofOutput("l" + i, "o" + i));
    }
    Rig plain = Rig.of(List.of(), outputs, lamps);
    this.rig = Rig.INPUTS.with(plain, inputs());
    for (int i = 0; i < 3; i++) {
      scenes.add(scene("s" + i));
    }
    int count = 1 + random.nextInt(5);
    List<Integer> priorities = new ArrayList<>(List.of(0, 1, 5, 40, 1000));
    Collections.shuffle(priorities, random);
    for (int i = 0; i < count; i++) {
      situations.add(situation(i, priorities.get(i), i == 0));
    }
  }

  boolean flag() {
    return random.nextBoolean();
  }

  @SafeVarargs
  final <T> T of(T... values) {
    return values[random.nextInt(values.length)];
  }

  private BigDecimal ms(String... values) {
    return new BigDecimal(of(values));
  }

  // So many frames, exactly or just beside.
  private BigDecimal frames(int most) {
    BigDecimal exact =
        BigDecimal.valueOf(random.nextInt(most + 1) * 1000L)
            .divide(fps, 6, of(RoundingMode.FLOOR, RoundingMode.CEILING));
    return flag() ? exact : exact.add(new BigDecimal("0.5"));
  }

  private List<Input> inputs() {
    List<Input> inputs = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      inputs.add(
          Input.SHAPE
              .draft()
              .set(Input.ID, "i" + i)
              .set(Input.KIND, i < 2 ? InputKind.SERVO_PULSE : InputKind.SWITCH)
              .set(Input.LOST_AFTER_MS, ms("1", "40", "100", "100.5", "500"))
              .set(Input.CENTRE, random.nextInt(3) == 0 ? Centre.POWER_UP : Centre.FIXED)
              .set(Input.ACTIVE_LOW, flag())
              .make());
    }
    return inputs;
  }

  private Scene scene(String id) {
    List<String> lamps = new ArrayList<>(List.of("l0", "l1", "l2"));
    Collections.shuffle(lamps, random);
    Cue cue =
        Cue.of(
            0,
            86_400_000,
            new Fade(
                Look.DEFAULT,
                Optional.of(Colour.WHITE),
                Optional.of(Colour.WHITE),
                1,
                0.2,
                Easing.LINEAR));
    BigDecimal length = frames(9).max(BigDecimal.ONE);
    // One level for each frame, so that a wrong frame is another byte.
    Cue ramp = Cue.LENGTH_MS.with(cue, length);
    return Scene.SHAPE
        .draft()
        .set(Scene.ID, id)
        .set(Scene.LENGTH_MS, length)
        .set(Scene.FRAMES_PER_SECOND, fps)
        .set(Scene.LOOP, flag())
        .set(Scene.DITHER, flag() ? Dither.TEMPORAL : Dither.OFF)
        .set(Scene.TRACKS, List.of(Track.of(lamps.subList(0, random.nextInt(3) + 1), ramp)))
        .make();
  }

  private Situation situation(int place, int priority, boolean shows) {
    return Situation.SHAPE
        .draft()
        .set(Situation.ID, "t" + place)
        .set(Situation.PRIORITY, priority)
        .set(
            Situation.SCENE,
            shows || random.nextInt(4) > 0 ? Optional.of(of("s0", "s1", "s2")) : Optional.empty())
        .set(Situation.START, of(Start.values()))
        .set(Situation.AFTER_MS, random.nextInt(3) > 0 ? BigDecimal.ZERO : frames(4))
        .set(Situation.LINGER_MS, flag() ? BigDecimal.ZERO : frames(6))
        .set(Situation.TOGGLE, random.nextInt(4) == 0)
        .set(Situation.TRIGGER, trigger(place))
        .make();
  }

  private Trigger trigger(int place) {
    if (random.nextInt(10) == 0) {
      return Trigger.ALWAYS;
    }
    List<Condition> conditions = new ArrayList<>();
    for (int i = random.nextInt(3); i >= 0; i--) {
      conditions.add(condition(place));
    }
    return new Trigger(of(Join.values()), conditions);
  }

  private Condition condition(int place) {
    if (place > 0 && random.nextInt(3) == 0) {
      String other = "t" + random.nextInt(place);
      return Condition.of(
          flag()
              ? new Criterion.SituationIs(other, flag())
              : new Criterion.EndedWithin(other, frames(6)));
    }
    return new Condition(
        criterion(),
        random.nextInt(3) == 0 ? OptionalInt.of(1 + random.nextInt(3)) : OptionalInt.empty());
  }

  private Criterion criterion() {
    String channel = of("i0", "i1");
    int h = of(0, 20, 50);
    return switch (random.nextInt(5)) {
      case 0 -> new Criterion.Above(channel, of(1480, 1500, 1550), h);
      case 1 -> new Criterion.Below(channel, of(1480, 1500, 1550), h);
      case 2 -> new Criterion.Between(channel, of(1450, 1480), of(1500, 1550), h);
      case 3 -> new Criterion.Lost(of("i0", "i1", "i2"));
      default -> new Criterion.SwitchIs("i2", flag());
    };
  }

  /** Rows up to about so many frames. */
  List<Drive.Row> rows(int frames) {
    List<Drive.Row> rows = new ArrayList<>();
    BigDecimal at = BigDecimal.ZERO;
    BigDecimal frame = BigDecimal.valueOf(1000).divide(fps, 6, RoundingMode.FLOOR);
    boolean dense = flag();
    while (rows.size() < 400 && at.multiply(fps).intValue() <= frames * 1000) {
      int input = random.nextInt(3);
      rows.add(
          new Drive.Row(
              at,
              input,
              input == 2 ? random.nextInt(2) : random.nextInt(20) == 0 ? odd() : near()));
      int step = random.nextInt(dense ? 3 : 12);
      BigDecimal then =
          of(
              frame.multiply(BigDecimal.valueOf(step)),
              frame.multiply(new BigDecimal(random.nextDouble())).setScale(3, RoundingMode.FLOOR),
              BigDecimal.ZERO);
      at = at.add(then);
    }
    return rows;
  }

  private int odd() {
    return of(0, 100, 799, 800, 2200, 2201, 5000, 1_000_000);
  }

  private int near() {
    return of(1450, 1480, 1500, 1550) + of(-51, -50, -49, -21, -20, -19, -1, 0, 1, 19, 20, 21, 51);
  }
}
