package lampwright.app.bench;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A minute of 1,000 RGBW pixels at 50 frames/s under five overlapping tracks of different patterns;
 * the score is pixel-frames a second.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 5)
@Measurement(iterations = 5, time = 5)
public class RenderBenchmark {
  private static final int PIXELS = 1000;
  private static final int FRAMES = 3000;
  private static final int LENGTH_MS = 60_000;

  private final FrameTable direct = table(ColourMatching.DIRECT);
  private final FrameTable matched = table(ColourMatching.EMITTERS);

  /** Colours by their code values. */
  @Benchmark
  @OperationsPerInvocation(PIXELS * FRAMES)
  public int direct() {
    return render(direct);
  }

  /** Colours mixed from the emitters' chromaticities. */
  @Benchmark
  @OperationsPerInvocation(PIXELS * FRAMES)
  public int matched() {
    return render(matched);
  }

  private static int render(FrameTable table) {
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    int sum = 0;
    while (cursor.hasNext()) {
      cursor.next(frame);
      sum += frame[0];
    }
    return sum;
  }

  private static FrameTable table(ColourMatching matching) {
    Chain chain = new Chain("c", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), PIXELS);
    Rig rig =
        new Rig(
            5,
            2000,
            5,
            Curve.DEFAULT,
            matching,
            false,
            0.8,
            CurrentCap.OFF,
            List.of(chain),
            List.of(),
            List.of(Lamp.ofPixels("all", new PixelRun("c", 0, PIXELS))));
    BigDecimal none = BigDecimal.ZERO;
    Look amber = new Look(new Colour.Signal(SignalColour.AMBER), 0.9);
    return FrameTable.of(
        rig,
        new Scene(
            "minute",
            BigDecimal.valueOf(LENGTH_MS),
            BigDecimal.valueOf(50),
            true,
            Dither.OFF,
            List.of(
                track(Blend.COVER, new Tint(Look.DEFAULT, 3000, OptionalDouble.of(6500))),
                track(
                    Blend.BRIGHTER,
                    new ColourCycle(Look.DEFAULT, none, BigDecimal.valueOf(4000), 3, 1, false)),
                track(
                    Blend.ADD,
                    new RotatingBeacon(amber, none, BigDecimal.valueOf(118), 90, true, List.of())),
                track(Blend.COVER, new Chase(amber, none, BigDecimal.valueOf(70), 5, 20, true)),
                track(Blend.SCALE, new Flicker(Look.DEFAULT, 3, 0.3, BigDecimal.valueOf(8))))));
  }

  private static Track track(Blend blend, lampwright.engine.pattern.Pattern pattern) {
    BigDecimal second = BigDecimal.valueOf(1000);
    Cue cue =
        new Cue(BigDecimal.ZERO, BigDecimal.valueOf(LENGTH_MS), second, second, blend, pattern);
    return Track.of(List.of("all"), cue);
  }
}
