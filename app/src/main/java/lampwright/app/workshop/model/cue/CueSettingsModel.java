package lampwright.app.workshop.model.cue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CuePhases;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.CueSettings;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.PatternSettings;
import lampwright.app.workshop.edit.ProjectColours;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.Setting;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.light.Colour;
import lampwright.engine.meter.FlashTrain;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.RateVerdict;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Ratio;

/**
 * The form of the selected cues. It shows the values of the one selected last; what is changed is
 * changed in all of them.
 */
public final class CueSettingsModel {
  private static final String COLOUR = "colour";
  private static final MathContext DIGITS = new MathContext(6);

  private record Structure(
      String kind, int cues, boolean sameKind, boolean shared, boolean coloured) {}

  private final Texts texts = Texts.of("cue");
  private final Texts names = Texts.of("settings");
  private final Bench bench;
  private final LightService lights;
  private final ReadOnlyObjectWrapper<Optional<Form>> form =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<String> summary = new ReadOnlyObjectWrapper<>("");
  private final ReadOnlyObjectWrapper<String> hint = new ReadOnlyObjectWrapper<>("");
  private final ReadOnlyObjectWrapper<Optional<BigDecimal>> likeReal =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  private final ReadOnlyObjectWrapper<List<Colour>> usedColours =
      new ReadOnlyObjectWrapper<>(List.of());

  public CueSettingsModel(Bench bench, LightService lights) {
    this.bench = bench;
    this.lights = lights;
    usedColours.set(ProjectColours.of(bench.project()));
    bench.watch(BenchState::project, (before, now) -> usedColours.set(ProjectColours.of(now)));
    bench.projectProperty().addListener((of, before, now) -> refresh());
    bench.selectionProperty().addListener((of, before, now) -> refresh());
    lights.reportProperty().addListener((of, before, now) -> refreshFromReport());
    refresh();
  }

  /** The values; empty while no cue is selected. */
  public ReadOnlyObjectProperty<Optional<Form>> formProperty() {
    return form.getReadOnlyProperty();
  }

  /** What the cue does, in words. */
  public ReadOnlyObjectProperty<String> summaryProperty() {
    return summary.getReadOnlyProperty();
  }

  /** How its lamp flashes beside real lamps of its function; empty if there is nothing to say. */
  public ReadOnlyObjectProperty<String> hintProperty() {
    return hint.getReadOnlyProperty();
  }

  /** The rate a minute that {@link #setLikeReal} would set; empty if it is like a real one. */
  public ReadOnlyObjectProperty<Optional<BigDecimal>> likeRealProperty() {
    return likeReal.getReadOnlyProperty();
  }

  /** The colours that the project uses, those used most first. */
  public ReadOnlyObjectProperty<List<Colour>> usedColoursProperty() {
    return usedColours.getReadOnlyProperty();
  }

  public Bench bench() {
    return bench;
  }

  /** The lamp whose pixels colours are shown for: the first that the cue drives. */
  public Optional<Lamp> lamp() {
    return track()
        .flatMap(
            t ->
                bench
                    .lamp()
                    .filter(l -> t.lamps().contains(l.id()))
                    .or(() -> bench.project().rig().lamp(t.lamps().get(0))));
  }

  /** Gives n selected cues the phases 0, 1/n, 2/n and so on, in the order of rows and time. */
  public void shareOutPhases() {
    List<CueRef> refs =
        bench.selection().cues().stream()
            .filter(ref -> bench.scene().flatMap(ref::in).filter(CuePhases::moves).isPresent())
            .sorted()
            .toList();
    if (refs.size() < 2) {
      return;
    }
    Set<CueRef> chosen = bench.selection().cues();
    bench.applyToCues(
        texts.get("edit.phases"),
        Optional.empty(),
        scene -> {
          Scene changed = scene;
          for (int k = 0; k < refs.size(); k++) {
            BigDecimal phase =
                BigDecimal.valueOf(k).divide(BigDecimal.valueOf(refs.size()), DIGITS);
            changed =
                CueEdits.each(
                        changed,
                        List.of(refs.get(k)),
                        c -> Cue.PATTERN.with(c, c.pattern().withPhase(phase)))
                    .scene();
          }
          return new CueEdits.Changed(changed, List.copyOf(chosen));
        });
  }

  /** Sets the nearest rate that real lamps of this function have. */
  public void setLikeReal() {
    likeReal
        .get()
        .ifPresent(
            rate ->
                bench.applyToCues(
                    texts.get("edit.likeReal"),
                    Optional.empty(),
                    scene ->
                        CueEdits.each(
                            scene,
                            bench.selection().cues(),
                            c -> Cue.PATTERN.with(c, Patterns.withRate(c.pattern(), rate)))));
  }

  private Optional<Track> track() {
    return bench
        .scene()
        .flatMap(
            s ->
                bench
                    .selection()
                    .cue()
                    .filter(ref -> ref.track() < s.tracks().size())
                    .map(ref -> s.tracks().get(ref.track())));
  }

