package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;

import lampwright.engine.document.Project;

/**
 * Reads whatever bytes come: they give a project or problems, and a project that is written and
 * read again is the same. Any exception is a fault. Entry of Jazzer, which calls a public method of
 * this name.
 */
public final class FuzzRead {
  private FuzzRead() {}

  /** Reads one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    ReadResult result = ProjectReader.read("input", input);
    if (result.project().isEmpty()) {
      if (result.problems().isEmpty()) {
        throw new IllegalStateException("neither a project nor a problem");
      }
      return;
    }
    Project project = result.project().get();
    String text = ProjectWriter.write(project);
    Project again =
        ProjectReader.read("again", text.getBytes(UTF_8))
            .project()
            .orElseThrow(() -> new IllegalStateException("not read again: " + text));
    if (!again.equals(project)) {
      throw new IllegalStateException("another project when read again: " + text);
    }
  }
}
