package lampwright.app.workshop.view;

import com.google.common.base.Suppliers;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.geometry.Rectangle2D;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.stage.Screen;
import javafx.stage.Stage;
import lampwright.app.help.Manual;
import lampwright.app.help.Version;
import lampwright.app.workshop.disk.StateFolder;
import lampwright.app.workshop.disk.WindowState;
import lampwright.app.workshop.disk.WindowStates;
import lampwright.app.workshop.model.WindowPlace;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.command.KeyTable;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.view.export.ExportDialog;
import lampwright.app.workshop.view.help.HelpWindow;
import lampwright.app.workshop.view.ribbon.RibbonsView;
import lampwright.app.workshop.view.start.StartView;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.review.Finding;

/** The window: the bench, or the start sheet in its place. */
public final class WorkshopWindow {
  private static final double WIDTH = 1320;
  private static final double HEIGHT = 860;

  private final Stage stage;
  private final DialogWindows dialogs = new DialogWindows();
  private final WindowStates states;
  private final WindowState before;
  private final WorkshopParts parts;
  private final BooleanProperty dark;
  private final Supplier<HelpWindow> help;
  private Optional<BenchView> bench = Optional.empty();
  private Optional<StartModel> start = Optional.empty();
  private boolean firstTime;

  public WorkshopWindow(Stage stage) {
    this.stage = stage;
    Path state = StateFolder.ofUser();
    states = new WindowStates(state);
    before = remembered();
    firstTime = before.equals(WindowState.FIRST);
    dark = new SimpleBooleanProperty(before.dark());
    parts = new WorkshopParts(dialogs, Platform::runLater, state, this::end);
    parts.sheet().viewProperty().set(before.view());
    parts.ribbons().rows().show(before.rows());
    help = Suppliers.memoize(() -> new HelpWindow(this::keys, dialogs.stylesheets()));
  }

  /** The bench, made when it is first asked for. */
  private BenchView bench() {
    if (bench.isEmpty()) {
      bench =
          Optional.of(
              new BenchView(
                  parts,
                  new BenchView.Around(
                      this::export, page -> help(page, ""), this::about, this::showStart, dark),
                  before.dividers()));
    }
    return bench.get();
  }

  Panels panels() {
    return bench().panels();
  }

  /** What can be done in it. */
  Commands commands() {
    return bench().commands();
  }

  /** The ribbons in it. */
  RibbonsView ribbons() {
    return bench().ribbons();
  }

  /** The models behind it. */
  WorkshopParts parts() {
    return parts;
  }

  boolean isShowing() {
    return stage.isShowing();
  }

  /** Shows it, and opens a file if there is one. */
  public void show(Optional<Path> file) {
    dress(bench().root());
    stage.show();
    bench().ribbons().requestFocus();
    if (file.isEmpty()) {
      bench().showRigOfNothing();
    }
    parts.files().start(file);
  }

  /** Shows it with the start sheet; the bench is made when that is in sight. */
  public void showOnStart() {
    StartView view = startView();
    dress(view);
    arrive(view);
    stage.show();
    afterPicture(this::bench);
    parts.files().start(Optional.empty());
  }

  /** Runs something once the scene that is shown now is handed to who paints it. */
  private void afterPicture(Runnable then) {
    Scene scene = stage.getScene();
    scene.addPostLayoutPulseListener(
        new Runnable() {
          @Override
          public void run() {
            scene.removePostLayoutPulseListener(this);
            Platform.runLater(then);
          }
        });
  }

