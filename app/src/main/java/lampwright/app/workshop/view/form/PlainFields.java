package lampwright.app.workshop.view.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.geometry.Pos;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.Slot;
import org.jspecify.annotations.Nullable;

/** Controls for yes and no, for texts, for one of a few, and for what may be left out. */
final class PlainFields {
  private PlainFields() {}

  static Field flag(Words words, Slot<Boolean> slot) {
    CheckBox box = new CheckBox(words.get("flag.on"));
    box.setSelected(slot.value());
    box.setAccessibleText(words.label(slot.key()));
    box.setOnAction(event -> slot.set(box.isSelected()));
    slot.valueProperty().addListener((of, before, now) -> box.setSelected(now));
    return Field.of(box);
  }

  /** Texts count when they are entered: Enter or leaving the field; an id half typed is none. */
  static Field text(Words words, Kind.Text kind, Slot<String> slot) {
    TextField text = new TextField(slot.value());
    text.setPrefColumnCount(Math.min(24, kind.maxLength()));
    text.setAccessibleText(words.label(slot.key()));
    Label trouble = trouble(slot);
    Runnable enter =
        () -> {
          if (!text.getText().equals(slot.value()) && !slot.set(text.getText())) {
            text.setText(slot.value());
          }
        };
    text.focusedProperty()
        .addListener(
            (of, before, now) -> {
              if (!now) {
                enter.run();
              }
            });
    text.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            enter.run();
            text.selectAll();
          } else if (event.getCode() == KeyCode.ESCAPE && !text.getText().equals(slot.value())) {
            text.setText(slot.value());
            event.consume();
          }
        });
    slot.valueProperty().addListener((of, before, now) -> text.setText(now));
    HBox all = new HBox(6, text, trouble);
    all.setAlignment(Pos.CENTER_LEFT);
    return new Field(all, text);
  }

  static Field choice(Words words, Slot<?> slot) {
    return choiceOf(words, slot);
  }

  // A slot's value is what its kind says.
  @SuppressWarnings("unchecked")
  private static <E> Field choiceOf(Words words, Slot<E> slot) {
    Kind.Choice<E> kind = (Kind.Choice<E>) slot.kind();
    return choiceOf(
        words, slot, kind.values(), e -> words.choice(kind.group(), kind.key().apply(e)));
  }

  private static <E> Field choiceOf(
      Words words, Slot<E> slot, List<E> values, Function<E, String> name) {
    ComboBox<E> box = choiceBox(values, name);
    box.setValue(slot.value());
    box.setAccessibleText(words.label(slot.key()));
    Label trouble = trouble(slot);
    box.setOnAction(
        event -> {
          E selected = box.getValue();
          if (selected != null && !selected.equals(slot.value())) {
            slot.set(selected);
            box.setValue(slot.value());
          }
        });
    slot.valueProperty().addListener((of, before, now) -> box.setValue(now));
    HBox all = new HBox(6, box, trouble);
    all.setAlignment(Pos.CENTER_LEFT);
    return new Field(all, box);
  }

  static <E> ComboBox<E> choiceBox(List<E> values, Function<E, String> name) {
    ComboBox<E> box = new ComboBox<>();
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(@Nullable E value) {
            return value == null ? "" : name.apply(value);
          }

          @Override
          public @Nullable E fromString(String text) {
            return null;
          }
        });
    box.getItems().setAll(values);
    return box;
  }

  static Field maybe(FormContext context, Slot<?> slot) {
    return slot.kind() instanceof Kind.Maybe<?> maybe && maybe.kind() instanceof Kind.Choice<?>
        ? maybeChoice(context.words(), slot)
        : maybeOf(context, slot);
  }

  // What may be left out is the first entry of the list.
  @SuppressWarnings("unchecked")
  private static <E> Field maybeChoice(Words words, Slot<?> given) {
    Slot<Optional<E>> slot = (Slot<Optional<E>>) given;
    Kind.Choice<E> kind = (Kind.Choice<E>) ((Kind.Maybe<E>) given.kind()).kind();
    List<Optional<E>> values = new ArrayList<>();
    values.add(Optional.empty());
    kind.values().forEach(value -> values.add(Optional.of(value)));
    return choiceOf(
        words,
        slot,
        values,
        value ->
            value
                .map(e -> words.choice(kind.group(), kind.key().apply(e)))
                .orElseGet(() -> words.notSet(slot.key())));
  }

  @SuppressWarnings("unchecked")
  private static <V> Field maybeOf(FormContext context, Slot<?> given) {
    Slot<Optional<V>> slot = (Slot<Optional<V>>) given;
    Kind.Maybe<V> kind = (Kind.Maybe<V>) given.kind();
    CheckBox box = new CheckBox(context.words().get("maybe.set"));
    box.setAccessibleText(
        context.words().get("maybe.accessible", context.words().label(slot.key())));
    VBox all = new VBox(4, box);
    Slot<V> inner =
        new Slot<>(
            slot.key(),
            kind.kind(),
            slot.value().orElse(kind.usual()),
            slot::value,
            (value, gesture) -> {
              slot.set(Optional.of(value), gesture);
              return slot.refusalProperty().get();
            });
    Runnable show =
        () -> {
          boolean there = slot.value().isPresent();
          box.setSelected(there);
          if (there) {
            inner.refresh();
            if (all.getChildren().size() == 1) {
              all.getChildren().add(context.field(inner).node());
            }
          } else if (all.getChildren().size() > 1) {
            all.getChildren().remove(1);
          }
        };
    box.setOnAction(
        event -> {
          slot.set(box.isSelected() ? Optional.of(kind.usual()) : Optional.empty());
          show.run();
        });
    slot.valueProperty().addListener((of, before, now) -> show.run());
    show.run();
    return new Field(all, box);
  }

  /** Says why the model refused the last change. */
  static Label trouble(Slot<?> slot) {
    Label trouble = new Label();
    trouble.getStyleClass().add("field-trouble");
    trouble.setWrapText(true);
    Runnable show =
        () -> {
          trouble.setText(slot.refusalProperty().get().map(text -> "! " + text).orElse(""));
          trouble.setVisible(!trouble.getText().isEmpty());
          trouble.setManaged(!trouble.getText().isEmpty());
        };
    slot.refusalProperty().addListener((of, before, now) -> show.run());
    show.run();
    return trouble;
  }
}
