package lampwright.app.workshop.view.form;

import com.google.common.base.CharMatcher;
import com.google.common.base.Splitter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Slot;

/** Numbers in a row, typed with spaces between them. */
final class ListFields {
  private ListFields() {}

  static Field numbers(Words words, Kind.Numbers kind, Slot<List<BigDecimal>> slot) {
    TextField text = new TextField(text(slot.value()));
    text.setPrefColumnCount(16);
    text.setPromptText(words.get("numbers.none"));
    String range = words.get("numbers.spaces", words.range(kind.each()));
    text.setAccessibleText(words.label(slot.key()) + ", " + range);
    text.setTooltip(new Tooltip(range));
    Label trouble = new Label();
    trouble.getStyleClass().add("field-trouble");
    Runnable enter =
        () -> {
          Optional<List<BigDecimal>> numbers = parse(text.getText(), kind);
          boolean taken =
              numbers.isPresent()
                  && (numbers.get().equals(slot.value()) || slot.set(numbers.get()));
          trouble.setText(taken ? "" : "! " + slot.refusalProperty().get().orElse(range));
        };
    Entered.listen(text, enter);
    slot.valueProperty().addListener((of, before, now) -> text.setText(text(now)));
    HBox all = new HBox(6, text, trouble);
    all.setAlignment(Pos.CENTER_LEFT);
    return new Field(all, text);
  }

  private static String text(List<BigDecimal> numbers) {
    return numbers.stream().map(NumberText::of).collect(Collectors.joining(" "));
  }

  private static Optional<List<BigDecimal>> parse(String text, Kind.Numbers kind) {
    List<BigDecimal> numbers = new ArrayList<>();
    for (String word :
        Splitter.on(CharMatcher.anyOf(" \t;")).omitEmptyStrings().split(text.strip())) {
      Optional<BigDecimal> number =
          NumberText.parse(word)
              .filter(
                  n -> n.compareTo(kind.each().min()) >= 0 && n.compareTo(kind.each().max()) <= 0);
      if (number.isEmpty() || numbers.size() >= kind.maxCount()) {
        return Optional.empty();
      }
      numbers.add(number.get());
    }
    return Optional.of(numbers);
  }
}
