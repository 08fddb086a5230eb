package lampwright.app.workshop.model.files;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import lampwright.app.workshop.disk.RecentFiles;

/** The files opened or saved last. For the screen's thread. */
public final class Recents {
  private final Workplace place;
  private final RecentFiles files;
  private final Consumer<String> note;
  private final ObservableList<Path> list = FXCollections.observableArrayList();
  private final ObservableList<Path> unmodifiable = FXCollections.unmodifiableObservableList(list);

  Recents(Workplace place, Consumer<String> note) {
    this.place = place;
    this.files = new RecentFiles(place.state());
    this.note = note;
  }

  /** The last one first, at most {@link RecentFiles#MAX}. */
  public ObservableList<Path> list() {
    return unmodifiable;
  }

  /** Reads the list. */
  void load() {
    work(files::read);
  }

  /** Puts a file first. */
  void add(Path file) {
    work(() -> files.add(file));
  }

  private void work(Workplace.Wait<List<Path>> step) {
    place.then(place.disk(), step, list::setAll, note);
  }
}
