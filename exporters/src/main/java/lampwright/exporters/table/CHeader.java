package lampwright.exporters.table;

import java.io.IOException;
import java.util.List;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportJob;

/** The header file: what the table is, its constants, and how it is read. */
final class CHeader {
  private final ExportJob job;
  private final CNames names;
  private final ExportMark mark;
  private final BlockOutput out;
  private final FrameLayout layout;
  private final FrameRate rate;

  CHeader(ExportJob job, CNames names, ExportMark mark, BlockOutput out) {
    this.mark = mark;
    this.job = job;
    this.names = names;
    this.out = out;
    this.layout = job.table().layout();
    this.rate = FrameRate.of(job.scene().framesPerSecond());
  }

  void write() throws IOException {
    new CHeaderComment(job, names, rate, out).write();
    out.line("#ifndef " + names.constant("INCLUDED"));
    out.line("#define " + names.constant("INCLUDED"));
    out.line("");
    includes();
    sceneConstants();
    rigConstants();
    table();
    out.line("");
    out.line("#endif");
  }

  private void includes() throws IOException {
    lines(
        "#include <stddef.h>",
        "#include <stdint.h>",
        "#include <string.h>",
        "#if defined(__AVR__)",
        "#include <avr/pgmspace.h>",
        "#define " + names.constant("MEMORY") + " PROGMEM",
        "#else",
        "#define " + names.constant("MEMORY"),
        "#endif",
        "");
    if (job.table().bytes() > CExporter.AVR_MAX_TABLE_BYTES) {
      lines(
          "#if defined(__AVR__)",
          "#error \"This table is too large for AVR: one array has at most "
              + CExporter.AVR_MAX_TABLE_BYTES
              + " bytes. Shorten the scene or lower its frame rate.\"",
          "#endif",
          "");
    }
  }

  private void sceneConstants() throws IOException {
    define("FRAME_COUNT", job.table().frameCount() + "U");
    define("FRAME_BYTES", layout.bytes() + "U");
    define("TABLE_BYTES", job.table().bytes() + "U");
    out.line("");
    if (!rate.wholeMicroseconds()) {
      out.line("/* Rounded; exact: 1000000 x FPS_DENOMINATOR / FPS_NUMERATOR. */");
    }
    define("FRAME_US", rate.microseconds() + "UL");
    if (!rate.exact()) {
      out.line(
          "/* The nearest fraction of 32-bit numbers to "
              + job.scene().framesPerSecond().toPlainString()
              + ". */");
    }
    define("FPS_NUMERATOR", rate.numerator() + "UL");
    define("FPS_DENOMINATOR", rate.denominator() + "UL");
    out.line("");
    out.line("/* 1: loops; 0: plays once. */");
    define("LOOP", job.scene().loop() ? "1" : "0");
    out.line("");
    out.line("/* Identifies this export; the .c has the same number. */");
    out.line(mark.define());
  }

  private void rigConstants() throws IOException {
    Rig rig = layout.rig();
    List<Chain> chains = rig.chains();
    for (int c = 0; c < chains.size(); c++) {
      Chain chain = chains.get(c);
      out.line("");
      define(names.constant(chain, "OFFSET"), layout.chainOffset(c));
      define(names.constant(chain, "BYTES"), chain.bytes());
      define(names.constant(chain, "PIXELS"), chain.pixels());
      define(names.constant(chain, "PIXEL_BYTES"), chain.order().size());
    }
    List<DriverOutput> outputs = rig.outputs();
    if (!outputs.isEmpty()) {
      out.line("");
    }
    for (int o = 0; o < outputs.size(); o++) {
      define(names.constant(outputs.get(o), "OFFSET"), layout.outputsOffset() + o);
    }
  }

  private void table() throws IOException {
    String table = names.table();
    String index = "frame * " + names.constant("FRAME_BYTES");
    lines(
        "",
        "#ifdef __cplusplus",
        "extern \"C\" {",
        "#endif",
        "",
        "extern const uint8_t "
            + table
            + "["
            + names.constant("TABLE_BYTES")
            + "] "
            + names.constant("MEMORY")
            + ";",
        "",
        "/* One byte: frame below FRAME_COUNT, offset below FRAME_BYTES. */",
        "static inline uint8_t " + names.readByte() + "(size_t frame, size_t offset)",
        "{",
        "#if defined(__AVR__)",
        "    return pgm_read_byte(&" + table + "[" + index + " + offset]);",
        "#else",
        "    return " + table + "[" + index + " + offset];",
        "#endif",
        "}",
        "",
        "/* Copies a frame, below FRAME_COUNT, to a buffer of at least FRAME_BYTES bytes. */",
        "static inline void " + names.readFrame() + "(size_t frame, uint8_t *to)",
        "{",
        "#if defined(__AVR__)",
        "    memcpy_P(to, &" + table + "[" + index + "], " + names.constant("FRAME_BYTES") + ");",
        "#else",
        "    memcpy(to, &" + table + "[" + index + "], " + names.constant("FRAME_BYTES") + ");",
        "#endif",
        "}",
        "",
        "#ifdef __cplusplus",
        "}",
        "#endif");
  }

  private void define(String what, String value) throws IOException {
    out.line("#define " + names.constant(what) + " " + value);
  }

  private void define(String constant, int value) throws IOException {
    out.line("#define " + constant + " " + value + "U");
  }

  private void lines(String... lines) throws IOException {
    for (String line : lines) {
      out.line(line);
    }
  }
}
