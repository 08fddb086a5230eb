package lampwright.app.workshop.view;

import com.google.common.base.Suppliers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.geometry.Orientation;
import javafx.scene.Node;
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
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.live.BenchLink;
import lampwright.app.workshop.model.problems.Target;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.view.cue.CueSettingsView;
import lampwright.app.workshop.view.cue.SceneView;
import lampwright.app.workshop.view.drawing.DrawingBar;
import lampwright.app.workshop.view.drawing.DrawingView;
import lampwright.app.workshop.view.drawing.TransportBar;
import lampwright.app.workshop.view.help.Tour;
import lampwright.app.workshop.view.ribbon.RibbonsView;
import lampwright.app.workshop.view.shelf.ShelfView;
import lampwright.app.workshop.words.Texts;

/**
 * The bench: gauges above, the drawing sheet with the ribbons in the middle, and below it a tab for
 * the selected cue, the rig, or the problems.
 */
final class BenchView {
  private static final double TIP_WIDTH = 420;

  /**
   * What the window does for it.
   *
   * @param export asks what to export
   * @param page shows a page of the manual by its id
   * @param about says what this program is
   * @param start shows the start sheet
   * @param dark whether it is shown as by night
   */
  record Around(
      Runnable export,
      Consumer<String> page,
      Runnable about,
      Runnable start,
      BooleanProperty dark) {}

  private final Texts texts = Texts.of("workshop");
  private final WorkshopParts parts;
  private final SplitPane sheet = new SplitPane();
  private final SplitPane halves = new SplitPane();
  private final CueSettingsView cueSettings;
  private final RibbonsView ribbons;
  private final Supplier<ShelfView> shelf;
  private final DrawingView drawing;
  private final TitleBlock title;
  private final Panels panels;
  private final Commands commands;
  private final Tour tour;
  private final StackPane root;

  /**
   * @param dividers where its halves meet, and those of its upper half, 0 to 1; none for the usual
   */
  BenchView(WorkshopParts parts, Around around, List<Double> dividers) {
    this.parts = parts;
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
    commands = commands(around);
    ribbons.setCommands(commands);
    drawing.setCommands(commands);
    scene.setCommands(commands);
    parts.files().document().changedProperty().addListener((of, was, now) -> title.show());
    VBox left = new VBox(new DrawingBar(parts.drawing()), drawing);
    VBox.setVgrow(drawing, Priority.ALWAYS);
    VBox right =
        new VBox(
            new SceneBar(parts.bench(), parts.ribbons(), parts.rigCommands(), ribbons::offerKinds),
            ribbons);
    VBox.setVgrow(ribbons, Priority.ALWAYS);
    sheet.getItems().setAll(left, right);
    List<ReadOnlyObjectProperty<Gauge>> shown = new ArrayList<>(parts.gauges().all());
    shown.add(parts.link().gaugeProperty());
    GaugesView gauges = new GaugesView(shown, this::lead);
    tour =
        new Tour(
            List.of(
                new Tour.Stop("drawing", left),
                new Tour.Stop("ribbons", right),
                new Tour.Stop("panels", panels.tabs()),
                new Tour.Stop("gauges", gauges),
                new Tour.Stop("findings", panels.beside())));
    root = new StackPane(middle(around, gauges), tour);
    // Of the panes: the bounds follow what moves within, such as the playhead.
    parts
        .sheet()
        .shiftProperty()
        .bind(ribbons.layoutYProperty().subtract(drawing.layoutYProperty()));
    // It keeps its palette while the start sheet has its place in the scene.
    root.getStyleClass().add(Theme.PALETTE);
    boolean known = dividers.size() == 2;
    sheet.setDividerPositions(known ? dividers.get(0) : 0.36);
    halves.setDividerPositions(known ? dividers.get(1) : 0.62);
  }

  private Commands commands(Around around) {
    return WorkshopCommands.of(
        parts,
        new WorkshopCommands.Window(
            around.export(),
            ribbons::offerKinds,
            new WorkshopCommands.Names(
                ribbons.names()::lamp, ribbons.names()::group, ribbons.names()::marker),
            ribbons.markers(),
            this::showShelf,
            () -> panels.show(WorkshopPanels.SITUATIONS),
            () -> panels.show(WorkshopPanels.LINK),
            new WorkshopCommands.Help(around.page(), this::tour, around.about()),
            around.dark(),
            around.start()));
  }

  private BorderPane middle(Around around, GaugesView gauges) {
    // Beside what is always there, so that nothing moves when there is something to report.
    HBox foot =
        new HBox(new TransportBar(parts.bench(), parts.playhead(), parts.player()), status());
    foot.getStyleClass().add("sheet-foot");
    VBox upper = new VBox(sheet, foot);
    upper.getStyleClass().add("sheet-ground");
    VBox.setVgrow(sheet, Priority.ALWAYS);
    halves.setOrientation(Orientation.VERTICAL);
    halves.getItems().setAll(upper, panels.node());
    BorderPane middle = new BorderPane(halves);
    HeaderBar header =
        new HeaderBar(
            new WorkshopMenus(commands, parts.files()).bar(),
            new HiddenNotice(parts.bench(), parts.sheet()),
            around.export());
    middle.setTop(new VBox(header, gauges));
    middle.setId("workshop");
    return middle;
  }

  StackPane root() {
    return root;
  }

  Panels panels() {
    return panels;
  }

  /** What can be done in it. */
  Commands commands() {
    return commands;
  }

  RibbonsView ribbons() {
    return ribbons;
  }

  /** Where its parts meet, as it is made with them. */
  List<Double> dividers() {
    return List.of(sheet.getDividerPositions()[0], halves.getDividerPositions()[0]);
  }

  /** Shows a project that was not there before. */
  void showNew() {
    // What was muted or locked there is not of this project, whatever its ids.
    parts.sheet().signsProperty().set(LampSigns.NONE);
    showModel();
  }

  /** The model and what its lamps do; nothing but the drawing where it has no lamps. */
  private void showModel() {
    parts.drawing().showFullestView();
    if (hasLamps()) {
      panels.show(WorkshopPanels.CUE);
    }
  }

  private boolean hasLamps() {
    return !parts.bench().project().rig().lamps().isEmpty();
  }

  /** Called when it comes into sight in place of the start sheet. */
  void arrive() {
    // Before a focus asks for the colours of a part of it.
    root.applyCss();
    if (hasLamps()) {
      showModel();
    }
    showRigOfNothing();
    ribbons.requestFocus();
  }

  /** Begins the tour of it. */
  void tour() {
    tour.begin();
  }

  void close() {
    drawing.close();
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

  /** Shows what a finding is about, where it can be changed. */
  void lead(Target target) {
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

  /** Shows the rig of a project without lamps: a new one begins with it. */
  void showRigOfNothing() {
    if (!hasLamps()) {
      panels.show(WorkshopPanels.RIG);
    }
  }

  /** Keys without a modifier are commands, unless they are meant for a control. */
  void plainKey(KeyEvent event) {
    Node focus = root.getScene().getFocusOwner();
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
}
