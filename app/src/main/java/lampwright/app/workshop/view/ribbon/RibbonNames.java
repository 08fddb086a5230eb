package lampwright.app.workshop.view.ribbon;

import javafx.scene.canvas.Canvas;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.LampEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.ribbon.MarkerCommands;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.view.NameEditor;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.Lamp;

/** Names in the ribbons that are edited in their places: of lamps, groups and markers. */
public final class RibbonNames {
  /** Where a name begins, and how much less wide than the titles it is. */
  private static final double NAME_X = 26;

  private static final double MARKER_WIDTH = 120;

  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;
  private final MarkerCommands markers;
  private final NameEditor editor;
  private final Canvas timeLine;
  private final Canvas titles;
  private final Canvas rows;

  RibbonNames(
      RibbonsModel model,
      MarkerCommands markers,
      NameEditor editor,
      Canvas timeLine,
      Canvas titles,
      Canvas rows) {
    this.model = model;
    this.bench = model.bench();
    this.markers = markers;
    this.editor = editor;
    this.timeLine = timeLine;
    this.titles = titles;
    this.rows = rows;
  }

  /** Edits the name of the selected lamp. */
  public void lamp() {
    bench.lamp().ifPresent(this::lamp);
  }

  private void lamp(Lamp lamp) {
    model.bringIntoSight(lamp.id());
    double y =
        model
            .layout()
            .flatMap(l -> l.row(lamp.id()))
            .map(row -> row.centreY() - model.top())
            .orElse(0.0);
    editor.edit(
        NAME_X,
        rows.getLayoutY() + y - editor.prefHeight(-1) / 2,
        titles.getWidth() - NAME_X - 4,
        texts.get("act.rename"),
        lamp.name(),
        name ->
            bench.apply(
                Edit.of(
                    texts.get("edit.rename"),
                    p -> LampEdits.change(p, lamp.id(), l -> Lamp.NAME.with(l, name)))));
  }

  /** Edits the name of the group of the selected lamp, if it has one. */
  public void group() {
    bench
        .lamp()
        .flatMap(
            lamp ->
                model.layout().stream()
                    .flatMap(l -> l.headings().stream())
                    .filter(h -> h.group().equals(lamp.group()))
                    .findFirst())
        .ifPresent(this::group);
  }

  /** Edits the name of a group. */
  public void group(RibbonLayout.Heading heading) {
    model.bringIntoSight(heading);
    double y = heading.centreY() - model.top();
    editor.edit(
        NAME_X,
        rows.getLayoutY() + y - editor.prefHeight(-1) / 2,
        titles.getWidth() - NAME_X - 4,
        texts.get("act.renameGroup"),
        heading.group(),
        name -> model.rows().renameGroup(heading.group(), name));
  }

  /** Edits the name of the selected marker. */
  public void marker() {
    model
        .markerProperty()
        .get()
        .ifPresent(
            marker ->
                editor.edit(
                    timeLine.getLayoutX()
                        + Math.max(0, model.axis().x(marker.atMs().doubleValue())),
                    0,
                    MARKER_WIDTH,
                    texts.get("act.markerRename"),
                    marker.name(),
                    markers::rename));
  }
}
