package lampwright.app.workshop.view.help;

import java.util.function.Function;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.command.KeyTable;
import lampwright.app.workshop.words.Texts;

/** The table of keys, with a field to search it. */
final class KeysView extends VBox {
  private final TextField search = new TextField();

  KeysView(KeyTable keys) {
    super(8);
    Texts texts = Texts.of("help");
    getStyleClass().add("help-keys");
    search.setId("keys-search");
    search.setPromptText(texts.get("keys.search"));
    search.setAccessibleText(texts.get("keys.search"));
    TableView<KeyTable.Row> table = new TableView<>();
    table.setId("keys-table");
    table.setAccessibleText(texts.get("keys.title"));
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN);
    table.setPlaceholder(new Label(texts.get("keys.none")));
    table.getColumns().add(column(texts.get("keys.place"), 130, KeyTable.Row::place));
    table.getColumns().add(column(texts.get("keys.keys"), 260, KeyTable.Row::keys));
    table.getColumns().add(column(texts.get("keys.what"), 420, KeyTable.Row::what));
    table.getItems().setAll(keys.rows());
    search
        .textProperty()
        .addListener((of, before, now) -> table.getItems().setAll(keys.matching(now)));
    VBox.setVgrow(table, Priority.ALWAYS);
    getChildren().setAll(search, table);
  }

  /** Searching comes first. */
  void focusFirst() {
    search.requestFocus();
  }

  private static TableColumn<KeyTable.Row, String> column(
      String title, double width, Function<KeyTable.Row, String> text) {
    TableColumn<KeyTable.Row, String> column = new TableColumn<>(title);
    column.setPrefWidth(width);
    column.setSortable(false);
    column.setReorderable(false);
    column.setCellValueFactory(row -> new ReadOnlyStringWrapper(text.apply(row.getValue())));
    return column;
  }
}
