package lampwright.app.startup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Objects;
import lampwright.app.Main;

/** The commands as they are usually run, one after the other, for the classes that they load. */
public final class Rehearsal {
  private static final List<String> SAMPLES =
      List.of("bench-rgbw", "recovery-tractor", "harbour-dusk");

  /** The word for the commands alone that are read without picocli. */
  static final String PLAIN = "plain";

  private Rehearsal() {}

  /**
   * Runs them in the working folder.
   *
   * @param arguments {@link #PLAIN} or none
   */
  public static void main(String[] arguments) throws IOException {
    boolean all = !List.of(arguments).contains(PLAIN);
    for (String name : SAMPLES) {
      Path file = Path.of(name + ".lampwright.json");
      copy(file);
      run("check", file.toString());
      run("check", file.toString(), "--json");
      run("measure", file.toString());
      if (all) {
        run("export", file.toString(), "--to", "out", "--as", "c,bin,packed,hex,csv,firmware");
      }
    }
    if (all) {
      run("models");
      run("pixels");
      run("--version");
      run("--help");
    }
  }

  private static void copy(Path file) throws IOException {
    try (InputStream sample =
        Objects.requireNonNull(
            Rehearsal.class.getResourceAsStream("/lampwright/app/samples/" + file))) {
      Files.copy(sample, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static void run(String... words) {
    Main.run(words);
  }
}
