package lampwright.exporters.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.function.Function;
import lampwright.exporters.ExportJob;
import lampwright.exporters.OutsideTools.Result;
import lampwright.exporters.OutsideTools.Tool;

/** The C program that prints back a table. */
final class CProgram {
  private CProgram() {}

  /**
   * Builds and runs it.
   *
   * @param folder where the scene's header and source are
   * @param compiler runs a compiler with these arguments in that folder
   */
  static byte[] printTable(Path folder, ExportJob job, Function<String[], Result> compiler)
      throws IOException {
    try (InputStream source = CProgram.class.getResourceAsStream("/c/print_table.c")) {
      Files.write(folder.resolve("print_table.c"), Objects.requireNonNull(source).readAllBytes());
    }
    String[] arguments = {
      "-I.",
      "-DSCENE=" + CText.name(job.scene().id()),
      "-DSCENE_HEADER=\"" + job.fileName("h") + "\"",
      "print_table.c",
      "./" + job.fileName("c"),
      "-o",
      "print_table"
    };
    compiler.apply(arguments).quietOut();
    return new Tool(folder.resolve("print_table")).run(folder).quietOut();
  }
}
