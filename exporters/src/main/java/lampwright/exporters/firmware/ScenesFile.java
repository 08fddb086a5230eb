package lampwright.exporters.firmware;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.table.CText;

/** The packed scenes as a C header and source. */
final class ScenesFile {
  private static final BigDecimal MILLIHERTZ = BigDecimal.valueOf(1000);

  /** Keeps lines below 100 characters. */
  private static final int BYTES_A_LINE = 20;

  private ScenesFile() {}

  static String header(ProjectJob job, int packedBytes, boolean reacts) {
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
      text.append("#define ").append(name).append("_FRAMES ").append(table.frameCount());
      text.append("UL\n");
    }
    lamps(text, job);
    String first = name(job.tables().get(0));
    text.append("\n/* The scene that the examples play. */\n");
    text.append("#define LAMPWRIGHT_FIRST_SCENE ").append(first).append('\n');
    text.append("#define LAMPWRIGHT_FIRST_MILLIHERTZ ").append(first).append("_MILLIHERTZ\n\n");
    if (reacts) {
      // All scenes of situations have one rate.
      String scene = job.show().orElseThrow().firstScene().id();
      text.append("/* The frame rate of the situations. */\n");
      text.append("#define LAMPWRIGHT_SHOW_MILLIHERTZ LAMPWRIGHT_SCENE_");
      text.append(CText.name(scene)).append("_MILLIHERTZ\n\n");
    }
    return text.append("#ifdef __cplusplus\n}\n#endif\n\n#endif\n").toString();
  }

  static String source(byte[] packed) {
    StringBuilder text = new StringBuilder(packed.length * 5 + 200);
    text.append("#include \"lampwright_scenes.h\"\n\n#include \"lampwright_config.h\"\n\n");
    text.append("/* clang-format off */\n");
    text.append("const uint8_t lampwright_packed[LAMPWRIGHT_PACKED_SIZE] LAMPWRIGHT_DATA = {");
    for (int i = 0; i < packed.length; i++) {
      text.append(i % BYTES_A_LINE == 0 ? "\n    " : " ").append(packed[i] & 0xFF).append(',');
    }
    return text.append("\n};\n/* clang-format on */\n").toString();
  }

  /** Each lamp's number, and where its bytes are in a frame. */
  private static void lamps(StringBuilder text, ProjectJob job) {
    FrameLayout layout = job.tables().get(0).layout();
    List<Lamp> lamps = layout.rig().lamps();
    for (int i = 0; i < lamps.size(); i++) {
      Lamp lamp = lamps.get(i);
      String name = "LAMPWRIGHT_LAMP_" + CText.name(lamp.id());
      text.append("\n/* Lamp ").append(lamp.id());
      if (!lamp.name().isEmpty()) {
        text.append(", ").append(CText.comment(lamp.name()));
      }
      text.append(". */\n");
      define(text, name, i);
      if (lamp.fitting() instanceof Fitting.Output fitted) {
        define(text, name + "_OFFSET", layout.outputsOffset() + output(layout.rig(), fitted));
      } else if (lamp.fitting() instanceof Fitting.Pixels fitted) {
        define(text, name + "_RUNS", fitted.runs().size());
        for (int run = 0; run < fitted.runs().size(); run++) {
          run(text, name + "_RUN" + run, layout, fitted.runs().get(run));
        }
      }
    }
  }

  private static int output(Rig rig, Fitting.Output fitted) {
    return rig.outputs().stream().map(DriverOutput::id).toList().indexOf(fitted.output());
  }

  private static void run(StringBuilder text, String name, FrameLayout layout, PixelRun run) {
    List<Chain> chains = layout.rig().chains();
    int chain = chains.stream().map(Chain::id).toList().indexOf(run.chain());
    int bytesPerPixel = chains.get(chain).order().size();
    define(text, name + "_CHAIN", chain);
    define(text, name + "_OFFSET", layout.chainOffset(chain) + run.from() * bytesPerPixel);
    define(text, name + "_COUNT", run.count());
    define(text, name + "_PIXEL_BYTES", bytesPerPixel);
  }

  private static void define(StringBuilder text, String name, int value) {
    text.append("#define ").append(name).append(' ').append(value).append('\n');
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
