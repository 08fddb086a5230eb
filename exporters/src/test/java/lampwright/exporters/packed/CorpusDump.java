package lampwright.exporters.packed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import lampwright.exporters.packed.encode.PackLayout;

/** Writes the corpus as bare frame tables, with a list of their layouts. */
final class CorpusDump {
  private CorpusDump() {}

  public static void main(String[] args) throws IOException {
    Path dir = Files.createDirectories(Path.of(args[0]));
    StringBuilder list = new StringBuilder();
    for (Corpus.Table table : Corpus.all()) {
      Files.write(dir.resolve(table.name() + ".bin"), table.bytes());
      list.append(table.name()).append(' ').append(table.frames()).append(' ');
      list.append(table.layout().frameBytes());
      for (PackLayout.LampColumns lamp : table.layout().lamps()) {
        list.append(' ')
            .append(lamp.columns().stream().map(String::valueOf).collect(Collectors.joining(",")));
      }
      list.append('\n');
    }
    Files.writeString(dir.resolve("list.txt"), list);
  }
}
