package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.packed.play.RandomShow;
import lampwright.exporters.target.PixelLimits;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A general simulator of the RP2040 plays drives to the exported file: the frames that are on its
 * chains' pins are those of the engine. As for scenes it judges our own model too.
 */
class Rp2040DriveJudgeTest {
  private static final Path SAMPLES = Path.of("..", "samples");

  /** From power to the first frame: boot stage, crystal, checksums, the wait for the receiver. */
  private static final int START_MS = 80;

  @TempDir Path folder;

  private void assertShows(DrivenShow driven) throws Exception {
    Rig rig = driven.job().project().rig();
    List<Pin> pins =
        Target.of(rig).pins(rig).chains().stream().map(pin -> pin.orElseThrow()).toList();
    int frames = driven.drive().frames(driven.show().clock()).orElseThrow();
    int frameBytes = driven.frames().length / frames;
    double frameMs = 1000 / driven.show().clock().framesPerSecond().doubleValue();
    int length = START_MS + (int) Math.ceil(frameMs * frames);
    Rp2040Judge.Run run = new Rp2040Judge(folder).run(driven.uf2(), length, driven.signal());
    assertThat(run.errors()).isEmpty();
    assertThat(run.exit()).isZero();
    int at = 0;
    for (int c = 0; c < pins.size(); c++) {
      Chain chain = rig.chains().get(c);
      List<Rp2040Judge.Burst> bursts = run.bursts(pins.get(c).number(), chain.bytes());
      assertThat(bursts).as(chain.id()).hasSizeGreaterThanOrEqualTo(frames);
      double threshold = PixelLimits.of(chain.type()).thresholdNs();
      for (int f = 0; f < frames; f++) {
        int from = f * frameBytes + at;
        assertThat(bursts.get(f).bytes(threshold))
            .as(chain.id() + ", frame " + f)
            .isEqualTo(Arrays.copyOfRange(driven.frames(), from, from + chain.bytes()));
      }
      at += chain.bytes();
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {2, 5})
  void randomShowsGiveTheFramesOfTheEngine(long seed) throws Exception {
    RandomShow made = new RandomShow(seed);
    assertShows(DrivenShow.of(made.project("rp2040"), made.drive(200)));
  }

  @Test
  void recordedDriveGivesTheFramesOfTheEngine() throws Exception {
    String json = Files.readString(SAMPLES.resolve("recovery-tractor.lampwright.json"));
    Project project = DrivenShow.onRp2040(json, folder);
    byte[] csv = Files.readAllBytes(SAMPLES.resolve("recovery-tractor.drive.csv"));
    assertShows(DrivenShow.of(project, DrivenShow.recorded(project, csv)).upTo(900));
  }
}
