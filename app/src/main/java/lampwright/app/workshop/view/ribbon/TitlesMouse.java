package lampwright.app.workshop.view.ribbon;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.LampSigns.Sign;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonSigns;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.engine.rig.Lamp;

/** What the mouse does on the titles: it selects lamps, sets their signs, folds their groups. */
final class TitlesMouse {
  private final RibbonsModel model;
  private final Bench bench;
  private final RibbonNames names;

  /**
   * @param names are edited by a double click
   */
  TitlesMouse(RibbonsModel model, RibbonNames names) {
    this.model = model;
    this.bench = model.bench();
    this.names = names;
  }

  /**
   * Presses.
   *
   * @param width of the titles
   */
  void pressed(MouseEvent event, double width) {
    Optional<Sign> sign = RibbonSigns.at(event.getX(), width);
    boolean primary = event.getButton() == MouseButton.PRIMARY;
    Optional<RibbonLayout.Heading> heading = model.heading(event.getY());
    if (heading.isPresent()) {
      List<String> lamps = heading.get().lamps().stream().map(Lamp::id).toList();
      if (primary && sign.isPresent()) {
        model.toggle(sign.get(), lamps);
      } else if (primary) {
        model.rows().toggleFolded(heading.get().group());
        if (event.getClickCount() == 2) {
          // By now it is as it was before the first click.
          model.heading(event.getY()).ifPresent(names::group);
        }
      }
      return;
    }
    Optional<RibbonLayout.Hit> hit = model.hit(0, event.getY());
    if (hit.isEmpty()) {
      bench.select(bench.selection().withLamps(List.of()).withCues(List.of()));
      return;
    }
    String lamp = hit.get().row().lamp().id();
    if (primary && sign.isPresent()) {
      model.toggle(sign.get(), List.of(lamp));
      return;
    }
    if (!primary && bench.selection().lamps().contains(lamp)) {
      return;
    }
    select(lamp, event);
    if (primary && event.getClickCount() == 2) {
      names.lamp();
    }
  }

  private void select(String lamp, MouseEvent event) {
    Set<String> lamps = new LinkedHashSet<>();
    if (event.isShortcutDown() || event.isShiftDown()) {
      lamps.addAll(bench.selection().lamps());
    }
    if (!(event.isShortcutDown() && lamps.remove(lamp))) {
      lamps.remove(lamp);
      lamps.add(lamp);
    }
    bench.select(bench.selection().withLamps(lamps).withCues(List.of()));
  }
}
