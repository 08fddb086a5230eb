package lampwright.app.workshop.view.ribbon;

import java.math.BigDecimal;
import java.util.List;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import lampwright.app.workshop.model.ribbon.GuideDrawing;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.app.workshop.model.sound.Guide;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.FontMeasure;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;

/** The guide sound above the ribbons: its title at the left, its waveform along the time. */
final class GuideView extends Region {
  /** Its height, in lines of text. */
  private static final double LINES = 2.4;

  private final Texts texts = Texts.of("sound");
  private final RibbonsModel model;
  private final Guide guide;
  private final DisplayPainter painter;
  private final Canvas title = new Canvas();
  private final Canvas wave = new Canvas();
  private Object gesture = new Object();
  private BigDecimal heldFrom = BigDecimal.ZERO;
  private double pressX;
  private boolean drags;

  /**
   * @param changed is told when it has to be drawn anew
   */
  GuideView(RibbonsModel model, Guide guide, DisplayPainter painter, Runnable changed) {
    this.model = model;
    this.guide = guide;
    this.painter = painter;
    setId("guide-sound");
    setManaged(false);
    getChildren().setAll(title, wave);
    wave.setCursor(Cursor.H_RESIZE);
    title.setOnMousePressed(this::pressTitle);
    wave.setOnMousePressed(this::press);
    wave.setOnMouseDragged(this::drag);
    wave.setOnMouseReleased(this::release);
    guide.track().clipProperty().addListener((of, before, now) -> changed.run());
    guide.track().faultProperty().addListener((of, before, now) -> changed.run());
    guide.track().mutedProperty().addListener((of, before, now) -> changed.run());
    guide.sounding().troubleProperty().addListener((of, before, now) -> changed.run());
    guide.player().paceProperty().addListener((of, before, now) -> changed.run());
  }

  /** How high it is with lines of this height; 0 where the scene has no sound. */
  double height(double em) {
    return guide.track().sound().isPresent() ? Math.rint(em * LINES) : 0;
  }

  /** Both parts, for tooltips. */
  List<Canvas> parts() {
    return List.of(title, wave);
  }

  /** Puts it at a height of the pane. */
  void place(double y, double titleWidth, double waveWidth, double height) {
    setVisible(height > 0);
    resizeRelocate(0, y, titleWidth + waveWidth, height);
    title.setWidth(titleWidth);
    title.setHeight(height);
    wave.setWidth(waveWidth);
    wave.setHeight(height);
    wave.relocate(titleWidth, 0);
  }

  void paint(FontMeasure measure, Font font) {
    if (isVisible()) {
      painter.family(font.getFamily());
      GuideDrawing drawing = new GuideDrawing(guide, model.axis(), measure, font.getSize());
      double end = model.bench().scene().map(s -> s.lengthMs().doubleValue()).orElse(0.0);
      painter.paint(
          drawing.title(title.getWidth(), title.getHeight()), title.getGraphicsContext2D());
      painter.paint(
          drawing.wave(end, wave.getWidth(), wave.getHeight()), wave.getGraphicsContext2D());
      setAccessibleText(words());
    }
  }

  /** What it is, in words. */
  String words() {
    return texts.get("words", guide.name(), guide.state(), TimeAxis.label(startMs().doubleValue()));
  }

  String hint(MouseEvent event) {
    return texts.get(
        event.getSource() == title ? "hint.title" : "hint", guide.name(), guide.state());
  }

  private BigDecimal startMs() {
    return guide.track().sound().map(GuideSound::startMs).orElse(BigDecimal.ZERO);
  }

  private void pressTitle(MouseEvent event) {
    if (event.getButton() == MouseButton.PRIMARY
        && GuideDrawing.onSign(event.getX(), title.getWidth())) {
      guide.track().mutedProperty().set(!guide.track().mutedProperty().get());
    }
  }

  private void press(MouseEvent event) {
    drags = event.getButton() == MouseButton.PRIMARY;
    pressX = event.getX();
    heldFrom = startMs();
    gesture = new Object();
  }

  private void drag(MouseEvent event) {
    if (drags && model.bench().scene().flatMap(Scene::guideSound).isPresent()) {
      double ms = heldFrom.doubleValue() + (event.getX() - pressX) * model.axis().msPerPixel();
      BigDecimal to =
          ms < 0
              ? BigDecimal.valueOf(Math.round(ms))
              : model.snapping().edge(ms, event.isAltDown());
      guide.commands().startAt(to, gesture);
    }
  }

  private void release(MouseEvent event) {
    if (drags && Math.abs(event.getX() - pressX) > RowsMouse.STILL) {
      drag(event);
    }
    if (drags) {
      model.bench().endGesture();
    }
    drags = false;
  }

  /** Whether it is being dragged. */
  boolean isDragging() {
    return drags;
  }

  /** Forgets that it is dragged. */
  void forget() {
    drags = false;
  }
}
