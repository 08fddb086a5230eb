package lampwright.engine.meter;

import static lampwright.engine.meter.Figures.fixed;
import static lampwright.engine.meter.Figures.percent;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.render.FrameTable;

/** Advice on the time that frames take on their data lines. */
final class LineAdvice {
  private static final double US_PER_MS = 1000;
  private static final double US_PER_SECOND = 1e6;
  private static final String SOURCE = "the line times of the pixel type";

  private LineAdvice() {}

  static List<Advice> of(FrameTable table, List<WireTime> wires) {
    List<Advice> advice = new ArrayList<>();
    double rate = table.framesPerSecond();
    double frameUs = US_PER_SECOND / rate;
    for (WireTime wire : wires) {
      if (wire.share(rate) > 1) {
        advice.add(
            new Advice(
                Weight.FAILS,
                new Subject.OneChain(wire.chain()),
                "takes " + fixed(wire.frameUs() / US_PER_MS, 2) + " ms a frame on its line",
                "a frame lasts " + fixed(frameUs / US_PER_MS, 2) + " ms",
                SOURCE,
                "play at "
                    + fixed(Math.floor(wire.highestFramesPerSecond() * 10) / 10, 1)
                    + " frames/s at most, or cut the chain to "
                    + wire.longestChain(rate)
                    + " pixels and drive the rest from another line"));
      }
    }
    double inTurn = WireTime.inTurnUs(wires);
    if (advice.isEmpty() && wires.size() > 1 && inTurn > frameUs) {
      advice.add(
          new Advice(
              Weight.FAILS,
              new Subject.AllChains(),
              "take "
                  + fixed(inTurn / US_PER_MS, 2)
                  + " ms a frame if one controller serves them in turn ("
                  + percent(inTurn / frameUs)
                  + ")",
              "a frame lasts " + fixed(frameUs / US_PER_MS, 2) + " ms",
              SOURCE,
              "play at "
                  + fixed(Math.floor(US_PER_SECOND / inTurn * 10) / 10, 1)
                  + " frames/s at most, or drive them from lines that send at the same time"));
    }
    return advice;
  }
}
