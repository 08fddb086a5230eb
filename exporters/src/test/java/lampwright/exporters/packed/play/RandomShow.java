package lampwright.exporters.packed.play;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Look;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Centre;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.Start;
import lampwright.engine.situation.Trigger;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/** A show by chance: up to 16 situations of four channels and two switches, from a seed. */
public final class RandomShow {
  static final int INPUTS = 6;

  /** A receiver sends a pulse every 20 ms or so; some send more. */
  private static final int LEAST_PULSE_MS = 8;

  private static final int LONGEST_PULSE_US = 5000;
  private static final int CHANNELS = 4;
  private static final int LAMPS = 5;
  private static final int SCENES = 4;

  private static final Map<Long, byte[]> PACKED = new ConcurrentHashMap<>();

  private final long seed;
  private final Random random;
  private final BigDecimal fps;
  final List<Input> inputs = new ArrayList<>();
  final Rig rig;
  final List<Scene> scenes = new ArrayList<>();
  final List<Situation> situations = new ArrayList<>();
  final Show show;

  /** The show of a seed. */
  public RandomShow(long seed) {
    this.seed = seed;
    random = new Random(seed);
    fps = new BigDecimal(of("1", "7", "10", "12.5", "25", "29.97", "50", "60", "1000"));
    for (int i = 0; i < INPUTS; i++) {
      inputs.add(input(i));
    }
    List<DriverOutput> outputs = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    lamps.add(Lamp.ofPixels("l0", new PixelRun("c", 0, 2), new PixelRun("c", 4, 1)));
    lamps.add(Lamp.ofPixels("l1", new PixelRun("c", 2, 2)));
    for (int i = 2; i < LAMPS; i++) {
      outputs.add(DriverOutput.of("o" + i));
      lamps.add(Lamp.ofOutput("l" + i, "o" + i));
    }
    Chain chain = new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 5);
    Rig plain = Rig.INPUTS.with(Rig.of(List.of(chain), outputs, lamps), inputs);
    rig = seed % 2 == 0 ? plain : limited(plain, new Random(seed));
    for (int i = 0; i < SCENES; i++) {
      scenes.add(scene("s" + i));
    }
    int count = 1 + random.nextInt(16);
    List<Integer> priorities = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      priorities.add(i * 7);
    }
    Collections.shuffle(priorities, random);
    for (int i = 0; i < count; i++) {
      situations.add(situation(i, priorities.get(i)));
    }
    show = Show.of(rig, scenes, situations).orElseThrow();
  }

  // Of its own chance, so that the shows are what they were. The chain at full light draws 300 mA.
  private static Rig limited(Rig plain, Random chance) {
    List<DriverOutput> outputs = new ArrayList<>();
    for (DriverOutput output : plain.outputs()) {
      outputs.add(DriverOutput.MILLIAMPS.with(output, 1 + 40 * chance.nextDouble()));
    }
    return Rig.SHAPE
        .draft(plain)
        .set(Rig.OUTPUTS, outputs)
        .set(Rig.SUPPLY_LIMIT_MILLIAMPS, 1 + 200 * chance.nextDouble())
        .set(Rig.CEILING, true)
        .make();
  }

  /** Frames a second. */
  public BigDecimal framesPerSecond() {
    return fps;
  }

  /** The project, for a controller with numbered pins. */
  public Project project(String controller) {
    List<Input> placed = new ArrayList<>();
    for (int i = 0; i < INPUTS; i++) {
      placed.add(Input.PIN.with(inputs.get(i), Optional.of(new Pin("GP" + (10 + 3 * i)))));
    }
    Rig fitted = Rig.CONTROLLER.with(Rig.INPUTS.with(rig, placed), Controller.find(controller));
    return Project.SHAPE
        .draft()
        .set(Project.NAME, "By chance")
        .set(Project.RIG, fitted)
        .set(Project.SCENES, scenes)
        .set(Project.SITUATIONS, situations)
        .make();
  }

  /** All of it to export. */
  public ProjectJob job(String controller) {
    Project project = project(controller);
    return ProjectJob.of(project, project.scenes());
  }

  /** A drive by chance that can be on pins: pulses of a channel follow one another. */
  public Drive drive(int lengthMs) {
    List<Drive.Row> rows = new ArrayList<>();
    for (int i = 0; i < INPUTS; i++) {
      boolean channel = i < CHANNELS;
      double ms = channel ? random.nextInt(40) : 1 + random.nextInt(200);
      while (ms < lengthMs) {
        BigDecimal at = BigDecimal.valueOf(Math.round(ms * 1000), 3);
        rows.add(new Drive.Row(at, i, Math.min(LONGEST_PULSE_US, reading(i))));
        boolean pauses = random.nextInt(30) == 0;
        double wait = channel ? LEAST_PULSE_MS + random.nextInt(16) : 3 + random.nextInt(300);
        ms += random.nextDouble() + (pauses ? 400 : wait);
      }
    }
    rows.sort(Comparator.comparing(Drive.Row::ms));
    return new Drive(rows);
  }

  List<FrameTable> tables() {
    return scenes.stream().map(scene -> FrameTable.of(rig, scene)).toList();
  }

  /** Its scenes and its tables as players have them; made once for a seed. */
  byte[] packed() throws CancelledException {
    byte[] made = PACKED.get(seed);
    if (made == null) {
      made =
          ScenePacker.pack(
                  "packed",
                  tables(),
                  Optional.of(show),
                  Target.slowestDecodeCost(),
                  Progress.SILENT)
              .data();
      PACKED.put(seed, made);
    }
    return made.clone();
  }

  /** What an input reads: near what conditions ask about, at both sides. */
  int reading(int input) {
    if (input >= CHANNELS) {
      return random.nextInt(2);
    }
    if (random.nextInt(20) == 0) {
      return of(0, 100, 799, 800, 2200, 2201, 5000, 65535);
    }
    int by = of(-51, -50, -49, -21, -20, -19, -1, 0, 1, 19, 20, 21, 51);
    return of(1450, 1480, 1500, 1550) + by;
  }

  int upTo(int bound) {
    return random.nextInt(bound);
  }

  @SafeVarargs
  private final <T> T of(T... values) {
    return values[random.nextInt(values.length)];
  }

  // So many frames, or a little more.
  private BigDecimal frames(int most) {
    BigDecimal exact =
        BigDecimal.valueOf(random.nextInt(most + 1) * 1000L)
            .divide(fps, 6, of(RoundingMode.FLOOR, RoundingMode.CEILING));
    return random.nextBoolean() ? exact : exact.add(new BigDecimal("0.5"));
  }

  private Input input(int place) {
    return Input.SHAPE
        .draft()
        .set(Input.ID, "i" + place)
        .set(Input.KIND, place < CHANNELS ? InputKind.SERVO_PULSE : InputKind.SWITCH)
        .set(Input.LOST_AFTER_MS, new BigDecimal(of("1", "40", "100", "100.5", "500", "60000")))
        .set(Input.CENTRE, random.nextInt(3) == 0 ? Centre.POWER_UP : Centre.FIXED)
        .set(Input.ACTIVE_LOW, random.nextBoolean())
        .make();
  }

  // Each frame another level, so that a wrong frame is another byte; or one level, which has no
  // clock.
  private Scene scene(String id) {
    List<String> lamps = new ArrayList<>(rig.lamps().stream().map(Lamp::id).toList());
    Collections.shuffle(lamps, random);
    BigDecimal length = frames(of(1, 9, 40)).max(BigDecimal.ONE);
    double to = random.nextInt(4) == 0 ? 0.9 : 0.2;
    Fade fade =
        new Fade(
            Look.DEFAULT,
            Optional.of(Colour.WHITE),
            Optional.of(Colour.WHITE),
            0.9,
            to,
            Easing.LINEAR);
    Cue cue = Cue.LENGTH_MS.with(Cue.of(0, 1, fade), length);
    return Scene.SHAPE
        .draft()
        .set(Scene.ID, id)
        .set(Scene.LENGTH_MS, length)
        .set(Scene.FRAMES_PER_SECOND, fps)
        .set(Scene.LOOP, random.nextBoolean())
        .set(Scene.TRACKS, List.of(Track.of(lamps.subList(0, random.nextInt(LAMPS) + 1), cue)))
        .make();
  }

  private Situation situation(int place, int priority) {
    boolean shows = place == 0 || random.nextInt(4) > 0;
    return Situation.SHAPE
        .draft()
        .set(Situation.ID, "t" + place)
        .set(Situation.PRIORITY, priority)
        .set(Situation.SCENE, shows ? Optional.of("s" + random.nextInt(SCENES)) : Optional.empty())
        .set(Situation.START, of(Start.values()))
        .set(Situation.AFTER_MS, random.nextInt(3) > 0 ? BigDecimal.ZERO : time())
        .set(Situation.LINGER_MS, random.nextBoolean() ? BigDecimal.ZERO : time())
        .set(Situation.TOGGLE, random.nextInt(4) == 0)
        .set(Situation.TRIGGER, trigger(place))
        .make();
  }

  private BigDecimal time() {
    return random.nextInt(40) == 0 ? new BigDecimal("86400000") : frames(6);
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
          random.nextBoolean()
              ? new Criterion.SituationIs(other, random.nextBoolean())
              : new Criterion.EndedWithin(other, frames(6)));
    }
    return new Condition(
        criterion(),
        random.nextInt(3) == 0 ? OptionalInt.of(1 + random.nextInt(3)) : OptionalInt.empty());
  }

  private Criterion criterion() {
    String channel = "i" + random.nextInt(CHANNELS);
    int h = of(0, 20, 50, 5000);
    return switch (random.nextInt(6)) {
      case 0 -> new Criterion.Above(channel, of(0, 1480, 1500, 1550), h);
      case 1 -> new Criterion.Below(channel, of(1480, 1500, 1550, 5000), h);
      case 2 -> new Criterion.Between(channel, of(1450, 1480), of(1500, 1550), h);
      case 3 -> new Criterion.Between(channel, 1500, 1500, h);
      case 4 -> new Criterion.Lost("i" + random.nextInt(INPUTS));
      default ->
          new Criterion.SwitchIs(
              "i" + (CHANNELS + random.nextInt(INPUTS - CHANNELS)), random.nextBoolean());
    };
  }
}
