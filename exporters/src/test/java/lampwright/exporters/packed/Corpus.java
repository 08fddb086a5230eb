package lampwright.exporters.packed;

import static lampwright.exporters.packed.Patterns.beacon;
import static lampwright.exporters.packed.Patterns.chase;
import static lampwright.exporters.packed.Patterns.cycle;
import static lampwright.exporters.packed.Patterns.fill;
import static lampwright.exporters.packed.Patterns.flash;
import static lampwright.exporters.packed.Patterns.flicker;
import static lampwright.exporters.packed.Patterns.indicator;
import static lampwright.exporters.packed.Patterns.kelvin;
import static lampwright.exporters.packed.Patterns.keyframes;
import static lampwright.exporters.packed.Patterns.rhythm;
import static lampwright.exporters.packed.Patterns.srgb;
import static lampwright.exporters.packed.Patterns.steady;
import static lampwright.exporters.packed.Patterns.testWalk;
import static lampwright.exporters.packed.Patterns.tint;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lampwright.exporters.packed.encode.PackLayout;
import lampwright.exporters.packed.encode.PackScene;

/** The fixed corpus of frame tables on which the packed coding is measured. */
public final class Corpus {
  private static final double[] AMBER = srgb(255, 160, 0);
  private static final double[] RED = srgb(255, 0, 0);
  private static final double[] BLUE = srgb(0, 40, 255);
  private static final double[] WHITE = srgb(255, 255, 255);
  private static final double[] WARM = kelvin(1e6 / 3000);
  private static final double[] COOL = kelvin(1e6 / 6500);

  /** One frame table with its layout. */
  public static final class Table {
    private final String name;
    private final PackLayout layout;
    private final int fps;
    private final int frames;
    private final boolean loop;
    private final byte[] bytes;

    public Table(String name, PackLayout layout, int fps, int frames, boolean loop, byte[] bytes) {
      this.name = name;
      this.layout = layout;
      this.fps = fps;
      this.frames = frames;
      this.loop = loop;
      this.bytes = bytes;
    }

    public String name() {
      return name;
    }

    public PackLayout layout() {
      return layout;
    }

    public int fps() {
      return fps;
    }

    public int frames() {
      return frames;
    }

    public boolean loop() {
      return loop;
    }

    public byte[] bytes() {
      return bytes;
    }

    public PackScene scene() {
      int size = layout.frameBytes();
      return new PackScene(
          name,
          frames,
          loop,
          1_000_000 / fps,
          (frame, into) -> System.arraycopy(bytes, frame * size, into, 0, size));
    }
  }

  private Corpus() {}

  private static Model rgbw(int... lamps) {
    return new Model().chain(true, lamps);
  }

  private static Model rgb(int... lamps) {
    return new Model().chain(false, lamps);
  }

  private static Table table(String name, Model m, int fps, int frames, CorpusScene stage) {
    return new Table(name, m.layout(), fps, frames, true, stage.render());
  }

  private static CorpusScene stage(Model m, int fps, int frames) {
    return new CorpusScene(m, fps, frames, true, false);
  }

  /** All tables, in a fixed order. */
  public static List<Table> all() {
    List<Table> all = new ArrayList<>();
    beacons(all);
    flashes(all);
    movement(all);
    slow(all);
    noisy(all);
    models(all);
    edges(all);
    return all;
  }

  private static void beacons(List<Table> all) {
    Model four = rgbw(4);
    all.add(
        table(
            "beacon-150",
            four,
            50,
            200,
            stage(four, 50, 200).cue(0, beacon(AMBER, 150, 120, true))));
    all.add(
        table(
            "beacon-118",
            four,
            50,
            3000,
            stage(four, 50, 3000).cue(0, beacon(AMBER, 118, 120, true))));
    Model two = rgb(3, 8);
    all.add(
        table(
            "beacons-two-rates",
            two,
            60,
            1800,
            stage(two, 60, 1800)
                .cue(0, beacon(BLUE, 140, 150, false))
                .cue(1, beacon(AMBER, 97, 90, true))));
  }

