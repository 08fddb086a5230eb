package lampwright.app.workshop.view.live;

import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.ColourOrders.Seen;
import lampwright.app.workshop.model.live.OrderFinder;
import lampwright.app.workshop.words.Texts;

/** The questions by which the colour order of a chain is found. */
final class OrderPane extends VBox {
  private final Texts texts = Texts.of("live");
  private final FlowPane answers = new FlowPane(4, 4);
  private final Label asked = Lines.of("order-asked", "link-state");

  OrderPane(OrderFinder order) {
    getStyleClass().add("link-pane");
    setId("order");
    for (Seen seen : Seen.values()) {
      answers.getChildren().add(button("seen." + seen.key(), () -> order.answer(seen)));
    }
    answers.getChildren().add(button("cancel", order::cancel));
    getChildren().setAll(asked, answers);
    order.questionProperty().addListener((of, before, now) -> show(now));
    show(order.questionProperty().get());
  }

  /** Takes the focus if it is elsewhere. */
  void takeFocus() {
    if (!Lines.hasFocus(this)) {
      answers.getChildren().get(0).requestFocus();
    }
  }

  private void show(Optional<OrderFinder.Question> now) {
    Lines.show(
        asked,
        now.map(
                q ->
                    texts.get(
                        "order.asked",
                        Integer.toString(q.index() + 1),
                        Integer.toString(q.count()),
                        q.chain().id()))
            .orElse(""));
  }

  private Button button(String key, Runnable run) {
    Button button = new Button(texts.get("order." + key));
    button.setId("order-" + key.replace('.', '-'));
    button.getStyleClass().add("small-toggle");
    button.setOnAction(event -> run.run());
    return button;
  }
}
