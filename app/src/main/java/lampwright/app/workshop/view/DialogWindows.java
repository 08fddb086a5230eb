package lampwright.app.workshop.view;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonBar.ButtonData;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Dialog;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.Region;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Window;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/** Asks with dialogs over the window. The harmless answer is the one that Enter and Escape give. */
public final class DialogWindows implements Dialogs {
  private static final int LONG_TEXT = 600;
  private static final int TEXT_COLUMNS = 70;
  private static final int TEXT_ROWS = 16;
  private static final double TEXT_WIDTH_EM = 36;

  private final Texts texts = Texts.of("files");
  private final ObservableList<String> stylesheets = FXCollections.observableArrayList();
  private @Nullable Window owner;
  private Optional<File> lastFolder = Optional.empty();

  /** The window over which they stand. */
  public void setOwner(Window newOwner) {
    owner = newOwner;
  }

  /** Style sheets of the dialogs, as of the window's scene. */
  public ObservableList<String> stylesheets() {
    return stylesheets;
  }

  @Override
  public int choose(String title, String text, List<String> answers) {
    List<ButtonType> buttons = new ArrayList<>();
    int last = answers.size() - 1;
    for (int i = 0; i <= last; i++) {
      // Of another kind than the rest, so that Escape and the window's cross mean this one.
      buttons.add(
          new ButtonType(answers.get(i), i == last ? ButtonData.CANCEL_CLOSE : ButtonData.OTHER));
    }
    int index = buttons.indexOf(show(title, text, buttons));
    return index < 0 ? last : index;
  }

  @Override
  public void tell(String title, String text) {
    show(title, text, List.of(new ButtonType(texts.get("ok"), ButtonData.CANCEL_CLOSE)));
  }

  private @Nullable ButtonType show(String title, String text, List<ButtonType> buttons) {
    Dialog<ButtonType> dialog = new Dialog<>();
    dialog.initOwner(owner);
    dialog.setTitle(title);
    dialog.setHeaderText(title);
    dialog.setResizable(true);
    dialog.getDialogPane().getStylesheets().addAll(stylesheets);
    dialog.getDialogPane().setContent(content(text));
    dialog.getDialogPane().getButtonTypes().setAll(buttons);
    ButtonType harmless = buttons.get(buttons.size() - 1);
    for (ButtonType type : buttons) {
      Button button = (Button) dialog.getDialogPane().lookupButton(type);
      button.setDefaultButton(type.equals(harmless));
      // An answer is read whole.
      ButtonBar.setButtonUniformSize(button, false);
      button.setMinWidth(Region.USE_PREF_SIZE);
    }
    dialog.setOnShown(shown -> dialog.getDialogPane().lookupButton(harmless).requestFocus());
    return dialog.showAndWait().orElse(null);
  }

  // A long list of problems is scrolled and can be copied.
  private static Node content(String text) {
    if (text.length() > LONG_TEXT || text.lines().count() > TEXT_ROWS) {
      TextArea area = new TextArea(text);
      area.setEditable(false);
      area.setWrapText(true);
      area.setPrefColumnCount(TEXT_COLUMNS);
      area.setPrefRowCount(TEXT_ROWS);
      return area;
    }
    Label label = new Label(text);
    label.setWrapText(true);
    label.setStyle("-fx-pref-width: " + TEXT_WIDTH_EM + "em;");
    return label;
  }

  @Override
  public Optional<Path> fileToOpen(String title, List<String> patterns) {
    return chosen(chooser(title, patterns).showOpenDialog(owner));
  }

  @Override
  public Optional<Path> fileToSave(String title, String suggestedName, List<String> patterns) {
    FileChooser chooser = chooser(title, patterns);
    chooser.setInitialFileName(suggestedName);
    return chosen(chooser.showSaveDialog(owner));
  }

  @Override
  public Optional<Path> folder(String title) {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(title);
    lastFolder.filter(File::isDirectory).ifPresent(chooser::setInitialDirectory);
    File folder = chooser.showDialog(owner);
    if (folder != null) {
      lastFolder = Optional.of(folder);
    }
    return Optional.ofNullable(folder).map(File::toPath);
  }

  private FileChooser chooser(String title, List<String> patterns) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(title);
    chooser
        .getExtensionFilters()
        .add(new FileChooser.ExtensionFilter(String.join(", ", patterns), patterns));
    lastFolder.filter(File::isDirectory).ifPresent(chooser::setInitialDirectory);
    return chooser;
  }

  private Optional<Path> chosen(@Nullable File file) {
    if (file == null) {
      return Optional.empty();
    }
    lastFolder = Optional.ofNullable(file.getParentFile());
    return Optional.of(file.toPath());
  }
}
