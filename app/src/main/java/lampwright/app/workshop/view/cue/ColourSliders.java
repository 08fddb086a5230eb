package lampwright.app.workshop.view.cue;

import java.math.BigDecimal;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.HBox;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;

/** The sliders that mix a colour: the steps of one drag are one gesture. */
final class ColourSliders {
  /** The most of a slider for hues, in degrees. */
  static final double FULL_CIRCLE = 360;

  private final Texts texts = Texts.of("cue");
  private final Slot<Colour> slot;
  private Object gesture = new Object();
  private boolean shows;

  ColourSliders(Slot<Colour> slot) {
    this.slot = slot;
  }

  /** Runs what moves controls only to show the colour, so that it changes nothing. */
  void showing(Runnable show) {
    shows = true;
    show.run();
    shows = false;
  }

  boolean shows() {
    return shows;
  }

  /** Changes the colour by a step of the gesture. */
  void set(Colour colour) {
    if (!shows && !colour.equals(slot.value())) {
      slot.set(colour, Optional.of(gesture));
    }
  }

  /** The next change begins a gesture. */
  void newGesture() {
    gesture = new Object();
  }

  /** Lets each press of the mouse on a slider begin a gesture. */
  void listen(Slider slider) {
    slider.setOnMousePressed(event -> gesture = new Object());
  }

  Slider slider(String key, double min, double max) {
    Slider slider = new Slider(min, max, min);
    slider.setPrefWidth(140);
    slider.setBlockIncrement(max > 1 ? 1 : 0.01);
    slider.setAccessibleText(texts.get(key));
    slider.setId("slider-" + key.replace('.', '-'));
    listen(slider);
    return slider;
  }

  /** A slider between its name and its value. */
  HBox row(String key, Slider slider) {
    Label name = new Label(texts.get(key));
    name.setMinWidth(76);
    Label value = new Label();
    value.getStyleClass().add("field-range");
    value
        .textProperty()
        .bind(Bindings.createStringBinding(() -> reading(slider), slider.valueProperty()));
    HBox row = new HBox(6, name, slider, value);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  // Shares are percentages on the screen, a hue is an angle, parts of a code are whole numbers.
  private static String reading(Slider slider) {
    if (slider.getMax() > 1) {
      String whole = NumberText.of(BigDecimal.valueOf(rounded(slider, 1)));
      return slider.getMax() == FULL_CIRCLE ? whole + "\u00b0" : whole;
    }
    return NumberText.of(BigDecimal.valueOf(rounded(slider, 1000)).movePointRight(2)) + "\u00a0%";
  }

  /** A slider's value, to whole parts of one. */
  static double rounded(Slider slider, double parts) {
    return Math.round(slider.getValue() * parts) / parts;
  }
}
