package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import lampwright.app.workshop.disk.Recoveries;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;

/**
 * New, open, save and quit, without losing anything. For the screen's thread, which never waits for
 * a disk: what is asked for here is done a little later.
 */
public final class FilesModel {
  /** The id of the command after which the last files are listed. */
  public static final String OPEN = "files.open";

  private static final Duration LOOK_EVERY = Duration.ofSeconds(1);

  private final Texts texts = Texts.of("files");
  private final Workplace place;
  private final Runnable end;
  private final Document document;
  private final Recoveries recoveries;
  private final Autosave autosave;
  private final Recents recents;
  private final Claims claims;
  private final ExternalChangeWatcher watcher;
  private final Opener opener;
  private final Saver saver;
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Optional<String>> note =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<Leftover> leftovers = FXCollections.observableArrayList();
  private final ObservableList<Leftover> leftoversShown =
      FXCollections.unmodifiableObservableList(leftovers);
  private Optional<Project> discarded = Optional.empty();
  private boolean ended;

  /**
   * @param end ends the program, once all is safe
   */
  public FilesModel(Workplace place, Runnable end) {
    this.place = place;
    this.end = end;
    this.document = new Document(place.bench());
    this.recoveries = new Recoveries(place.state(), place.self());
    this.autosave = new Autosave(place, document, recoveries);
    this.recents = new Recents(place, text -> note.set(Optional.of(text)));
    this.claims = new Claims(place.state());
    this.watcher = new ExternalChangeWatcher(place, document);
    this.opener = new Opener(place, document, autosave, claims);
    this.saver = new Saver(place, document, autosave, claims, watcher, recents::add);
  }

  /** The file on the bench, its title and whether there are changes. */
  public Document document() {
    return document;
  }

  /** What keeps unsaved work. */
  public Autosave autosave() {
    return autosave;
  }

  /** The files opened or saved last. */
  public Recents recents() {
    return recents;
  }

  /** Whether a file is being read. */
  public ReadOnlyBooleanProperty busyProperty() {
    return busy.getReadOnlyProperty();
  }

  /** Something about the program's own files that is good to know but stops nothing. */
  public ReadOnlyObjectProperty<Optional<String>> noteProperty() {
    return note.getReadOnlyProperty();
  }

  /** What can be done. */
  public List<Command> commands() {
    Bench bench = place.bench();
    Command.InMenu files = new Command.InMenu(CommandMenu.PROJECT, 1);
    Command.InMenu end = new Command.InMenu(CommandMenu.PROJECT, 3);
    return List.of(
        idle("files.new", files, this::newProject).withShortcut("Shortcut+N"),
        idle(OPEN, files, this::open).withShortcut("Shortcut+O"),
        idle("files.save", files, this::save).withShortcut("Shortcut+S"),
        idle("files.save.as", files, this::saveAs).withShortcut("Shortcut+Shift+S"),
        idle("files.quit", end, this::quit).withShortcut("Shortcut+Q"),
        back("undo", bench.undoNameProperty(), bench::undo).withShortcut("Shortcut+Z"),
        back("redo", bench.redoNameProperty(), bench::redo).withShortcut("Shortcut+Shift+Z"));
  }

  private Command idle(String id, Command.Place place, Runnable run) {
    return Command.of(id, place, run).when(busy.not());
  }

  // Names what it takes back or brings back.
  private Command back(String key, ObservableValue<Optional<String>> name, Runnable run) {
    return Command.of("files." + key, new Command.InMenu(CommandMenu.CUES, 1), run)
        .when(Bindings.createBooleanBinding(() -> name.getValue().isPresent(), name))
        .named(
            Bindings.createStringBinding(
                () ->
                    name.getValue()
                        .map(n -> texts.get(key + ".named", n))
                        .orElseGet(() -> texts.get(key)),
                name));
  }

  /**
   * Begins: reads the list of last files, opens the file, lists what a crash left, and looks after
   * the file from then on.
   */
  public void start(Optional<Path> file) {
    recents.load();
    place.then(
        place.reader(),
        this::left,
        left -> begin(file, left),
        words -> {
          note.set(Optional.of(words));
          begin(file, List.of());
        });
    lookLater();
  }

  private void begin(Optional<Path> file, List<Opened.Offer> left) {
    if (file.isEmpty()) {
      leftovers.setAll(opener.sorted(left));
    }
    file.ifPresent(this::open);
  }

