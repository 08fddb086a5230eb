package lampwright.exporters.target;

import java.util.function.Consumer;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.Rig;

/** What LEDs on a controller's own pins draw from them. */
final class PinLoads {
  private final Target target;
  private final PinCurrents limits;
  private final Consumer<Finding> found;

  PinLoads(Target target, PinCurrents limits, Consumer<Finding> found) {
    this.target = target;
    this.limits = limits;
    this.found = found;
  }

  void judge(Rig rig) {
    double sum = 0;
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      if (output.mayHangOnPin()) {
        judge(output, "rig.outputs[" + i + "]");
      }
      sum += onPin(output) ? output.milliamps() : 0;
    }
    if (sum > limits.allMilliamps()) {
      found.accept(
          finding(Code.PINS_CURRENT, new Subject.Chip(target.name()), sum)
              .with("limit", Figure.milliamps(limits.allMilliamps()))
              .at("rig.outputs")
              .make());
    }
  }

  private void judge(DriverOutput output, String path) {
    Subject subject = new Subject.OneOutput(output.id());
    double milliamps = output.milliamps();
    if (milliamps > limits.pinMilliamps()) {
      Code code = onPin(output) ? Code.OUTPUT_PIN_CURRENT : Code.OUTPUT_PIN_UNSTATED;
      found.accept(
          finding(code, subject, milliamps)
              .with("limit", Figure.milliamps(limits.pinMilliamps()))
              .at(path + ".milliamps")
              .make());
    } else if (onPin(output) && limits.testMilliamps() > 0 && milliamps > limits.testMilliamps()) {
      found.accept(
          finding(Code.OUTPUT_PIN_HIGH, subject, milliamps)
              .with("limit", Figure.milliamps(limits.testMilliamps()))
              .at(path + ".milliamps")
              .make());
    }
  }

  private static boolean onPin(DriverOutput output) {
    return output.drive().filter(OutputDrive.PIN::equals).isPresent();
  }

  private Finding.Draft finding(Code code, Subject subject, double milliamps) {
    return Finding.of(code, subject)
        .with("current", Figure.milliamps(milliamps))
        .with("name", Figure.words(target.name()))
        .source(limits.source());
  }
}