  private void refresh() {
    Optional<Cue> cue = bench.cue();
    if (cue.isEmpty()) {
      form.set(Optional.empty());
      summary.set("");
      refreshFromReport();
      return;
    }
    List<Cue> chosen = bench.cues();
    boolean same =
        chosen.stream().allMatch(c -> c.pattern().kind().equals(cue.get().pattern().kind()));
    boolean shared = track().filter(t -> t.lamps().size() > 1).isPresent();
    boolean coloured = chosen.stream().anyMatch(c -> c.pattern().colours().containsKey(COLOUR));
    Structure structure =
        new Structure(cue.get().pattern().kind(), chosen.size(), same, shared, coloured);
    if (form.get().map(Form::structure).filter(structure::equals).isPresent()) {
      form.get().get().refresh();
    } else {
      form.set(Optional.of(form(structure, cue.get())));
    }
    summary.set(words(cue.get(), chosen.size()));
    refreshFromReport();
  }

  private Form form(Structure structure, Cue cue) {
    List<Slot<?>> what = new ArrayList<>();
    what.add(slot(CueSettings.kind()));
    PatternSettings.look().stream()
        .filter(setting -> structure.coloured() || !setting.key().equals(COLOUR))
        .forEach(setting -> what.add(slot(CueSettings.ofPattern(setting))));
    List<Slot<?>> how = new ArrayList<>();
    if (structure.sameKind()) {
      PatternSettings.of(cue.pattern())
          .forEach(setting -> how.add(slot(CueSettings.ofPattern(setting))));
    }
    List<Slot<?>> when = new ArrayList<>();
    CueSettings.time().forEach(setting -> when.add(slot(setting)));
    when.add(slot(CueSettings.blend()));
    if (structure.shared()) {
      when.add(span());
    }
    List<Form.Group> groups = new ArrayList<>();
    groups.add(new Form.Group("light", what));
    if (!how.isEmpty()) {
      groups.add(new Form.Group("pattern", how));
    }
    groups.add(new Form.Group("time", when));
    return new Form(structure, texts.get("title"), groups);
  }

  private <V> Slot<V> slot(Setting<Cue, V> setting) {
    return new Slot<>(
        setting.key(),
        setting.kind(),
        setting.get().apply(bench.cue().orElseThrow()),
        () -> bench.cue().map(setting.get()),
        (value, gesture) -> {
          boolean taken =
              bench.applyToCues(
                  texts.get("edit.set", names.get(setting.key())),
                  gesture,
                  scene ->
                      CueEdits.each(
                          scene, bench.selection().cues(), c -> setting.set().apply(c, value)));
          return taken ? Optional.empty() : bench.refusalProperty().get();
        });
  }

  private Slot<Span> span() {
    return new Slot<>(
        "span",
        new Kind.Choice<>("span", List.of(Span.values()), Span::key),
        track().orElseThrow().span(),
        () -> track().map(Track::span),
        (value, gesture) -> {
          int index = bench.selection().cue().orElseThrow().track();
          boolean taken =
              bench.applyToScene(
                  texts.get("edit.set", names.get("span")),
                  gesture,
                  scene ->
                      Scene.TRACKS.with(
                          scene,
                          Projects.replaced(
                              scene.tracks(), index, t -> Track.SPAN.with(t, value))));
          return taken ? Optional.empty() : bench.refusalProperty().get();
        });
  }

  private String words(Cue cue, int count) {
    String lamps =
        track().orElseThrow().lamps().stream()
            .map(id -> bench.project().rig().lamp(id).map(Lamp::title).orElse(id))
            .collect(Collectors.joining(", "));
    String kind = Titles.ofKind(cue.pattern().kind());
    String period =
        cue.pattern()
            .period()
            .map(Ratio::doubleValue)
            .map(ms -> " " + texts.get("period", number(ms / 1000), number(60_000 / ms)))
            .orElse("");
    String text = texts.get("summary", lamps, kind) + period;
    return count > 1 ? texts.get("several", Integer.toString(count)) + " " + text : text;
  }

  private void refreshFromReport() {
    Optional<Lamp> lamp = bench.cue().isPresent() ? lamp() : Optional.empty();
    Optional<FlashTrain> train =
        lamp.flatMap(
            l ->
                lights
                    .reportProperty()
                    .get()
                    .flatMap(
                        r ->
                            r.measure().lights().stream()
                                .filter(light -> light.id().equals(l.id()))
                                .findFirst())
                    .flatMap(LightReport::train));
    Optional<RateVerdict> verdict =
        train
            .filter(t -> t.groupsPerMinute().isPresent())
            .flatMap(
                t ->
                    RateVerdict.of(
                        lamp.orElseThrow().function(), t.groupsPerMinute().getAsDouble()));
    hint.set(
        verdict
            .map(
                v ->
                    texts.get(
                        "hint",
                        Titles.of(lamp.orElseThrow()),
                        train.orElseThrow().rateWords(),
                        v.words(),
                        v.range().source()))
            .orElse(""));
    boolean settable = bench.cue().map(Cue::pattern).filter(Patterns::hasRate).isPresent();
    likeReal.set(
        verdict
            .filter(v -> settable && !v.likeReal())
            .map(
                v ->
                    BigDecimal.valueOf(
                        v.compared() < 0
                            ? v.range().leastPerMinute()
                            : v.range().mostPerMinute())));
  }

  private static String number(double value) {
    return new BigDecimal(value).round(new MathContext(3)).stripTrailingZeros().toPlainString();
  }
}
