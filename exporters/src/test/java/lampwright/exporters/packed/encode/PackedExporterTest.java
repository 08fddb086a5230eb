package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterContract;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.Progress;
import lampwright.exporters.TestJobs;
import lampwright.exporters.packed.SecondReader;
import lampwright.exporters.packed.play.Unpacker;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

class PackedExporterTest extends ExporterContract {
  @Override
  protected Exporter exporter() {
    return new PackedExporter(Target.slowestDecodeCost());
  }

  @Override
  protected boolean writesFrameByFrame() {
    return false;
  }

  @Override
  protected byte[] decode(ExportJob job, MemoryTarget files) {
    byte[] packed = files.bytes(job.scene().id() + ".packed");
    ByteArrayOutputStream table = new ByteArrayOutputStream();
    for (int[] row : new SecondReader(packed).play(0, 0)) {
      for (int value : row) {
        table.write(value);
      }
    }
    return table.toByteArray();
  }

  @Test
  void headerTellsFramesPeriodAndLoop() {
    ExportJob job = TestJobs.onePixel();
    Unpacker scene = new Unpacker(MemoryTarget.of(exporter(), job).bytes("walk.packed"));
    assertThat(scene.frames(0)).isEqualTo(3);
    assertThat(scene.periodMicros(0)).isEqualTo(20_000);
    assertThat(scene.loops(0)).isFalse();
  }

  @Test
  void tableOverSixtyFourMebibytesIsRefusedWithFigures() {
    Rig rig = Rig.of(List.of(TestJobs.rgbw("deck", 17)), List.of(), List.of());
    ExportJob job =
        TestJobs.job("Long", rig, TestJobs.scene("night", 20_000_000, 50, true, List.of()));
    assertRefused(
        job,
        "scene night: packed export: scene night: 68000000 bytes; the frame table must be at most"
            + " 67108864 bytes: a shorter scene or fewer frames/s [export-refused]");
  }

  @Test
  void moreLampsThanAByteCanNumberAreRefused() {
    List<Lamp> lamps = new ArrayList<>();
    for (int i = 0; i < 256; i++) {
      lamps.add(TestJobs.lamp("lamp-" + i, TestJobs.run("deck", i, 1)));
    }
    Rig rig = Rig.of(List.of(TestJobs.rgb("deck", 256)), List.of(), lamps);
    assertRefused(
        TestJobs.job("Many", rig, TestJobs.scene("dark", 20, 50, true, List.of())),
        "scene dark: packed export: lamps: 256; must be at most 255, which is what packed data can"
            + " number [export-refused]");
  }

  @Test
  void frameOverSixtyFourKibibytesIsRefused() {
    List<Chain> chains = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      chains.add(TestJobs.rgbw("deck-" + i, 4096));
    }
    Rig rig = Rig.of(chains, List.of(), List.of());
    assertRefused(
        TestJobs.job("Wide", rig, TestJobs.scene("dark", 20, 50, true, List.of())),
        "scene dark: packed export: frame: 65536 bytes; must be at most 65535; divide the chains between"
            + " controllers [export-refused]");
  }

  private void assertRefused(ExportJob job, String message) {
    MemoryTarget target = new MemoryTarget();
    assertThatThrownBy(() -> exporter().export(job, target, Progress.SILENT))
        .isInstanceOf(ExportRefusedException.class)
        .hasMessage(message);
    assertThat(target.names()).isEmpty();
  }
}
