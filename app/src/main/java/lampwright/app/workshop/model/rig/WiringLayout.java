package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;

/**
 * The wiring as it is drawn: each chain in the order of its data, wrapped like writing, then the
 * outputs.
 */
public final class WiringLayout {
  /**
   * A chain's block.
   *
   * @param y of its title
   * @param columns pixels a row
   */
  public record ChainBlock(Chain chain, double y, int columns, double cell, double titleHeight) {
    public double x(int pixel) {
      return INDENT + pixel % columns * cell;
    }

    public double y(int pixel) {
      return y + titleHeight + rowOf(pixel) * cell * ROW;
    }

    private int rowOf(int pixel) {
      return pixel / columns;
    }

    public double height() {
      return titleHeight + Math.ceil((double) chain.pixels() / columns) * cell * ROW + GAP;
    }
  }

  /** An output's line. */
  public record OutputLine(DriverOutput output, double y, double height) {}

  /** A pixel, or an output if {@code pixel} is -1. */
  public record Hit(String id, int pixel) {}

  /** Room at the left for the arrow of the data line. */
  public static final double INDENT = 56;

  private static final double ROW = 1.25;
  private static final double GAP = 10;

  private final List<ChainBlock> chains = new ArrayList<>();
  private final List<OutputLine> outputs = new ArrayList<>();
  private final double height;

  /**
   * @param width of the pane
   * @param em height of a line of text
   */
  public WiringLayout(Rig rig, double width, double em) {
    double cell = Math.rint(em * 1.9);
    int columns = (int) Math.max(1, Math.floor((width - INDENT - 8) / cell));
    double y = 4;
    for (Chain chain : rig.chains()) {
      ChainBlock block = new ChainBlock(chain, y, columns, cell, Math.rint(em * 1.5));
      chains.add(block);
      y += block.height();
    }
    for (DriverOutput output : rig.outputs()) {
      OutputLine line = new OutputLine(output, y, Math.rint(em * 2.2));
      outputs.add(line);
      y += line.height();
    }
    height = y;
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
        double inRows = y - block.y() - block.titleHeight();
        int column = (int) Math.floor((x - INDENT) / block.cell());
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
