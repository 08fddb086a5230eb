package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;

/** All that is done to cues from the menu and by keys. */
public final class CueCommands {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;
  private final Dialogs dialogs;
  private final ReadOnlyBooleanWrapper anyCue = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper anyLamp = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper anyCopied = new ReadOnlyBooleanWrapper();
  private final ObjectProperty<Optional<Placeable>> carried =
      new SimpleObjectProperty<>(Optional.empty());
  private List<CueEdits.Copied> copied = List.of();

  public CueCommands(RibbonsModel model, Dialogs dialogs) {
    this.model = model;
    this.dialogs = dialogs;
    this.bench = model.bench();
    bench.watch(BenchState::selection, (before, now) -> refresh(now));
    refresh(bench.selection());
  }

  private void refresh(Selection now) {
    anyCue.set(!now.cues().isEmpty());
    anyLamp.set(!now.lamps().isEmpty() && now.scene().isPresent());
  }

  /** Whether a cue is selected. */
  public ReadOnlyBooleanProperty anyCueProperty() {
    return anyCue.getReadOnlyProperty();
  }

  /** Whether a lamp is selected that can be given a cue. */
  public ReadOnlyBooleanProperty anyLampProperty() {
    return anyLamp.getReadOnlyProperty();
  }

  /** Whether there is something to paste. */
  public ReadOnlyBooleanProperty anyCopiedProperty() {
    return anyCopied.getReadOnlyProperty();
  }

  /** Gives the selected lamps a cue of a kind from the playhead on. */
  public boolean addAtPlayhead(String kind) {
    return add(
        kind, List.copyOf(bench.selection().lamps()), model.time().playheadMs(), Optional.empty());
  }

  /**
   * Gives lamps a cue.
   *
   * @param lengthMs without it: to the next cue of these lamps, or to the scene's end
   */
  public boolean add(
      String kind, List<String> lamps, BigDecimal atMs, Optional<BigDecimal> lengthMs) {
    return place(Placeable.ofKind(kind), lamps, atMs, lengthMs);
  }

  /**
   * Gives lamps a cue of a pattern.
   *
   * @param lengthMs without it: to the next cue of these lamps, or to the scene's end
   */
  public boolean place(
      Placeable what, List<String> lamps, BigDecimal atMs, Optional<BigDecimal> lengthMs) {
    if (lamps.isEmpty()) {
      return false;
    }
    Pattern pattern = what.on(function(lamps));
    return bench.applyToCues(
        texts.get("edit.add", what.title()),
        Optional.empty(),
        scene -> {
          BigDecimal length = lengthMs.orElseGet(() -> room(scene, lamps, atMs));
          Cue cue = new Cue(atMs, length, BigDecimal.ZERO, BigDecimal.ZERO, Blend.COVER, pattern);
          return CueEdits.add(scene, lamps, Span.EACH, cue);
        });
  }

  private LampFunction function(List<String> lamps) {
    return bench.project().rig().lamp(lamps.get(0)).map(Lamp::function).orElse(LampFunction.OTHER);
  }

  /** How long a cue of these lamps would be that begins here: to the next one or the end. */
  public BigDecimal roomMs(List<String> lamps, BigDecimal atMs) {
    return bench.scene().map(scene -> room(scene, lamps, atMs)).orElse(BigDecimal.ZERO);
  }

  /** The time that the playhead shows. */
  public BigDecimal playheadMs() {
    return model.time().playheadMs();
  }

  /** Gives the selected cues another pattern; their times stay. */
  public void replacePattern(Placeable what) {
    applyToChosen(
        texts.get("edit.replace", what.title()),
        (scene, refs) ->
            CueEdits.each(
                scene,
                refs,
                cue ->
                    Cue.PATTERN.with(
                        cue,
                        what.usualColour()
                            ? Patterns.withLook(what.pattern(), cue.pattern().look())
                            : what.pattern())));
  }

  /** What the mouse carries over the ribbons, to be placed where it is let go. */
  public ObjectProperty<Optional<Placeable>> carriedProperty() {
    return carried;
  }

  // Up to the next cue of these lamps, or the scene's end; a second where neither leaves room.
  private static BigDecimal room(Scene scene, List<String> lamps, BigDecimal atMs) {
    BigDecimal end =
        scene.tracks().stream()
            .filter(track -> track.lamps().stream().anyMatch(lamps::contains))
            .flatMap(track -> track.cues().stream())
            .map(Cue::startMs)
            .filter(start -> start.compareTo(atMs) > 0)
            .min(Comparator.naturalOrder())
            .orElse(scene.lengthMs());
    BigDecimal room = end.subtract(atMs);
    return room.compareTo(BigDecimal.ONE) >= 0 ? room : BigDecimal.valueOf(1000);
  }

