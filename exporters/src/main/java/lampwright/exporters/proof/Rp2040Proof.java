package lampwright.exporters.proof;

import java.io.Writer;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.engine.time.Ratio;
import lampwright.exporters.firmware.DriveSignal;
import lampwright.exporters.proof.rp2040.Flash;
import lampwright.exporters.proof.rp2040.PinListener;
import lampwright.exporters.proof.rp2040.Rp2040;
import lampwright.exporters.proof.rp2040.Rp2040Fault;
import org.jspecify.annotations.Nullable;

/**
 * Runs a UF2 file on a model of the RP2040, and compares every bit of every chain and the pulses of
 * every output with a scene's frames, over two loops and the seam.
 */
public final class Rp2040Proof {
  /** Frames past two loops that are looked at. */
  private static final int BEYOND = 3;

  /** What the firmware must have set: the times on the data lines are made of it. */
  private static final Ratio SYSTEM_HERTZ = Ratio.of(125_000_000);

  private static final double NS_PER_CYCLE = 8;
  private static final long CYCLES_A_SECOND = 125_000_000;
  private static final long SECONDS_TO_START = 1;

  private final ExpectedFrames expected;
  private final FrameClock clock;
  private final Faults faults = new Faults();
  private final List<ChainJudge> chains = new ArrayList<>();
  private final List<OutputJudge> outputs = new ArrayList<>();
  private final BitSet strange = new BitSet();
  private final BitSet high = new BitSet();
  private final AwakeCycles awake = new AwakeCycles();
  private long wanted;
  private List<DriveSignal.Edge> edges = List.of();
  private final Ratio periodCycles;
  private @Nullable Waveform waveform;
  private long waveformFrames;
  private long firstEdge = -1;
  private final long firstLit;
  private @Nullable Rp2040 chip;

  /**
   * A proof of a rig's firmware.
   *
   * @param rig what is fitted
   * @param gpios the pins of its chains and then of its outputs, in rig order
   * @param table all frames of the scene, one behind another
   * @param framesPerSecond of the scene
   * @param loops whether the scene loops
   */
  public Rp2040Proof(
      Rig rig, List<Integer> gpios, byte[] table, Ratio framesPerSecond, boolean loops) {
    int frameBytes = rig.chains().stream().mapToInt(Chain::bytes).sum() + rig.outputs().size();
    expected = new ExpectedFrames(table, frameBytes, loops);
    periodCycles = SYSTEM_HERTZ.over(framesPerSecond);
    clock = new FrameClock(periodCycles, NS_PER_CYCLE);
    wanted = 2L * expected.frames() + BEYOND;
    int at = 0;
    for (Chain chain : rig.chains()) {
      int number = chains.size();
      ChainLine line = ChainLine.of(chain, gpios.get(number), at);
      chains.add(
          new ChainJudge(number, line, expected, faults, number == 0 ? clock : null, NS_PER_CYCLE));
      at += chain.bytes();
    }
    for (int i = 0; i < rig.outputs().size(); i++) {
      int gpio = gpios.get(chains.size() + i);
      outputs.add(new OutputJudge(i, gpio, at++, expected, faults, clock));
    }
    firstLit = firstLit();
  }

  /** The first frame in which an output is lit; -1 if none ever is. */
  private long firstLit() {
    for (int frame = 0; frame < expected.frames(); frame++) {
      for (OutputJudge output : outputs) {
        if (expected.at(frame, output.at()) != 0) {
          return frame;
        }
      }
    }
    return -1;
  }

  /** Writes the chains' signals, some frames of each, to a value change dump. */
  public Rp2040Proof waveform(Writer out, long frames) {
    waveform =
        new Waveform(
            out, chains.stream().map(chain -> "GP" + chain.line().gpio()).toList(), NS_PER_CYCLE);
    waveformFrames = frames;
    return this;
  }

  /**
   * Plays a drive on the pins of the inputs, and looks at the frames of the table alone.
   *
   * @param signal in order of time
   */
  public Rp2040Proof drive(List<DriveSignal.Edge> signal) {
    edges = List.copyOf(signal);
    wanted = expected.frames();
    return this;
  }

  /**
   * Runs the file until all frames were seen, or should have been.
   *
   * @throws Uf2Exception if it is no UF2 file for the controller
   */
  public ProofReport run(byte[] uf2) throws Uf2Exception {
    var flash = Uf2Reader.read(uf2);
    long end = SECONDS_TO_START * CYCLES_A_SECOND + periodCycles.times(wanted).floor() * 3 / 2;
    boolean done = false;
    try {
      long from = edges.isEmpty() ? 0 : firstFrameCycle(flash, end);
      Rp2040 running = new Rp2040(flash, this::changed);
      chip = running;
      for (DriveSignal.Edge edge : edges) {
        long at = from + Math.round(edge.ns() / NS_PER_CYCLE);
        running.drive(edge.pin().number(), edge.level(), Math.max(0, at));
      }
      if (chains.isEmpty() && firstLit < 0) {
        clock.open(0);
      }
      done = running.run(end, () -> done(running.cycle()));
      if (firstEdge < 0) {
        judgeClock(running);
      } else if (running.clockChangedAt() > firstEdge) {
        faults.add("the system clock changes after the first signal");
      }
      if (!done) {
        faults.add("not all frames came in %d s of simulated time", end / CYCLES_A_SECOND);
      }
    } catch (Rp2040Fault fault) {
      faults.add("the controller stops: %s", String.valueOf(fault.getMessage()));
    }
    clock.judge(faults);
    if (waveform != null) {
      waveform.end();
    }
    return report(done, uf2.length);
  }

