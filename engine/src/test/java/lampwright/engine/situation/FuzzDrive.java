package lampwright.engine.situation;

import java.util.List;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;

/**
 * Reads whatever bytes come as a recorded drive: they give a drive or problems, and a drive is in
 * order and within its limits. Any exception is a fault. Entry of Jazzer, which calls a public
 * method of this name.
 */
public final class FuzzDrive {
  private static final List<Input> INPUTS =
      List.of(Input.of("throttle", InputKind.SERVO_PULSE), Input.of("tow-bar", InputKind.SWITCH));

  private FuzzDrive() {}

  /** Reads one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    DriveReader.Result result = DriveReader.read(input, INPUTS);
    if (result.drive().isPresent() != result.problems().isEmpty()) {
      throw new IllegalStateException("a drive and problems, or neither");
    }
    for (DriveReader.Problem problem : result.problems()) {
      if (problem.text().chars().anyMatch(Character::isISOControl)) {
        throw new IllegalStateException("a problem with a control character");
      }
    }
    result.drive().ifPresent(drive -> check(drive.rows()));
  }

  private static void check(List<Drive.Row> rows) {
    for (int i = 0; i < rows.size(); i++) {
      Drive.Row row = rows.get(i);
      boolean known = row.input() >= 0 && row.input() < INPUTS.size() && row.value() >= 0;
      boolean inOrder = i == 0 || rows.get(i - 1).ms().compareTo(row.ms()) <= 0;
      if (!known || !inOrder || row.ms().signum() < 0) {
        throw new IllegalStateException("row " + row);
      }
    }
  }
}
