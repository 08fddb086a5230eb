package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import lampwright.app.live.BenchBrightness;
import lampwright.app.live.DriveFeed;
import lampwright.app.live.FrameFeed;
import lampwright.app.live.SceneFeed;
import lampwright.engine.document.Project;
import lampwright.engine.json.ReadResult;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashSpot;
import lampwright.engine.meter.SceneMeasure;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** What is played on real lamps: a scene, or what the situations make of a drive. */
final class LiveShow {
  /**
   * What is played, once it may be.
   *
   * @param feed its frames
   */
  record Ready(FrameFeed feed, double framesPerSecond) {}

  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--scene",
      paramLabel = "ID",
      description = "the scene. Default: the first of the project")
  private Optional<String> scene = Optional.empty();

  @Option(
      names = "--drive",
      paramLabel = "FILE",
      description = "plays the situations to a recorded drive (*.csv) instead, as rehearse does")
  private Optional<Path> drive = Optional.empty();

  @Option(
      names = "--allow-flashes",
      description = "plays also what fails the flash check. Default: it is refused")
  private boolean allowFlashes;

  /**
   * What is played; none if it may not be, and then the terminal has the reason.
   *
   * @param read of the file, with a project
   */
  Optional<Ready> ready(
      ProjectFile file, ReadResult read, BenchBrightness brightness, Terminal terminal)
      throws IOException {
    Project project = read.project().orElseThrow();
    if (scene.isPresent() && drive.isPresent()) {
      throw new ParameterException(spec.commandLine(), "--scene: not with --drive");
    }
    return drive.isPresent()
        ? drive(file, read, brightness, terminal)
        : scene(file, project, brightness, terminal);
  }

  private Optional<Ready> scene(
      ProjectFile file, Project project, BenchBrightness brightness, Terminal terminal) {
    Optional<Scene> found = SceneChoice.one(scene, file, project, spec, terminal);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    FrameTable table = FrameTable.of(project.rig(), found.get());
    SceneMeasure measure = SceneMeasure.of(table);
    if (!mayFlash(found.get(), measure, terminal)) {
      return Optional.empty();
    }
    announce(
        "Scene " + found.get().id(),
        project.rig(),
        brightness,
        measure.supply().peakMilliamps(),
        terminal);
    return Optional.of(new Ready(new SceneFeed(table, brightness), table.framesPerSecond()));
  }

  private Optional<Ready> drive(
      ProjectFile file, ReadResult read, BenchBrightness brightness, Terminal terminal)
      throws IOException {
    Project project = read.project().orElseThrow();
    Optional<Show> show = ShowSource.of(file, read, terminal);
    if (show.isEmpty()) {
      return Optional.empty();
    }
    Optional<Drive> recorded = DriveFile.read(drive.orElseThrow(), project.rig(), terminal);
    if (recorded.isEmpty()) {
      return Optional.empty();
    }
    ShowMeasure measure = ShowMeasure.of(show.get());
    if (!mayFlash(project, show.get(), measure, terminal)) {
      return Optional.empty();
    }
    announce("Situations", project.rig(), brightness, measure.supply().milliamps(), terminal);
    return Optional.of(
        new Ready(
            new DriveFeed(show.get(), recorded.get(), brightness),
            show.get().clock().framesPerSecond().doubleValue()));
  }

  private boolean mayFlash(Scene of, SceneMeasure measure, Terminal terminal) {
    FlashSpot general = measure.worstGeneral();
    FlashSpot red = measure.worstRed();
    FlashSpot worst = red.worst().flashes() > general.worst().flashes() ? red : general;
    return measure.passesFlashCaution()
        || allowed(
            String.format(
                Locale.ROOT,
                "scene %s flashes up to %d times per second (%s)",
                of.id(),
                worst.worst().flashes(),
                worst.words()),
            terminal);
  }

  // Which situations meet in a drive is not followed: the bound over all of them is the judge.
  private boolean mayFlash(Project project, Show show, ShowMeasure measure, Terminal terminal) {
    for (int i = 0; i < show.situations().size(); i++) {
      Optional<Scene> of = show.scene(i);
      if (of.isPresent()
          && !mayFlash(
              of.get(), SceneMeasure.of(FrameTable.of(project.rig(), of.get())), terminal)) {
        return false;
      }
    }
    if (measure.flashes().isEmpty()) {
      return allowed("how often the situations together flash is not known", terminal);
    }
    int most = measure.flashes().get().perSecond();
    return most <= FlashCaution.MOST_FLASHES
        || allowed(
            String.format(
                Locale.ROOT, "the situations together may flash up to %d times per second", most),
            terminal);
  }

  private boolean allowed(String what, Terminal terminal) {
    String caution =
        String.format(
            Locale.ROOT,
            "%s; the limit is %d (W3C WCAG 2.2, 2.3.1). Flashing light can trigger seizures in people"
                + " with photosensitive epilepsy.",
            what,
            FlashCaution.MOST_FLASHES);
    if (allowFlashes) {
      terminal.err().println("Caution: " + caution);
    } else {
      terminal.refuse(caution + " --allow-flashes plays it.");
    }
    return allowFlashes;
  }

  // What pixels draw when dark they draw at any brightness.
  private static void announce(
      String what, Rig rig, BenchBrightness brightness, double peakMilliamps, Terminal terminal) {
    double idle = new FrameCurrent(new FrameLayout(rig)).idleMilliamps();
    terminal
        .out()
        .printf(
            Locale.ROOT,
            "%s at %d %% bench brightness: at most about %.0f mA of %.0f mA%n",
            what,
            brightness.percent(),
            idle + (peakMilliamps - idle) * brightness.percent() / BenchBrightness.GREATEST,
            rig.supplyLimitMilliamps());
  }
}
