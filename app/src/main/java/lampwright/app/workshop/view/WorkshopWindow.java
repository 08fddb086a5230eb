package lampwright.app.workshop.view;

import com.google.common.base.Suppliers;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.geometry.Orientation;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Label;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Screen;
import javafx.stage.Stage;
import lampwright.app.help.Manual;
import lampwright.app.help.Version;
import lampwright.app.workshop.disk.StateFolder;
import lampwright.app.workshop.disk.WindowState;
import lampwright.app.workshop.disk.WindowStates;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.WindowPlace;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.command.KeyTable;
import lampwright.app.workshop.model.live.BenchLink;
import lampwright.app.workshop.model.problems.Target;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.view.cue.CueSettingsView;
import lampwright.app.workshop.view.cue.SceneView;
import lampwright.app.workshop.view.drawing.DrawingBar;
import lampwright.app.workshop.view.drawing.DrawingView;
import lampwright.app.workshop.view.drawing.TransportBar;
import lampwright.app.workshop.view.export.ExportDialog;
import lampwright.app.workshop.view.help.HelpWindow;
import lampwright.app.workshop.view.help.Tour;
import lampwright.app.workshop.view.ribbon.RibbonsView;
import lampwright.app.workshop.view.shelf.ShelfView;
import lampwright.app.workshop.view.start.StartView;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.review.Finding;

/**
 * The window: gauges above, the drawing sheet with the ribbons in the middle, and below it a tab
 * for the selected cue, the rig, or the problems.
 */
public final class WorkshopWindow {
  private static final double WIDTH = 1320;
  private static final double HEIGHT = 860;
  private static final double TIP_WIDTH = 420;

  private final Texts texts = Texts.of("workshop");
  private final Stage stage;
  private final DialogWindows dialogs = new DialogWindows();
  private final WindowStates states;
  private final WorkshopParts parts;
  private final BooleanProperty dark = new SimpleBooleanProperty(false);
  private final SplitPane sheet = new SplitPane();
  private final SplitPane halves = new SplitPane();
  private final CueSettingsView cueSettings;
  private final RibbonsView ribbons;
  private final Supplier<ShelfView> shelf;
  private final DrawingView drawing;
  private final TitleBlock title;
  private final Panels panels;
  private final Commands commands;
  private Optional<Runnable> leaveStart = Optional.empty();
  private final HelpWindow help;
  private Optional<Tour> tour = Optional.empty();
  private boolean firstTime;

  public WorkshopWindow(Stage stage) {
    this.stage = stage;
    Path state = StateFolder.ofUser();
    states = new WindowStates(state);
    parts = new WorkshopParts(dialogs, Platform::runLater, state, this::end);
    SceneView scene = new SceneView(parts.scene());
    cueSettings = new CueSettingsView(parts.cues(), parts.sheet().dropper(), scene);
    ribbons =
        new RibbonsView(parts.ribbons(), parts.cueCommands(), parts.guide(), this::toCueSettings);
    drawing =
        new DrawingView(
            parts.drawing(), parts.player(), parts.judge(), parts.files().document()::file);
    title =
        new TitleBlock(
            parts.bench(),
            () ->
                texts.get(
                    parts.files().document().changedProperty().get()
                        ? "title.file.changed"
                        : "title.file.saved"));
    shelf = Suppliers.memoize(() -> new ShelfView(parts.shelf(), this::leaveShelf));
    panels = new Panels(WorkshopPanels.of(parts, cueSettings, shelf), title);
    commands =
        WorkshopCommands.of(
            parts,
            new WorkshopCommands.Window(
                this::export,
                ribbons::offerKinds,
                new WorkshopCommands.Names(
                    ribbons.names()::lamp, ribbons.names()::group, ribbons.names()::marker),
                ribbons.markers(),
                this::showShelf,
                () -> panels.show(WorkshopPanels.SITUATIONS),
                () -> panels.show(WorkshopPanels.LINK),
                new WorkshopCommands.Help(page -> help(page, ""), this::tour, this::about),
                dark,
                this::showStart));
    ribbons.setCommands(commands);
    drawing.setCommands(commands);
    scene.setCommands(commands);
    help = new HelpWindow(this::keys, dialogs.stylesheets());
  }

