package lampwright.app.workshop.view;

import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.words.Texts;

/**
 * Says that lamps are not shown for being muted, or not solo: what is on the screen is then not
 * what the chain shows. A press shows them all again.
 */
final class HiddenNotice extends Button {
  HiddenNotice(Bench bench, DrawingSheet sheet) {
    Texts texts = Texts.of("ribbons");
    setId("hidden-lamps");
    getStyleClass().add("hidden-notice");
    managedProperty().bind(visibleProperty());
    Runnable show =
        () -> {
          int hidden = sheet.signs().hidden(bench.project());
          String all = Integer.toString(bench.project().rig().lamps().size());
          setVisible(hidden > 0);
          setText(texts.get("hidden.short", Integer.toString(hidden), all));
          String words = texts.get("hidden", Integer.toString(hidden), all);
          setAccessibleText(words);
          setTooltip(new Tooltip(words + "\n" + texts.get("act.unmute")));
        };
    sheet.signsProperty().addListener((of, before, now) -> show.run());
    bench.watch(BenchState::project, (before, now) -> show.run());
    setOnAction(event -> sheet.signsProperty().set(sheet.signs().allShown()));
    show.run();
  }
}
