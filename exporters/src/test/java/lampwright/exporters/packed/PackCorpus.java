package lampwright.exporters.packed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lampwright.exporters.packed.encode.PackProgress;
import lampwright.exporters.packed.encode.Packer;
import lampwright.exporters.target.Target;

/** Writes the packed corpus. */
final class PackCorpus {
  private PackCorpus() {}

  public static void main(String[] args) throws IOException {
    Path dir = Path.of(args[0]);
    for (Corpus.Table table : Corpus.all()) {
      byte[] data =
          Packer.pack(
                  table.layout(),
                  List.of(table.scene()),
                  Target.slowestDecodeCost(),
                  PackProgress.NONE)
              .data();
      Files.write(dir.resolve(table.name() + ".packed"), data);
      StringBuilder c = new StringBuilder();
      c.append("#include <stdint.h>\n#include \"lampwright_config.h\"\n");
      c.append("extern const uint8_t packed_data[] LAMPWRIGHT_DATA;\n");
      c.append("extern const uint16_t packed_size, packed_frames;\n");
      c.append("const uint16_t packed_size = ").append(data.length);
      c.append(", packed_frames = ").append(table.frames() + 5).append(";\n");
      c.append("const uint8_t packed_data[] LAMPWRIGHT_DATA = {");
      for (byte b : data) {
        c.append(b & 255).append(',');
      }
      Files.writeString(dir.resolve(table.name() + ".c"), c.append("};\n"));
    }
  }
}