  Panels panels() {
    return panels;
  }

  /** What can be done in it. */
  Commands commands() {
    return commands;
  }

  /** The ribbons in it. */
  RibbonsView ribbons() {
    return ribbons;
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
    prepare(() -> {});
    ribbons.requestFocus();
    if (file.isEmpty()) {
      showRigOfNothing();
    }
    parts.files().start(file);
  }

  /** Shows it with the start sheet; the bench behind it has no look before it is in sight. */
  public void showOnStart() {
    prepare(this::showStart);
    parts.files().start(Optional.empty());
  }

  // A new project begins with its rig.
  private void showRigOfNothing() {
    if (parts.bench().project().rig().lamps().isEmpty()) {
      panels.show(WorkshopPanels.RIG);
    }
  }

  private void prepare(Runnable last) {
    WindowState before = remembered();
    dark.set(before.dark());
    parts.sheet().viewProperty().set(before.view());
    parts.ribbons().rows().show(before.rows());
    Rectangle2D room = Screen.getPrimary().getVisualBounds();
    Scene scene =
        new Scene(
            root(), Math.min(WIDTH, room.getWidth()), Math.min(HEIGHT, room.getHeight() - 40));
    Theme.dress(scene, dark.get());
    dialogs.setOwner(stage);
    dialogs.stylesheets().setAll(scene.getStylesheets());
    dark.addListener(
        (of, was, now) -> {
          Theme.light(scene, now);
          dialogs.stylesheets().setAll(scene.getStylesheets());
        });
    scene.addEventHandler(KeyEvent.KEY_PRESSED, this::plainKey);
    stage.setScene(scene);
    stage.getIcons().setAll(WindowIcon.all());
    stage.titleProperty().bind(parts.files().document().titleProperty());
    parts.files().document().changedProperty().addListener((of, was, now) -> title.show());
    stage.setOnCloseRequest(
        event -> {
          event.consume();
          parts.files().quit();
        });
    place(before);
    last.run();
    stage.show();
    parts.problems().setExplainer(this::explain);
    parts.problems().setGuide((target, row) -> lead(target));
    parts.files().document().setWhenOpened(this::opened);
    firstTime = before.equals(WindowState.FIRST);
  }

  private void opened() {
    if (parts.files().document().file().isPresent()) {
      leaveStart.ifPresent(Runnable::run);
    }
    // What was muted or locked there is not of this project, whatever its ids.
    parts.sheet().signsProperty().set(LampSigns.NONE);
    parts.drawing().showFullestView();
    if (!parts.bench().project().rig().lamps().isEmpty()) {
      panels.show(WorkshopPanels.CUE);
    }
  }

  /** Begins the tour if the window was never open before. */
  public void welcome() {
    if (firstTime) {
      firstTime = false;
      tour();
    }
  }

