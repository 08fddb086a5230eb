package lampwright.exporters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every exporter keeps to. A subclass names the exporter and decodes what it wrote. */
public abstract class ExporterContract {
  protected ExporterContract() {}

  /** The exporter under test. */
  protected abstract Exporter exporter();

  /** The frame table in the files, read by a decoder that shares nothing with the exporter. */
  protected abstract byte[] decode(ExportJob job, MemoryTarget files);

  /** Whether frames go out one by one; otherwise nothing is written before all is known. */
  protected boolean writesFrameByFrame() {
    return true;
  }

  static Stream<ExportJob> jobs() {
    return Stream.of(
            List.of(TestJobs.oneByte(), TestJobs.onePixel(), TestJobs.mixed(), TestJobs.large()),
            TestJobs.hostile())
        .flatMap(List::stream);
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void filesHoldEveryFrame(ExportJob job) {
    MemoryTarget files = MemoryTarget.of(exporter(), job);
    assertThat(decode(job, files)).isEqualTo(TestJobs.table(job));
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void factsNameTheFilesInOrderAndTheBytes(ExportJob job) {
    ExportFacts facts = exporter().facts(job);
    MemoryTarget files = MemoryTarget.of(exporter(), job);
    assertThat(files.names()).isEqualTo(facts.files());
    assertThat(facts.tableBytes()).isEqualTo(TestJobs.table(job).length);
    assertThat(facts.refusals()).isEmpty();
  }

  @Test
  void everyStreamIsClosed() {
    assertThat(MemoryTarget.of(exporter(), TestJobs.mixed()).stillOpen()).isEmpty();
  }

  @Test
  void sameJobGivesSameFilesInEveryLocale() {
    MemoryTarget files = MemoryTarget.of(exporter(), TestJobs.mixed());
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("tr-TR", "de-DE", "ar-EG-u-nu-arab")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        MemoryTarget again = MemoryTarget.of(exporter(), TestJobs.mixed());
        for (String name : files.names()) {
          assertThat(again.bytes(name)).isEqualTo(files.bytes(name));
        }
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void progressCountsEveryFrame() throws Exception {
    List<String> heard = new ArrayList<>();
    exporter()
        .export(
            TestJobs.onePixel(),
            new MemoryTarget(),
            (done, total) -> heard.add(done + " of " + total));
    if (writesFrameByFrame()) {
      assertThat(heard).containsExactly("0 of 3", "1 of 3", "2 of 3", "3 of 3");
    } else {
      assertThat(heard).startsWith("0 of 3").endsWith("3 of 3").isSorted();
    }
  }

  @Test
  void cancellingMidwayEndsTheExportAtThatFrame() {
    CancelledException wanted = new CancelledException();
    MemoryTarget target = new MemoryTarget();
    List<Integer> heard = new ArrayList<>();
    Progress cancelling =
        (done, total) -> {
          heard.add(done);
          if (done >= 12) {
            throw wanted;
          }
        };
    assertThatThrownBy(() -> exporter().export(TestJobs.large(), target, cancelling))
        .isSameAs(wanted);
    if (writesFrameByFrame()) {
      assertThat(heard).hasSize(13);
    } else {
      assertThat(heard.get(heard.size() - 2)).isLessThan(12);
      assertThat(target.names()).isEmpty();
    }
    assertThat(target.stillOpen()).isEmpty();
  }

  @Test
  void failureToWriteMidwayPropagates() {
    IOException full = new IOException("no space left on device");
    List<String> closed = new ArrayList<>();
    ExportTarget target =
        name -> new SmallDisk(writesFrameByFrame() ? 30_000 : 30, full, () -> closed.add(name));
    List<Integer> heard = new ArrayList<>();
    assertThatThrownBy(
            () -> exporter().export(TestJobs.large(), target, (done, total) -> heard.add(done)))
        .isSameAs(full);
    if (writesFrameByFrame()) {
      assertThat(heard).hasSizeLessThan(TestJobs.large().table().frameCount());
    }
    assertThat(closed).isNotEmpty();
  }

  @Test
  void failureToWriteTheLastBytesPropagates() {
    IOException full = new IOException("no space left on device");
    ExportTarget target = name -> new SmallDisk(0, full, () -> {});
    assertThatThrownBy(() -> exporter().export(TestJobs.oneByte(), target, Progress.SILENT))
        .isSameAs(full);
  }

  @Test
  void failureToOpenPropagates() {
    IOException denied = new IOException("no permission");
    ExportTarget target =
        name -> {
          throw denied;
        };
    assertThatThrownBy(() -> exporter().export(TestJobs.oneByte(), target, Progress.SILENT))
        .isSameAs(denied);
  }

  @Test
  void failureToClosePropagates() {
    IOException late = new IOException("the disk went away");
    ExportTarget target =
        name ->
            new OutputStream() {
              @Override
              public void write(int b) {}

              @Override
              public void close() throws IOException {
                throw late;
              }
            };
    assertThatThrownBy(() -> exporter().export(TestJobs.oneByte(), target, Progress.SILENT))
        .isSameAs(late);
  }

  /** Takes so many bytes, then throws. */
  private static final class SmallDisk extends OutputStream {
    private final IOException full;
    private final Runnable onClose;
    private long room;

    SmallDisk(long room, IOException full, Runnable onClose) {
      this.room = room;
      this.full = full;
      this.onClose = onClose;
    }

    @Override
    public void write(int b) throws IOException {
      write(new byte[1], 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      room -= count;
      if (room < 0) {
        throw full;
      }
    }

    @Override
    public void close() {
      onClose.run();
    }
  }
}