  /**
   * When the first frame begins: when the inputs are read first, found by another run that ends
   * there. With the inputs at rest, as they are before a drive's first row.
   */
  private long firstFrameCycle(Flash flash, long end) {
    Rp2040 running = new Rp2040(flash, (gpio, level, cycle) -> {});
    for (DriveSignal.Edge edge : edges) {
      if (edge.ns() < -CYCLES_A_SECOND * (long) NS_PER_CYCLE) {
        running.drive(edge.pin().number(), edge.level(), 0);
      }
    }
    if (!running.run(end, () -> running.inputsReadAt() >= 0)) {
      faults.add("the inputs are never read");
    }
    return Math.max(0, running.inputsReadAt());
  }

  /** Times are in cycles of a clock that must be right from the first signal on. */
  private void judgeClock(Rp2040 running) {
    if (!running.systemHertz().equals(SYSTEM_HERTZ)) {
      faults.add(
          "the system clock is %.3f MHz, expected 125",
          running.systemHertz().doubleValue() / 1_000_000);
    }
  }

  private boolean done(long cycle) {
    for (ChainJudge chain : chains) {
      if (chain.frames() < wanted) {
        return false;
      }
    }
    for (OutputJudge output : outputs) {
      output.advance(cycle);
      if (output.frames() < wanted) {
        return false;
      }
    }
    return true;
  }

  private void changed(int gpio, PinListener.Level level, long cycle) {
    boolean up = level == PinListener.Level.HIGH;
    if (up && firstEdge < 0 && chip != null) {
      firstEdge = cycle;
      judgeClock(chip);
    }
    for (int i = 0; i < chains.size(); i++) {
      ChainJudge chain = chains.get(i);
      if (chain.line().gpio() == gpio) {
        chain(i, chain, level, cycle);
        return;
      }
    }
    for (OutputJudge output : outputs) {
      if (output.gpio() == gpio) {
        if (up && !clock.opened() && chains.isEmpty()) {
          clock.open(cycle - periodCycles.times(firstLit).floor());
        }
        output.changed(up, level != PinListener.Level.OPEN, cycle);
        return;
      }
    }
    if (level != PinListener.Level.OPEN && !strange.get(gpio)) {
      strange.set(gpio);
      faults.add("pin GP%d is driven, and nothing is fitted there", gpio);
    }
  }

  private void chain(int number, ChainJudge chain, PinListener.Level level, long cycle) {
    boolean up = level == PinListener.Level.HIGH;
    if (level == PinListener.Level.OPEN) {
      faults.add("chain %d: pin GP%d is let go", number, chain.line().gpio());
    }
    if (up == high.get(number)) {
      return;
    }
    high.set(number, up);
    long before = chain.frames();
    chain.changed(up, cycle);
    // The rise that ends the last frame of the waveform begins another.
    if (waveform != null && chain.frames() < waveformFrames) {
      waveform.change(number, up, cycle);
    }
    if (number == 0 && chain.frames() != before && chip != null) {
      awake.frame(cycle - chip.cyclesAsleep());
    }
  }

  private ProofReport report(boolean done, int fileBytes) {
    boolean passed = done && faults.count() == 0;
    Figures figures = new Figures();
    figures.put("/passed", Boolean.toString(passed));
    figures.put("/mcu", "rp2040");
    figures.put("/tableFrames", expected.frames());
    long least = Long.MAX_VALUE;
    for (ChainJudge chain : chains) {
      least = Math.min(least, chain.frames());
    }
    for (OutputJudge output : outputs) {
      least = Math.min(least, output.frames());
    }
    figures.put("/framesCompared", least);
    figures.put("/framesWrong", chains.stream().mapToLong(ChainJudge::framesWrong).sum());
    figures.put("/bitsCompared", chains.stream().mapToLong(ChainJudge::bitsCompared).sum());
    figures.put("/bitsWrong", chains.stream().mapToLong(ChainJudge::bitsWrong).sum());
    figures.put("/bitsOutsideLimits", chains.stream().mapToLong(ChainJudge::outside).sum());
    figures.put("/dutiesCompared", outputs.stream().mapToLong(OutputJudge::frames).sum());
    figures.put("/dutiesWrong", outputs.stream().mapToLong(OutputJudge::wrong).sum());
    chains.forEach(chain -> chain.report(figures));
    clock.report(figures);
    awake.report(figures, periodCycles.doubleValue());
    figures.put("/memory/flash", fileBytes / 2);
    if (chip != null) {
      figures.put("/memory/ram", chip.staticRamBytes());
      figures.put("/memory/deepestStack", chip.deepestStackBytes());
    }
    figures.put("/faultCount", faults.count());
    return new ProofReport(passed, figures.all(), faults.words());
  }
}
