package lampwright.app.workshop.view.cue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.light.MatchedMix;

/** The controls of a white: its kelvins, and a scale of what the lamp makes of every white. */
final class KelvinControls {
  private static final int SCALE_WIDTH = 220;
  private static final int SCALE_HEIGHT = 14;
  private static final double LEAST_MIRED = 1e6 / Colour.Kelvin.MAX;
  private static final double MOST_MIRED = 1e6 / Colour.Kelvin.MIN;

  private final Texts texts = Texts.of("cue");
  private final Slot<Colour> slot;
  private final TextField number = new TextField();
  // Evenly in mired, as equal steps of white look equal so.
  private final Slider mired = new Slider(LEAST_MIRED, MOST_MIRED, 250);

  private KelvinControls(Slot<Colour> slot) {
    this.slot = slot;
  }

  /**
   * Makes them.
   *
   * @param look of the lamp that the scale is shown for, if there is one
   */
  static ColourControls of(Slot<Colour> slot, ColourSliders sliders, Optional<PixelLook> look) {
    return new KelvinControls(slot).controls(sliders, look);
  }

  private ColourControls controls(ColourSliders sliders, Optional<PixelLook> look) {
    number.setPrefColumnCount(6);
    number.setAccessibleText(texts.get("kelvin.number"));
    mired.setAccessibleText(texts.get("kelvin.scale"));
    mired.setBlockIncrement(10);
    mired.setPrefWidth(SCALE_WIDTH);
    sliders.listen(mired);
    mired
        .valueProperty()
        .addListener((of, before, now) -> sliders.set(even(1e6 / now.doubleValue())));
    listen();
    number.setTooltip(new Tooltip(texts.get("kelvin.range")));
    Label unit = new Label(texts.get("kelvin.unit"));
    unit.getStyleClass().add("field-range");
    HBox line = new HBox(6, number, unit);
    line.setAlignment(Pos.CENTER_LEFT);
    return new ColourControls(List.of(line, new VBox(1, scale(look), mired)), this::show);
  }

  private void listen() {
    number.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            typed();
          }
        });
    number
        .focusedProperty()
        .addListener(
            (of, before, now) -> {
              if (!now) {
                typed();
                show(slot.value());
              }
            });
  }

  private void typed() {
    // The field may lose the focus because the colour has just taken another form.
    if (!(slot.value() instanceof Colour.Kelvin)) {
      return;
    }
    NumberText.parse(number.getText())
        .map(BigDecimal::doubleValue)
        .filter(k -> k >= Colour.Kelvin.MIN && k <= Colour.Kelvin.MAX)
        .map(Colour.Kelvin::new)
        .filter(k -> !k.equals(slot.value()))
        .ifPresent(slot::set);
  }

  private void show(Colour colour) {
    if (colour instanceof Colour.Kelvin k) {
      number.setText(NumberText.of(BigDecimal.valueOf(k.kelvin())));
      mired.setValue(1e6 / k.kelvin());
    }
  }

  private static Colour.Kelvin even(double kelvin) {
    double step = kelvin < 5000 ? 50 : 100;
    return within(Math.round(kelvin / step) * step);
  }

  private static Colour.Kelvin within(double kelvin) {
    return new Colour.Kelvin(Math.max(Colour.Kelvin.MIN, Math.min(Colour.Kelvin.MAX, kelvin)));
  }

  // What this lamp makes of every white, with a dark line under those that it can't reach.
  private static ImageView scale(Optional<PixelLook> look) {
    WritableImage image = new WritableImage(SCALE_WIDTH, SCALE_HEIGHT);
    for (int x = 0; x < SCALE_WIDTH; x++) {
      double mired = LEAST_MIRED + (MOST_MIRED - LEAST_MIRED) * x / (SCALE_WIDTH - 1.0);
      Colour white = within(1e6 / mired);
      int argb = look.map(l -> l.argb(white)).orElse(PixelLook.requested(white));
      boolean reached =
          look.flatMap(l -> l.explain(white)).map(MatchedMix::reachesTarget).orElse(true);
      for (int y = 0; y < SCALE_HEIGHT; y++) {
        boolean barred = !reached && y >= SCALE_HEIGHT - 3 && x / 3 % 2 == 0;
        image.getPixelWriter().setArgb(x, y, barred ? 0xFF000000 : argb);
      }
    }
    return new ImageView(image);
  }
}
