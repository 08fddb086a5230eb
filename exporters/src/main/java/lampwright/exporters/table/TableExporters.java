package lampwright.exporters.table;

import java.util.List;
import lampwright.exporters.Exporter;

/** The formats that write every byte of the frame table. */
public final class TableExporters {
  private TableExporters() {}

  /** All of them, in the order in which they are listed to people. */
  public static List<Exporter> all() {
    return List.of(new CExporter(), new BinExporter(), new HexExporter(), new CsvExporter());
  }
}
