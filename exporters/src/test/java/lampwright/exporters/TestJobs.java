package lampwright.exporters;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** Jobs that tests and benchmarks share. */
public final class TestJobs {
  /** A project's name that tries to break out of whatever holds it. */
  public static final String HOSTILE_NAME =
      "*/ #include \"x\" /* \\ ??/ // \r\n#error \u0000 Z\u00fcrich \ud83d\ude9c *\\/ **/*/ ???/ \\";

  private TestJobs() {}

  /** One frame of one byte. */
  public static ExportJob oneByte() {
    Rig rig = Rig.of(List.of(), List.of(DriverOutput.of("spare")), List.of());
    return job("One byte", rig, scene("dark", 20, 50, true, List.of()));
  }

  /** Three frames of one RGB pixel. */
  public static ExportJob onePixel() {
    Rig rig =
        Rig.of(List.of(rgb("single", 1)), List.of(), List.of(lamp("only", run("single", 0, 1))));
    return job("One pixel", rig, scene("walk", 60, 50, false, walk(20, "only")));
  }

  /** An RGBW and an RGB chain and two outputs, partly in lamps. */
  public static ExportJob mixed() {
    Lamp named =
        new Lamp(
            "beacon",
            "Roof beacon",
            "",
            LampFunction.SPECIAL_WARNING,
            new Fitting.Pixels(List.of(run("roof", 2, 1), run("roof", 0, 2))),
            Optional.empty(),
            java.util.List.of(),
            Optional.empty());
    Rig rig =
        Rig.of(
            List.of(rgbw("roof", 4), rgb("deck-rail", 2)),
            List.of(DriverOutput.of("amber-rear"), DriverOutput.of("spare")),
            List.of(
                named, lamp("rail", run("deck-rail", 0, 2)), Lamp.ofOutput("tail", "amber-rear")));
    Track cycle = track(cycle(1000, 0.5), 1000, "beacon", "rail");
    Track flicker =
        track(new Flicker(Look.DEFAULT, 7, 0.9, BigDecimal.valueOf(8)), 1000, "tail", "rail");
    return job(
        "Harbour diorama", rig, scene("night-watch", 1000, 25, true, List.of(cycle, flicker)));
  }

  /** Four frames of an RGBW pixel, an RGB pixel and an output. */
  public static ExportJob small() {
    Rig rig =
        Rig.of(
            List.of(rgbw("mast", 1), rgb("rail", 1)),
            List.of(DriverOutput.of("stern")),
            List.of(
                lamp("top", run("mast", 0, 1)),
                lamp("side", run("rail", 0, 1)),
                Lamp.ofOutput("stern-lamp", "stern")));
    return job("Pilot boat", rig, scene("harbour", 80, 50, true, walk(20, "top", "side")));
  }

  /** Four chains of 256 RGBW pixels and 16 outputs: 4,112 bytes per frame, 25 frames. */
  public static ExportJob large() {
    List<Chain> chains = new ArrayList<>();
    List<DriverOutput> outputs = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    for (int c = 0; c < 4; c++) {
      chains.add(rgbw("deck-" + c, 256));
      lamps.add(lamp("lamps-" + c, run("deck-" + c, 0, 256)));
    }
    for (int o = 0; o < 16; o++) {
      outputs.add(DriverOutput.of("out-" + o));
      lamps.add(Lamp.ofOutput("bulb-" + o, "out-" + o));
    }
    String[] all = lamps.stream().map(Lamp::id).toArray(String[]::new);
    Track cycle = track(cycle(700, 3), 1000, all);
    return job(
        "Ferry", Rig.of(chains, outputs, lamps), scene("gala", 1000, 25, true, List.of(cycle)));
  }

  /** A project whose ids and names are as awkward as they may be. */
  public static List<ExportJob> hostile() {
    List<String> ids =
        List.of("a-b", "a--b", "-", "--", "1st", "int", "class", "a-", "-a", "a-chain-b");
    List<Chain> chains = new ArrayList<>();
    List<DriverOutput> outputs = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    for (String id : ids) {
      chains.add(rgb(id, 1));
      outputs.add(DriverOutput.of(id));
      lamps.add(
          new Lamp(
              id,
              HOSTILE_NAME,
              "",
              LampFunction.OTHER,
              new Fitting.Pixels(List.of(run(id, 0, 1))),
              Optional.empty(),
              java.util.List.of(),
              Optional.empty()));
    }
    String[] all = ids.toArray(String[]::new);
    Scene[] scenes =
        ids.stream()
            .map(id -> scene(id, 200, 50, true, walk(20 + ids.indexOf(id), all)))
            .toArray(Scene[]::new);
    Project project = Project.of(HOSTILE_NAME, Rig.of(chains, outputs, lamps), scenes);
    return Arrays.stream(scenes)
        .map(scene -> ExportJob.of(project, scene, ExportOptions.DEFAULT))
        .toList();
  }

  /** The job with another address for Intel HEX. */
  public static ExportJob at(ExportJob job, long hexAddress) {
    return ExportJob.of(job.project(), job.scene(), new ExportOptions(hexAddress));
  }

  /** A job of a project with one scene. */
  public static ExportJob job(String name, Rig rig, Scene scene) {
    return ExportJob.of(Project.of(name, rig, scene), scene, ExportOptions.DEFAULT);
  }

  /** Every frame, one after another, each rendered alone. */
  public static byte[] table(ExportJob job) {
    int frameBytes = job.table().layout().bytes();
    byte[] all = new byte[Math.toIntExact(job.table().bytes())];
    for (int frame = 0; frame < job.table().frameCount(); frame++) {
      System.arraycopy(job.table().frame(frame), 0, all, frame * frameBytes, frameBytes);
    }
    return all;
  }

  public static Scene scene(
      String id, long lengthMs, long framesPerSecond, boolean loop, List<Track> tracks) {
    return new Scene(
        id,
        BigDecimal.valueOf(lengthMs),
        BigDecimal.valueOf(framesPerSecond),
        loop,
        Dither.OFF,
        tracks);
  }

  public static List<Track> walk(long stepMs, String... lamps) {
    Look dim = new Look(Colour.WHITE, 0.8);
    TestWalk walk = new TestWalk(dim, BigDecimal.ZERO, BigDecimal.valueOf(stepMs));
    return List.of(track(walk, 86_400_000, lamps));
  }

  public static ColourCycle cycle(long periodMs, double spread) {
    return new ColourCycle(
        Look.DEFAULT, BigDecimal.ZERO, BigDecimal.valueOf(periodMs), spread, 0.9, false);
  }

  public static Track track(Pattern pattern, long lengthMs, String... lamps) {
    return Track.of(List.of(lamps), Cue.of(0, lengthMs, pattern));
  }

  public static Chain rgb(String id, int pixels) {
    return new Chain(id, BuiltInPixelTypes.find("ws2812b").orElseThrow(), pixels);
  }

  public static Chain rgbw(String id, int pixels) {
    return new Chain(id, BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), pixels);
  }

  public static Lamp lamp(String id, PixelRun... runs) {
    return Lamp.ofPixels(id, runs);
  }

  public static PixelRun run(String chain, int from, int count) {
    return new PixelRun(chain, from, count);
  }
}
