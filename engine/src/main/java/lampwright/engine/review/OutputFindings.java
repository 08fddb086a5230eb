package lampwright.engine.review;

import java.util.function.Consumer;
import lampwright.engine.document.Project;
import lampwright.engine.meter.OutputCircuit;
import lampwright.engine.meter.SeriesResistor;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Rig;

/** Findings on the strings of LEDs on outputs. The rating of a controller's pin is the target's. */
final class OutputFindings implements Reviewer {
  private static final String RESISTOR = "R = (Vs - n Vf) / If, common practice";
  private static final String HEADROOM =
      "constant-current drivers need 0.5 to 1 V above their LEDs, common practice";
  private static final String MARGIN = "a fifth of the supply, common practice";

  @Override
  public void project(Project project, Consumer<Finding> found) {
    Rig rig = project.rig();
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      if (output.milliamps() > 0) {
        string(output, OutputCircuit.of(rig, output), "rig.outputs[" + i + "].ledsInSeries", found);
      }
    }
  }

  private static void string(
      DriverOutput output, OutputCircuit circuit, String path, Consumer<Finding> found) {
    Subject subject = new Subject.OneOutput(output.id());
    if (!circuit.lights()) {
      found.accept(
          string(Code.OUTPUT_CANNOT_LIGHT, subject, output, circuit)
              .at(path)
              .source(circuit.supply() == OutputSupply.VOLTAGE ? RESISTOR : HEADROOM)
              .make());
    } else if (circuit.supply() == OutputSupply.CURRENT) {
      headroom(output, circuit, subject, path, found);
    } else {
      circuit
          .resistor()
          .filter(resistor -> !resistor.hasMargin())
          .ifPresent(resistor -> found.accept(margin(resistor, subject, circuit).at(path).make()));
    }
  }

  private static void headroom(
      DriverOutput output,
      OutputCircuit circuit,
      Subject subject,
      String path,
      Consumer<Finding> found) {
    boolean tight = circuit.hasHeadroom(OutputCircuit.LEAST_HEADROOM_VOLTS);
    if (!circuit.hasHeadroom(OutputCircuit.SURE_HEADROOM_VOLTS)) {
      double needed =
          tight ? OutputCircuit.SURE_HEADROOM_VOLTS : OutputCircuit.LEAST_HEADROOM_VOLTS;
      found.accept(
          string(
                  tight ? Code.OUTPUT_HEADROOM_TIGHT : Code.OUTPUT_HEADROOM,
                  subject,
                  output,
                  circuit)
              .with("left", Figure.volts(circuit.headroomVolts()))
              .with("needed", Figure.volts(needed))
              .at(path)
              .source(HEADROOM)
              .make());
    }
  }

  private static Finding.Draft string(
      Code code, Subject subject, DriverOutput output, OutputCircuit circuit) {
    return Finding.of(code, subject)
        .with("leds", Figure.count(output.ledsInSeries()))
        .with("volts", Figure.volts(circuit.stringVolts()))
        .with("limit", Figure.volts(circuit.volts()));
  }

  private static Finding.Draft margin(
      SeriesResistor resistor, Subject subject, OutputCircuit circuit) {
    return Finding.of(Code.RESISTOR_MARGIN, subject)
        .with("drop", Figure.volts(resistor.dropVolts()))
        .with("current", Figure.of(resistor.milliamps(), 1, Unit.MILLIAMPS))
        .with("high", Figure.of(resistor.milliampsAtHighSupply(), 1, Unit.MILLIAMPS))
        .with("limit", Figure.volts(SeriesResistor.LEAST_DROP_SHARE * circuit.volts()))
        .source(MARGIN);
  }
}