  private List<Opened.Offer> left() throws IOException {
    Recoveries.tidy(place.state());
    return Opened.offers(recoveries.findInState());
  }

  /** Unsaved work of earlier times, the newest first; empty where a file was opened at once. */
  public ObservableList<Leftover> leftovers() {
    return leftoversShown;
  }

  /**
   * Brings unsaved work back, once what is on the bench is settled.
   *
   * @param then is done when it is, or when its file is being opened
   */
  public void recover(Leftover left, Runnable then) {
    settle(
        () -> {
          leftovers.remove(left);
          if (left.file().isPresent()) {
            opener.want(left.place());
            read(left.file().get());
          } else {
            opener.recover(left);
          }
          then.run();
        });
  }

  /** Removes unsaved work, if the builder is sure. */
  public void discard(Leftover left) {
    if (opener.discard(left)) {
      leftovers.remove(left);
    }
  }

  /** A new project, once what is on the bench is settled. */
  public void newProject() {
    settle(opener::fresh);
  }

  /**
   * A new project that begins as this one, such as a sample; once what is on the bench is settled.
   *
   * @param then is done when it is on the bench
   */
  public void begin(Project first, Runnable then) {
    settle(
        () -> {
          opener.fresh(first);
          then.run();
        });
  }

  /**
   * A new project that becomes this one by one step, which can be undone; once what is on the bench
   * is settled.
   *
   * @param name of the step
   * @param then is done when it is on the bench
   */
  public void make(String name, Project made, Runnable then) {
    settle(
        () -> {
          opener.fresh();
          place.bench().apply(Edit.of(name, fresh -> made));
          then.run();
        });
  }

  /** Asks which file to open. */
  public void open() {
    settle(
        () ->
            place
                .dialogs()
                .fileToOpen(texts.get("open.title"), List.of("*" + Saver.ENDING, "*.json"))
                .ifPresent(this::read));
  }

  /** Opens a file, once what is on the bench is settled. */
  public void open(Path file) {
    settle(() -> read(file));
  }

  /**
   * Saves, asking for a file if there is none.
   *
   * @param then is done once it is saved
   */
  public void save(Runnable then) {
    saver.save(then);
  }

  /** Saves. */
  public void save() {
    saver.save(() -> {});
  }

  /** Saves to another file. */
  public void saveAs() {
    saver.saveAs();
  }

  /** Ends the program, once what is on the bench is settled. */
  public void quit() {
    settle(
        () -> {
          ended = true;
          autosave.close();
          place.disk().run(() -> claims.hold(Optional.empty()));
          place.disk().run(() -> place.screen().execute(end));
        });
  }

  /** Looks whether another program changed the file; done by itself every second. */
  public void lookOutside() {
    watcher.check(this::save, this::saveAs);
  }

  private void lookLater() {
    place
        .disk()
        .runAfter(
            LOOK_EVERY,
            () ->
                place
                    .screen()
                    .execute(
                        () -> {
                          if (!ended) {
                            lookOutside();
                            lookLater();
                          }
                        }));
  }

  private void read(Path chosen) {
    Path file = chosen.toAbsolutePath().normalize();
    boolean ours = document.file().equals(Optional.of(file));
    busy.set(true);
    place.then(
        place.reader(),
        () -> Opened.read(file, place.state(), recoveries, ours),
        this::opened,
        words -> {
          busy.set(false);
          opener.refuse(file, words);
        });
  }

  private void opened(Opened opened) {
    busy.set(false);
    // Something may have been done while it was read.
    settle(
        () -> {
          if (opener.show(opened)) {
            document.file().ifPresent(recents::add);
          }
        });
  }

  // Goes on at once if nothing would be lost, or as soon as it is saved, or if it may be lost.
  private void settle(Runnable then) {
    Project now = place.bench().project();
    if (!document.changed() || discarded.equals(Optional.of(now))) {
      then.run();
      return;
    }
    int answer =
        place
            .dialogs()
            .choose(
                texts.get("unsaved.title", document.name()),
                texts.get("unsaved.text"),
                List.of(
                    texts.get("unsaved.save"), texts.get("unsaved.discard"), texts.get("cancel")));
    if (answer == 0) {
      saver.save(then);
    } else if (answer == 1) {
      discarded = Optional.of(now);
      then.run();
    }
  }
}