  /** Moves the light within the selected cues by frames, by their phases. */
  public void shiftPhase(int frames) {
    bench
        .scene()
        .filter(scene -> !bench.selection().cues().isEmpty())
        .ifPresent(
            scene -> {
              double byMs = frames * 1000 / scene.framesPerSecond().doubleValue();
              new PhaseDrag(bench, "phase").to(byMs);
            });
  }

  /** Removes the selected cues. */
  public void remove() {
    applyToChosen(counted("edit.remove"), CueEdits::remove);
  }

  /** Keeps the selected cues for {@link #paste}. */
  public void copy() {
    bench.scene().ifPresent(scene -> copied = CueEdits.copy(scene, bench.selection().cues()));
    anyCopied.set(!copied.isEmpty());
  }

  /** Copies and removes. */
  public void cut() {
    copy();
    applyToChosen(counted("edit.cut"), CueEdits::remove);
  }

  /** Pastes at the playhead; onto the selected lamps where all copied cues drove the same ones. */
  public void paste() {
    List<CueEdits.Copied> known =
        copied.stream()
            .filter(
                c -> c.lamps().stream().allMatch(l -> bench.project().rig().lamp(l).isPresent()))
            .toList();
    List<String> onto = List.copyOf(bench.selection().lamps());
    List<CueEdits.Copied> usable = known.isEmpty() && !onto.isEmpty() ? copied : known;
    if (usable.isEmpty()) {
      return;
    }
    bench.applyToCues(
        texts.get("edit.paste"),
        Optional.empty(),
        scene -> CueEdits.paste(scene, usable, model.time().playheadMs(), onto));
  }

  /** Places a copy of the selected cues right behind them. */
  public void duplicate() {
    List<Cue> chosen = bench.cues();
    Optional<BigDecimal> end = chosen.stream().map(Cue::endMs).max(Comparator.naturalOrder());
    end.ifPresent(
        at ->
            applyToChosen(
                counted("edit.duplicate"),
                (scene, refs) -> CueEdits.paste(scene, CueEdits.copy(scene, refs), at, List.of())));
  }

  /**
   * Cuts the selected cues in two at the playhead; tells if some can't be without a change of
   * light.
   */
  public void split() {
    BigDecimal at = model.time().playheadMs();
    Set<CueEdits.Whole> whole = new TreeSet<>();
    applyToChosen(
        texts.get("edit.split"),
        (scene, refs) -> {
          CueEdits.Split split = CueEdits.split(bench.project().rig(), scene, refs, at);
          whole.addAll(split.whole());
          return split.changed().cues().isEmpty()
              ? new CueEdits.Changed(scene, List.copyOf(refs))
              : split.changed();
        });
    if (!whole.isEmpty()) {
      dialogs.tell(
          texts.get("split.title"),
          whole.stream()
              .map(why -> texts.get("split." + why.name()))
              .collect(Collectors.joining("\n")));
    }
  }

  /** Shifts the selected cues by frames. */
  public void nudge(int frames) {
    applyToChosen(
        texts.get("edit.nudge"),
        (scene, refs) -> {
          BigDecimal first =
              refs.stream()
                  .flatMap(ref -> ref.in(scene).stream())
                  .map(Cue::startMs)
                  .min(Comparator.naturalOrder())
                  .orElse(BigDecimal.ZERO);
          // From frame to frame, so that rounding does not add up.
          long frame = Math.max(0, CueEdits.nearestFrame(scene, first) + frames);
          return CueEdits.shift(scene, refs, CueEdits.frameMs(scene, frame).subtract(first));
        });
  }

  /** Moves the ends of the selected cues by frames. */
  public void lengthen(int frames) {
    applyToChosen(
        texts.get("edit.END"),
        (scene, refs) -> {
          BigDecimal last =
              refs.stream()
                  .flatMap(ref -> ref.in(scene).stream())
                  .map(Cue::endMs)
                  .max(Comparator.naturalOrder())
                  .orElse(BigDecimal.ZERO);
          long frame = Math.max(0, CueEdits.nearestFrame(scene, last) + frames);
          return CueEdits.stretchEnd(scene, refs, CueEdits.frameMs(scene, frame).subtract(last));
        });
  }

  /** Chooses every cue that drives the selected lamps, or every cue if no lamp is selected. */
  public void chooseAll() {
    bench
        .scene()
        .ifPresent(
            scene -> {
              Set<String> lamps = bench.selection().lamps();
              List<CueRef> all = new ArrayList<>();
              for (int t = 0; t < scene.tracks().size(); t++) {
                boolean driven =
                    lamps.isEmpty()
                        || scene.tracks().get(t).lamps().stream().anyMatch(lamps::contains);
                for (int c = 0; driven && c < scene.tracks().get(t).cues().size(); c++) {
                  all.add(new CueRef(t, c));
                }
              }
              bench.select(bench.selection().withCues(all));
            });
  }

