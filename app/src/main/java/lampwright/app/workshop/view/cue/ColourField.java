package lampwright.app.workshop.view.cue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.image.ImageView;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;
import javafx.util.StringConverter;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.view.form.Entered;
import lampwright.app.workshop.view.form.Field;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.light.MatchedMix;
import lampwright.engine.light.SignalColour;
import org.jspecify.annotations.Nullable;

/**
 * A colour in one of its forms. Two swatches stand beside it: what is wished, and what the lamp's
 * own emitters make of it.
 */
final class ColourField {
  private enum Form {
    SRGB,
    HUE,
    KELVIN,
    SIGNAL,
    DRIVE
  }

  private static final int SCALE_WIDTH = 220;
  private static final double LEAST_MIRED = 1e6 / Colour.Kelvin.MAX;
  private static final double MOST_MIRED = 1e6 / Colour.Kelvin.MIN;

  private final Texts texts = Texts.of("cue");
  private final Slot<Colour> slot;
  private final Supplier<Optional<PixelLook>> look;
  private final ComboBox<Form> forms = new ComboBox<>();
  private final Rectangle wished = new Rectangle(22, 22);
  private final Rectangle made = new Rectangle(22, 22);
  private final Label verdict = new Label();
  private final VBox parts = new VBox(4);
  private @Nullable Form shown;
  private Runnable refresh = () -> {};
  private Object gesture = new Object();
  private boolean shows;

  private ColourField(Slot<Colour> slot, Supplier<Optional<PixelLook>> look) {
    this.slot = slot;
    this.look = look;
  }

  static Field of(Slot<Colour> slot, Supplier<Optional<PixelLook>> look, String name) {
    return new ColourField(slot, look).field(name);
  }

