package lampwright.exporters.packed;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.exporters.packed.encode.PackProgress;
import lampwright.exporters.packed.encode.Packer;
import lampwright.exporters.target.Target;

/** The corpus and its packed data, made once. */
public final class PackedCorpus {
  private static final List<Corpus.Table> TABLES = Corpus.all();
  private static final Map<String, byte[]> PACKED = new HashMap<>();

  private PackedCorpus() {}

  public static List<Corpus.Table> tables() {
    return TABLES;
  }

  public static Corpus.Table table(String name) {
    return TABLES.stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
  }

  public static synchronized byte[] packed(Corpus.Table table) {
    return PACKED
        .computeIfAbsent(
            table.name(),
            name ->
                Packer.pack(
                        table.layout(),
                        List.of(table.scene()),
                        Target.slowestDecodeCost(),
                        PackProgress.NONE)
                    .data())
        .clone();
  }
}
