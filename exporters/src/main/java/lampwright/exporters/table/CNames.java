package lampwright.exporters.table;

import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.scene.Scene;

/** The C names of a scene's constants, table and functions. */
final class CNames {
  private final String macroStem;
  private final String objectStem;

  CNames(Scene scene) {
    String name = CText.name(scene.id());
    this.macroStem = "LW_" + name + "_";
    this.objectStem = "lw_" + name + "_";
  }

  /** A constant of the scene, such as {@code LW_working_FRAME_COUNT}. */
  String constant(String what) {
    return macroStem + what;
  }

  /** A constant of a chain, such as {@code LW_working_CHAIN_roof_OFFSET}. */
  String constant(Chain chain, String what) {
    return macroStem + "CHAIN_" + CText.name(chain.id()) + "_" + what;
  }

  /** A constant of an output, such as {@code LW_working_OUTPUT_amber_rear_OFFSET}. */
  String constant(DriverOutput output, String what) {
    return macroStem + "OUTPUT_" + CText.name(output.id()) + "_" + what;
  }

  String table() {
    return objectStem + "table";
  }

  String readByte() {
    return objectStem + "byte";
  }

  String readFrame() {
    return objectStem + "frame";
  }
}
