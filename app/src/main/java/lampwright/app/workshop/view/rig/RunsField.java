package lampwright.app.workshop.view.rig;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.view.form.Entered;
import lampwright.app.workshop.view.form.Field;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.PixelRun;

/** The pixels of a lamp as one writes them: {@code roof 0-3, roof 6}. */
final class RunsField {
  private static final Pattern RUN =
      Pattern.compile("([a-z0-9-]{1,40})\\s+(\\d{1,4})(?:\\s*[-–]\\s*(\\d{1,4}))?");

  private RunsField() {}

  static Field of(Slot<List<PixelRun>> slot, String name) {
    Texts texts = Texts.of("rig");
    TextField text = new TextField(words(slot.value()));
    text.setPrefColumnCount(20);
    text.setAccessibleText(name + ", " + texts.get("runs.form"));
    text.setTooltip(new Tooltip(texts.get("runs.form")));
    Label trouble = new Label();
    trouble.getStyleClass().add("field-trouble");
    Runnable enter =
        () -> {
          Optional<List<PixelRun>> runs = parse(text.getText());
          boolean taken =
              runs.isPresent() && (runs.get().equals(slot.value()) || slot.set(runs.get()));
          trouble.setText(
              taken
                  ? ""
                  : "! "
                      + (runs.isEmpty()
                          ? texts.get("runs.form")
                          : slot.refusalProperty().get().orElse("")));
        };
    Entered.listen(text, enter);
    slot.valueProperty().addListener((of, before, now) -> text.setText(words(now)));
    HBox all = new HBox(6, text, trouble);
    all.setAlignment(Pos.CENTER_LEFT);
    return new Field(all, text);
  }

  static String words(List<PixelRun> runs) {
    return runs.stream()
        .map(r -> r.chain() + " " + r.from() + (r.count() == 1 ? "" : "-" + (r.end() - 1)))
        .collect(Collectors.joining(", "));
  }

  static Optional<List<PixelRun>> parse(String text) {
    List<PixelRun> runs = new ArrayList<>();
    for (String part : Splitter.on(',').split(text)) {
      Matcher run = RUN.matcher(part.strip());
      if (!run.matches()) {
        return Optional.empty();
      }
      int from = Integer.parseInt(run.group(2));
      int to = run.group(3) == null ? from : Integer.parseInt(run.group(3));
      if (to < from) {
        return Optional.empty();
      }
      runs.add(new PixelRun(run.group(1), from, to - from + 1));
    }
    return Optional.of(runs);
  }
}
