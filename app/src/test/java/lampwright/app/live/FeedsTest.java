package lampwright.app.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.DriveReader;
import lampwright.engine.situation.Show;
import org.junit.jupiter.api.Test;

/** What is sent when, and how bright. */
class FeedsTest {
  private static final long SECOND = 1_000_000_000;

  @Test
  void brightnessScalesAndWhatIsLitStaysLit() {
    byte[] frame = {0, 1, 2, 100, (byte) 254, (byte) 255};
    assertThat(new BenchBrightness(25).of(frame)).containsExactly(0, 1, 1, 25, 64, 64);
    assertThat(new BenchBrightness(1).of(frame)).containsExactly(0, 1, 1, 1, 3, 3);
    assertThat(new BenchBrightness(100).of(frame)).containsExactly(frame);
    assertThatThrownBy(() -> new BenchBrightness(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new BenchBrightness(101)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void sceneLoopsByTheClockAndSkipsWhatIsPast() {
    Project project = Projects4Tests.sample("recovery-tractor");
    Scene scene = project.scenes().get(0);
    FrameTable table = FrameTable.of(project.rig(), scene);
    BenchBrightness full = new BenchBrightness(100);
    SceneFeed feed = new SceneFeed(table, full);
    long start = 123 * SECOND;
    byte[] first = feed.at(start);
    assertThat(first).isEqualTo(table.frame(0));
    assertThat(feed.at(start + 1)).isSameAs(first);
    double rate = table.framesPerSecond();
    for (int frame : List.of(1, 2, 17, 16, table.frameCount() - 1)) {
      assertThat(feed.at(start + Math.round(frame / rate * 1e9) + 1000))
          .isEqualTo(table.frame(frame));
    }
    long round = Math.round(table.frameCount() / rate * 1e9);
    assertThat(feed.at(start + round + 1000)).isEqualTo(table.frame(0));
  }

  @Test
  void sceneThatPlaysOnceStaysOnItsLastFrame() {
    Project project = Projects4Tests.small();
    Scene once = Scene.LOOP.with(project.scenes().get(0), false);
    FrameTable table = FrameTable.of(project.rig(), once);
    SceneFeed feed = new SceneFeed(table, new BenchBrightness(100));
    feed.at(0);
    assertThat(feed.at(100 * SECOND)).isEqualTo(table.frame(table.frameCount() - 1));
  }

  @Test
  void driveIsPlayedFrameByFrameAsItIsRehearsed() throws java.io.IOException {
    Project project = Projects4Tests.reacting();
    Show show = Show.of(project.rig(), project.scenes(), project.situations()).orElseThrow();
    Drive drive =
        DriveReader.read(Files.readAllBytes(Projects4Tests.DRIVE), project.rig().inputs())
            .drive()
            .orElseThrow();
    int count = drive.frames(show.clock()).orElseThrow();
    ShowFrames frames = new ShowFrames(show);
    Drive.Player readings = new Drive.Player(drive, show.clock());
    DriveFeed feed = new DriveFeed(show, drive, new BenchBrightness(100));
    byte[] expected = new byte[frames.frameBytes()];
    double rate = show.clock().framesPerSecond().doubleValue();
    for (int i = 0; i < count; i++) {
      readings.feed(frames.machine());
      frames.next(expected);
      if (i % 7 == 0 || i == count - 1) {
        assertThat(feed.at(Math.round(i / rate * 1e9) + 1000)).isEqualTo(expected);
      }
    }
    assertThat(feed.at(10_000 * SECOND)).isEqualTo(expected);
  }

  /**
   * 60 RGB pixels at 500,000 baud: a packet of 186 bytes takes 3.72 ms, 1,440 bits of 1.25 us take
   * 1.8 ms (the lines rest meanwhile), and the last three bytes of an answer 0.06 ms.
   */
  @Test
  void rateIsThatOfPacketWireAndAnswer() {
    Chain chain = new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 60);
    LinkRate rate = LinkRate.of(Rig.of(List.of(chain), List.of(), List.of()), Baud.FAST);
    assertThat(rate.times().packetUs()).isEqualTo(3720, within(1e-6));
    assertThat(rate.times().linesUs()).isEqualTo(1800, within(20.0));
    assertThat(rate.framesPerSecond()).isEqualTo(1e6 / (3720 + 1800 + 60), within(1.0));
    assertThat(Optional.of(LinkRate.of(Rig.of(List.of(chain), List.of(), List.of()), Baud.SLOW)))
        .get()
        .matches(slow -> slow.times().packetUs() > 16_140 && slow.times().packetUs() < 16_150);
  }
}
