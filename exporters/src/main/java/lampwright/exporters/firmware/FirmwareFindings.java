package lampwright.exporters.firmware;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.check.Fault;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.target.Target;

/** What to know before a folder's firmware is put on a controller; its README says more. */
final class FirmwareFindings {
  private FirmwareFindings() {}

  static List<Finding> noScene(String format) {
    return ExportFacts.refused(
        format, List.of(new Fault("scenes", "none", "must have at least one scene")));
  }

  /**
   * What to know.
   *
   * @param format key of the exporter
   */
  static List<Finding> cautions(String format, Rig rig, Target target) {
    List<Finding> found = new ArrayList<>();
    Subject folder = new Subject.OneExport(format);
    found.add(Finding.of(Code.FLASHING_LIGHT, folder).make());
    found.add(Finding.of(Code.FIRST_POWER_UP, folder).make());
    if (!rig.outputs().isEmpty()) {
      found.add(Finding.of(Code.OUTPUT_IS_SIGNAL, folder).make());
    }
    if (rig.controller().isEmpty()) {
      found.add(
          Finding.of(Code.CONTROLLER_ASSUMED, folder)
              .with("name", Figure.words(target.clockedName()))
              .make());
    }
    found.addAll(target.cautions(rig));
    return found;
  }
}
