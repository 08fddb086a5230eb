package lampwright.app.workshop.view.rig;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javafx.geometry.Orientation;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.ScrollBar;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.rig.RigHands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.model.rig.WiringLayout;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import org.jspecify.annotations.Nullable;

/**
 * The wiring as it is soldered: chains in data order with their pixel numbers, outputs with their
 * LEDs. Pixels are marked here to make lamps of them.
 */
public final class WiringView extends Region {
  private final Texts texts = Texts.of("rig");
  private final RigModel model;
  private final RigHands hands;
  private final Inks<Ink> inks;
  private final Canvas canvas = new Canvas();
  private final ScrollBar down = new ScrollBar();
  private @Nullable WiringLayout layout;
  private boolean dirty = true;
  private int cursor;
  private int anchor;

  public WiringView(RigModel model, RigHands hands) {
    this.model = model;
    this.hands = hands;
    this.inks = new Inks<>(Ink.class, this::redraw);
    getStyleClass().add("wiring");
    setId("wiring");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.LIST_VIEW);
    down.setOrientation(Orientation.VERTICAL);
    down.setFocusTraversable(false);
    down.valueProperty().addListener((of, before, now) -> redraw());
    getChildren().setAll(inks, canvas, down);
    model.bench().watch(BenchState::project, (before, now) -> redraw());
    model.chosenProperty().addListener((of, before, now) -> redraw());
    model.markedProperty().addListener((of, before, now) -> redraw());
    focusedProperty().addListener((of, before, now) -> redraw());
    canvas.setOnMousePressed(this::pressed);
    canvas.setOnMouseDragged(this::dragged);
    addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    addEventHandler(
        ScrollEvent.SCROLL,
        event -> {
          if (!event.isShortcutDown()) {
            scrollTo(down.getValue() - event.getDeltaY());
            event.consume();
          }
        });
  }

  private void redraw() {
    if (!dirty) {
      dirty = true;
      requestLayout();
    }
  }

  @Override
  protected void layoutChildren() {
    dirty = false;
    double bar = Math.ceil(down.prefWidth(-1));
    double width = Math.max(1, getWidth() - bar);
    double height = Math.max(1, getHeight());
    canvas.setWidth(width);
    canvas.setHeight(height);
    down.resizeRelocate(width, 0, bar, height);
    double size = new Text().getFont().getSize();
    WiringLayout now = new WiringLayout(model.bench().project().rig(), width, size);
    layout = now;
    double most = Math.max(0, now.height() - height);
    down.setMax(Math.max(1, most));
    down.setVisibleAmount(down.getMax() * height / Math.max(1, most + height));
    down.setDisable(most <= 0);
    if (down.getValue() > most) {
      down.setValue(most);
    }
    draw(now, width, height, size);
    speak();
  }

  private void scrollTo(double y) {
    down.setValue(Math.max(0, Math.min(down.getMax(), y)));
  }

  private void draw(WiringLayout now, double width, double height, double size) {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.setFill(inks.of(Ink.PAPER));
    g.fillRect(0, 0, width, height);
    double top = down.isDisable() ? 0 : down.getValue();
    for (WiringLayout.ChainBlock block : now.chains()) {
      if (block.y() < top + height && block.y() + block.height() > top) {
        chain(g, block, top, height, size);
      }
    }
    for (WiringLayout.OutputLine line : now.outputs()) {
      if (line.y() < top + height && line.y() + line.height() > top) {
        output(g, line, top, size);
      }
    }
    if (isFocused()) {
      g.setStroke(inks.of(Ink.CHOSEN));
      g.strokeRect(0.5, 0.5, width - 1, height - 1);
    }
  }

  private void chain(
      GraphicsContext g, WiringLayout.ChainBlock block, double top, double height, double size) {
    Chain chain = block.chain();
    boolean chosen = model.chosenProperty().get().equals(new RigPart.OfChain(chain.id()));
    g.setTextAlign(TextAlignment.LEFT);
    g.setTextBaseline(VPos.TOP);
    g.setFont(Font.font(size));
    g.setFill(inks.of(chosen ? Ink.CHOSEN : Ink.TEXT));
    g.fillText(
        texts.get(
            "wiring.chain",
            chain.id(),
            chain.type().id(),
            chain.order().letters(),
            chain.pin().map(p -> ", " + p.name()).orElse("")),
        6,
        block.y() - top + 1);
    g.setFont(Font.font(size * 0.8));
    g.setFill(inks.of(Ink.TEXT_SOFT));
    double first = block.y(0) - top;
    g.fillText(texts.get("wiring.in"), 6, first + block.cell() / 2 - size * 0.5);
    Map<Integer, Lamp> owners = owners(chain);
    Map<String, Integer> numbers = new HashMap<>();
    Set<Integer> marked = chosen ? model.markedProperty().get() : Set.of();
    for (int pixel = 0; pixel < chain.pixels(); pixel++) {
      double x = block.x(pixel);
      double y = block.y(pixel) - top;
      if (y > height || y + block.cell() * 1.3 < 0) {
        continue;
      }
      Lamp owner = owners.get(pixel);
      double side = block.cell() - 6;
      if (pixel % block.columns() != 0) {
        g.setStroke(inks.of(Ink.LINE));
        g.strokeLine(x - 6, y + side / 2, x, y + side / 2);
      } else if (pixel == 0) {
        g.setStroke(inks.of(Ink.TEXT));
        g.strokeLine(x - 10, y + side / 2, x, y + side / 2);
        g.strokeLine(x - 5, y + side / 2 - 4, x, y + side / 2);
        g.strokeLine(x - 5, y + side / 2 + 4, x, y + side / 2);
      }
      g.setFill(
          inks.of(marked.contains(pixel) ? Ink.MARKED : owner == null ? Ink.FREE : Ink.OWNED));
      g.fillRect(x, y, side, side);
      g.setStroke(inks.of(pixel == 0 ? Ink.TEXT : Ink.LINE));
      g.setLineWidth(pixel == 0 ? 2 : 1);
      g.strokeRect(x + 0.5, y + 0.5, side - 1, side - 1);
      g.setLineWidth(1);
      if (chosen && isFocused() && pixel == cursor) {
        g.setStroke(inks.of(Ink.CHOSEN));
        g.strokeRect(x - 2, y - 2, side + 4, side + 4);
      }
      g.setFill(inks.of(Ink.TEXT));
      g.setTextAlign(TextAlignment.CENTER);
      g.setTextBaseline(VPos.CENTER);
      g.setFont(Font.font(size * 0.78));
      g.fillText(Integer.toString(pixel), x + side / 2, y + side / 2);
      // The lamp's name stands under its first pixel, and a bracket under all of them.
      if (owner != null) {
        g.setStroke(inks.of(Ink.TEXT_SOFT));
        double under = y + side + 2;
        g.strokeLine(x, under, x + side + (owner.equals(owners.get(pixel + 1)) ? 6 : 0), under);
        if (numbers.putIfAbsent(owner.id(), pixel) == null) {
          g.setTextAlign(TextAlignment.LEFT);
          g.setTextBaseline(VPos.TOP);
          g.setFont(Font.font(size * 0.68));
          g.setFill(inks.of(Ink.TEXT_SOFT));
          g.fillText(Titles.of(owner), x, under + 1, block.cell() * run(owners, pixel) - 4);
        }
      }
    }
  }

  private static int run(Map<Integer, Lamp> owners, int from) {
    int length = 1;
    while (java.util.Objects.equals(owners.get(from + length), owners.get(from)) && length < 40) {
      length++;
    }
    return length;
  }

  private Map<Integer, Lamp> owners(Chain chain) {
    Map<Integer, Lamp> owners = new HashMap<>();
    for (Lamp lamp : model.bench().project().rig().lamps()) {
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

  private void output(GraphicsContext g, WiringLayout.OutputLine line, double top, double size) {
    boolean chosen = model.chosenProperty().get().equals(new RigPart.OfOutput(line.output().id()));
    double y = line.y() - top + line.height() / 2;
    g.setTextAlign(TextAlignment.LEFT);
    g.setTextBaseline(VPos.CENTER);
    g.setFont(Font.font(size));
    g.setFill(inks.of(chosen ? Ink.CHOSEN : Ink.TEXT));
    String lamp =
        model.bench().project().rig().lamps().stream()
            .filter(
                l ->
                    l.fitting() instanceof Fitting.Output f
                        && f.output().equals(line.output().id()))
            .findFirst()
            .map(Lamp::title)
            .orElse(texts.get("wiring.noLamp"));
    g.fillText(
        texts.get(
            "wiring.output",
            line.output().id(),
            Integer.toString(line.output().ledsInSeries()),
            lamp),
        6,
        y,
        canvas.getWidth() - 12);
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    hit(event)
        .ifPresent(
            hit -> {
              boolean chain =
                  model.bench().project().rig().chains().stream()
                      .anyMatch(c -> c.id().equals(hit.id()));
              model
                  .chosenProperty()
                  .set(chain ? new RigPart.OfChain(hit.id()) : new RigPart.OfOutput(hit.id()));
              if (chain && hit.pixel() >= 0) {
                mark(hit.pixel(), event.isShiftDown(), event.isShortcutDown());
              } else {
                model.markedProperty().set(Set.of());
              }
            });
  }

  private void dragged(MouseEvent event) {
    hit(event)
        .filter(h -> h.pixel() >= 0)
        .filter(h -> model.chosenProperty().get().equals(new RigPart.OfChain(h.id())))
        .ifPresent(h -> mark(h.pixel(), true, event.isShortcutDown()));
  }

  private Optional<WiringLayout.Hit> hit(MouseEvent event) {
    WiringLayout now = layout;
    double top = down.isDisable() ? 0 : down.getValue();
    return now == null ? Optional.empty() : now.hit(event.getX(), event.getY() + top);
  }

  private void mark(int pixel, boolean range, boolean more) {
    Set<Integer> marked = new TreeSet<>(more ? model.markedProperty().get() : Set.of());
    if (range) {
      for (int i = Math.min(anchor, pixel); i <= Math.max(anchor, pixel); i++) {
        marked.add(i);
      }
    } else {
      if (!marked.remove(pixel)) {
        marked.add(pixel);
      }
      anchor = pixel;
    }
    cursor = pixel;
    model.markedProperty().set(Set.copyOf(marked));
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    Optional<Chain> chain =
        model.chosenProperty().get() instanceof RigPart.OfChain c
            ? model.bench().project().rig().chains().stream()
                .filter(x -> x.id().equals(c.id()))
                .findFirst()
            : Optional.empty();
    WiringLayout now = layout;
    if (chain.isEmpty() || now == null) {
      return;
    }
    int columns = now.chains().isEmpty() ? 1 : now.chains().get(0).columns();
    int last = chain.get().pixels() - 1;
    switch (event.getCode()) {
      case LEFT -> go(cursor - 1, last, event.isShiftDown());
      case RIGHT -> go(cursor + 1, last, event.isShiftDown());
      case UP -> go(cursor - columns, last, event.isShiftDown());
      case DOWN -> go(cursor + columns, last, event.isShiftDown());
      case SPACE -> mark(cursor, false, true);
      case ENTER -> hands.makeLamp();
      default -> {
        return;
      }
    }
    event.consume();
  }

  private void go(int to, int last, boolean range) {
    cursor = Math.max(0, Math.min(last, to));
    if (range) {
      mark(cursor, true, false);
    } else {
      anchor = cursor;
    }
    redraw();
  }

  private void speak() {
    RigPart part = model.chosenProperty().get();
    if (part instanceof RigPart.OfChain c) {
      String lamp = model.owner(c.id(), cursor).map(Lamp::title).orElse(texts.get("wiring.free"));
      setAccessibleText(
          texts.get(
              "wiring.words",
              c.id(),
              Integer.toString(cursor),
              lamp,
              Integer.toString(model.markedProperty().get().size())));
    } else {
      setAccessibleText(texts.get("wiring.pane"));
    }
  }
}