  private StackPane root() {
    DrawingBar drawingBar = new DrawingBar(parts.drawing());
    VBox left = new VBox(drawingBar, drawing);
    VBox.setVgrow(drawing, Priority.ALWAYS);
    SceneBar sceneBar =
        new SceneBar(parts.bench(), parts.ribbons(), parts.rigCommands(), ribbons::offerKinds);
    VBox right = new VBox(sceneBar, ribbons);
    VBox.setVgrow(ribbons, Priority.ALWAYS);
    sheet.getItems().setAll(left, right);
    // Of the panes: the bounds follow what moves within, such as the playhead.
    parts
        .sheet()
        .shiftProperty()
        .bind(ribbons.layoutYProperty().subtract(drawing.layoutYProperty()));
    // Beside what is always there, so that nothing moves when there is something to report.
    HBox foot =
        new HBox(new TransportBar(parts.bench(), parts.playhead(), parts.player()), status());
    foot.getStyleClass().add("sheet-foot");
    VBox upper = new VBox(sheet, foot);
    upper.getStyleClass().add("sheet-ground");
    VBox.setVgrow(sheet, Priority.ALWAYS);
    halves.setOrientation(Orientation.VERTICAL);
    halves.getItems().setAll(upper, panels.node());
    BorderPane root = new BorderPane(halves);
    List<ReadOnlyObjectProperty<Gauge>> shown = new ArrayList<>(parts.gauges().all());
    shown.add(parts.link().gaugeProperty());
    GaugesView gauges = new GaugesView(shown, this::lead);
    root.setTop(
        new VBox(
            new HeaderBar(
                new WorkshopMenus(commands, parts.files()).bar(),
                new HiddenNotice(parts.bench(), parts.sheet()),
                this::export),
            gauges));
    root.setId("workshop");
    Tour stops =
        new Tour(
            List.of(
                new Tour.Stop("drawing", left),
                new Tour.Stop("ribbons", right),
                new Tour.Stop("panels", panels.tabs()),
                new Tour.Stop("gauges", gauges),
                new Tour.Stop("findings", panels.beside())));
    tour = Optional.of(stops);
    StackPane all = new StackPane(root, stops);
    // It keeps its palette while the start sheet has its place in the scene.
    all.getStyleClass().add(Theme.PALETTE);
    return all;
  }

  private Label status() {
    Label status = new Label();
    status.setId("status");
    status.getStyleClass().add("status");
    status.setMinWidth(0);
    // What is too long for its place is read in full here.
    Tooltip whole = new Tooltip();
    whole.textProperty().bind(status.textProperty());
    whole.setWrapText(true);
    whole.setMaxWidth(TIP_WIDTH);
    status
        .textProperty()
        .addListener((of, before, now) -> status.setTooltip(now.isEmpty() ? null : whole));
    parts
        .bench()
        .refusalProperty()
        .addListener((of, before, now) -> status.setText(now.map(t -> "! " + t).orElse("")));
    parts
        .files()
        .autosave()
        .troubleProperty()
        .addListener(
            (of, before, now) ->
                status.setText(
                    now.map(t -> Texts.of("files").get("autosave.trouble", t)).orElse("")));
    parts.files().noteProperty().addListener((of, before, now) -> status.setText(now.orElse("")));
    Runnable guide = () -> status.setText(parts.guide().status());
    parts.guide().track().faultProperty().addListener((of, before, now) -> guide.run());
    parts.guide().sounding().troubleProperty().addListener((of, before, now) -> guide.run());
    return status;
  }

  private void toCueSettings() {
    panels.show(WorkshopPanels.CUE);
    cueSettings.focusFirst();
  }

  private void showShelf() {
    panels.show(WorkshopPanels.SHELF);
    shelf.get().focusSearch();
  }

  private void leaveShelf() {
    panels.show(WorkshopPanels.CUE);
    ribbons.requestFocus();
  }

  private void lead(Gauge gauge) {
    gauge.frame().ifPresent(parts.playhead()::go);
    gauge.target().ifPresent(this::lead);
    if (gauge.key().equals(BenchLink.GAUGE)) {
      panels.show(WorkshopPanels.LINK);
    }
  }

  private void lead(Target target) {
    if (target instanceof Target.OfLamp lamp) {
      parts.bench().select(parts.bench().selection().withLamps(List.of(lamp.id())));
      parts.rig().chosenProperty().set(new RigPart.OfLamp(lamp.id()));
      panels.show(WorkshopPanels.RIG);
    } else if (target instanceof Target.OfCue) {
      toCueSettings();
    } else if (target instanceof Target.OfSituation situation) {
      parts.situations().chosenProperty().set(Optional.of(situation.id()));
      panels.show(WorkshopPanels.SITUATIONS);
    } else {
      parts.rig().chosenProperty().set(part(target));
      panels.show(WorkshopPanels.RIG);
    }
  }

