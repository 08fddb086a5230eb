package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectArbitraries;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class RenderPropertyTest {
  @Provide
  Arbitrary<Project> projects() {
    return ProjectArbitraries.projects();
  }

  @Property(tries = 200)
  void anyValidProjectRenders(@ForAll("projects") Project project) {
    for (Scene scene : project.scenes()) {
      FrameTable table = FrameTable.of(project.rig(), scene);
      assertThat(Rendering.frames(table)).hasSize(scene.frameCount());
    }
  }

  @Property(tries = 200)
  void frameOfARunEqualsTheFrameRenderedAlone(
      @ForAll("projects") Project project, @ForAll @IntRange(min = 0, max = 10_000) int chance) {
    for (Scene scene : project.scenes()) {
      FrameTable table = FrameTable.of(project.rig(), scene);
      int frame = chance % scene.frameCount();
      assertThat(Rendering.unsigned(table.frame(frame)))
          .isEqualTo(Rendering.frames(table).get(frame));
    }
  }

  @Property(tries = 200)
  void phaseByAWholePeriodChangesNothing(
      @ForAll @IntRange(min = 0, max = 7) int kind,
      @ForAll @IntRange(min = 0, max = 999) int phase,
      @ForAll @IntRange(min = 1, max = 5) int periods) {
    BigDecimal part = BigDecimal.valueOf(phase, 3);
    BigDecimal later = part.add(BigDecimal.valueOf(periods));
    assertThat(frames(pattern(kind, later))).isEqualTo(frames(pattern(kind, part)));
  }

  private static List<List<Integer>> frames(Pattern pattern) {
    Rig rig =
        Rig.of(
            List.of(Rendering.chain("c", "sk6812-rgbw", 5)),
            List.of(),
            List.of(Rendering.lamp("l", "c", 0, 5)));
    Track track = Track.of(List.of("l"), Cue.of(0, 3000, pattern));
    return Rendering.frames(FrameTable.of(rig, Rendering.scene("3000", "29.97", true, track)));
  }

  private static Pattern pattern(int kind, BigDecimal phase) {
    Look look = new Look(new Colour.Srgb(255, 160, 0), 0.7);
    return switch (kind) {
      case 0 -> new Flash(look, phase, dec("33.3"), dec("41"), 2, dec("170"));
      case 1 -> new Indicator(look, phase, dec("88"), dec("0.45"));
      case 2 -> new RotatingBeacon(look, phase, dec("118"), 110, true, List.of());
      case 3 -> new Chase(look, phase, dec("71"), 2, 2, true);
      case 4 -> new Fill(look, phase, dec("200"), dec("150"), dec("317"));
      case 5 -> new ColourCycle(look, phase, dec("1700"), 0.7, 0.8, false);
      case 6 -> new TestWalk(look, phase, dec("70"));
      default -> new LightCharacter(look, phase, "Fl(2+1) 3.1s", dec("500"));
    };
  }

  private static BigDecimal dec(String number) {
    return new BigDecimal(number);
  }

  @Property(tries = 300)
  void lastFrameOfACueIsTheOneBeforeItsEnd(
      @ForAll @IntRange(min = 0, max = 900) int startMs,
      @ForAll @IntRange(min = 1, max = 900) int lengthMs,
      @ForAll @IntRange(min = 10, max = 60) int framesPerSecond) {
    Rig rig = Rendering.oneOutput(java.util.Optional.empty(), 1);
    Cue cue = Cue.of(startMs, lengthMs, new Steady(Look.DEFAULT));
    Scene scene =
        new Scene(
            "s",
            dec("2000"),
            BigDecimal.valueOf(framesPerSecond),
            true,
            Dither.OFF,
            List.of(Track.of(List.of("spot"), cue)));
    List<Integer> bytes = Rendering.column(FrameTable.of(rig, scene));
    for (int frame = 0; frame < bytes.size(); frame++) {
      // frame / rate seconds against the edges in ms, in whole numbers.
      long time = 1000L * frame;
      boolean covered =
          time >= (long) startMs * framesPerSecond
              && time < (long) (startMs + lengthMs) * framesPerSecond;
      assertThat(bytes.get(frame)).as("frame %d", frame).isEqualTo(covered ? 255 : 0);
    }
  }
}
