package lampwright.app.workshop.view.live;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.live.BenchLink;
import lampwright.app.workshop.model.live.NamingWalk;
import lampwright.app.workshop.model.live.OrderFinder;
import lampwright.app.workshop.view.PanelParts;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.Chain;
import org.jspecify.annotations.Nullable;

/** What is found out about a newly soldered chain by lighting it. */
final class FindingPane extends VBox {
  private final Texts texts = Texts.of("live");
  private final Bench bench;
  private final ComboBox<String> chains = new ComboBox<>();

  FindingPane(Bench bench, BenchLink link, NamingWalk walk, OrderFinder order) {
    this.bench = bench;
    getStyleClass().add("link-pane");
    Label title = new Label(texts.get("finding"));
    title.getStyleClass().add("form-title");
    Label hint = Lines.of("finding-hint", "form-hint");
    Node begin = begin(link, walk, order);
    NamingPane naming = new NamingPane(walk);
    OrderPane asking = new OrderPane(order);
    getChildren().setAll(title, hint, begin, naming, asking);
    Runnable refresh =
        () -> {
          boolean walks = walk.stepProperty().get().isPresent();
          boolean asks = order.questionProperty().get().isPresent();
          Lines.show(
              hint,
              walks || asks
                  ? ""
                  : texts.get(link.connectedProperty().get() ? "finding.hint" : "finding.connect"));
          show(begin, !walks && !asks);
          show(naming, walks);
          show(asking, asks);
          if (walks) {
            naming.takeFocus();
          } else if (asks) {
            asking.takeFocus();
          }
        };
    walk.stepProperty().addListener((of, before, now) -> refresh.run());
    order.questionProperty().addListener((of, before, now) -> refresh.run());
    link.connectedProperty().addListener((of, before, now) -> refresh.run());
    // What scrolls is in the scene once it has its look; what was begun before has the focus then.
    sceneProperty().addListener((of, before, now) -> refresh.run());
    bench.projectProperty().addListener((of, before, now) -> list());
    refresh.run();
    list();
  }

  private static void show(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  private Node begin(BenchLink link, NamingWalk walk, OrderFinder order) {
    chains.setId("finding-chain");
    Label label = new Label(texts.get("chain"));
    label.setLabelFor(chains);
    Button name = button("name", () -> chosen().ifPresent(walk::start));
    Button colours = button("order", () -> chosen().ifPresent(order::start));
    for (Button button : List.of(name, colours)) {
      button
          .disableProperty()
          .bind(
              link.connectedProperty()
                  .not()
                  .or(
                      Bindings.createBooleanBinding(
                          () -> chosen().isEmpty(), chains.valueProperty())));
    }
    FlowPane row = new FlowPane(8, 4, label, chains, name, colours);
    row.setRowValignment(VPos.CENTER);
    return row;
  }

  private Button button(String key, Runnable run) {
    return PanelParts.button("finding-" + key, texts.get("finding." + key), run);
  }

  private void list() {
    List<String> ids = bench.project().rig().chains().stream().map(Chain::id).toList();
    @Nullable String before = chains.getValue();
    if (!chains.getItems().equals(ids)) {
      chains.getItems().setAll(ids);
    }
    if (before == null || !ids.contains(before)) {
      chains.setValue(ids.isEmpty() ? null : ids.get(0));
    }
  }

  private Optional<Chain> chosen() {
    return bench.project().rig().chains().stream()
        .filter(chain -> chain.id().equals(chains.getValue()))
        .findFirst();
  }
}
