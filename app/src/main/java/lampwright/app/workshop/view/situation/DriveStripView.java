package lampwright.app.workshop.view.situation;

import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import lampwright.app.workshop.model.situation.DriveInk;
import lampwright.app.workshop.model.situation.DriveModel;
import lampwright.app.workshop.model.situation.DriveStrip;
import lampwright.app.workshop.model.situation.ShowState;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;

/** The strip of a drive; press or drag to go through it, or use the arrow keys. */
final class DriveStripView extends Region {
  private static final int FAR = 50;
  private static final double LINE = 1.15;

  private final Texts texts = Texts.of("situations");
  private final DriveModel model;
  private final Canvas canvas = new Canvas();
  private final Inks<DriveInk> inks = new Inks<>(DriveInk.class, this::paint);
  private final DisplayPainter painter = new DisplayPainter(inks::paint);
  // Unseen; has the type that the stylesheet gives.
  private final Label type = new Label();

  DriveStripView(DriveModel model) {
    this.model = model;
    setId("drive-strip");
    getStyleClass().add("drive-strip");
    setAccessibleRole(AccessibleRole.SLIDER);
    type.setManaged(false);
    type.setVisible(false);
    canvas.setMouseTransparent(true);
    getChildren().setAll(inks, type, canvas);
    model
        .runProperty()
        .addListener(
            (of, before, now) -> {
              setFocusTraversable(now.isPresent());
              requestLayout();
              paint();
            });
    model.transmitter().stateProperty().addListener((of, before, now) -> paint());
    addEventHandler(MouseEvent.MOUSE_PRESSED, this::went);
    addEventHandler(MouseEvent.MOUSE_DRAGGED, this::went);
    addEventHandler(KeyEvent.KEY_PRESSED, this::pressed);
  }

  private Optional<DriveStrip> strip(double width) {
    return model
        .runProperty()
        .get()
        .map(run -> new DriveStrip(run, model.ladder(), Math.max(1, width), em()));
  }

  private double em() {
    return type.getFont().getSize() * LINE;
  }

  private void went(MouseEvent event) {
    requestFocus();
    strip(getWidth()).ifPresent(strip -> model.go(strip.frame(event.getX())));
    event.consume();
  }

  private void pressed(KeyEvent event) {
    Optional<Integer> now = model.frame();
    if (now.isEmpty()) {
      return;
    }
    int by = event.isShiftDown() ? FAR : 1;
    int frames = model.runProperty().get().orElseThrow().frames();
    switch (event.getCode()) {
      case LEFT -> model.go(now.get() - by);
      case RIGHT -> model.go(now.get() + by);
      case HOME -> model.go(0);
      case END -> model.go(frames - 1);
      default -> {
        return;
      }
    }
    event.consume();
  }

  @Override
  protected double computePrefHeight(double width) {
    return strip(width).map(DriveStrip::height).orElse(0.0);
  }

  @Override
  protected void layoutChildren() {
    paint();
  }

  private void paint() {
    double width = Math.max(1, Math.floor(getWidth()));
    Optional<DriveStrip> strip = strip(width);
    double height = strip.map(DriveStrip::height).orElse(1.0);
    if (canvas.getWidth() != width || canvas.getHeight() != height) {
      canvas.setWidth(width);
      canvas.setHeight(height);
    }
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.clearRect(0, 0, width, height);
    painter.family(type.getFont().getFamily());
    strip.ifPresent(s -> painter.paint(s.draw(model.frame()), g));
    setAccessibleText(words());
  }

  private String words() {
    return model
        .frame()
        .map(
            frame ->
                texts.get(
                    "drive.strip",
                    Integer.toString(frame),
                    Integer.toString(model.runProperty().get().orElseThrow().frames()),
                    model
                        .transmitter()
                        .stateProperty()
                        .get()
                        .map(
                            state ->
                                model.ladder().stream()
                                    .filter(
                                        id ->
                                            Optional.ofNullable(state.rungs().get(id))
                                                .filter(ShowState.RungState::active)
                                                .isPresent())
                                    .collect(Collectors.joining(", ")))
                        .orElse("")))
        .orElseGet(() -> texts.get("drive.none"));
  }
}
