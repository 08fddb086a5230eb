package lampwright.app.workshop.view;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameStore;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * Times the real window with software rendering: how long it takes to open, and the work of every
 * frame while a large project is played and scrolled, as JavaFX itself logs it (from the beginning
 * of a frame to the end of its painting). Needs a display; docs/performance.md has the command.
 */
public final class WorkshopBenchmark {
  private static final int LAMPS = 200;
  private static final int PIXELS = 5;
  private static final int CUES = 50;
  private static final int FRAMES = 600;
  private static final String SCREEN_THREAD = "JavaFX Application Thread";
  private static final String PAINTING_THREAD = "QuantumRenderer-0";
  private static final Pattern SPENT = Pattern.compile("SPENT (.*)=(\\d+)");
  private static final Pattern PULSE = Pattern.compile("PULSE: \\d+ \\[-?\\d+ms:(\\d+)ms\\]");

  private WorkshopBenchmark() {}

  /** Runs everything and prints a table; with a mode and a file it is one of the windows. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    if (arguments.length >= 2) {
      Application.launch(Child.class, arguments);
      return;
    }
    Path folder = Files.createTempDirectory("lampwright-benchmark");
    Path file = folder.resolve("large.lampwright.json");
    ProjectFiles.save(large(), file);
    List<Double> empty = new ArrayList<>();
    List<Double> opened = new ArrayList<>();
    for (int run = 0; run < 3; run++) {
      empty.add(Double.parseDouble(child(folder, "empty", file).get(0)));
      opened.add(Double.parseDouble(child(folder, "open", file).get(0)));
    }
    Collections.sort(empty);
    Collections.sort(opened);
    say("empty window, from the start of Java", empty.get(1), "ms, median of 3");
    say("10,000 cues opened, from the start of Java", opened.get(1), "ms, median of 3");
    frames("playing", child(folder, "play", file));
    frames("scrolling", child(folder, "scroll", file));
  }

  private static void frames(String what, List<String> lines) {
    List<Integer> ms = pulses(lines);
    Collections.sort(ms);
    say(what + ", frames", ms.size(), "");
    say(what + ", median frame", ms.get(ms.size() / 2), "ms");
    say(what + ", 99 of 100 frames within", ms.get(ms.size() * 99 / 100), "ms");
    say(what + ", longest frame", ms.get(ms.size() - 1), "ms");
    // On a machine with other work these say more than the clock.
    for (String line : lines) {
      Matcher spent = SPENT.matcher(line);
      if (spent.find()) {
        say(
            what + ", processor time a frame, " + spent.group(1),
            Double.parseDouble(spent.group(2)) / FRAMES / 1000,
            "us");
      }
    }
  }

  private static void say(String what, double figure, String unit) {
    System.out.printf(Locale.ROOT, "%-70s %7.0f %s%n", what, figure, unit);
  }

  private static List<Integer> pulses(List<String> lines) {
    return lines.stream()
        .map(PULSE::matcher)
        .filter(Matcher::find)
        .map(m -> Integer.parseInt(m.group(1)))
        .collect(java.util.stream.Collectors.toCollection(ArrayList::new));
  }

  // What the child says between BEGIN and END.
  private static List<String> child(Path folder, String mode, Path file)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-Dprism.order=sw",
                "-Djavafx.pulseLogger=true",
                "-Djavafx.pulseLogger.threshold=0",
                "-Dlampwright.state=" + folder.resolve("state"),
                "-classpath",
                System.getProperty("java.class.path"),
                WorkshopBenchmark.class.getName(),
                mode,
                file.toString())
            .redirectErrorStream(true)
            .start();
    List<String> lines = new ArrayList<>();
    List<String> all = new ArrayList<>();
    boolean between = false;
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        all.add(line);
        if (line.startsWith("END")) {
          break;
        }
        if (between) {
          lines.add(line);
        }
        between |= line.startsWith("BEGIN");
      }
    }
    process.destroyForcibly().waitFor();
    if (lines.isEmpty()) {
      throw new IOException(mode + ": the window said nothing: " + all);
    }
    return lines;
  }

  /** 200 lamps of five pixels and 10,000 cues, five minutes that loop. */
  static Project large() {
    List<Chain> chains = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    List<Track> tracks = new ArrayList<>();
    for (int c = 0; c < 10; c++) {
      chains.add(new Chain("c" + c, BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), 100));
    }
    for (int i = 0; i < LAMPS; i++) {
      // All in one view, which is the most that can be seen at once.
      Place place =
          new Place(View.SIDE, i % 20 / 20.0 + 0.02, Math.floorDiv(i, 20) * 0.1 + 0.04, 0.03);
      lamps.add(
          Lamp.PLACE.with(
              Lamp.ofPixels("lamp-" + i, new PixelRun("c" + i / 20, i % 20 * PIXELS, PIXELS)),
              Optional.of(place)));
      List<Cue> cues = new ArrayList<>();
      for (int c = 0; c < CUES; c++) {
        Look look = new Look(Colour.WHITE, 0.6);
        // Slow, so that nothing flashes and no question is asked.
        cues.add(
            Cue.of(
                c * 6000L,
                6000,
                c % 2 == 0
                    ? new ColourCycle(
                        look, BigDecimal.ZERO, BigDecimal.valueOf(5000 + 40L * i), 1, 0.9, false)
                    : new Tint(look, 2000, OptionalDouble.of(8000))));
      }
      tracks.add(new Track(List.of("lamp-" + i), lampwright.engine.scene.Span.EACH, cues));
    }
    Rig rig = Rig.of(chains, List.of(), lamps);
    return Project.of(
        "large",
        rig,
        Scene.TRACKS.with(
            Scene.FRAMES_PER_SECOND.with(
                Projects.emptyScene("show", CUES * 6000L), BigDecimal.valueOf(60)),
            tracks));
  }

  /** One window, in a process of its own. */
  public static final class Child extends Application {
    /** For JavaFX. */
    public Child() {}

    @Override
    public void start(Stage stage) {
      String mode = getParameters().getRaw().get(0);
      Path file = Path.of(getParameters().getRaw().get(1));
      WorkshopWindow window = new WorkshopWindow(stage);
      stage.setWidth(1500);
      stage.setHeight(950);
      window.show(mode.equals("empty") ? Optional.empty() : Optional.of(file));
      WorkshopParts parts = window.parts();
      if (mode.equals("empty")) {
        Platform.runLater(() -> Platform.runLater(Child::ready));
      } else {
        watch(mode, parts);
      }
    }

    private static void watch(String mode, WorkshopParts parts) {
      new AnimationTimer() {
        private boolean begun;
        private int frames;
        private int settled;
        private List<Long> spentBefore = List.of();

        @Override
        public void handle(long now) {
          boolean there = parts.bench().project().rig().lamps().size() == LAMPS;
          if (mode.equals("open")) {
            if (there && !parts.ribbons().stripsProperty().get().isEmpty()) {
              stop();
              Platform.runLater(Child::ready);
            }
            return;
          }
          boolean whole =
              there
                  && parts
                      .lights()
                      .lightProperty()
                      .get()
                      .map(SceneLight::frames)
                      .filter(FrameStore::complete)
                      .isPresent()
                  && !parts.lights().measuringProperty().get();
          if (!begun && whole && parts.packs().progressProperty().get() >= 1) {
            parts.sheet().viewProperty().set(View.SIDE);
            settled++;
          }
          if (mode.equals("scroll") && settled > 60) {
            parts.ribbons().scrollTo(parts.ribbons().top() + (settled % 2 == 0 ? 34 : -17));
          }
          // A second of rest and one of warming first: what came of opening, and Java's own
          // compiling, are no part of this.
          if (!begun && settled > 120) {
            begun = true;
            if (mode.equals("play")) {
              parts.player().play();
            }
            spentBefore = spent();
            System.err.print("\nBEGIN\n");
          }
          if (begun && ++frames > FRAMES) {
            List<Long> spent = spent();
            for (int i = 0; i < spent.size(); i++) {
              System.err.print(
                  "\nSPENT " + SPENDERS.get(i) + "=" + (spent.get(i) - spentBefore.get(i)) + "\n");
            }
            System.err.print("\nEND\n");
            stop();
          }
          if (begun && mode.equals("scroll")) {
            parts.ribbons().scrollTo(parts.ribbons().top() + 17);
          }
        }
      }.start();
    }

    private static final List<String> SPENDERS =
        List.of(SCREEN_THREAD, PAINTING_THREAD, "glow-painter");

    // Nanoseconds of the processor that each thread has had.
    private static List<Long> spent() {
      ThreadMXBean threads = ManagementFactory.getThreadMXBean();
      Map<String, Long> byName = new HashMap<>();
      for (ThreadInfo thread : threads.getThreadInfo(threads.getAllThreadIds())) {
        if (thread != null) {
          byName.merge(
              thread.getThreadName(), threads.getThreadCpuTime(thread.getThreadId()), Long::sum);
        }
      }
      return SPENDERS.stream().map(name -> byName.getOrDefault(name, 0L)).toList();
    }

    private static void ready() {
      long start = ManagementFactory.getRuntimeMXBean().getStartTime();
      // In one piece: JavaFX writes its log between.
      System.err.print("\nBEGIN\n" + (System.currentTimeMillis() - start) + "\nEND\n");
    }
  }
}
