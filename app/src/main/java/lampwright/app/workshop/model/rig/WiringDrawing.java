package lampwright.app.workshop.model.rig;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/**
 * Draws the wiring as it is soldered: the supply, chains in data order with the parts before them
 * and their pixel numbers, outputs with their parts and LEDs.
 */
public final class WiringDrawing {
  /**
   * What of it is looked at.
   *
   * @param width of the pane, in pixels
   * @param height of the pane, in pixels
   * @param top how far it is scrolled, in pixels
   * @param em height of a line of text, in pixels
   */
  public record Sight(double width, double height, double top, double em) {}

  /**
   * What is selected in it.
   *
   * @param part of the rig
   * @param marked pixels of the selected chain
   * @param cursor the pixel that keys go from; empty while the pane has not the focus
   */
  public record Chosen(RigPart part, Set<Integer> marked, OptionalInt cursor) {
    public Chosen {
      marked = Set.copyOf(marked);
    }

    /** Nothing that shows. */
    public static final Chosen NOTHING =
        new Chosen(new RigPart.Supply(), Set.of(), OptionalInt.empty());
  }

  // The side of a pixel is its cell less this.
  private static final double BETWEEN = 6;

  // Height of the lines of a lamp's name, in em.
  private static final double NAME_LINE = 1.0;

  private final Texts texts = Texts.of("rig");
  private final Rig rig;
  private final Sight sight;
  private final Chosen chosen;
  private final double em;
  private final DisplayList.Builder list;
  private final PartDrawing parts;

  private WiringDrawing(Rig rig, Sight sight, Chosen chosen) {
    this.rig = rig;
    this.sight = sight;
    this.chosen = chosen;
    this.em = sight.em();
    this.list = new DisplayList.Builder(sight.width(), sight.height());
    this.parts = new PartDrawing(list, em);
  }

  /** Draws what is in sight. */
  public static DisplayList of(Rig rig, WiringLayout layout, Sight sight, Chosen chosen) {
    return new WiringDrawing(rig, sight, chosen).draw(layout);
  }

  private DisplayList draw(WiringLayout layout) {
    list.fillRect(0, 0, sight.width(), sight.height(), WiringInk.PAPER);
    parts.strip(
        layout.source(),
        WiringLayout.EDGE,
        layout.sourceY() - sight.top(),
        sight.width() - WiringLayout.EDGE);
    for (WiringLayout.ChainBlock block : layout.chains()) {
      if (inSight(block.y(), block.height())) {
        chain(block);
      }
    }
    for (WiringLayout.OutputLine line : layout.outputs()) {
      if (inSight(line.y(), line.height())) {
        output(line);
      }
    }
    if (chosen.cursor().isPresent()) {
      list.strokeRect(
          0.5, 0.5, sight.width() - 1, sight.height() - 1, Stroke.thin(WiringInk.CHOSEN));
    }
    return list.build();
  }

  private boolean inSight(double y, double height) {
    return y < sight.top() + sight.height() && y + height > sight.top();
  }

  private void chain(WiringLayout.ChainBlock block) {
    Chain chain = block.chain();
    boolean on = chosen.part().equals(new RigPart.OfChain(chain.id()));
    String title =
        texts.get(
            "wiring.chain",
            Titles.ofChain(chain.id(), texts),
            chain.type().title(),
            chain.order().letters(),
            Integer.toString(chain.pixels()));
    list.text(
        6,
        block.y() - sight.top() + 1,
        title,
        em,
        Mark.Height.TOP,
        on ? WiringInk.CHOSEN : WiringInk.TEXT);
    double end = sight.width() - WiringLayout.EDGE;
    parts.strip(block.supply(), WiringLayout.EDGE, block.supplyY() - sight.top(), end);
    parts.strip(block.data(), WiringLayout.EDGE, block.dataY() - sight.top(), end);
    if (block.far().lines() > 0) {
      double far = block.farY() - sight.top();
      list.text(6, far, texts.get("wiring.far"), em, Mark.Height.TOP, WiringInk.TEXT_SOFT);
      parts.strip(block.far(), WiringLayout.EDGE, far + block.titleHeight(), end);
    }
    list.text(
        6,
        block.y(0) - sight.top() + block.cell() / 2 - em * 0.5,
        texts.get("wiring.in"),
        em * 0.85,
        Mark.Height.TOP,
        WiringInk.TEXT_SOFT);
    Map<Integer, Lamp> owners = owners(chain);
    Set<String> named = new HashSet<>();
    for (int pixel = 0; pixel < chain.pixels(); pixel++) {
      double y = block.y(pixel) - sight.top();
      if (y <= sight.height() && y + block.cell() * 2 >= 0) {
        wire(block, pixel, y);
        pixel(block, pixel, y, on, owners.get(pixel));
        if (owners.get(pixel) != null) {
          owner(block, pixel, y, owners, named);
        }
      }
    }
  }