  /** Takes the selected cues onto the row above (-1) or below (1). */
  public void toRow(int by) {
    Optional<RibbonLayout> layout = model.layout();
    Optional<String> lamp = bench.selection().lamp();
    if (layout.isEmpty() || lamp.isEmpty() || bench.selection().cues().isEmpty()) {
      return;
    }
    List<String> rows = layout.get().rows().stream().map(r -> r.lamp().id()).toList();
    int at = rows.indexOf(lamp.get()) + by;
    if (at < 0 || at >= rows.size()) {
      return;
    }
    applyToChosen(
        texts.get("edit.toLamp"),
        (scene, refs) -> CueEdits.toLamps(scene, refs, List.of(rows.get(at))));
    bench.select(bench.selection().withLamps(List.of(rows.get(at))));
  }

  /** Goes to the next (1) or previous (-1) cue of the selected lamp. */
  public void step(int by) {
    List<CueRef> cues = cuesOfLamp();
    if (cues.isEmpty()) {
      return;
    }
    int at = bench.selection().cue().map(cues::indexOf).orElse(-1);
    int next = at < 0 ? (by > 0 ? 0 : cues.size() - 1) : at + by;
    if (next >= 0 && next < cues.size()) {
      bench.select(bench.selection().withCues(List.of(cues.get(next))));
      bringIntoSight(cues.get(next));
    }
  }

  /** Goes to the lamp of the row below (1) or above (-1), and to its cue nearest in time. */
  public void stepRow(int by) {
    Optional<RibbonLayout> layout = model.layout();
    if (layout.isEmpty() || layout.get().rows().isEmpty()) {
      return;
    }
    List<String> rows = layout.get().rows().stream().map(r -> r.lamp().id()).toList();
    int at = bench.selection().lamp().map(rows::indexOf).orElse(by > 0 ? -1 : rows.size());
    int next = Math.max(0, Math.min(rows.size() - 1, at + by));
    BigDecimal was = bench.cue().map(Cue::startMs).orElseGet(model.time()::playheadMs);
    Selection lamp = bench.selection().withLamps(List.of(rows.get(next))).withCues(Set.of());
    bench.select(lamp);
    Scene scene = bench.scene().orElseThrow();
    cuesOfLamp().stream()
        .min(Comparator.comparing(ref -> ref.in(scene).orElseThrow().startMs().subtract(was).abs()))
        .ifPresent(ref -> bench.select(bench.selection().withCues(List.of(ref))));
  }

  // Sorted as they follow each other in time.
  private List<CueRef> cuesOfLamp() {
    Optional<Scene> scene = bench.scene();
    Optional<String> lamp = bench.selection().lamp();
    if (scene.isEmpty() || lamp.isEmpty()) {
      return List.of();
    }
    List<CueRef> found = new ArrayList<>();
    for (int t = 0; t < scene.get().tracks().size(); t++) {
      if (scene.get().tracks().get(t).lamps().contains(lamp.get())) {
        for (int c = 0; c < scene.get().tracks().get(t).cues().size(); c++) {
          found.add(new CueRef(t, c));
        }
      }
    }
    found.sort(
        Comparator.comparing((CueRef ref) -> ref.in(scene.get()).orElseThrow().startMs())
            .thenComparing(Comparator.naturalOrder()));
    return found;
  }

  private void bringIntoSight(CueRef ref) {
    Cue cue = ref.in(bench.scene().orElseThrow()).orElseThrow();
    double x = model.axis().x(cue.startMs().doubleValue());
    if (x < 0 || x > model.width() - 20) {
      model
          .time()
          .axisProperty()
          .set(
              new TimeAxis(
                  cue.startMs().doubleValue() - model.width() / 4 * model.axis().msPerPixel(),
                  model.axis().msPerPixel()));
    }
  }

  private String counted(String key) {
    int count = bench.selection().cues().size();
    return count == 1 ? texts.get(key) : texts.get(key + ".many", Integer.toString(count));
  }

  private void applyToChosen(
      String name, java.util.function.BiFunction<Scene, Set<CueRef>, CueEdits.Changed> change) {
    Set<CueRef> chosen = new LinkedHashSet<>(bench.selection().cues());
    if (!chosen.isEmpty()) {
      bench.applyToCues(name, Optional.empty(), scene -> change.apply(scene, chosen));
    }
  }
}
