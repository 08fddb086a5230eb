package lampwright.exporters.packed;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The corpus and its packed data, made once. */
final class PackedCorpus {
  private static final List<Corpus.Table> TABLES = Corpus.all();
  private static final Map<String, byte[]> PACKED = new HashMap<>();

  private PackedCorpus() {}

  static List<Corpus.Table> tables() {
    return TABLES;
  }

  static Corpus.Table table(String name) {
    return TABLES.stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
  }

  static synchronized byte[] packed(Corpus.Table table) {
    return PACKED
        .computeIfAbsent(
            table.name(),
            name -> Packer.pack(table.layout(), List.of(table.scene()), PackProgress.NONE).data())
        .clone();
  }
}
