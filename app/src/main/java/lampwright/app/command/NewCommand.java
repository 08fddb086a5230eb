package lampwright.app.command;

import com.google.common.base.Splitter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.outline.Models;
import lampwright.app.outline.UsualLamp;
import lampwright.app.start.ModelRequest;
import lampwright.app.start.NewModel;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Controller;
import lampwright.exporters.CancelledException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the project of a new model. */
@Command(
    name = "new",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the project of a new model: chain, outputs, lamps in wiring order with their places on"
          + " the drawing, and a first scene.",
      "The command models lists the kinds of model and the groups of lamps of each.",
      "Exit code 1 if the lamps do not fit the controller; then nothing is written."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright new tug tug.lampwright.json --name \"Harbour tug\"",
      "  lampwright new recovery-vehicle truck.lampwright.json --controller rp2040"
          + " --lamps beacons=3,sill-strip=2"
    })
final class NewCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "KIND",
      description = "kind of model, such as launch or tug")
  private String kind;

  @Parameters(
      index = "1",
      paramLabel = "FILE",
      description = "the project file to write (*.lampwright.json)")
  private Path file;

  @Option(
      names = "--controller",
      paramLabel = "ID",
      description = "controller, such as rp2040. Default: atmega328p")
  private Optional<String> controller = Optional.empty();

  @Option(
      names = "--lamps",
      paramLabel = "GROUP=COUNT",
      split = ",",
      description =
          "number of lamps of a group, 0 for none; separate several by commas. Default: the usual"
              + " number")
  private List<String> lamps = new ArrayList<>();

  @Option(
      names = "--name",
      paramLabel = "TEXT",
      description = "name of the project. Default: the kind of model")
  private Optional<String> name = Optional.empty();

  @Option(names = "--force", description = "replace FILE if it exists")
  private boolean force;

  NewCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, CancelledException {
    ModelRequest request = request();
    if (!force && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException(ProjectFile.shown(file) + ": exists already; --force replaces it");
    }
    NewModel.Made made = NewModel.make(request);
    Project project = made.project();
    List<Finding> refusals = NewModel.refusals(project, new TerminalProgress(terminal, "packing"));
    terminal.endProgress();
    if (!refusals.isEmpty()) {
      terminal
          .err()
          .printf(
              Locale.ROOT,
              "lampwright: %d lamps with %d pixels and %d outputs do not fit:%n",
              project.rig().lamps().size(),
              made.pixels(),
              project.rig().outputs().size());
      refusals.forEach(refusal -> terminal.err().println("  " + refusal.text()));
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    ProjectFiles.save(project, file);
    terminal
        .out()
        .printf(
            Locale.ROOT,
            "%s: %d lamps, %d pixels, %d outputs, scene %s, peak current %.0f mA%n",
            ProjectFile.shown(file),
            project.rig().lamps().size(),
            made.pixels(),
            project.rig().outputs().size(),
            project.scenes().get(0).id(),
            made.peakMilliamps());
    if (!made.asPixels().isEmpty()) {
      terminal
          .out()
          .println(
              "  as pixels, since no outputs are left for plain LEDs: "
                  + String.join(", ", made.asPixels()));
    }
    return ExitCode.DONE;
  }

  private ModelRequest request() {
    ModelRequest request = ModelRequest.usual(kind(spec, "KIND", kind));
    if (controller.isPresent()) {
      String id = controller.get();
      request =
          request.withController(
              Controller.find(id)
                  .orElseThrow(
                      () ->
                          wrong(
                              UnknownWord.of(
                                  "--controller",
                                  id,
                                  Controller.all().stream().map(Controller::id).toList()))));
    }
    if (name.isPresent()) {
      request = named(request, name.get());
    }
    for (String lamp : lamps) {
      request = counted(request, lamp);
    }
    if (request.lamps() == 0) {
      throw wrong("--lamps: no lamps: must be at least one");
    }
    return request;
  }

  private ModelRequest named(ModelRequest request, String text) {
    try {
      Project.NAME.with(Project.SHAPE.draft().make(), text);
      return request.withName(text);
    } catch (IllegalArgumentException refused) {
      throw wrong("--name: " + SafeText.text(String.valueOf(refused.getMessage())));
    }
  }

  private ModelRequest counted(ModelRequest request, String word) {
    List<String> parts = Splitter.on('=').limit(2).splitToList(word);
    String key = parts.get(0);
    Optional<UsualLamp> group = request.group(key);
    if (group.isEmpty()) {
      throw wrong(UnknownWord.of("--lamps", key, request.counts().keySet()));
    }
    int most = group.get().greatest();
    String count = parts.size() < 2 ? "" : parts.get(1);
    if (!count.matches("\\d{1,4}") || Integer.parseInt(count) > most) {
      throw wrong("--lamps: " + SafeText.text(word) + ": must be " + key + "= and 0 to " + most);
    }
    return request.withCount(key, Integer.parseInt(count));
  }

  /** The kind of model that a word means. */
  static ModelKind kind(CommandSpec spec, String parameter, String word) {
    List<String> keys = Arrays.stream(ModelKind.values()).map(ModelKind::key).toList();
    List<String> words = new ArrayList<>(keys);
    Arrays.stream(ModelKind.values()).map(Models::otherWords).forEach(words::addAll);
    return Models.find(word)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(), UnknownWord.of(parameter, word, keys, words)));
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
