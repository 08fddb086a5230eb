package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import lampwright.engine.project.Project;
import lampwright.engine.project.StagedFiles;
import lampwright.engine.project.StagedFolder;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterRegistry;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareExporter;
import lampwright.exporters.packed.PackedExporter;
import lampwright.exporters.table.TableExporters;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes the bytes of scenes in the formats asked for. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    description = {
      "Renders scenes and writes their bytes. All files are written beside and then moved into place:"
          + " a failure leaves no half file and no changed file.",
      ""
    },
    footer = {
      "",
      "Formats:",
      "  c       a .h and .c pair: the frame table as a C array, in program memory on AVR",
      "  bin     the bare frame table: frames x bytes a frame, no header",
      "  packed  one scene packed, for the player that the firmware folder brings",
      "  hex     the frame table as Intel HEX, from the address that --at gives",
      "  csv     one row a frame, one column a byte",
      "  firmware  a folder with all scenes, their player and a driver, for a microcontroller",
      "",
      "Examples:",
      "  lampwright export samples/recovery-tractor.lampwright.json --to out",
      "  lampwright export samples/harbour-dusk.lampwright.json --to out --scene dusk --as bin,hex"
          + " --at 0x4000"
    })
final class ExportCommand implements Callable<Integer> {
  private static final FirmwareExporter FIRMWARE = new FirmwareExporter();

  private final Terminal terminal;

  @Spec private CommandSpec spec;
  @Mixin private ProjectFile file;
  @Mixin private SceneChoice choice;

  @Option(
      names = "--to",
      paramLabel = "DIR",
      required = true,
      description = "folder for the files; made if it is not there")
  private Path folder;

  @Option(
      names = "--as",
      paramLabel = "FORMAT",
      split = ",",
      description = "formats, parted by commas. Without it: c")
  private List<String> formats = new ArrayList<>(List.of("c"));

  @Option(
      names = "--at",
      paramLabel = "ADDRESS",
      description = "address of the first byte in hex files, such as 0x4000. Without it: 0")
  private String address = "0";

  ExportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, CancelledException {
    List<Exporter> exporters = exporters();
    ExportOptions options = options();
    Optional<Project> read = file.read(terminal);
    if (read.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = read.get();
    List<ExportJob> jobs =
        choice.of(project).stream().map(scene -> ExportJob.of(project, scene, options)).toList();
    try (StagedFiles files = StagedFiles.in(folder)) {
      for (ExportJob job : jobs) {
        for (Exporter exporter : exporters) {
          export(job, exporter, files);
        }
      }
      // All else is whole by now, so that a failure leaves the folder as it was too.
      if (formats.contains(FIRMWARE.key())) {
        firmware(ProjectJob.of(project, choice.of(project)));
      }
      files.commit();
    } finally {
      terminal.endProgress();
    }
    report(jobs, exporters);
    return ExitCode.DONE;
  }

  private void firmware(ProjectJob job) throws IOException, CancelledException {
    ExportFacts facts = FIRMWARE.facts(job);
    List<String> ours = new ArrayList<>(facts.files());
    // Also a folder of another controller, and what its Makefile makes.
    ours.addAll(List.of("Makefile", "main.c", "show.elf", "show.hex"));
    try (StagedFolder files =
        StagedFolder.in(
            folder, FIRMWARE.key(), FirmwareExporter.MARK_FILE, FirmwareExporter.MARK_LINE, ours)) {
      FIRMWARE.export(job, files::open, new TerminalProgress(terminal, FIRMWARE.key()));
      files.commit();
    } finally {
      terminal.endProgress();
    }
    say(facts);
    terminal.out().println(folder.resolve(FIRMWARE.key()));
  }

  private void export(ExportJob job, Exporter exporter, StagedFiles files)
      throws IOException, CancelledException {
    ExportFacts facts = exporter.facts(job);
    if (!facts.faults().isEmpty()) {
      throw new ExportRefusedException(exporter.key(), job.scene().id(), facts.faults());
    }
    String what = job.scene().id() + " as " + exporter.key();
    exporter.export(job, files::open, new TerminalProgress(terminal, what));
  }

  private void report(List<ExportJob> jobs, List<Exporter> exporters) {
    for (ExportJob job : jobs) {
      for (Exporter exporter : exporters) {
        ExportFacts facts = exporter.facts(job);
        say(facts);
        for (String name : facts.files()) {
          terminal.out().println(folder.resolve(name));
        }
      }
    }
  }

  private void say(ExportFacts facts) {
    facts.cautions().forEach(caution -> terminal.err().println("caution: " + caution));
  }

  private List<Exporter> exporters() {
    ExporterRegistry registry = registry();
    Set<String> wanted = new LinkedHashSet<>(formats);
    wanted.remove(FIRMWARE.key());
    List<Exporter> found = new ArrayList<>();
    for (String key : wanted) {
      found.add(
          registry
              .find(key)
              .orElseThrow(
                  () ->
                      wrong(
                          "--as: "
                              + key
                              + ": needs "
                              + String.join(", ", registry.keys())
                              + ", "
                              + FIRMWARE.key())));
    }
    return found;
  }

  private static ExporterRegistry registry() {
    List<Exporter> all = new ArrayList<>(TableExporters.all());
    all.add(new PackedExporter());
    return ExporterRegistry.of(all);
  }

  private ExportOptions options() {
    try {
      boolean hex = address.startsWith("0x") || address.startsWith("0X");
      return new ExportOptions(
          hex ? Long.parseLong(address.substring(2), 16) : Long.parseLong(address));
    } catch (IllegalArgumentException notAnAddress) {
      throw wrong(
          "--at: "
              + address
              + ": needs an address from 0 to "
              + ExportOptions.address(ExportOptions.MAX_ADDRESS));
    }
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
