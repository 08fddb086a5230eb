package lampwright.app.workshop.view;

import java.util.function.Supplier;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;

/**
 * A panel below the sheet.
 *
 * @param id unique
 * @param words on its tab
 * @param node makes what it shows
 */
record Panel(String id, ObservableValue<String> words, Supplier<Node> node) {}
