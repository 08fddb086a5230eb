package lampwright.app.workshop.view.live;

import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.live.BenchLink;
import lampwright.app.workshop.model.live.NamingWalk;
import lampwright.app.workshop.model.live.OrderFinder;
import lampwright.app.workshop.view.PanelParts;
import lampwright.app.workshop.view.Theme;

/** The bench link: its port and how it does, and beside it what is found out by it. */
public final class BenchLinkView extends HBox {
  private static final double CONNECTION_EM = 30;

  public BenchLinkView(Bench bench, BenchLink link, NamingWalk walk, OrderFinder order) {
    getStyleClass().add("bench-link");
    setId("bench-link");
    ScrollPane connection = PanelParts.scrolling(new ConnectionPane(link));
    connection.setMinWidth(CONNECTION_EM * Theme.LEAST_SIZE);
    connection.setPrefWidth(CONNECTION_EM * Theme.LEAST_SIZE);
    ScrollPane finding = PanelParts.scrolling(new FindingPane(bench, link, walk, order));
    HBox.setHgrow(finding, Priority.ALWAYS);
    getChildren().setAll(connection, finding);
  }
}
