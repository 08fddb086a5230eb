package lampwright.exporters.table;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.zip.CRC32;
import lampwright.engine.check.Fault;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.review.Unit;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;
import lampwright.exporters.target.Target;

/** A header and a source file for C99 and C++, with the table in program memory on AVR. */
final class CExporter extends TableExporter {
  /** avr-gcc refuses greater arrays, since its ptrdiff_t has 16 bits. */
  static final int AVR_MAX_TABLE_BYTES = 32_767;

  // Counts and offsets are unsigned numbers of 32 bits on the controllers.
  private static final long MAX_TABLE_BYTES = 0xFFFF_FFFFL;

  // Headers of C11 and of POSIX that compilers' own headers include.
  private static final Set<String> COMPILER_HEADERS =
      Set.of(
          "assert",
          "complex",
          "ctype",
          "endian",
          "errno",
          "features",
          "fenv",
          "float",
          "inttypes",
          "iso646",
          "limits",
          "locale",
          "math",
          "newlib",
          "setjmp",
          "signal",
          "stdalign",
          "stdarg",
          "stdatomic",
          "stdbool",
          "stddef",
          "stdint",
          "stdio",
          "stdlib",
          "stdnoreturn",
          "string",
          "strings",
          "tgmath",
          "threads",
          "time",
          "uchar",
          "unistd",
          "wchar",
          "wctype");

  @Override
  public String key() {
    return "c";
  }

  @Override
  public String summary() {
    return "C source: the frame table as an array (.h, .c)";
  }

  @Override
  public ExportFacts facts(ExportJob job) {
    return new ExportFacts(
        key(),
        job.table().bytes(),
        List.of(job.fileName("c"), job.fileName("h")),
        cautions(job),
        faults(job.table().bytes()));
  }

  static List<Fault> faults(long bytes) {
    if (bytes <= MAX_TABLE_BYTES) {
      return List.of();
    }
    return List.of(
        new Fault(
            "c",
            bytes + " bytes",
            "must be at most "
                + MAX_TABLE_BYTES
                + " bytes, as many as a C array of 32-bit"
                + " controllers can have; use bin"));
  }

  private static List<Finding> cautions(ExportJob job) {
    List<Finding> found = new ArrayList<>();
    Figure header = Figure.words(job.fileName("h"));
    Subject subject = new Subject.OneExport("c");
    found.addAll(RawTable.tooLarge(job, "c"));
    int longest = longestArray(job);
    if (job.table().bytes() > longest && found.isEmpty()) {
      found.add(
          Finding.of(Code.AVR_ARRAY, subject)
              .with("file", header)
              .with("size", Figure.count(job.table().bytes(), Unit.BYTES))
              .with("limit", Figure.count(AVR_MAX_TABLE_BYTES, Unit.BYTES))
              .with("remedy", Figure.words(avrRemedy(job)))
              .in(job.scene())
              .make());
    }
    if (COMPILER_HEADERS.contains(job.scene().id())) {
      found.add(
          Finding.of(Code.HEADER_NAME, subject)
              .with("file", header)
              .with("suggestion", Figure.words(job.scene().id() + "-scene"))
              .in(job.scene())
              .make());
    }
    return found;
  }

  // Of a project that names no controller, it may be an AVR.
  private static int longestArray(ExportJob job) {
    return job.project()
        .rig()
        .controller()
        .map(controller -> Target.of(controller).longestArrayBytes().orElse(Integer.MAX_VALUE))
        .orElse(AVR_MAX_TABLE_BYTES);
  }

  private static String avrRemedy(ExportJob job) {
    int frames = AVR_MAX_TABLE_BYTES / job.table().layout().bytes();
    if (frames == 0) {
      return "no frame of this rig fits; use another controller";
    }
    return "shorten the scene or lower its frame rate, to at most "
        + frames
        + (frames == 1 ? " frame" : " frames")
        + ", or use another controller";
  }

  @Override
  void write(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    CNames names = new CNames(job.scene());
    // Tells this export from others: a header beside a table of another one does not compile.
    CRC32 crc = new CRC32();
    crc.update(header(job, names, mark(job, names, 0)));
    writeFile(
        target,
        job.fileName("c"),
        out -> {
          CArray.begin(job, names, out);
          writeFrames(
              job.table(),
              progress,
              frame -> {
                crc.update(frame);
                CArray.frame(frame, out);
              });
          CArray.end(job, mark(job, names, crc.getValue()), out);
        });
    byte[] header = header(job, names, mark(job, names, crc.getValue()));
    writeFile(target, job.fileName("h"), out -> out.bytes(header, 0, header.length));
  }

  private static ExportMark mark(ExportJob job, CNames names, long crc) {
    return new ExportMark(job.fileName("h"), names.constant("EXPORT"), crc);
  }

  private static byte[] header(ExportJob job, CNames names, ExportMark mark) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    BlockOutput out = new BlockOutput(bytes);
    new CHeader(job, names, mark, out).write();
    out.flush();
    return bytes.toByteArray();
  }
}
