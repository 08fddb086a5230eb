package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import lampwright.exporters.ExportJob;
import lampwright.exporters.TestJobs;
import lampwright.exporters.packed.MixedProjects;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

class CueBordersTest {
  private static final String TWO_CUES =
      """
      {"lampwright": 1, "name": "two cues",
       "rig": {"chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 1}],
               "lamps": [{"id": "l", "pixels": [{"chain": "c", "from": 0, "count": 1}]}]},
       "scenes": [{"id": "s", "lengthMs": 4000, "framesPerSecond": 25, "loop": true,
         "tracks": [{"lamps": ["l"], "cues": [
           {"startMs": 10, "lengthMs": 990, "fadeInMs": 100, "pattern": {"kind": "steady"}},
           {"startMs": 1000, "lengthMs": 2000, "fadeInMs": 400, "fadeOutMs": 600,
            "pattern": {"kind": "steady"}}]}]}]}
      """;

  @Test
  void bordersAreTheFirstFramesAtOrAfterTheirTimes() {
    CueBorders borders = CueBorders.of(MixedProjects.read(TWO_CUES).scene(), "l");
    // A frame lasts 40 ms: 10 ms is before frame 1, 110 before frame 3.
    assertThat(borders.cues()).containsExactly(1, 25, 75);
    assertThat(borders.fades()).containsExactly(1, 3, 25, 35, 60, 75);
  }

  @Test
  void lampWithoutTrackHasNone() {
    CueBorders borders = CueBorders.of(MixedProjects.read(TWO_CUES).scene(), "other");
    assertThat(borders).isEqualTo(CueBorders.NONE);
  }

  @Test
  void cuesOneAfterAnotherPackShorterWhereTheirBordersAreKnown() {
    ExportJob job = MixedProjects.show(9, 8, 6_000, 1);
    Packed told = pack(job, List.of(CueBorders.of(job.scene(), "l0")));
    assertThat(told.size()).isLessThan(pack(job, List.of()).size());
    assertThat(told.standIns()).isEmpty();
  }

  @Test
  void bordersThatAreNoneDoNoHarm() {
    ExportJob job = MixedProjects.show(9, 8, 2_000, 1);
    List<Integer> everywhere = IntStream.rangeClosed(0, job.table().frameCount()).boxed().toList();
    Packed told = pack(job, List.of(new CueBorders(everywhere, everywhere)));
    assertThat(told.size()).isLessThanOrEqualTo(pack(job, List.of()).size());
    assertThat(told.standIns()).isEmpty();
  }

  private static Packed pack(ExportJob job, List<CueBorders> borders) {
    int size = job.table().layout().bytes();
    byte[] all = TestJobs.table(job);
    List<Integer> columns = IntStream.range(0, size).boxed().toList();
    PackLayout layout = new PackLayout(size, 0, List.of(new PackLayout.LampColumns("l0", columns)));
    PackScene scene =
        new PackScene(
            "s",
            job.table().frameCount(),
            true,
            20_000,
            (frame, into) -> System.arraycopy(all, frame * size, into, 0, size),
            borders);
    return Packer.pack(layout, List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE);
  }
}
