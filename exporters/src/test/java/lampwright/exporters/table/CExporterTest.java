package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterContract;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;

class CExporterTest extends ExporterContract {
  @Override
  protected Exporter exporter() {
    return new CExporter();
  }

  @Override
  protected byte[] decode(ExportJob job, MemoryTarget files) {
    return CSourceReader.bytes(files.text(job.scene().id() + ".c"));
  }

  @Test
  void noTwoNamesOfAProjectAreTheSame() {
    List<String> names = new ArrayList<>();
    for (ExportJob job : TestJobs.hostile()) {
      names.addAll(CSourceReader.names(header(job)));
    }
    assertThat(names).hasSizeGreaterThan(500);
    assertThat(new HashSet<>(names)).hasSameSizeAs(names);
    assertThat(names)
        .allSatisfy(name -> assertThat(name).doesNotContain("__").startsWithIgnoringCase("lw_"));
  }

  @Test
  void namesDoNotRestOnTheOtherScenes() {
    for (ExportJob job : TestJobs.hostile()) {
      Project alone = Project.of("alone", job.project().rig(), job.scene());
      ExportJob single = ExportJob.of(alone, job.scene(), ExportOptions.DEFAULT);
      assertThat(CSourceReader.names(header(single))).isEqualTo(CSourceReader.names(header(job)));
    }
  }

  @Test
  void sourceIsPlainAsciiWithoutTabsOrReturns() {
    for (ExportJob job : TestJobs.hostile()) {
      MemoryTarget files = MemoryTarget.of(exporter(), job);
      for (String name : files.names()) {
        for (byte b : files.bytes(name)) {
          assertThat(b == '\n' || (b >= ' ' && b <= '~')).isTrue();
        }
      }
    }
  }

  @Test
  void tableOf32767BytesHasNoCaution() {
    assertThat(exporter().facts(ofFrames(4681, 7)).findings()).isEmpty();
  }

  @Test
  void tableOf32768BytesIsTooLargeForAvr() {
    ExportJob job = ofFrames(4096, 8);
    assertThat(exporter().facts(job).findings())
        .extracting(Finding::text)
        .containsExactly(
            "c export, scene walk: walk.h: a table of 32768 bytes is too large for AVR; one array has"
                + " at most 32767 bytes there: shorten the scene or lower its frame rate, to at most"
                + " 4095 frames, or use another controller [avr-array]");
    assertThat(header(job)).contains("#error \"This table is too large for AVR");
  }

  @Test
  void frameTooLargeForAvrIsSaid() {
    ExportJob job =
        TestJobs.job(
            "Wall",
            Rig.of(
                List.of(TestJobs.rgbw("all", 4096), TestJobs.rgbw("more", 4096)),
                List.of(),
                List.of()),
            TestJobs.scene("dark", 20, 50, true, List.of()));
    assertThat(exporter().facts(job).findings())
        .extracting(Finding::remedy)
        .containsExactly("no frame of this rig fits; use another controller");
  }

  @Test
  void nameOfACompilerHeaderIsSaid() {
    ExportJob job = TestJobs.oneByte();
    ExportJob string =
        TestJobs.job(
            "Strings", job.project().rig(), TestJobs.scene("string", 20, 50, true, List.of()));
    assertThat(exporter().facts(string).findings())
        .extracting(Finding::text)
        .containsExactly(
            "c export, scene string: string.h has the same name as a compiler header and"
                + " may shadow it: give the scene another id, such as string-scene [header-name]");
  }

  @Test
  void tablePast32BitsIsRefused() {
    assertThat(CExporter.faults(0xFFFF_FFFFL)).isEmpty();
    assertThat(CExporter.faults(0x1_0000_0000L))
        .singleElement()
        .hasToString(
            "c: 4294967296 bytes: must be at most 4294967295 bytes, as many as a C array of 32-bit"
                + " controllers can have; use bin");
  }

  private String header(ExportJob job) {
    return MemoryTarget.of(exporter(), job).text(job.scene().id() + ".h");
  }

  // Frames of as many bytes as there are outputs.
  private static ExportJob ofFrames(int frames, int bytes) {
    List<DriverOutput> outputs = new ArrayList<>();
    for (int o = 0; o < bytes; o++) {
      outputs.add(DriverOutput.of("o" + o));
    }
    return TestJobs.job(
        "Lengths",
        Rig.of(List.of(), outputs, List.of()),
        TestJobs.scene("walk", frames * 20L, 50, true, List.of()));
  }
}