  private static RigPart part(Target target) {
    if (target instanceof Target.OfChain chain) {
      return new RigPart.OfChain(chain.id());
    } else if (target instanceof Target.OfOutput output) {
      return new RigPart.OfOutput(output.id());
    } else if (target instanceof Target.OfInput input) {
      return new RigPart.OfInput(input.id());
    } else if (target instanceof Target.OfScene scene) {
      return new RigPart.OfScene(scene.id());
    }
    return new RigPart.Supply();
  }

  private void export() {
    ExportDialog.show(stage, parts.export(), stage.getScene().getStylesheets());
  }

  private KeyTable keys() {
    return KeyTable.of(commands, keys -> KeyCombination.valueOf(keys).getDisplayText());
  }

  private void help(String page, String anchor) {
    help.show(stage, page, anchor);
  }

  private void explain(Optional<Finding> finding) {
    help(Manual.FINDINGS, finding.map(of -> of.code().key()).orElse(""));
  }

  /** Begins the tour of the window. */
  void tour() {
    tour.ifPresent(Tour::begin);
  }

  private void about() {
    Texts words = Texts.of("help");
    dialogs.tell(
        words.get("about.title"),
        words.get("about.text", Version.number(), System.getProperty("java.version")));
  }

  /** Shows the start sheet in place of the bench until it is left. */
  void showStart() {
    Scene scene = stage.getScene();
    Parent bench = scene.getRoot();
    if (leaveStart.isPresent()) {
      return;
    }
    parts.player().pause();
    StartModel start = parts.start(() -> leaveStart.ifPresent(Runnable::run));
    StartView view = new StartView(start, HeaderBar.mark());
    view.setStyle(bench.getStyle());
    Runnable leave =
        () -> {
          leaveStart = Optional.empty();
          start.close();
          scene.setRoot(bench);
          // Before a focus asks for the colours of a part of it.
          bench.applyCss();
          if (!parts.bench().project().rig().lamps().isEmpty()) {
            parts.drawing().showFullestView();
            panels.show(WorkshopPanels.CUE);
          }
          showRigOfNothing();
          ribbons.requestFocus();
          welcome();
        };
    leaveStart = Optional.of(leave);
    scene.setRoot(view);
    // What scrolls is in the scene only then.
    view.applyCss();
    view.focusFirst();
  }

  // Keys without a modifier are commands, unless they are meant for a control.
  private void plainKey(KeyEvent event) {
    Node focus = stage.getScene().getFocusOwner();
    if (leaveStart.isPresent()) {
      return;
    }
    boolean typed = focus instanceof TextInputControl || focus instanceof ComboBoxBase;
    boolean pressed = focus instanceof ButtonBase && event.getCode() == KeyCode.SPACE;
    if (typed || pressed || event.isShortcutDown() || event.isAltDown() || event.isShiftDown()) {
      return;
    }
    for (Command command : commands.all()) {
      if (command.plainShortcut()
          && command.enabled().get()
          && KeyCombination.valueOf(command.shortcut()).match(event)) {
        command.run().run();
        event.consume();
        return;
      }
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

  private void place(WindowState before) {
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
    List<Double> dividers = before.dividers();
    boolean known = dividers.size() == 2;
    sheet.setDividerPositions(known ? dividers.get(0) : 0.36);
    halves.setDividerPositions(known ? dividers.get(1) : 0.62);
  }

  // The last file is safe by now; the window's own state is worth a try.
  private void end() {
    WindowState now = null;
    try {
      now =
          new WindowState(
              Optional.of(
                  new WindowState.Frame(
                      stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight())),
              stage.isMaximized(),
              List.of(sheet.getDividerPositions()[0], halves.getDividerPositions()[0]),
              dark.get(),
              parts.sheet().viewProperty().get(),
              parts.ribbons().rows().state());
      states.write(now);
    } catch (IOException | IllegalArgumentException lost) {
      // It opens as before next time.
    }
    firstTime = false;
    leaveStart.ifPresent(Runnable::run);
    parts.player().pause();
    drawing.close();
    parts.close();
    stage.close();
  }
}
