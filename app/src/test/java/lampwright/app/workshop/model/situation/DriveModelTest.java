package lampwright.app.workshop.model.situation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.InputEdits;
import lampwright.app.workshop.edit.SituationEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LiveFrame;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.engine.document.Project;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.DriveReader;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Situation;
import lampwright.exporters.picture.Mark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DriveModelTest {
  private static final Path SAMPLE = Projects4Tests.DRIVE;

  /** Does all at once. */
  private static final class AtOnce implements Background {
    @Override
    public void run(Runnable work) {
      work.run();
    }

    @Override
    public void runAfter(Duration delay, Runnable work) {
      work.run();
    }

    @Override
    public Duration now() {
      return Duration.ZERO;
    }
  }

  @TempDir Path folder;

  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final Bench bench = new Bench(Projects4Tests.reacting());
  private final DrawingSheet sheet = new DrawingSheet();
  private final Transmitter transmitter = new Transmitter(bench, sheet, dialogs);
  private final DriveModel model =
      new DriveModel(bench, transmitter, dialogs, new AtOnce(), Runnable::run);

  private void open(Path file) {
    dialogs.files.add(file);
    model.open();
  }

  private void openRows(String... rows) throws IOException {
    open(
        Files.writeString(
            folder.resolve("drive.csv"), "ms,input,value\n" + String.join("\n", rows) + "\n"));
  }

  private DriveRun run() {
    return model.runProperty().get().orElseThrow();
  }

  private List<DriveRun.Span> bar(String id) {
    return run().bars().stream()
        .filter(b -> b.situation().equals(id))
        .findFirst()
        .orElseThrow()
        .spans();
  }

  private byte[] shown() {
    return sheet.liveProperty().get().map(LiveFrame::bytes).orElseThrow();
  }

  /** The frames as rehearse writes them. */
  private byte[][] rehearsed(int frames) throws IOException {
    var project = bench.project();
    Show show = Show.of(project.rig(), project.scenes(), project.situations()).orElseThrow();
    Drive drive =
        DriveReader.read(Files.readAllBytes(SAMPLE), project.rig().inputs()).drive().orElseThrow();
    ShowFrames all = new ShowFrames(show);
    Drive.Player readings = new Drive.Player(drive, show.clock());
    byte[][] bytes = new byte[frames][all.frameBytes()];
    for (byte[] frame : bytes) {
      readings.feed(all.machine());
      all.next(frame);
    }
    return bytes;
  }

  @Test
  void whereverItGoesItShowsTheFrameOfRehearse() throws IOException {
    open(SAMPLE);
    assertThat(dialogs.told).isEmpty();
    byte[][] frames = rehearsed(run().frames());
    for (int at : new int[] {0, 1, run().frames() - 1, 300, 299, 301, 17}) {
      model.go(at);
      assertThat(model.frame()).hasValue(at);
      assertThat(shown()).as("frame %s", at).isEqualTo(frames[at]);
    }
    model.go(-5);
    assertThat(model.frame()).hasValue(0);
    model.go(1_000_000);
    assertThat(model.frame()).hasValue(run().frames() - 1);
  }

  /** By hand: at 50 frames/s 1,000 ms is frame 50, and a switch needs two samples that agree. */
  @Test
  void barsAreWhereSituationsAreActive() throws IOException {
    openRows("0,tow-bar,1", "1000,tow-bar,0", "2000,tow-bar,1", "3000,throttle,1500");
    assertThat(run().frames()).isEqualTo(151);
    assertThat(bar("towed")).containsExactly(new DriveRun.Span(51, 101));
    assertThat(bar("on-the-road")).containsExactly(new DriveRun.Span(0, 151));
    assertThat(bar("working")).isEmpty();
    DriveRun.Trace contact = run().inputs().get(2);
    assertThat(contact.stick()).isFalse();
    assertThat(contact.steps())
        .containsExactly(
            new DriveRun.Step(0, 0), new DriveRun.Step(51, 1), new DriveRun.Step(101, 0));
    assertThat(run().inputs().get(1).steps()).containsExactly(new DriveRun.Step(0, DriveRun.LOST));
  }

  @Test
  void itPlaysToItsEndAndAgainFromTheBeginning() throws IOException {
    openRows("0,tow-bar,1", "200,tow-bar,0");
    assertThat(transmitter.playingProperty().get()).isFalse();
    transmitter.playingProperty().set(true);
    transmitter.tick(0);
    transmitter.tick(400_000_000);
    assertThat(model.frame()).hasValue(10);
    assertThat(transmitter.playingProperty().get()).isFalse();
    transmitter.playingProperty().set(true);
    assertThat(model.frame()).hasValue(0);
  }

  @Test
  void sticksFollowAndWorkAgainAfterwards() throws IOException {
    openRows("0,aux,1700", "20,aux,1800", "40,tow-bar,0", "60,tow-bar,0");
    model.go(3);
    assertThat(transmitter.control("aux").orElseThrow().widthUsProperty().get()).isEqualTo(1800);
    assertThat(transmitter.control("tow-bar").orElseThrow().onProperty().get()).isTrue();
    assertThat(transmitter.control("throttle").orElseThrow().lostProperty().get()).isTrue();
    model.close();
    assertThat(model.frame()).isEmpty();
    assertThat(transmitter.replayingProperty().get()).isFalse();
    transmitter.centre();
    transmitter.step(1);
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isEqualTo(1);
  }

  @Test
  void anEditShowsTheSameMomentAndOtherInputsEndIt() throws IOException {
    openRows("0,tow-bar,1", "1000,tow-bar,0", "3000,tow-bar,0");
    model.go(60);
    bench.apply(
        Edit.of(
            "edit",
            p ->
                SituationEdits.change(
                    p,
                    "towed",
                    s -> Situation.AFTER_MS.with(s, java.math.BigDecimal.valueOf(100)))));
    assertThat(model.frame()).hasValue(60);
    assertThat(bar("towed")).containsExactly(new DriveRun.Span(56, 151));
    bench.apply(Edit.of("edit", InputEdits::add));
    assertThat(model.nameProperty().get()).isEmpty();
    assertThat(model.runProperty().get()).isEmpty();
    assertThat(transmitter.replayingProperty().get()).isFalse();
  }

  @Test
  void anEditOfLightLeavesTheRunAsItIs() throws IOException {
    openRows("0,tow-bar,1", "1000,tow-bar,0", "3000,tow-bar,0");
    DriveRun before = model.runProperty().get().orElseThrow();
    bench.apply(Edit.of("edit", p -> Project.RIG.with(p, Rig.BRIGHTNESS_CAP.with(p.rig(), 0.5))));
    assertThat(bench.project().rig().brightnessCap()).isEqualTo(0.5);
    assertThat(model.runProperty().get().orElseThrow()).isSameAs(before);
  }

  @Test
  void whatIsNoDriveIsListedAndNothingOpened() throws IOException {
    openRows("0,tow-bar,1", "x,tow-bar,1", "5,winch,1");
    assertThat(dialogs.told).hasSize(1);
    assertThat(dialogs.told.get(0)).contains("line 3").contains("line 4");
    openRows("3600000001,tow-bar,1".replace("3600000001", "5000000"));
    assertThat(dialogs.told.get(1)).contains("200,000");
    open(Files.writeString(folder.resolve("empty.csv"), "ms,input,value\n"));
    assertThat(dialogs.told.get(2)).contains("empty.csv");
    open(folder.resolve("none.csv"));
    assertThat(dialogs.told).hasSize(4);
    assertThat(model.nameProperty().get()).isEmpty();
    assertThat(sheet.liveProperty().get()).isEmpty();
    bench.open(Projects4Tests.small());
    open(Files.writeString(folder.resolve("drive.csv"), "ms,input,value\n"));
    assertThat(dialogs.told.get(4)).contains("situation");
  }

  @Test
  void stripHasALineForEachInputAndABarForEachSpan() throws IOException {
    openRows("0,tow-bar,1", "1000,tow-bar,0", "2000,tow-bar,1", "3000,aux,1500");
    DriveStrip strip = new DriveStrip(run(), model.ladder(), 900, 16);
    assertThat(strip.frame(strip.x(75) + 0.1)).isEqualTo(75);
    assertThat(strip.frame(-10)).isZero();
    assertThat(strip.frame(10_000)).isEqualTo(150);
    List<Mark> marks = strip.draw(Optional.of(75)).marks();
    List<Mark.Rect> bars =
        marks.stream().filter(Mark.Rect.class::isInstance).map(Mark.Rect.class::cast).toList();
    long spans = run().bars().stream().mapToLong(b -> b.spans().size()).sum();
    assertThat(bars).hasSize((int) spans);
    assertThat(bars)
        .anySatisfy(
            r -> {
              assertThat(r.x()).isEqualTo(strip.x(51));
              assertThat(r.width()).isEqualTo(strip.x(101) - strip.x(51));
            });
    // A channel has no line until its first pulse; one that learns its centre has none at all.
    assertThat(marks.stream().filter(Mark.Path.class::isInstance)).hasSize(2);
    assertThat(strip.draw(Optional.empty()).marks()).hasSize(marks.size() - 1);
  }
}
