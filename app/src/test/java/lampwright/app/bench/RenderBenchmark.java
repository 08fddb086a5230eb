package lampwright.app.bench;

import java.util.concurrent.TimeUnit;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
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

/** The score is pixel-frames a second, on one thread where nothing else is said. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 5)
@Measurement(iterations = 5, time = 5)
public class RenderBenchmark {
  private final FrameTable direct = BenchScenes.hiding(ColourMatching.DIRECT);
  private final FrameTable matched = BenchScenes.hiding(ColourMatching.EMITTERS);
  private final FrameTable open = BenchScenes.open();
  private final FrameTable lamps = BenchScenes.lamps();

  /** Colours by their code values. */
  @Benchmark
  @OperationsPerInvocation(BenchScenes.PIXELS * BenchScenes.FRAMES)
  public int direct() {
    return render(direct.passingCursor());
  }

  /** Colours mixed from the emitters' chromaticities. */
  @Benchmark
  @OperationsPerInvocation(BenchScenes.PIXELS * BenchScenes.FRAMES)
  public int matched() {
    return render(matched.passingCursor());
  }

  /** Colours by their code values, and no track that hides another. */
  @Benchmark
  @OperationsPerInvocation(BenchScenes.PIXELS * BenchScenes.FRAMES)
  public int open() {
    return render(open.passingCursor());
  }

  /** A thousand lamps of one pixel, each with a track of its own. */
  @Benchmark
  @OperationsPerInvocation(BenchScenes.PIXELS * BenchScenes.FRAMES)
  public int lamps() {
    return render(lamps.passingCursor());
  }

  /** As {@link #open}, on two threads; as exports and checks render, and keep what is small. */
  @Benchmark
  @OperationsPerInvocation(BenchScenes.PIXELS * BenchScenes.FRAMES)
  public int openOnTwoThreads() {
    return render(BenchScenes.open().cursor());
  }

  private static int render(FrameCursor cursor) {
    byte[] frame = new byte[4 * BenchScenes.PIXELS];
    int sum = 0;
    while (cursor.hasNext()) {
      cursor.next(frame);
      sum += frame[0];
    }
    return sum;
  }
}