  private static void flashes(List<Table> all) {
    Model hazard = rgbw(2, 2).outputs(2);
    all.add(
        table(
            "hazards",
            hazard,
            50,
            1000,
            stage(hazard, 50, 1000)
                .cue(0, indicator(AMBER, 90, 0.5, 0))
                .cue(1, indicator(AMBER, 90, 0.5, 0))
                .cue(2, flash(WHITE, 60, 60, 2, 380))
                .cue(3, flash(WHITE, 60, 60, 2, 380))));
    Model strobe = rgb(2, 2);
    all.add(
        table(
            "double-flash",
            strobe,
            50,
            500,
            stage(strobe, 50, 500)
                .cue(0, flash(BLUE, 40, 60, 3, 300))
                .cue(1, 250, 60000, 0, flash(RED, 40, 60, 3, 300))));
    Model sequential = rgb(10);
    all.add(
        table(
            "sequential-indicator",
            sequential,
            50,
            800,
            stage(sequential, 50, 800).cue(0, fill(AMBER, 200, 200, 400))));
    Model bulbs = rgbw(1, 1).outputs(4);
    all.add(
        table(
            "warm-up",
            bulbs,
            50,
            1500,
            stage(bulbs, 50, 1500)
                .cue(0, indicator(AMBER, 85, 0.5, 0))
                .cue(1, indicator(AMBER, 85, 0.5, 0))
                .cue(2, indicator(AMBER, 85, 0.5, 0))
                .cue(3, 4000, 9000, 0, steady(RED, 1))
                .cue(4, 2000, 26000, 0, steady(WHITE, 1))
                .cue(5, rhythm(WHITE, 5000, 0, 500, 1000, 1500))
                .feel(0, 120, 90)
                .feel(1, 120, 90)
                .feel(2, 90, 60)
                .feel(3, 200, 150)
                .feel(4, 400, 300)
                .feel(5, 150, 90)));
    Model marks = new Model().outputs(5);
    all.add(
        table(
            "light-characters",
            marks,
            25,
            1500,
            stage(marks, 25, 1500)
                .cue(0, rhythm(WHITE, 10000, 0, 500, 2000, 2500))
                .cue(1, rhythm(RED, 12000, 0, 800, 1600, 2400, 6000, 6800))
                .cue(2, rhythm(WHITE, 1000, 0, 400))
                .cue(3, rhythm(WHITE, 15000, 0, 2000))
                .cue(4, rhythm(WHITE, 6000, 0, 4500))));
  }

  private static void movement(List<Table> all) {
    Model sixteen = rgb(16);
    all.add(
        table(
            "chase-tail",
            sixteen,
            50,
            1280,
            stage(sixteen, 50, 1280).cue(0, chase(BLUE, 80, 2, 4, false))));
    Model bar = rgbw(24);
    all.add(
        table(
            "chase-bounce-30fps",
            bar,
            30,
            1840,
            stage(bar, 30, 1840).cue(0, chase(RED, 50, 3, 5, true))));
    Model eight = rgb(8);
    all.add(
        table(
            "colour-cycle-8",
            eight,
            50,
            800,
            stage(eight, 50, 800).cue(0, cycle(4000, 1, 1, false))));
    Model strip = rgb(64);
    all.add(
        table(
            "colour-cycle-64",
            strip,
            50,
            1500,
            stage(strip, 50, 1500).cue(0, cycle(5000, 2, 0.8, true))));
    Model walk = rgbw(8).outputs(2);
    all.add(
        table(
            "test-walk",
            walk,
            25,
            400,
            stage(walk, 25, 400)
                .cue(0, testWalk(500, 4))
                .cue(1, testWalk(500, 1))
                .cue(2, testWalk(500, 1))));
    Model mixed = rgb(12);
    CorpusScene script = stage(mixed, 50, 3000);
    script
        .cue(0, 0, 12000, 500, chase(AMBER, 100, 1, 3, false))
        .cue(0, 12000, 24000, 300, cycle(3000, 1, 1, false))
        .cue(0, 24000, 36000, 0, chase(BLUE, 60, 2, 2, true))
        .cue(0, 36000, 48000, 500, chase(AMBER, 100, 1, 3, false))
        .cue(0, 48000, 60000, 1000, steady(WHITE, 0.7));
    all.add(table("cue-script", mixed, 50, 3000, script));
  }

