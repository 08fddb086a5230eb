package lampwright.exporters.packed;

import java.util.List;
import java.util.Locale;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * Packs many mixed projects and prints how many have a coding that fails its proof, and what all
 * come to.
 */
final class MixedTrial {
  private MixedTrial() {}

  /** Takes the first seed and how many projects. */
  public static void main(String[] args) throws CancelledException {
    long first = args.length > 0 ? Long.parseLong(args[0]) : 1_000_000;
    int projects = args.length > 1 ? Integer.parseInt(args[1]) : 2000;
    int failed = 0;
    long raw = 0;
    long packed = 0;
    for (long seed = first; seed < first + projects; seed++) {
      ExportJob job = MixedProjects.job(seed);
      Packed made =
          ScenePacker.pack(
              "packed", List.of(job.table()), Target.slowestDecodeCost(), Progress.SILENT);
      raw += job.table().bytes();
      packed += made.size();
      if (!made.standIns().isEmpty()) {
        failed++;
        System.out.println("seed " + seed + ": " + made.standIns());
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%d projects from seed %d on: %d with a coding that failed its proof; %d bytes raw, %d"
            + " packed%n",
        projects,
        first,
        failed,
        raw,
        packed);
  }
}
