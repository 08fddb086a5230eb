package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.exporters.picture.TypeMeasure;
import lampwright.exporters.wiring.WiringPlan;

/**
 * The wiring as it is drawn: the supply, each chain with the parts before it and its pixels in the
 * order of its data, wrapped like writing, then the outputs.
 */
public final class WiringLayout {
  /**
   * A chain's block.
   *
   * @param y of its title
   * @param supply parts between supply and first pixel, below the title
   * @param data parts between controller and data input, below those
   * @param far parts of the second lead, below the pixels
   * @param columns pixels a row
   * @param cell room of a pixel
   * @param pitch from one pixel to the next; more than a cell where names of lamps need it
   */
  public record ChainBlock(
      Chain chain,
      double y,
      double titleHeight,
      PartStrip supply,
      PartStrip data,
      PartStrip far,
      int columns,
      double cell,
      double pitch) {
    public double x(int pixel) {
      return INDENT + pixel % columns * pitch;
    }

    public double y(int pixel) {
      return y + head() + rowOf(pixel) * cell * ROW;
    }

    double supplyY() {
      return y + titleHeight;
    }

    double dataY() {
      return supplyY() + supply.height();
    }

    double farY() {
      return y + head() + rows() * cell * ROW;
    }

    private double head() {
      return titleHeight + supply.height() + data.height();
    }

    private double rows() {
      return Math.ceil((double) chain.pixels() / columns);
    }

    private int rowOf(int pixel) {
      return pixel / columns;
    }

    public double height() {
      return farY() - y + (far.lines() == 0 ? 0 : titleHeight + far.height()) + GAP;
    }
  }

  /** An output's block: its title and the parts from its pin to the LEDs. */
  public record OutputLine(
      DriverOutput output, double y, double titleHeight, PartStrip parts, double height) {}

  /** A pixel, or an output if {@code pixel} is -1. */
  public record Hit(String id, int pixel) {}

  /** Room at the left for the arrow of the data line. */
  public static final double INDENT = 56;

  /** Room at the left of all else. */
  static final double EDGE = 8;

  /** Size of a lamp's name, in em. */
  static final double NAME = 0.85;

  /** What is free beside a lamp's name, in pixels. */
  static final double NAME_ROOM = 6;

  private static final double MOST_PITCH = 2.6;
  // Two lines of a name fit below a pixel.
  private static final double ROW = 2.05;
  private static final double GAP = 14;

  private final PartStrip source;
  private final double sourceY;
  private final List<ChainBlock> chains = new ArrayList<>();
  private final List<OutputLine> outputs = new ArrayList<>();
  private final double height;

  /**
   * @param width of the pane
   * @param em height of a line of text
   */
  public WiringLayout(Rig rig, WiringPlan plan, double width, double em, TypeMeasure measure) {
    double cell = Math.rint(em * 2.2);
    double title = Math.rint(em * 1.7);
    double room = Math.max(1, width - 4 * EDGE);
    source = PartStrip.of(plan.source(), room, em, measure);
    sourceY = 4;
    double y = sourceY + source.height() + GAP;
    for (WiringPlan.OfChain of : plan.chains()) {
      double pitch = Math.ceil(pitch(rig, of.chain(), cell, em, measure));
      int columns = (int) Math.max(1, Math.floor((width - INDENT - 8) / pitch));
      ChainBlock block =
          new ChainBlock(
              of.chain(),
              y,
              title,
              PartStrip.of(of.supply(), room, em, measure),
              PartStrip.of(of.data(), room, em, measure),
              PartStrip.of(of.farSupply(), room, em, measure),
              columns,
              cell,
              pitch);
      chains.add(block);
      y += block.height();
    }
    for (int i = 0; i < rig.outputs().size(); i++) {
      PartStrip parts = PartStrip.of(plan.outputs().get(i), room, em, measure);
      OutputLine line =
          new OutputLine(rig.outputs().get(i), y, title, parts, title + parts.height() + GAP);
      outputs.add(line);
      y += line.height();
    }
    height = y;
  }

  // So far apart that the names of lamps have room, within reason.
  private static double pitch(Rig rig, Chain chain, double cell, double em, TypeMeasure measure) {
    double widest = cell;
    for (Lamp lamp : rig.lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels f
          && f.runs().get(0).chain().equals(chain.id())) {
        for (String line : nameLines(lamp)) {
          double wide = measure.width(line, NAME * em) + NAME_ROOM;
          widest = Math.max(widest, wide / f.runs().get(0).count());
        }
      }
    }
    return Math.min(widest, MOST_PITCH * cell);
  }

  /** A lamp's name in one line, or in two: at its comma, or at the space nearest to its middle. */
  static List<String> nameLines(Lamp lamp) {
    String name = Titles.of(lamp);
    int comma = name.indexOf(", ");
    if (comma > 0) {
      return List.of(name.substring(0, comma), name.substring(comma + 2));
    }
    int cut = -1;
    for (int at = name.indexOf(' '); at > 0; at = name.indexOf(' ', at + 1)) {
      int middle = name.length() / 2;
      cut = cut < 0 || Math.abs(at - middle) < Math.abs(cut - middle) ? at : cut;
    }
    return cut < 0 ? List.of(name) : List.of(name.substring(0, cut), name.substring(cut + 1));
  }

  PartStrip source() {
    return source;
  }

  double sourceY() {
    return sourceY;
  }

  public List<ChainBlock> chains() {
    return chains;
  }

  public List<OutputLine> outputs() {
    return outputs;
  }

  public double height() {
    return height;
  }

  /** What is at a point. */
  public Optional<Hit> hit(double x, double y) {
    for (ChainBlock block : chains) {
      if (y >= block.y() && y < block.y() + block.height()) {
        double inRows = y - block.y(0);
        int column = (int) Math.floor((x - INDENT) / block.pitch());
        int row = (int) Math.floor(inRows / (block.cell() * ROW));
        int pixel = row * block.columns() + column;
        boolean on =
            inRows >= 0
                && column >= 0
                && column < block.columns()
                && pixel < block.chain().pixels();
        return Optional.of(new Hit(block.chain().id(), on ? pixel : -1));
      }
    }
    return outputs.stream()
        .filter(o -> y >= o.y() && y < o.y() + o.height())
        .findFirst()
        .map(o -> new Hit(o.output().id(), -1));
  }
}
