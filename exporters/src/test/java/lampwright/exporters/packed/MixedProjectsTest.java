package lampwright.exporters.packed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.engine.render.FrameCursor;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

/**
 * Ordinary scenes whose periods meet neither the frames nor each other: a share of them in every
 * run, all 5,000 with {@code -Dlampwright.mixedProjects=5000}.
 */
public class MixedProjectsTest {
  private static final int PROJECTS = Integer.getInteger("lampwright.mixedProjects", 200);

  /** The flash whose wave was checked over one period and played on though it did not close. */
  @Test
  void flashThatRepeatsUnlikeItsWaveComesBack() throws CancelledException {
    assertComesBack(
        MixedProjects.oneLamp(
            4,
            5000,
            50,
            "\"kind\": \"flash\", \"onMs\": 60, \"offMs\": 80, \"flashes\": 2, \"gapMs\": 656"));
  }

  @Test
  void everyMixedProjectComesBack() throws CancelledException {
    for (long seed = 0; seed < PROJECTS; seed++) {
      assertComesBack(MixedProjects.job(seed));
    }
  }

  private static void assertComesBack(ExportJob job) throws CancelledException {
    Packed packed =
        ScenePacker.pack(
            "packed", List.of(job.table()), Target.slowestDecodeCost(), Progress.SILENT);
    assertThat(packed.standIns()).as("%s", job).isEmpty();
    int frames = job.table().frameCount();
    List<int[]> rows = new SecondReader(packed.data()).play(0, frames + 1);
    FrameCursor cursor = job.table().cursor();
    byte[] want = new byte[job.table().layout().bytes()];
    for (int f = 0; f < rows.size(); f++) {
      if (f > 0 && f % frames == 0 && job.scene().loop()) {
        cursor.seek(0);
      }
      if (cursor.hasNext()) {
        cursor.next(want);
      }
      for (int c = 0; c < want.length; c++) {
        if (rows.get(f)[c] != (want[c] & 255)) {
          assertThat(rows.get(f)[c])
              .as("%s, frame %d, column %d", job, f, c)
              .isEqualTo(want[c] & 255);
        }
      }
    }
  }
}
