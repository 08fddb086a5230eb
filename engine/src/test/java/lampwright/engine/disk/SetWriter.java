package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A program of its own that writes sets of files, and may drop dead on the way. */
final class SetWriter {
  static final int KILLED = 77;
  static final int BEFORE_COMMIT = -1;
  static final int FOR_EVER = -2;

  private SetWriter() {}

  static int run(Path folder, String text, int goodMoves, List<String> names) throws Exception {
    return start(folder, text, goodMoves, names).waitFor();
  }

  static Process start(Path folder, String text, int goodMoves, List<String> names)
      throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                SetWriter.class.getName(),
                folder.toString(),
                text,
                Integer.toString(goodMoves)));
    command.addAll(names);
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    int good = Integer.parseInt(args[2]);
    List<String> names = List.of(args).subList(3, args.length);
    if (good != FOR_EVER) {
      write(folder, args[1], good, names);
      return;
    }
    for (int run = 0; run < 100_000; run++) {
      write(folder, args[1] + run, Integer.MAX_VALUE, names);
      if (run == 0) {
        System.out.print('.');
        System.out.flush();
      }
    }
  }

  private static void write(Path folder, String text, int good, List<String> names)
      throws IOException {
    int[] moves = {0};
    Mover mover =
        (from, to) -> {
          if (moves[0]++ == good) {
            Runtime.getRuntime().halt(KILLED);
          }
          Mover.ATOMIC.move(from, to);
        };
    try (FileSet set = FileSet.in(folder, mover)) {
      for (String name : names) {
        try (OutputStream out = set.open(name)) {
          out.write(text.getBytes(UTF_8));
        }
      }
      if (good == BEFORE_COMMIT) {
        Runtime.getRuntime().halt(KILLED);
      }
      set.commit();
    }
  }
}
