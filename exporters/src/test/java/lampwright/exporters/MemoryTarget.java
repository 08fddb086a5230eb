package lampwright.exporters;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Keeps exported files in memory, and which streams are still open. */
public final class MemoryTarget implements ExportTarget {
  private final Map<String, ByteArrayOutputStream> files = new LinkedHashMap<>();
  private final List<String> open = new ArrayList<>();

  /** A target without files. */
  public MemoryTarget() {}

  /** The files of one export. */
  public static MemoryTarget of(Exporter exporter, ExportJob job) {
    MemoryTarget target = new MemoryTarget();
    try {
      exporter.export(job, target, Progress.SILENT);
    } catch (IOException | CancelledException e) {
      throw new AssertionError(e);
    }
    return target;
  }

  @Override
  public OutputStream open(String fileName) {
    if (!open.isEmpty() || files.containsKey(fileName)) {
      throw new AssertionError("opened " + fileName + " while open: " + open);
    }
    open.add(fileName);
    ByteArrayOutputStream file =
        new ByteArrayOutputStream() {
          @Override
          public void close() {
            open.remove(fileName);
          }
        };
    files.put(fileName, file);
    return file;
  }

  /** Names of all files opened, in that order. */
  public List<String> names() {
    return List.copyOf(files.keySet());
  }

  /** Names of the files that were not closed. */
  public List<String> stillOpen() {
    return List.copyOf(open);
  }

  public byte[] bytes(String name) {
    return files.get(name).toByteArray();
  }

  public String text(String name) {
    return new String(bytes(name), StandardCharsets.US_ASCII);
  }

  /** Copies every file into a folder. */
  public void saveTo(Path folder) throws IOException {
    for (String name : names()) {
      Files.write(folder.resolve(name), bytes(name));
    }
  }
}
