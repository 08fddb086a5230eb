package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.Marker;
import lampwright.engine.scene.Scene;

/** What is done to the markers of the scene on the bench. */
public final class MarkerCommands {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;

  public MarkerCommands(RibbonsModel model) {
    this.model = model;
    this.bench = model.bench();
  }

  /** Puts a marker at the playhead and selects it. */
  public void add() {
    bench
        .scene()
        .ifPresent(
            scene -> {
              String name = texts.get("marker.name", Integer.toString(scene.markers().size() + 1));
              Marker added = new Marker(model.time().playheadMs(), name);
              change(
                  "edit.marker.add",
                  Optional.empty(),
                  markers -> {
                    List<Marker> all = new ArrayList<>(markers);
                    all.add(added);
                    return all;
                  });
              model.markerProperty().set(Optional.of(added));
            });
  }

  /** Removes the selected marker. */
  public void remove() {
    model
        .markerProperty()
        .get()
        .ifPresent(
            gone ->
                change(
                    "edit.marker.remove",
                    Optional.empty(),
                    markers -> {
                      List<Marker> all = new ArrayList<>(markers);
                      all.remove(gone);
                      return all;
                    }));
    model.markerProperty().set(Optional.empty());
  }

  /** Gives the selected marker another name. */
  public void rename(String name) {
    replace("edit.marker.rename", Optional.empty(), marker -> Marker.NAME.with(marker, name));
  }

  /** Moves the selected marker as a step of a gesture. */
  public void move(BigDecimal toMs, Object gesture) {
    replace("edit.marker.move", Optional.of(gesture), marker -> Marker.AT_MS.with(marker, toMs));
  }

  /** Goes to the next (1) or previous (-1) marker and selects it. */
  public void step(int by) {
    BigDecimal now = model.time().playheadMs();
    bench
        .scene()
        .flatMap(
            scene ->
                scene.markers().stream()
                    .filter(marker -> marker.atMs().compareTo(now) * by > 0)
                    .min(
                        Comparator.comparing((Marker marker) -> marker.atMs().subtract(now).abs())))
        .ifPresent(
            marker -> {
              model.markerProperty().set(Optional.of(marker));
              // Just behind it: a marker between two frames is of the later one.
              model.playhead().go(model.time().nearestFrame(marker.atMs().doubleValue()));
            });
  }

  private void replace(String name, Optional<Object> gesture, UnaryOperator<Marker> change) {
    Optional<Marker> selected = model.markerProperty().get();
    if (selected.isEmpty()) {
      return;
    }
    Marker changed = change.apply(selected.get());
    if (change(
        name,
        gesture,
        markers -> markers.stream().map(m -> m.equals(selected.get()) ? changed : m).toList())) {
      model.markerProperty().set(Optional.of(changed));
    }
  }

  private boolean change(
      String name, Optional<Object> gesture, UnaryOperator<List<Marker>> change) {
    return bench.applyToScene(
        texts.get(name),
        gesture,
        scene -> Scene.MARKERS.with(scene, change.apply(scene.markers())));
  }
}
