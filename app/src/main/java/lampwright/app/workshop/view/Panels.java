package lampwright.app.workshop.view;

import java.util.List;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;

/** The panels below the sheet, one of which is in sight. */
final class Panels {
  private static final String TAB = "tab-";

  private final List<Panel> all;
  private final TabPane tabs = new TabPane();

  /**
   * @param panels from the left
   */
  Panels(List<Panel> panels) {
    all = List.copyOf(panels);
    tabs.setTabClosingPolicy(TabPane.TabClosingPolicy.UNAVAILABLE);
    tabs.getStyleClass().add("panel-tabs");
    for (Panel panel : panels) {
      Tab tab = new Tab();
      tab.textProperty().bind(panel.words());
      tab.setContent(panel.node().get());
      tab.setId(tabId(panel.id()));
      tabs.getTabs().add(tab);
    }
  }

  List<Panel> all() {
    return all;
  }

  TabPane node() {
    return tabs;
  }

  /** The id of a panel's tab. */
  static String tabId(String panel) {
    return TAB + panel;
  }

  /** The panel in sight. */
  String shown() {
    return tabs.getSelectionModel().getSelectedItem().getId().substring(TAB.length());
  }

  /**
   * Brings a panel into sight.
   *
   * @throws IllegalArgumentException if there is none with this id
   */
  void show(String panel) {
    tabs.getSelectionModel()
        .select(
            tabs.getTabs().stream()
                .filter(tab -> tabId(panel).equals(tab.getId()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no panel " + panel)));
  }
}