  // From the pixel before; into the first one with an arrow.
  private void wire(WiringLayout.ChainBlock block, int pixel, double y) {
    double x = block.x(pixel);
    double middle = y + (block.cell() - BETWEEN) / 2;
    if (pixel % block.columns() != 0) {
      list.line(
          x - (block.pitch() - block.cell()) - BETWEEN,
          middle,
          x,
          middle,
          Stroke.thin(WiringInk.LINE));
    } else if (pixel == 0) {
      Stroke data = Stroke.thin(WiringInk.TEXT);
      list.line(x - 10, middle, x, middle, data);
      list.line(x - 5, middle - 4, x, middle, data);
      list.line(x - 5, middle + 4, x, middle, data);
    }
  }

  private void pixel(
      WiringLayout.ChainBlock block,
      int pixel,
      double y,
      boolean on,
      @org.jspecify.annotations.Nullable Lamp owner) {
    double x = block.x(pixel);
    double side = block.cell() - BETWEEN;
    boolean marked =
        (on && chosen.marked().contains(pixel))
            || (owner != null && chosen.part().equals(new RigPart.OfLamp(owner.id())));
    list.fillRect(
        x,
        y,
        side,
        side,
        marked ? WiringInk.MARKED : owner == null ? WiringInk.FREE : WiringInk.OWNED);
    list.strokeRect(
        x + 0.5,
        y + 0.5,
        side - 1,
        side - 1,
        pixel == 0 ? new Stroke(WiringInk.TEXT, 2) : Stroke.thin(WiringInk.LINE));
    if (on && chosen.cursor().equals(OptionalInt.of(pixel))) {
      list.strokeRect(x - 2, y - 2, side + 4, side + 4, Stroke.thin(WiringInk.CHOSEN));
    }
    list.centred(x + side / 2, y + side / 2, Integer.toString(pixel), em * 0.85, WiringInk.TEXT);
  }

  // The lamp's name stands under its first pixel, and a bracket under all of them.
  private void owner(
      WiringLayout.ChainBlock block,
      int pixel,
      double y,
      Map<Integer, Lamp> owners,
      Set<String> named) {
    Lamp owner = Objects.requireNonNull(owners.get(pixel));
    double x = block.x(pixel);
    double side = block.cell() - BETWEEN;
    double under = y + side + 2;
    double on = owner.equals(owners.get(pixel + 1)) ? block.pitch() - side : 0;
    list.line(x, under, x + side + on, under, Stroke.thin(WiringInk.TEXT_SOFT));
    if (named.add(owner.id())) {
      List<String> lines = WiringLayout.nameLines(owner);
      for (int line = 0; line < lines.size(); line++) {
        list.text(
            x,
            under + 1 + line * NAME_LINE * em,
            lines.get(line),
            WiringLayout.NAME * em,
            Mark.Height.TOP,
            WiringInk.TEXT_SOFT,
            block.pitch() * run(owners, pixel) - WiringLayout.NAME_ROOM);
      }
    }
  }

  private static int run(Map<Integer, Lamp> owners, int from) {
    int length = 1;
    while (Objects.equals(owners.get(from + length), owners.get(from)) && length < 40) {
      length++;
    }
    return length;
  }

  private Map<Integer, Lamp> owners(Chain chain) {
    Map<Integer, Lamp> owners = new HashMap<>();
    for (Lamp lamp : rig.lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels f) {
        for (PixelRun run : f.runs()) {
          for (int i = run.from(); run.chain().equals(chain.id()) && i < run.end(); i++) {
            owners.put(i, lamp);
          }
        }
      }
    }
    return owners;
  }

  private void output(WiringLayout.OutputLine line) {
    String id = line.output().id();
    String lamp =
        rig.lamps().stream()
            .filter(l -> l.fitting() instanceof Fitting.Output f && f.output().equals(id))
            .findFirst()
            .map(Titles::of)
            .orElse(texts.get("wiring.noLamp"));
    boolean on = chosen.part().equals(new RigPart.OfOutput(id));
    list.text(
        6,
        line.y() - sight.top() + 1,
        texts.get("wiring.output", lamp, id),
        em,
        Mark.Height.TOP,
        on ? WiringInk.CHOSEN : WiringInk.TEXT,
        sight.width() - 12);
    parts.strip(
        line.parts(),
        WiringLayout.EDGE,
        line.y() - sight.top() + line.titleHeight(),
        sight.width() - WiringLayout.EDGE);
  }
}
