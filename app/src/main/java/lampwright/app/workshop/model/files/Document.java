package lampwright.app.workshop.model.files;

import java.nio.file.Path;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;

/** Which file the project on the bench belongs to, and whether it is as that holds it. */
public final class Document {
  /**
   * What stands in the file as far as is known.
   *
   * @param hash of its bytes; none if there is no file
   * @param project that they hold; none if they hold none, or one that the builder turned down
   */
  record Saved(Optional<String> hash, Optional<Project> project) {}

  private final Texts texts = Texts.of("files");
  private final Bench bench;
  private final ReadOnlyObjectWrapper<Optional<Path>> file =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper changed = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper title = new ReadOnlyStringWrapper();
  private Saved saved;
  private Runnable whenOpened = () -> {};

  /** A document never saved; the project on the bench counts as unchanged. */
  Document(Bench bench) {
    this.bench = bench;
    this.saved = new Saved(Optional.empty(), Optional.of(bench.project()));
    bench.projectProperty().addListener((of, before, now) -> refresh());
    refresh();
  }

  /** The file; none for a project never saved. */
  public ReadOnlyObjectProperty<Optional<Path>> fileProperty() {
    return file.getReadOnlyProperty();
  }

  public Optional<Path> file() {
    return file.get();
  }

  /** Whether something on the bench would be lost without saving. */
  public ReadOnlyBooleanProperty changedProperty() {
    return changed.getReadOnlyProperty();
  }

  public boolean changed() {
    return changed.get();
  }

  /** For the window's title bar: the file's name, and a word if there are changes. */
  public ReadOnlyStringProperty titleProperty() {
    return title.getReadOnlyProperty();
  }

  /** The file's name, or what stands for it. */
  public String name() {
    return file()
        .map(path -> SafeText.text(String.valueOf(path.getFileName()), SafeText.MAX_MESSAGE))
        .orElse(texts.get("untitled"));
  }

  /**
   * Told when another project was put on the bench, once it belongs to its file; not when the
   * project gets another file by being saved.
   */
  public void setWhenOpened(Runnable told) {
    whenOpened = told;
  }

  /** Another project was put on the bench. */
  void opened() {
    whenOpened.run();
  }

  /** The hash of what stands in the file. */
  Optional<String> hash() {
    return saved.hash();
  }

  /** It belongs to this file from now on, which holds this. */
  void belongsTo(Optional<Path> newFile, Saved newSaved) {
    saved = newSaved;
    file.set(newFile);
    refresh();
  }

  /** The file holds this now. */
  void holds(Saved newSaved) {
    belongsTo(file(), newSaved);
  }

  private void refresh() {
    changed.set(!saved.project().equals(Optional.of(bench.project())));
    title.set(texts.get(changed() ? "title.changed" : "title", name()));
  }
}