  private Field field(String name) {
    forms.getItems().setAll(Form.values());
    forms.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(@Nullable Form form) {
            return form == null ? "" : texts.get("form." + form.name());
          }

          @Override
          public @Nullable Form fromString(String text) {
            return null;
          }
        });
    forms.setAccessibleText(texts.get("form.accessible", name));
    wished.getStyleClass().add("swatch");
    made.getStyleClass().add("swatch");
    Label wish = new Label(texts.get("swatch.wished"));
    Label lamp = new Label(texts.get("swatch.made"));
    wish.getStyleClass().add("field-range");
    lamp.getStyleClass().add("field-range");
    verdict.getStyleClass().add("field-range");
    verdict.setWrapText(true);
    HBox line = new HBox(6, forms, wished, wish, made, lamp);
    line.setAlignment(Pos.CENTER_LEFT);
    forms.setOnAction(
        event -> {
          Form form = forms.getValue();
          if (form != null && form != form(slot.value())) {
            slot.set(turned(slot.value(), form));
          }
        });
    slot.valueProperty().addListener((of, before, now) -> show());
    show();
    return new Field(new VBox(4, line, parts, verdict), forms);
  }

  private void show() {
    Form form = form(slot.value());
    shows = true;
    forms.setValue(form);
    if (form != shown) {
      shown = form;
      build(form);
    }
    refresh.run();
    shows = false;
    wished.setFill(paint(PixelLook.wished(slot.value())));
    Optional<PixelLook> lamp = look.get();
    made.setFill(lamp.map(l -> paint(l.argb(slot.value()))).orElse(Color.TRANSPARENT));
    Optional<MatchedMix> mix = lamp.flatMap(l -> l.explain(slot.value()));
    verdict.setText(
        mix.filter(m -> !m.reachesTarget()).map(m -> texts.get("reach.nearest")).orElse(""));
    verdict.setManaged(!verdict.getText().isEmpty());
  }

  private void build(Form form) {
    parts.getChildren().clear();
    switch (form) {
      case SRGB -> srgb();
      case HUE -> hue();
      case KELVIN -> kelvin();
      case SIGNAL -> signal();
      case DRIVE -> drive();
    }
  }

  private void srgb() {
    TextField hex = new TextField();
    hex.setPrefColumnCount(8);
    hex.setAccessibleText(texts.get("srgb.hex"));
    Slider red = slider("srgb.red", 0, 255);
    Slider green = slider("srgb.green", 0, 255);
    Slider blue = slider("srgb.blue", 0, 255);
    Runnable mixed =
        () ->
            set(
                new Colour.Srgb(
                    (int) Math.round(red.getValue()),
                    (int) Math.round(green.getValue()),
                    (int) Math.round(blue.getValue())));
    List.of(red, green, blue)
        .forEach(s -> s.valueProperty().addListener((of, before, now) -> mixed.run()));
    Entered.listen(hex, () -> typedHex(hex));
    parts
        .getChildren()
        .setAll(hex, row("srgb.red", red), row("srgb.green", green), row("srgb.blue", blue));
    refresh =
        () -> {
          if (slot.value() instanceof Colour.Srgb c) {
            hex.setText(hex(c));
            red.setValue(c.red());
            green.setValue(c.green());
            blue.setValue(c.blue());
          }
        };
  }

  private void typedHex(TextField field) {
    String text = field.getText().strip();
    String digits = text.startsWith("#") ? text.substring(1) : text;
    if (digits.matches("[0-9a-fA-F]{6}")) {
      int code = Integer.parseInt(digits, 16);
      Colour typed = new Colour.Srgb(code >> 16, code >> 8 & 0xFF, code & 0xFF);
      if (!typed.equals(slot.value())) {
        slot.set(typed);
      }
    } else if (slot.value() instanceof Colour.Srgb c) {
      field.setText(hex(c));
    }
  }

  private static String hex(Colour.Srgb c) {
    return String.format(Locale.ROOT, "#%02X%02X%02X", c.red(), c.green(), c.blue());
  }

  private void hue() {
    Slider degrees = slider("hue.degrees", 0, 360);
    Slider saturation = slider("hue.saturation", 0, 1);
    Runnable mixed = () -> set(new Colour.Hue(rounded(degrees, 1), rounded(saturation, 100)));
    degrees.valueProperty().addListener((of, before, now) -> mixed.run());
    saturation.valueProperty().addListener((of, before, now) -> mixed.run());
    parts.getChildren().setAll(row("hue.degrees", degrees), row("hue.saturation", saturation));
    refresh =
        () -> {
          if (slot.value() instanceof Colour.Hue h) {
            degrees.setValue(h.degrees());
            saturation.setValue(h.saturation());
          }
        };
  }

  // Evenly in mired, as equal steps of white look equal so.
  private void kelvin() {
    TextField number = new TextField();
    number.setPrefColumnCount(6);
    number.setAccessibleText(texts.get("kelvin.number"));
    Slider mired = new Slider(LEAST_MIRED, MOST_MIRED, 250);
    mired.setAccessibleText(texts.get("kelvin.scale"));
    mired.setBlockIncrement(10);
    mired.setPrefWidth(SCALE_WIDTH);
    mired.setOnMousePressed(event -> gesture = new Object());
    mired
        .valueProperty()
        .addListener(
            (of, before, now) -> {
              double kelvin = 1e6 / now.doubleValue();
              double step = kelvin < 5000 ? 50 : 100;
              set(
                  new Colour.Kelvin(
                      Math.max(
                          Colour.Kelvin.MIN,
                          Math.min(Colour.Kelvin.MAX, Math.round(kelvin / step) * step))));
            });
    Runnable typed =
        () ->
            NumberText.parse(number.getText())
                .map(BigDecimal::doubleValue)
                .filter(k -> k >= Colour.Kelvin.MIN && k <= Colour.Kelvin.MAX)
                .map(Colour.Kelvin::new)
                .filter(k -> !k.equals(slot.value()))
                .ifPresent(slot::set);
    number.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            typed.run();
          }
        });
    number
        .focusedProperty()
        .addListener(
            (of, before, now) -> {
              if (!now) {
                typed.run();
                refresh.run();
              }
            });
    Label range = new Label(texts.get("kelvin.range"));
    range.getStyleClass().add("field-range");
    HBox line = new HBox(6, number, range);
    line.setAlignment(Pos.CENTER_LEFT);
    parts.getChildren().setAll(line, new VBox(1, scale(), mired));
    refresh =
        () -> {
          if (slot.value() instanceof Colour.Kelvin k) {
            number.setText(NumberText.of(BigDecimal.valueOf(k.kelvin())));
            mired.setValue(1e6 / k.kelvin());
          }
        };
  }

  // What this lamp makes of every white, with a dark line under those that it can't reach.
  private ImageView scale() {
    WritableImage image = new WritableImage(SCALE_WIDTH, 14);
    Optional<PixelLook> lamp = look.get();
    for (int x = 0; x < SCALE_WIDTH; x++) {
      double mired = LEAST_MIRED + (MOST_MIRED - LEAST_MIRED) * x / (SCALE_WIDTH - 1.0);
      Colour white =
          new Colour.Kelvin(Math.max(Colour.Kelvin.MIN, Math.min(Colour.Kelvin.MAX, 1e6 / mired)));
      int argb = lamp.map(l -> l.argb(white)).orElse(PixelLook.wished(white));
      boolean reached =
          lamp.flatMap(l -> l.explain(white)).map(MatchedMix::reachesTarget).orElse(true);
      for (int y = 0; y < 14; y++) {
        boolean barred = !reached && y >= 11 && x / 3 % 2 == 0;
        image.getPixelWriter().setArgb(x, y, barred ? 0xFF000000 : argb);
      }
    }
    return new ImageView(image);
  }

  private void signal() {
    ComboBox<SignalColour> box = new ComboBox<>();
    box.getItems().setAll(SignalColour.values());
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(@Nullable SignalColour colour) {
            return colour == null ? "" : texts.get("signal." + colour.key());
          }

          @Override
          public @Nullable SignalColour fromString(String text) {
            return null;
          }
        });
    box.setAccessibleText(texts.get("form.SIGNAL"));
    box.setOnAction(
        event -> {
          SignalColour chosen = box.getValue();
          if (chosen != null && !shows) {
            slot.set(new Colour.Signal(chosen));
          }
        });
    parts.getChildren().setAll(box);
    refresh =
        () -> {
          if (slot.value() instanceof Colour.Signal s) {
            box.setValue(s.colour());
          }
        };
  }

  private void drive() {
    Slider r = slider("drive.r", 0, 1);
    Slider g = slider("drive.g", 0, 1);
    Slider b = slider("drive.b", 0, 1);
    Slider w = slider("drive.w", 0, 1);
    Runnable mixed =
        () ->
            set(
                new Colour.Drive(
                    rounded(r, 1000), rounded(g, 1000), rounded(b, 1000), rounded(w, 1000)));
    List.of(r, g, b, w)
        .forEach(s -> s.valueProperty().addListener((of, before, now) -> mixed.run()));
    parts
        .getChildren()
        .setAll(row("drive.r", r), row("drive.g", g), row("drive.b", b), row("drive.w", w));
    refresh =
        () -> {
          if (slot.value() instanceof Colour.Drive d) {
            r.setValue(d.r());
            g.setValue(d.g());
            b.setValue(d.b());
            w.setValue(d.w());
          }
        };
  }

  private HBox row(String key, Slider slider) {
    Label name = new Label(texts.get(key));
    name.setMinWidth(76);
    Label value = new Label();
    value.getStyleClass().add("field-range");
    value
        .textProperty()
        .bind(
            javafx.beans.binding.Bindings.createStringBinding(
                () ->
                    NumberText.of(
                        BigDecimal.valueOf(rounded(slider, slider.getMax() > 1 ? 1 : 1000))),
                slider.valueProperty()));
    HBox row = new HBox(6, name, slider, value);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private Slider slider(String key, double min, double max) {
    Slider slider = new Slider(min, max, min);
    slider.setPrefWidth(140);
    slider.setBlockIncrement(max > 1 ? 1 : 0.01);
    slider.setAccessibleText(texts.get(key));
    slider.setId("slider-" + key.replace('.', '-'));
    slider.setOnMousePressed(event -> gesture = new Object());
    return slider;
  }

  private void set(Colour colour) {
    if (!shows && !colour.equals(slot.value())) {
      slot.set(colour, Optional.of(gesture));
    }
  }

  private static double rounded(Slider slider, double parts) {
    return Math.round(slider.getValue() * parts) / parts;
  }

  private static Form form(Colour colour) {
    if (colour instanceof Colour.Srgb) {
      return Form.SRGB;
    } else if (colour instanceof Colour.Hue) {
      return Form.HUE;
    } else if (colour instanceof Colour.Kelvin) {
      return Form.KELVIN;
    } else if (colour instanceof Colour.Signal) {
      return Form.SIGNAL;
    }
    return Form.DRIVE;
  }

  // Another form begins as near to the colour as it simply can.
  private static Colour turned(Colour from, Form form) {
    int argb = PixelLook.wished(from);
    Color colour = paint(argb);
    return switch (form) {
      case SRGB -> new Colour.Srgb(argb >> 16 & 0xFF, argb >> 8 & 0xFF, argb & 0xFF);
      case HUE ->
          new Colour.Hue(
              Math.round(colour.getHue()), Math.round(colour.getSaturation() * 100) / 100.0);
      case KELVIN -> new Colour.Kelvin(colour.getRed() > colour.getBlue() ? 3000 : 6500);
      case SIGNAL -> new Colour.Signal(SignalColour.AMBER);
      case DRIVE -> new Colour.Drive(0, 0, 0, 1);
    };
  }

  private static Color paint(int argb) {
    return Color.rgb(argb >> 16 & 0xFF, argb >> 8 & 0xFF, argb & 0xFF);
  }
}
