package lampwright.app.workshop.view.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import javafx.geometry.Orientation;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollBar;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.model.rig.WiringDrawing;
import lampwright.app.workshop.model.rig.WiringInk;
import lampwright.app.workshop.model.rig.WiringLayout;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.FontMeasure;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.exporters.wiring.WiringPart;
import lampwright.exporters.wiring.WiringPlan;
import org.jspecify.annotations.Nullable;

/**
 * The wiring as it is soldered: chains in data order with their pixel numbers, outputs with their
 * LEDs. Pixels are marked here to make lamps of them.
 */
public final class WiringView extends Region {
  private static final double MOST_LINES = 60;

  private final Texts texts = Texts.of("rig");
  private final RigModel model;
  private final RigCommands commands;
  private final Inks<WiringInk> inks;
  private final DisplayPainter painter;
  private final FontMeasure measure = new FontMeasure();
  private final Label sample = new Label();
  private final Canvas canvas = new Canvas();
  private final ScrollBar down = new ScrollBar();
  private @Nullable WiringLayout layout;
  private boolean dirty = true;
  private int cursor;
  private int anchor;
  private Optional<Carried> carried = Optional.empty();

  /** A lamp that is dragged along its chain, with the project before. */
  private record Carried(Project before, WiringLayout.Hit hit) {}

