package lampwright.app.workshop.view;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * The panels below the sheet: tabs, of which one is in sight, and what is always beside them. A
 * panel on a tab is made when it is first shown, and is part of the window only while it is in
 * sight: JavaFX goes through every node of a window at every frame, seen or not.
 */
final class Panels {
  private static final String TAB = "tab-";
  private static final double BESIDE_EM = 31;

  private final List<Panel> all;
  private final Map<String, Node> made = new HashMap<>();
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
      if (panel.where() == Panel.Where.TAB) {
        tabs.getTabs().add(tab(panel));
      } else {
        Node node = panel.node().get();
        node.setId(tabId(panel.id()));
        VBox.setVgrow(node, Priority.ALWAYS);
        beside.getChildren().add(node);
      }
    }
    beside.getChildren().add(foot);
  }

  private Tab tab(Panel panel) {
    Tab tab = new Tab();
    tab.textProperty().bind(panel.words());
    tab.setId(tabId(panel.id()));
    tab.selectedProperty()
        .addListener((of, before, now) -> tab.setContent(now ? content(panel) : null));
    return tab;
  }

  private Node content(Panel panel) {
    return made.computeIfAbsent(panel.id(), id -> panel.node().get());
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
