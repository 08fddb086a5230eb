package lampwright.app.workshop.view.ribbon;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.MouseDragEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.shape.Rectangle;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.Placeable;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.app.workshop.words.Texts;

/** A pattern that the mouse carries from the shelf: shown where it would come to, and placed. */
final class PatternDrop {
  private record Spot(String lamp, RibbonLayout.Row row, BigDecimal atMs, BigDecimal lengthMs) {}

  private final RibbonsModel model;
  private final CueCommands commands;
  private final Node rows;
  private final Rectangle shape = new Rectangle();
  private final Label words = new Label();

  /**
   * @param rows pane that it is let go on; the shapes belong beside it, in the same parent
   */
  PatternDrop(RibbonsModel model, CueCommands commands, Node rows) {
    this.model = model;
    this.commands = commands;
    this.rows = rows;
    shape.getStyleClass().add("drop-preview");
    words.getStyleClass().add("drop-words");
    hide();
    rows.addEventHandler(MouseDragEvent.MOUSE_DRAG_OVER, this::over);
    rows.addEventHandler(MouseDragEvent.MOUSE_DRAG_EXITED, event -> hide());
    rows.addEventHandler(MouseDragEvent.MOUSE_DRAG_RELEASED, this::released);
    commands.carriedProperty().addListener((of, before, now) -> hide());
  }

  /** What is drawn over the rows. */
  List<Node> shapes() {
    return List.of(shape, words);
  }

  private Optional<Spot> spot(MouseEvent event) {
    return model
        .hit(event.getX(), event.getY())
        .map(
            hit -> {
              BigDecimal at =
                  model
                      .snapping()
                      .edge(Math.max(0, model.axis().ms(event.getX())), event.isAltDown());
              String lamp = hit.row().lamp().id();
              return new Spot(lamp, hit.row(), at, commands.roomMs(List.of(lamp), at));
            });
  }

  private void over(MouseDragEvent event) {
    Optional<Placeable> carried = commands.carriedProperty().get();
    Optional<Spot> spot = carried.flatMap(c -> spot(event));
    if (spot.isEmpty()) {
      hide();
      return;
    }
    double from = model.axis().x(spot.get().atMs().doubleValue());
    double to = model.axis().x(spot.get().atMs().add(spot.get().lengthMs()).doubleValue());
    double left = Math.max(0, from);
    shape.setX(rows.getLayoutX() + left);
    shape.setY(rows.getLayoutY() + spot.get().row().y() - model.top());
    shape.setWidth(Math.max(2, Math.min(to, model.width()) - left));
    shape.setHeight(spot.get().row().height());
    shape.setVisible(true);
    words.setText(
        Texts.of("ribbons")
            .get(
                "drop",
                carried.orElseThrow().title(),
                TimeAxis.label(spot.get().atMs().doubleValue()),
                TimeAxis.label(spot.get().atMs().add(spot.get().lengthMs()).doubleValue())));
    words.autosize();
    words.relocate(rows.getLayoutX() + event.getX() + 14, rows.getLayoutY() + event.getY() + 14);
    words.setVisible(true);
  }

  private void released(MouseDragEvent event) {
    Optional<Placeable> carried = commands.carriedProperty().get();
    hide();
    carried.ifPresent(
        what ->
            spot(event)
                .ifPresent(
                    spot -> {
                      model
                          .bench()
                          .select(model.bench().selection().withLamps(List.of(spot.lamp())));
                      commands.place(
                          what, List.of(spot.lamp()), spot.atMs(), Optional.of(spot.lengthMs()));
                    }));
  }

  private void hide() {
    shape.setVisible(false);
    words.setVisible(false);
  }
}
