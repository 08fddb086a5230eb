package lampwright.exporters.table;

import java.io.IOException;
import java.util.List;
import lampwright.engine.check.Fault;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;

/** Intel HEX from an address that the job's options name. */
final class HexExporter extends TableExporter {
  private static final long SPACE = ExportOptions.MAX_ADDRESS + 1;

  @Override
  public String key() {
    return "hex";
  }

  @Override
  public String summary() {
    return "frame table as Intel HEX (.hex)";
  }

  @Override
  public ExportFacts facts(ExportJob job) {
    return new ExportFacts(
        key(),
        job.table().bytes(),
        List.of(job.fileName("hex")),
        RawTable.tooLarge(job, key()),
        faults(job.table().bytes(), job.options().hexAddress()));
  }

  static List<Fault> faults(long bytes, long address) {
    if (bytes > SPACE) {
      return List.of(
          new Fault(
              "hex",
              bytes + " bytes",
              "must be at most "
                  + SPACE
                  + " bytes, all that its addresses can tell apart; use bin"));
    }
    if (address > SPACE - bytes) {
      return List.of(
          new Fault(
              "at",
              ExportOptions.address(address),
              "must be between 0 and "
                  + ExportOptions.address(SPACE - bytes)
                  + ", so that the table of "
                  + bytes
                  + " bytes ends within 4 GiB"));
    }
    return List.of();
  }

  @Override
  void write(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    writeFile(
        target,
        job.fileName("hex"),
        out -> {
          HexRecords records = new HexRecords(out, job.options().hexAddress());
          writeFrames(job.table(), progress, records::data);
          records.end();
        });
  }
}