  private void dress(Parent root) {
    Rectangle2D room = Screen.getPrimary().getVisualBounds();
    Scene scene =
        new Scene(root, Math.min(WIDTH, room.getWidth()), Math.min(HEIGHT, room.getHeight() - 40));
    Theme.dress(scene, dark.get());
    dialogs.setOwner(stage);
    dialogs.stylesheets().setAll(scene.getStylesheets());
    dark.addListener(
        (of, was, now) -> {
          Theme.light(scene, now);
          dialogs.stylesheets().setAll(scene.getStylesheets());
        });
    scene.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (start.isEmpty()) {
            bench().plainKey(event);
          }
        });
    stage.setScene(scene);
    stage.getIcons().setAll(WindowIcon.all());
    stage.titleProperty().bind(parts.files().document().titleProperty());
    stage.setOnCloseRequest(
        event -> {
          event.consume();
          parts.files().quit();
        });
    place();
    parts.problems().setExplainer(this::explain);
    parts.problems().setGuide((target, row) -> bench().lead(target));
    parts.files().document().setWhenOpened(this::opened);
  }

  private void opened() {
    if (parts.files().document().file().isPresent()) {
      leaveStart();
    }
    bench().showNew();
  }

  /** Begins the tour if the window was never open before. */
  public void welcome() {
    if (firstTime) {
      firstTime = false;
      tour();
    }
  }

  private void export() {
    ExportDialog.show(stage, parts.export(), stage.getScene().getStylesheets());
  }

  private KeyTable keys() {
    return KeyTable.of(commands(), keys -> KeyCombination.valueOf(keys).getDisplayText());
  }

  private void help(String page, String anchor) {
    help.get().show(stage, page, anchor);
  }

  private void explain(Optional<Finding> finding) {
    help(Manual.FINDINGS, finding.map(of -> of.code().key()).orElse(""));
  }

  /** Begins the tour of the window. */
  void tour() {
    bench().tour();
  }

  private void about() {
    Texts words = Texts.of("help");
    dialogs.tell(
        words.get("about.title"),
        words.get("about.text", Version.number(), System.getProperty("java.version")));
  }

  /** Shows the start sheet in place of the bench until it is left. */
  void showStart() {
    if (start.isEmpty()) {
      StartView view = startView();
      swap(view);
      arrive(view);
    }
  }

  private StartView startView() {
    parts.player().pause();
    StartModel model = parts.start(this::leaveStart);
    start = Optional.of(model);
    return new StartView(model, HeaderBar.mark());
  }

  private void swap(Parent root) {
    Theme.size(root);
    stage.getScene().setRoot(root);
  }

  private static void arrive(StartView view) {
    // What scrolls is in the scene only then.
    view.applyCss();
    view.focusFirst();
  }

  private void leaveStart() {
    if (start.isPresent()) {
      start.get().close();
      start = Optional.empty();
      swap(bench().root());
      bench().arrive();
      welcome();
    }
  }

  private WindowState remembered() {
    try {
      return states.read();
    } catch (IOException unreadable) {
      // A window that opens as at first is better than none.
      return WindowState.FIRST;
    }
  }

  private static List<WindowPlace.Room> rooms() {
    return Screen.getScreens().stream()
        .map(Screen::getVisualBounds)
        .map(b -> new WindowPlace.Room(b.getMinX(), b.getMinY(), b.getWidth(), b.getHeight()))
        .toList();
  }

  private void place() {
    before
        .place()
        .flatMap(p -> WindowPlace.of(p, rooms()))
        .ifPresent(
            p -> {
              stage.setX(p.x());
              stage.setY(p.y());
              stage.setWidth(p.width());
              stage.setHeight(p.height());
            });
    stage.setMaximized(before.maximised());
  }

  // The last file is safe by now; the window's own state is worth a try.
  private void end() {
    try {
      states.write(
          new WindowState(
              Optional.of(
                  new WindowState.Frame(
                      stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight())),
              stage.isMaximized(),
              bench.map(BenchView::dividers).orElse(before.dividers()),
              dark.get(),
              parts.sheet().viewProperty().get(),
              parts.ribbons().rows().state()));
    } catch (IOException | IllegalArgumentException lost) {
      // It opens as before next time.
    }
    firstTime = false;
    start.ifPresent(StartModel::close);
    parts.player().pause();
    bench.ifPresent(BenchView::close);
    parts.close();
    stage.close();
  }
}
