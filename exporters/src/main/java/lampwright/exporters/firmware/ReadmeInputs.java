package lampwright.exporters.firmware;

import java.util.Map;
import java.util.stream.Collectors;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.target.Target;

/** How the inputs of a model that reacts are read. */
final class ReadmeInputs {
  /** What an edge of a pulse takes with four channels on an AVR at 16 MHz: measured, us. */
  private static final double ROUTINE_US = 8;

  private static final double MEASURED_HERTZ = 16e6;

  private ReadmeInputs() {}

  static Map<String, String> words(Rig rig, Target target) {
    String table =
        rig.inputs().stream()
            .map(
                input ->
                    "| "
                        + input.id()
                        + " | **"
                        + input.pin().map(target::named).map(Pin::name).orElse("yours")
                        + "** | "
                        + input.kind().key()
                        + " |")
            .collect(Collectors.joining("\n", "| input | pin | kind |\n| --- | --- | --- |\n", ""));
    double hertz = target.hertz().orElse((int) MEASURED_HERTZ);
    return Map.of(
        "INPUTS",
        table,
        "SERVO",
        ReadmeFile.number(target.servoErrorUs(), 1),
        "ROUTINE",
        ReadmeFile.number(ROUTINE_US * MEASURED_HERTZ / hertz, 0));
  }
}