  private static void slow(List<Table> all) {
    Model mood = rgbw(2, 1);
    all.add(
        table(
            "keyframed-fades",
            mood,
            50,
            3000,
            stage(mood, 50, 3000)
                .cue(
                    0,
                    keyframes(
                        true,
                        new Patterns.Key(0, WARM, 0.1),
                        new Patterns.Key(7000, AMBER, 1),
                        new Patterns.Key(16000, RED, 0.4),
                        new Patterns.Key(25000, BLUE, 0.9),
                        new Patterns.Key(41000, COOL, 1),
                        new Patterns.Key(60000, WARM, 0.1)))
                .cue(
                    1,
                    keyframes(
                        false,
                        new Patterns.Key(0, BLUE, 0),
                        new Patterns.Key(1500, BLUE, 1),
                        new Patterns.Key(3000, WHITE, 0.2),
                        new Patterns.Key(5000, BLUE, 0)))));
    Model cabin = rgbw(6);
    all.add(
        table(
            "tint-sweep",
            cabin,
            25,
            1500,
            stage(cabin, 25, 1500).cue(0, tint(2700, 9000, 60000, 0.8))));
    all.add(
        table("steady-work", cabin, 50, 3000, stage(cabin, 50, 3000).cue(0, steady(COOL, 0.9))));
    Model gantry = rgbw(4).outputs(2);
    CorpusScene fades = stage(gantry, 40, 1600);
    fades.cue(0, steady(WARM, 0.3));
    for (int i = 0; i < 5; i++) {
      fades.cue(0, i * 8000 + 1000, i * 8000 + 5000 + 300 * i, 1500, steady(COOL, 1));
      fades.cue(1, i * 8000, i * 8000 + 7000, 2000, steady(WHITE, 1));
      fades.cue(2, i * 8000 + 500, i * 8000 + 4000, 1000, steady(WHITE, 0.5));
    }
    all.add(table("cross-fades", gantry, 40, 1600, fades));
  }

  private static void noisy(List<Table> all) {
    Model fire = rgb(3);
    all.add(
        table("flicker", fire, 50, 1500, stage(fire, 50, 1500).cue(0, flicker(AMBER, 7, 0.7, 8))));
    Model cabin = rgbw(2, 2);
    all.add(
        table(
            "temporal-dither",
            cabin,
            100,
            3000,
            new CorpusScene(cabin, 100, 3000, true, true)
                .cue(0, steady(WARM, 0.12))
                .cue(
                    1,
                    keyframes(
                        true,
                        new Patterns.Key(0, COOL, 0),
                        new Patterns.Key(9000, COOL, 0.3),
                        new Patterns.Key(30000, COOL, 0)))));
    Random random = new Random(20261125);
    Model noise = rgbw(16);
    byte[] bytes = new byte[64 * 300];
    random.nextBytes(bytes);
    all.add(new Table("noise", noise.layout(), 50, 300, true, bytes));
    Model many = new Model().outputs(40);
    byte[] few = new byte[40 * 50];
    random.nextBytes(few);
    all.add(new Table("many-lamps", many.layout(), 50, 50, true, few));
  }

  /** The recovery tractor's rig: 16 RGBW pixels and 4 outputs. */
  public static Model tractor() {
    return rgbw(4, 2, 2, 2, 2, 4).outputs(4);
  }

