package lampwright.app.workshop.view;

import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The panels below the sheet: tabs, of which one is in sight, and what is always beside them. */
final class Panels {
  private static final String TAB = "tab-";
  private static final double BESIDE_EM = 31;

  private final List<Panel> all;
  private final TabPane tabs = new TabPane();
  private final VBox beside = new VBox();
  private final HBox row = new HBox(tabs, beside);

  /**
   * @param panels from the left, then from above
   * @param foot below those that are beside the tabs
   */
  Panels(List<Panel> panels, Node foot) {
    all = List.copyOf(panels);
    tabs.setTabClosingPolicy(TabPane.TabClosingPolicy.UNAVAILABLE);
    tabs.getStyleClass().add("panel-tabs");
    beside.setMinWidth(BESIDE_EM * Theme.LEAST_SIZE);
    beside.setMaxWidth(BESIDE_EM * Theme.LEAST_SIZE);
    HBox.setHgrow(tabs, Priority.ALWAYS);
    for (Panel panel : panels) {
      Node node = panel.node().get();
      if (panel.where() == Panel.Where.TAB) {
        Tab tab = new Tab();
        tab.textProperty().bind(panel.words());
        tab.setContent(node);
        tab.setId(tabId(panel.id()));
        tabs.getTabs().add(tab);
      } else {
        node.setId(tabId(panel.id()));
        VBox.setVgrow(node, Priority.ALWAYS);
        beside.getChildren().add(node);
      }
    }
    beside.getChildren().add(foot);
  }

  List<Panel> all() {
    return all;
  }

  HBox node() {
    return row;
  }

  /** The panels that have a tab. */
  Node tabs() {
    return tabs;
  }

  /** The panels beside the tabs, and the foot. */
  Node beside() {
    return beside;
  }

  /** The id of a panel's tab, or of the panel itself where it has none. */
  static String tabId(String panel) {
    return TAB + panel;
  }

  /** The panel whose tab is in sight. */
  String shown() {
    return tabs.getSelectionModel().getSelectedItem().getId().substring(TAB.length());
  }

  /**
   * Brings a panel into sight.
   *
   * @throws IllegalArgumentException if there is none with this id
   */
  void show(String panel) {
    Optional<Tab> tab =
        tabs.getTabs().stream().filter(t -> tabId(panel).equals(t.getId())).findFirst();
    if (tab.isPresent()) {
      tabs.getSelectionModel().select(tab.get());
      return;
    }
    beside.getChildren().stream()
        .filter(node -> tabId(panel).equals(node.getId()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no panel " + panel))
        .requestFocus();
  }
}
