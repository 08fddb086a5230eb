package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.render.Column;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;

/** Measures current, frame by frame, for the supply and for every chain, output and lamp. */
final class CurrentGauge implements FrameGauge {
  private final FrameCurrent current;
  private final Part supply;
  private final List<Part> chains = new ArrayList<>();
  private final List<Part> outputs = new ArrayList<>();
  private final List<Part> lamps = new ArrayList<>();

  CurrentGauge(FrameLayout layout) {
    current = new FrameCurrent(layout);
    supply = new Part("supply", current.idleMilliamps(), range(0, layout.bytes()));
    List<Chain> rigChains = layout.rig().chains();
    for (int c = 0; c < rigChains.size(); c++) {
      Chain chain = rigChains.get(c);
      int from = layout.chainOffset(c);
      double idle = chain.pixels() * chain.type().idleMilliamps();
      chains.add(new Part(chain.id(), idle, range(from, from + chain.bytes())));
    }
    int at = layout.outputsOffset();
    for (DriverOutput output : layout.rig().outputs()) {
      outputs.add(new Part(output.id(), 0, range(at, ++at)));
    }
    List<Column> columns = layout.columns();
    for (Lamp lamp : layout.rig().lamps()) {
      lamps.add(new Part(lamp.id(), idle(lamp, rigChains), owned(lamp, columns)));
    }
  }

  @Override
  public void frame(int frame, byte[] bytes) {
    supply.take(frame, bytes);
    chains.forEach(part -> part.take(frame, bytes));
    outputs.forEach(part -> part.take(frame, bytes));
    lamps.forEach(part -> part.take(frame, bytes));
  }

  CurrentDraw supply() {
    return supply.draw();
  }

  List<CurrentDraw> chains() {
    return draws(chains);
  }

  List<CurrentDraw> outputs() {
    return draws(outputs);
  }

  List<CurrentDraw> lamps() {
    return draws(lamps);
  }

  private static List<CurrentDraw> draws(List<Part> parts) {
    return parts.stream().map(Part::draw).toList();
  }

  private static int[] range(int from, int to) {
    int[] columns = new int[to - from];
    for (int i = 0; i < columns.length; i++) {
      columns[i] = from + i;
    }
    return columns;
  }

  private static int[] owned(Lamp lamp, List<Column> columns) {
    List<Integer> owned = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).lamp().filter(l -> l.lamp().equals(lamp.id())).isPresent()) {
        owned.add(i);
      }
    }
    return owned.stream().mapToInt(Integer::intValue).toArray();
  }

  private static double idle(Lamp lamp, List<Chain> chains) {
    if (!(lamp.fitting() instanceof Fitting.Pixels pixels)) {
      return 0;
    }
    double idle = 0;
    for (PixelRun run : pixels.runs()) {
      for (Chain chain : chains) {
        if (chain.id().equals(run.chain())) {
          idle += run.count() * chain.type().idleMilliamps();
        }
      }
    }
    return idle;
  }

  /** The columns of one part, and what they drew so far. */
  private final class Part {
    private final String id;
    private final double idleMilliamps;
    private final int[] columns;
    private double peak = -1;
    private int peakFrame;
    private double sum;
    private int frames;

    Part(String id, double idleMilliamps, int[] columns) {
      this.id = id;
      this.idleMilliamps = idleMilliamps;
      this.columns = columns;
    }

    void take(int frame, byte[] bytes) {
      double milliamps = idleMilliamps + current.milliamps(bytes, columns);
      sum += milliamps;
      frames++;
      if (milliamps > peak) {
        peak = milliamps;
        peakFrame = frame;
      }
    }

    CurrentDraw draw() {
      return new CurrentDraw(id, peak, peakFrame, sum / frames);
    }
  }
}
