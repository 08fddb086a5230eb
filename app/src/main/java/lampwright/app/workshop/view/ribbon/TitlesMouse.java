package lampwright.app.workshop.view.ribbon;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.input.MouseEvent;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonsModel;

/** What the mouse does on the titles: it chooses lamps and unfolds their duty curves. */
final class TitlesMouse {
  private static final double FOLD_WIDTH = 16;

  private final RibbonsModel model;
  private final Bench bench;

  TitlesMouse(RibbonsModel model) {
    this.model = model;
    this.bench = model.bench();
  }

  void pressed(MouseEvent event) {
    Optional<RibbonLayout.Hit> hit = model.hit(0, event.getY());
    if (hit.isEmpty()) {
      bench.select(bench.selection().withLamps(List.of()).withCues(List.of()));
      return;
    }
    String lamp = hit.get().row().lamp().id();
    if (event.getX() < FOLD_WIDTH) {
      model.toggleUnfolded(lamp);
      return;
    }
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
