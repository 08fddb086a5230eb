package lampwright.app.command;

import java.util.concurrent.Callable;
import lampwright.engine.light.Checks;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelType;
import picocli.CommandLine.Command;

/** Lists the pixel types that every project knows. */
@Command(
    name = "pixels",
    mixinStandardHelpOptions = true,
    description = "Lists the built-in pixel types, their numbers and where these come from.",
    footer = {"", "Example:", "  lampwright pixels"})
final class PixelsCommand implements Callable<Integer> {
  private final Terminal terminal;

  PixelsCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    for (PixelType type : BuiltInPixelTypes.all()) {
      print(type);
    }
    return ExitCode.DONE;
  }

  private void print(PixelType type) {
    var out = terminal.out();
    out.println(type.id());
    out.println(
        "  order "
            + type.order().letters()
            + ", "
            + Checks.plain(type.volts())
            + " V, idle "
            + Checks.plain(type.idleMilliamps())
            + " mA");
    type.emitters()
        .forEach(
            (kind, emitter) ->
                out.println(
                    "  "
                        + kind.key()
                        + " x "
                        + Checks.plain(emitter.light().chromaticity().x())
                        + " y "
                        + Checks.plain(emitter.light().chromaticity().y())
                        + ", "
                        + Checks.plain(emitter.light().millicandela())
                        + " mcd, "
                        + Checks.plain(emitter.milliamps())
                        + " mA"));
    LineTiming line = type.line();
    out.println(
        "  0 bit "
            + Checks.plain(line.t0hNs())
            + " + "
            + Checks.plain(line.t0lNs())
            + " ns, 1 bit "
            + Checks.plain(line.t1hNs())
            + " + "
            + Checks.plain(line.t1lNs())
            + " ns, each within "
            + Checks.plain(line.toleranceNs())
            + " ns, reset "
            + Checks.plain(line.resetUs())
            + " us");
  }
}