  public static Table tractorWorking() {
    Model m = tractor();
    CorpusScene s =
        stage(m, 50, 3000)
            .cue(0, beacon(AMBER, 118, 120, true))
            .cue(1, indicator(AMBER, 90, 0.5, 0))
            .cue(2, indicator(AMBER, 90, 0.5, 0))
            .cue(3, steady(COOL, 1))
            .cue(4, 5000, 50000, 1200, steady(WARM, 0.8))
            .cue(5, chase(AMBER, 120, 1, 2, false))
            .cue(6, 3000, 20000, 0, steady(RED, 1))
            .cue(6, 31000, 33000, 0, steady(RED, 1))
            .cue(7, 33000, 41000, 0, steady(WHITE, 1))
            .cue(8, flash(WHITE, 60, 60, 2, 380))
            .cue(9, flash(WHITE, 60, 60, 2, 380))
            .feel(6, 200, 150)
            .feel(7, 200, 150);
    return table("recovery-tractor", m, 50, 3000, s);
  }

  private static void models(List<Table> all) {
    all.add(tractorWorking());
    Model large = rgbw(16, 16, 8, 8, 4, 4, 8);
    all.add(
        table(
            "showpiece-64",
            large,
            50,
            3000,
            stage(large, 50, 3000)
                .cue(0, cycle(6000, 1, 0.9, false))
                .cue(1, chase(RED, 60, 2, 5, true))
                .cue(2, beacon(BLUE, 130, 140, true))
                .cue(3, flicker(AMBER, 3, 0.6, 6))
                .cue(4, beacon(AMBER, 120, 120, false))
                .cue(5, tint(2700, 6500, 60000, 0.9))
                .cue(
                    6,
                    keyframes(
                        false,
                        new Patterns.Key(0, WARM, 0.2),
                        new Patterns.Key(4000, BLUE, 1),
                        new Patterns.Key(9000, AMBER, 0.5),
                        new Patterns.Key(12000, WARM, 0.2)))));
    Model huge = rgb(256);
    all.add(
        table("pixels-256", huge, 30, 900, stage(huge, 30, 900).cue(0, cycle(10000, 1, 1, false))));
    Model both = new Model().chain(false, 4, 4).chain(true, 6);
    all.add(
        table(
            "rgb-and-rgbw",
            both,
            50,
            1000,
            stage(both, 50, 1000)
                .cue(0, beacon(BLUE, 120, 120, true))
                .cue(1, fill(AMBER, 300, 200, 300))
                .cue(2, 2000, 18000, 800, steady(WARM, 1))));
    Model outputs = new Model().outputs(6);
    all.add(
        table(
            "outputs-alone",
            outputs,
            100,
            2000,
            stage(outputs, 100, 2000)
                .cue(0, indicator(WHITE, 90, 0.5, 0))
                .cue(1, indicator(WHITE, 90, 0.5, 0.5))
                .cue(2, flicker(WHITE, 11, 0.4, 5))
                .cue(3, 1000, 19000, 3000, steady(WHITE, 1))
                .cue(4, flash(WHITE, 50, 50, 4, 600))
                .cue(5, steady(WHITE, 0.5))
                .feel(0, 100, 80)
                .feel(1, 100, 80)));
  }

  private static void edges(List<Table> all) {
    Model seam = rgb(4, 4);
    all.add(
        table(
            "seam",
            seam,
            50,
            611,
            stage(seam, 50, 611)
                .cue(0, beacon(AMBER, 150, 120, true))
                .cue(1, chase(BLUE, 80, 1, 2, false))));
    Model wide = rgb(90);
    all.add(
        table(
            "bounce-90",
            wide,
            50,
            890,
            stage(wide, 50, 890).cue(0, chase(WHITE, 100, 2, 6, true))));
    Model one = rgb(1);
    all.add(
        table(
            "one-pixel",
            one,
            50,
            250,
            stage(one, 50, 250)
                .cue(
                    0,
                    keyframes(
                        true,
                        new Patterns.Key(0, WHITE, 0),
                        new Patterns.Key(2500, WHITE, 1),
                        new Patterns.Key(5000, WHITE, 0)))));
    Model still = rgbw(8);
    all.add(table("one-frame", still, 50, 1, stage(still, 50, 1).cue(0, steady(WARM, 1))));
    all.add(table("all-dark", still, 50, 1000, stage(still, 50, 1000)));
  }
}
