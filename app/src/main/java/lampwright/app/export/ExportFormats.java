package lampwright.app.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterRegistry;
import lampwright.exporters.firmware.FirmwareExporter;
import lampwright.exporters.firmware.Uf2Exporter;
import lampwright.exporters.firmware.Uf2ShowExporter;
import lampwright.exporters.packed.encode.PackedExporter;
import lampwright.exporters.table.TableExporters;
import lampwright.exporters.target.Target;

/** The formats that can be exported, by the words for them on the command line. */
public final class ExportFormats {
  static final FirmwareExporter FIRMWARE_EXPORTER = new FirmwareExporter();
  static final Uf2ShowExporter UF2_SHOW_EXPORTER = new Uf2ShowExporter();

  /** The format that writes one folder for all scenes together. */
  public static final String FIRMWARE = FIRMWARE_EXPORTER.key();

  /** The format whose bytes are at an address. */
  public static final String HEX = "hex";

  private static final ExporterRegistry OF_ONE_SCENE = registry();

  private ExportFormats() {}

  /** Every format, in the order in which they are listed to people; the folder last. */
  public static List<String> keys() {
    List<String> keys = new ArrayList<>(OF_ONE_SCENE.keys());
    keys.add(FIRMWARE);
    return keys;
  }

  /** The same with what the rig's controller takes as it is before the others. */
  public static List<String> keys(Rig rig) {
    List<String> keys = new ArrayList<>(keys());
    if (Uf2Exporter.isFor(rig)) {
      keys.remove(Uf2Exporter.KEY);
      keys.add(0, Uf2Exporter.KEY);
    }
    return keys;
  }

  /** What a format writes, in a line for people. */
  public static String summary(String key) {
    return ofOneScene(key).map(Exporter::summary).orElseGet(FIRMWARE_EXPORTER::summary);
  }

  /**
   * Reads an address as people write it: {@code 0x4000}, or in decimal digits.
   *
   * @throws IllegalArgumentException if it is none, or more than Intel HEX can reach
   */
  public static ExportOptions optionsAt(String address) {
    boolean hex = address.startsWith("0x") || address.startsWith("0X");
    return new ExportOptions(
        hex ? Long.parseLong(address.substring(2), 16) : Long.parseLong(address));
  }

  static Optional<Exporter> ofOneScene(String key) {
    return OF_ONE_SCENE.find(key);
  }

  private static ExporterRegistry registry() {
    List<Exporter> all = new ArrayList<>(TableExporters.all());
    all.add(new PackedExporter(Target.slowestDecodeCost()));
    all.add(new Uf2Exporter());
    return ExporterRegistry.of(all);
  }
}
