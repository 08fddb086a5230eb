package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.meter.CurrentDraw;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;

/** The scene on the bench: its settings, what it costs, and which lamps it leaves dark. */
public final class SceneModel {
  /** A figure of the scene: what it is, its value, and a second line. */
  public record Cost(String label, String value, String more) {}

  private static final double KIBIBYTE = 1024;

  private final Texts texts = Texts.of("scene");
  private final Bench bench;
  private final RigForms forms;
  private final LightService lights;
  private final ReadOnlyObjectWrapper<Optional<Form>> form =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<Cost>> costs = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<List<Lamp>> dark = new ReadOnlyObjectWrapper<>(List.of());

  public SceneModel(Bench bench, Dialogs dialogs, LightService lights) {
    this.bench = bench;
    this.lights = lights;
    // The scene is shown under whatever id it has.
    this.forms = new RigForms(bench, dialogs, part -> {});
    bench.watch(BenchState::contents, (before, now) -> refresh());
    lights.reportProperty().addListener((of, before, now) -> costs.set(costsNow()));
    refresh();
  }

  /** The scene's settings; empty without a scene. */
  public ReadOnlyObjectProperty<Optional<Form>> formProperty() {
    return form.getReadOnlyProperty();
  }

  /** What one run of it takes; currents are there once it is measured. */
  public ReadOnlyObjectProperty<List<Cost>> costsProperty() {
    return costs.getReadOnlyProperty();
  }

  /** The lamps that have no cue in it. */
  public ReadOnlyObjectProperty<List<Lamp>> darkProperty() {
    return dark.getReadOnlyProperty();
  }

  /** Selects the lamps that have no cue. */
  public void selectDark() {
    bench.select(bench.selection().withLamps(dark.get().stream().map(Lamp::id).toList()));
  }

  private void refresh() {
    Optional<Scene> scene = bench.scene();
    if (scene.isEmpty()) {
      form.set(Optional.empty());
      dark.set(List.of());
      costs.set(List.of());
      return;
    }
    RigPart part = new RigPart.OfScene(scene.get().id());
    Object structure = forms.structure(part);
    if (form.get().map(Form::structure).filter(structure::equals).isPresent()) {
      form.get().get().refresh();
    } else {
      form.set(Optional.of(forms.form(part, scene.get().id())));
    }
    Set<String> driven =
        scene.get().tracks().stream()
            .filter(track -> !track.cues().isEmpty())
            .flatMap(track -> track.lamps().stream())
            .collect(Collectors.toSet());
    dark.set(
        bench.project().rig().lamps().stream()
            .filter(lamp -> !driven.contains(lamp.id()))
            .toList());
    costs.set(costsNow());
  }

  private List<Cost> costsNow() {
    Optional<Scene> scene = bench.scene();
    Optional<SceneReport> report = lights.reportProperty().get();
    if (scene.isEmpty()) {
      return List.of();
    }
    if (report.isEmpty()) {
      return List.of(new Cost(texts.get("frames"), texts.get("measuring"), ""));
    }
    SceneReport measured = report.get();
    CurrentDraw supply = measured.measure().supply();
    long frames = measured.table().frameCount();
    int bytes = measured.table().layout().bytes();
    double rate = measured.table().framesPerSecond();
    List<Cost> all = new ArrayList<>();
    all.add(
        new Cost(
            texts.get("peak"),
            texts.get("amps", fixed(supply.peakMilliamps() / 1000, 2)),
            texts.get("peak.at", fixed(supply.peakFrame() / rate, 2))));
    all.add(
        new Cost(
            texts.get("mean"),
            texts.get("amps", fixed(supply.meanMilliamps() / 1000, 2)),
            texts.get("energy", fixed(measured.joules(), 1))));
    all.add(
        new Cost(
            texts.get("frames"),
            Long.toString(frames),
            texts.get("bytes", Integer.toString(bytes), fixed(frames * bytes / KIBIBYTE, 1))));
    long cues = scene.get().tracks().stream().mapToLong(track -> track.cues().size()).sum();
    all.add(
        new Cost(
            texts.get("cues"),
            Long.toString(cues),
            texts.get("tracks", scene.get().tracks().size())));
    return all;
  }

  private static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
