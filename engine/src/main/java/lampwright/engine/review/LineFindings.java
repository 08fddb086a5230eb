package lampwright.engine.review;

import java.util.List;
import java.util.function.Consumer;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.WireTime;
import lampwright.engine.project.Project;
import lampwright.engine.scene.Scene;

/** Findings on the time that frames take on their data lines. */
final class LineFindings implements Reviewer {
  private static final double US_PER_MS = 1000;
  private static final double US_PER_SECOND = 1e6;
  private static final String SOURCE = "line times of the pixel type";

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    List<WireTime> wires = report.wires();
    Scene scene = report.table().scene();
    double rate = report.table().framesPerSecond();
    double frameUs = US_PER_SECOND / rate;
    List<WireTime> over = wires.stream().filter(wire -> wire.share(rate) > 1).toList();
    for (WireTime wire : over) {
      found.accept(
          Finding.of(Code.LINE_TIME, new Subject.OneChain(wire.chain()))
              .with("time", milliseconds(wire.frameUs()))
              .with("limit", milliseconds(frameUs))
              .with("rate", rate(wire.highestFramesPerSecond()))
              .with("pixels", Figure.count(wire.longestChain(rate), Unit.PIXELS))
              .in(scene)
              .source(SOURCE)
              .make());
    }
    double inTurn = WireTime.inTurnUs(wires);
    if (over.isEmpty() && wires.size() > 1 && inTurn > frameUs) {
      found.accept(
          Finding.of(Code.LINE_TIME_IN_TURN, new Subject.AllChains())
              .with("time", milliseconds(inTurn))
              .with("share", Figure.percent(inTurn / frameUs))
              .with("limit", milliseconds(frameUs))
              .with("rate", rate(US_PER_SECOND / inTurn))
              .in(scene)
              .source(SOURCE)
              .make());
    }
  }

  private static Figure milliseconds(double us) {
    return Figure.of(us / US_PER_MS, 2, Unit.MILLISECONDS);
  }

  // Rounded down, so that the rate that is named is kept.
  private static Figure rate(double framesPerSecond) {
    return Figure.of(Math.floor(framesPerSecond * 10) / 10, 1, Unit.FRAMES_PER_SECOND);
  }
}