  public WiringView(RigModel model, RigCommands commands) {
    this.model = model;
    this.commands = commands;
    this.inks = new Inks<>(WiringInk.class, this::redraw);
    this.painter = new DisplayPainter(inks::paint);
    sample.setVisible(false);
    getStyleClass().add("wiring");
    setId("wiring");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.LIST_VIEW);
    down.setOrientation(Orientation.VERTICAL);
    down.setFocusTraversable(false);
    down.valueProperty().addListener((of, before, now) -> redraw());
    getChildren().setAll(inks, sample, canvas, down);
    model.bench().watch(BenchState::project, (before, now) -> redraw());
    model.findingsProperty().addListener((of, before, now) -> redraw());
    model.chosenProperty().addListener((of, before, now) -> redraw());
    model.markedProperty().addListener((of, before, now) -> redraw());
    focusedProperty().addListener((of, before, now) -> redraw());
    canvas.setOnMousePressed(this::pressed);
    canvas.setOnMouseDragged(this::dragged);
    canvas.setOnMouseReleased(this::released);
    addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    addEventHandler(
        ScrollEvent.SCROLL,
        event -> {
          double before = down.getValue();
          if (!event.isShortcutDown() && !down.isDisable()) {
            scrollTo(before - event.getDeltaY());
          }
          // At its end the form around it scrolls on.
          if (down.getValue() != before) {
            event.consume();
          }
        });
  }

  /** As wide as it is given, and as high as its drawing there, up to a limit. */
  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    double room = width > 0 ? width : getWidth();
    double whole = layOut(Math.max(1, room - Math.ceil(down.prefWidth(-1)))).height();
    return Math.ceil(Math.min(whole, MOST_LINES * size()));
  }

  private double size() {
    Font font = sample.getFont();
    painter.family(font.getFamily());
    measure.family(font.getFamily());
    return font.getSize();
  }

  /** Where everything is in a drawing of a width, in pixels of the screen. */
  public WiringLayout layOut(double width) {
    double size = size();
    return new WiringLayout(model.bench().project().rig(), model.plan(), width, size, measure);
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
    double size = size();
    WiringLayout now = layOut(width);
    layout = now;
    double most = Math.max(0, now.height() - height);
    down.setMax(Math.max(1, most));
    down.setVisibleAmount(down.getMax() * height / Math.max(1, most + height));
    down.setDisable(most <= 0);
    down.setVisible(most > 0);
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
    painter.paint(
        WiringDrawing.of(
            model.bench().project().rig(),
            now,
            new WiringDrawing.Sight(width, height, top(), size),
            new WiringDrawing.Chosen(
                model.chosenProperty().get(),
                model.markedProperty().get(),
                isFocused() ? OptionalInt.of(cursor) : OptionalInt.empty())),
        canvas.getGraphicsContext2D());
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    // The sheet around it would take the focus, and the keys with it.
    event.consume();
    hit(event)
        .ifPresent(
            hit -> {
              boolean chain =
                  model.bench().project().rig().chains().stream()
                      .anyMatch(c -> c.id().equals(hit.id()));
              model
                  .chosenProperty()
                  .set(chain ? new RigPart.OfChain(hit.id()) : new RigPart.OfOutput(hit.id()));
              boolean one = !event.isShiftDown() && !event.isShortcutDown();
              if (chain && hit.pixel() >= 0) {
                carried =
                    Optional.of(new Carried(model.bench().project(), hit))
                        .filter(c -> one && model.owner(hit.id(), hit.pixel()).isPresent());
                mark(hit.pixel(), event.isShiftDown(), event.isShortcutDown());
              } else {
                model.markedProperty().set(Set.of());
              }
            });
  }

  private void dragged(MouseEvent event) {
    if (carried.isPresent()) {
      carry(carried.get(), event);
      return;
    }
    hit(event)
        .filter(h -> h.pixel() >= 0)
        .filter(h -> model.chosenProperty().get().equals(new RigPart.OfChain(h.id())))
        .ifPresent(h -> mark(h.pixel(), true, event.isShortcutDown()));
  }

  // A lamp that is dragged goes along its chain; from a free pixel, pixels are marked.
  private void carry(Carried lamp, MouseEvent event) {
    hit(event)
        .filter(to -> to.id().equals(lamp.hit().id()) && to.pixel() >= 0)
        .ifPresent(
            to -> {
              model.markedProperty().set(Set.of());
              commands.moveAlong(lamp.before(), to.id(), lamp.hit().pixel(), to.pixel(), lamp);
              cursor = to.pixel();
              anchor = cursor;
            });
  }

  private void released(MouseEvent event) {
    if (carried.isPresent()) {
      if (!event.isStillSincePress()) {
        carry(carried.get(), event);
      }
      carried = Optional.empty();
      model.bench().endGesture();
    }
  }

  private Optional<WiringLayout.Hit> hit(MouseEvent event) {
    WiringLayout now = layout;
    return now == null ? Optional.empty() : now.hit(event.getX(), event.getY() + top());
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
    if (event.getCode() == KeyCode.ESCAPE && carried.isPresent()) {
      carried = Optional.empty();
      model.bench().cancelGesture();
      event.consume();
      return;
    }
    if (event.isShortcutDown()) {
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
    if (event.isAltDown()) {
      if (event.getCode() == KeyCode.LEFT || event.getCode() == KeyCode.RIGHT) {
        int by = event.getCode() == KeyCode.LEFT ? -1 : 1;
        cursor = commands.stepAlong(chain.get().id(), cursor, by);
        anchor = cursor;
        redraw();
        event.consume();
      }
      return;
    }
    int columns =
        now.chains().stream()
            .filter(block -> block.chain().id().equals(chain.get().id()))
            .mapToInt(WiringLayout.ChainBlock::columns)
            .findFirst()
            .orElse(1);
    int last = chain.get().pixels() - 1;
    switch (event.getCode()) {
      case LEFT -> go(cursor - 1, last, event.isShiftDown());
      case RIGHT -> go(cursor + 1, last, event.isShiftDown());
      case UP -> go(cursor - columns, last, event.isShiftDown());
      case DOWN -> go(cursor + columns, last, event.isShiftDown());
      case SPACE -> mark(cursor, false, true);
      case ENTER -> commands.makeLamp();
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

  /** The middle of a pixel in this pane; none while it is not laid out. */
  public Optional<Point2D> middleOf(String chain, int pixel) {
    WiringLayout now = layout;
    return now == null
        ? Optional.empty()
        : now.chains().stream()
            .filter(block -> block.chain().id().equals(chain))
            .findFirst()
            .map(
                block ->
                    new Point2D(
                        block.x(pixel) + block.cell() / 3,
                        block.y(pixel) + block.cell() / 3 - top()));
  }

  private double top() {
    return down.isDisable() ? 0 : down.getValue();
  }

  private String ofChain(String id, Function<WiringPlan.OfChain, List<WiringPart>> parts) {
    return model.plan().chains().stream()
        .filter(of -> of.chain().id().equals(id))
        .findFirst()
        .map(of -> WiringPlan.words(parts.apply(of)))
        .orElse("");
  }

  private void speak() {
    RigPart part = model.chosenProperty().get();
    if (part instanceof RigPart.OfChain c) {
      String lamp = model.owner(c.id(), cursor).map(Lamp::title).orElse(texts.get("wiring.free"));
      setAccessibleText(
          texts.get(
              "wiring.words",
              Titles.ofChain(c.id(), texts),
              Integer.toString(cursor),
              lamp,
              Integer.toString(model.markedProperty().get().size()),
              ofChain(c.id(), WiringPlan.OfChain::supply),
              ofChain(c.id(), WiringPlan.OfChain::data)));
    } else {
      setAccessibleText(texts.get("wiring.pane"));
    }
  }
}
