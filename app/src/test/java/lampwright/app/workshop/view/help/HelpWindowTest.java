package lampwright.app.workshop.view.help;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import javafx.collections.FXCollections;
import javafx.scene.Scene;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import lampwright.app.help.Manual;
import lampwright.app.workshop.model.command.KeyTable;
import lampwright.engine.review.Code;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

@ExtendWith(ApplicationExtension.class)
class HelpWindowTest {
  private Stage main;
  private HelpWindow help;

  @Start
  void show(Stage stage) {
    Locale.setDefault(Locale.ROOT);
    main = stage;
    stage.setScene(new Scene(new HBox(), 300, 200));
    stage.show();
    KeyTable keys =
        new KeyTable(
            List.of(
                new KeyTable.Row("Project", "Save", "Ctrl+S"),
                new KeyTable.Row("Ribbons", "Add a cue", "Insert")));
    help = new HelpWindow(() -> keys, FXCollections.observableArrayList());
  }

  private PageView page(String id) {
    return new PageView(Manual.page(id), link -> {});
  }

  @Test
  void everyFindingHasItsRow(FxRobot robot) {
    List<String> missing = new ArrayList<>();
    robot.interact(
        () -> {
          PageView page = page(Manual.FINDINGS);
          for (Code code : Code.values()) {
            if (page.at(code.key()).isEmpty()) {
              missing.add(code.key());
            }
          }
        });
    assertThat(missing).isEmpty();
  }

  @Test
  void everyLinkLeadsToAPageAndAHeadingOfIt(FxRobot robot) {
    List<Manual.Place> links = new ArrayList<>();
    List<Manual.Place> dead = new ArrayList<>();
    robot.interact(
        () -> {
          for (String id : Manual.pages()) {
            PageView page = new PageView(Manual.page(id), links::add);
            page.lookupAll(".hyperlink").forEach(link -> ((Hyperlink) link).fire());
          }
          for (Manual.Place link : links) {
            if (!link.anchor().isEmpty() && page(link.page()).at(link.anchor()).isEmpty()) {
              dead.add(link);
            }
          }
        });
    // Also from a page in a folder to one outside it.
    assertThat(links).contains(new Manual.Place("situations", ""));
    assertThat(dead).isEmpty();
  }

  /** The file itself says what the page has to show. */
  @Test
  void pageHasEveryWordOfItsFile(FxRobot robot) throws Exception {
    String file = Files.readString(Path.of("../docs/findings.md"));
    StringBuilder shown = new StringBuilder();
    robot.interact(
        () -> {
          PageView page = page("findings");
          for (String style :
              List.of(".help-plain", ".help-code", ".help-emphasis", ".help-strong")) {
            page.lookupAll(style).forEach(n -> shown.append(((Text) n).getText()).append(' '));
          }
          page.lookupAll(".help-heading").forEach(n -> shown.append(((Label) n).getText()));
        });
    String words = shown.toString();
    Arrays.stream(file.replaceAll("<!--.*?-->|\\[([^]]*)]\\([^)]*\\)", "$1").split("[^\\p{L}]+"))
        .filter(word -> word.length() > 3)
        .distinct()
        .forEach(word -> assertThat(words).contains(word));
  }

  @Test
  void anchorIsScrolledToAndMarked(FxRobot robot) {
    robot.interact(() -> help.show(main, Manual.FINDINGS, Code.FLASH_GENERAL.key()));
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(robot.lookup("#help-page").queryAs(ScrollPane.class).getVvalue()).isPositive();
    assertThat(robot.lookup(".help-found").tryQuery()).isPresent();
  }

  @Test
  void keysAreSearched(FxRobot robot) {
    robot.interact(() -> help.show(main, HelpWindow.KEYS, ""));
    TableView<?> table = robot.lookup("#keys-table").queryTableView();
    assertThat(table.getItems()).hasSize(2);
    TextField search = robot.lookup("#keys-search").queryAs(TextField.class);
    assertThat(search.isFocused()).isTrue();
    robot.interact(() -> search.setText("cue"));
    assertThat(table.getItems()).hasSize(1);
  }

  @Test
  void backLeadsToThePageBeforeAndEscapeCloses(FxRobot robot) {
    robot.interact(() -> help.show(main, "formats", ""));
    robot.interact(() -> help.show(main, "packed", ""));
    assertThat(robot.lookup("#help-pages").queryListView().getSelectionModel().getSelectedItem())
        .isEqualTo("packed");
    robot.interact(() -> robot.lookup("#help-back").queryButton().fire());
    assertThat(robot.lookup("#help-pages").queryListView().getSelectionModel().getSelectedItem())
        .isEqualTo("formats");
    robot.type(KeyCode.ESCAPE);
    assertThat(robot.lookup("#help").tryQuery()).isEmpty();
  }
}
