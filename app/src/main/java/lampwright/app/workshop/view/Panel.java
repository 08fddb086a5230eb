package lampwright.app.workshop.view;

import java.util.function.Supplier;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;

/**
 * A panel below the sheet.
 *
 * @param id unique
 * @param words on its tab
 * @param where it is
 * @param node makes what it shows
 */
record Panel(String id, ObservableValue<String> words, Where where, Supplier<Node> node) {
  /** Where a panel is. */
  enum Where {
    /** On a tab, in turn with others. */
    TAB,
    /** Beside the tabs, always in sight. */
    BESIDE
  }
}
