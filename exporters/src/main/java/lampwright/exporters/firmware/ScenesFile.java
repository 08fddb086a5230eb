package lampwright.exporters.firmware;

import java.math.BigDecimal;
import java.math.RoundingMode;
import lampwright.engine.render.FrameTable;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.table.CText;

/** The packed scenes as a C header and source. */
final class ScenesFile {
  private static final BigDecimal MILLIHERTZ = BigDecimal.valueOf(1000);
  private static final int BYTES_A_LINE = 20;

  private ScenesFile() {}

  static String header(ProjectJob job, int packedBytes) {
    StringBuilder text = new StringBuilder();
    text.append("#ifndef LAMPWRIGHT_SCENES_H\n#define LAMPWRIGHT_SCENES_H\n\n");
    text.append("#include <stdint.h>\n\n#ifdef __cplusplus\nextern \"C\" {\n#endif\n\n");
    text.append("/* Every scene, packed. In program memory on AVR. */\n");
    text.append("extern const uint8_t lampwright_packed[];\n");
    text.append("#define LAMPWRIGHT_PACKED_SIZE ").append(packedBytes).append("UL\n");
    for (int i = 0; i < job.tables().size(); i++) {
      FrameTable table = job.tables().get(i);
      String name = name(table);
      text.append("\n/* Scene ").append(table.scene().id()).append(": ");
      text.append(table.frameCount()).append(" frames at ");
      text.append(table.scene().framesPerSecond().toPlainString()).append(" frames/s, ");
      text.append(table.loops() ? "looping" : "once").append(". */\n");
      text.append("#define ").append(name).append(' ').append(i).append('\n');
      text.append("#define ").append(name).append("_MILLIHERTZ ").append(millihertz(table));
      text.append("UL\n");
    }
    String first = name(job.tables().get(0));
    text.append("\n/* The scene that the examples play. */\n");
    text.append("#define LAMPWRIGHT_FIRST_SCENE ").append(first).append('\n');
    text.append("#define LAMPWRIGHT_FIRST_MILLIHERTZ ").append(first).append("_MILLIHERTZ\n\n");
    return text.append("#ifdef __cplusplus\n}\n#endif\n\n#endif\n").toString();
  }

  static String source(byte[] packed) {
    StringBuilder text = new StringBuilder(packed.length * 5 + 200);
    text.append("#include \"lampwright_scenes.h\"\n\n#include \"lampwright_config.h\"\n\n");
    text.append("const uint8_t lampwright_packed[LAMPWRIGHT_PACKED_SIZE] LAMPWRIGHT_DATA = {");
    for (int i = 0; i < packed.length; i++) {
      text.append(i % BYTES_A_LINE == 0 ? "\n    " : " ").append(packed[i] & 0xFF).append(',');
    }
    return text.append("\n};\n").toString();
  }

  private static String name(FrameTable table) {
    return "LAMPWRIGHT_SCENE_" + CText.name(table.scene().id());
  }

  private static long millihertz(FrameTable table) {
    return table
        .scene()
        .framesPerSecond()
        .multiply(MILLIHERTZ)
        .setScale(0, RoundingMode.HALF_UP)
        .longValueExact();
  }
}
