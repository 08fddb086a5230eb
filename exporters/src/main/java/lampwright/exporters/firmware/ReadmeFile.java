package lampwright.exporters.firmware;

import java.util.List;
import java.util.stream.Collectors;
import lampwright.engine.project.Harmless;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ProjectJob;

/** The folder's README: the usual text, and what this project has on which pin. */
final class ReadmeFile {
  /** The line of the usual text that gives way to the project's pins. */
  private static final String PLACE = "@PINS@";

  private static final int MHZ = 1_000_000;

  private ReadmeFile() {}

  /**
   * The README of a project.
   *
   * @param usual the text that all projects share
   */
  static String of(String usual, ProjectJob job, Board board, PinPlan pins) {
    return usual.replace(PLACE, section(job, board, pins));
  }

  private static String section(ProjectJob job, Board board, PinPlan pins) {
    StringBuilder text = new StringBuilder("## What hangs where\n");
    text.append("Project: ").append(plain(job.project().name())).append("  \n");
    text.append("Controller: ").append(controller(job.project().rig(), board)).append("\n\n");
    text.append("| number | chain or output | pin | what it is |\n| --- | --- | --- | --- |\n");
    Rig rig = job.project().rig();
    for (int i = 0; i < rig.chains().size(); i++) {
      var chain = rig.chains().get(i);
      String what = chain.pixels() + " pixels, " + chain.type().id();
      row(text, i, "chain " + chain.id(), pin(pins.chains(), i), what);
    }
    for (int i = 0; i < rig.outputs().size(); i++) {
      String id = rig.outputs().get(i).id();
      row(text, i, "output " + id, pin(pins.outputs(), i), "PWM for a driver");
    }
    text.append("\nScenes, by number: ");
    text.append(
        job.tables().stream()
            .map(table -> "`" + table.scene().id() + "`")
            .collect(Collectors.joining(", ")));
    return text.append('.').toString();
  }

  private static String controller(Rig rig, Board board) {
    String name = board.controller().name();
    if (!board.driven()) {
      return name + ": your own code drives the pins";
    }
    String clocked = name + " at " + board.hertz() / MHZ + " MHz";
    return rig.controller().isPresent() ? clocked : clocked + ", as the project names none";
  }

  private static String pin(List<Pin> pins, int number) {
    return number < pins.size() ? pins.get(number).name() : "yours";
  }

  // Ids are lower-case letters, digits and hyphens; the names of pins and types are ours.
  private static void row(StringBuilder text, int number, String what, String pin, String note) {
    text.append("| ").append(number).append(" | ").append(what).append(" | **").append(pin);
    text.append("** | ").append(note).append(" |\n");
  }

  /**
   * Text of people as Markdown that says what it says and does nothing: every mark of punctuation
   * has a backslash before it (CommonMark 0.30, section 2.4).
   */
  static String plain(String text) {
    return Harmless.text(text, Harmless.MAX_MESSAGE).replaceAll("[!-/:-@\\[-`{-~]", "\\\\$0");
  }
}
