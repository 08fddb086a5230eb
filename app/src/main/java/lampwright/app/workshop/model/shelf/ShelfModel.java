package lampwright.app.workshop.model.shelf;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import lampwright.app.preset.BuiltInPresets;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.PatternSettings;
import lampwright.app.workshop.edit.PresetEdits;
import lampwright.app.workshop.edit.Setting;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.document.Preset;
import lampwright.engine.document.PresetUse;
import lampwright.engine.document.Project;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.scene.Cue;

/** The patterns shelf: what is on it, what is selected of it, and what is done with that. */
public final class ShelfModel implements AutoCloseable {
  private static final int HINTS = 3;
  private static final List<ShelfEntry> KINDS =
      Patterns.kinds().stream().map(ShelfEntry::ofKind).toList();
  private static final List<ShelfEntry> PROGRAM =
      BuiltInPresets.all().stream()
          .map(preset -> ShelfEntry.of(ShelfEntry.Source.PROGRAM, preset))
          .toList();

  private final Texts texts = Texts.of("shelf");
  private final Bench bench;
  private final CueCommands commands;
  private final OwnPresets users;
  private final ShelfLights lights;
  private final StringProperty query = new SimpleStringProperty("");
  private final ObjectProperty<ShelfGroup> group = new SimpleObjectProperty<>(ShelfGroup.ALL);
  private final ReadOnlyObjectWrapper<List<ShelfCard>> cards =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ObjectProperty<Optional<ShelfEntry>> selected =
      new SimpleObjectProperty<>(Optional.empty());
  private final ReadOnlyBooleanWrapper anySelected = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper ownSelected = new ReadOnlyBooleanWrapper();
  private final BooleanProperty motion = new SimpleBooleanProperty(true);
  private final ReadOnlyObjectWrapper<String> hint = new ReadOnlyObjectWrapper<>("");
  private boolean lookedAt;

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public ShelfModel(Bench bench, CueCommands commands, OwnPresets users, Executor screen) {
    this.bench = bench;
    this.commands = commands;
    this.users = users;
    this.lights = new ShelfLights(screen);
    bench.watch(state -> state.project().presets(), (before, now) -> fill());
    bench.watch(BenchState::selection, (before, now) -> say());
    bench.watch(BenchState::frame, (before, now) -> say());
    bench.watch(state -> state.project().rig().lamps(), (before, now) -> say());
    users.presetsProperty().addListener((of, before, now) -> fill());
    query.addListener((of, before, now) -> fill());
    group.addListener((of, before, now) -> fill());
    selected.addListener(
        (of, before, now) -> {
          anySelected.set(now.isPresent());
          ownSelected.set(now.filter(ShelfEntry::own).isPresent());
        });
    fill();
    say();
  }

  /** The shelf is in sight: its strips are rendered from now on. */
  public void lookAt() {
    if (!lookedAt) {
      lookedAt = true;
      render();
    }
  }

  /** What is searched for. */
  public StringProperty queryProperty() {
    return query;
  }

  /** What the shelf is narrowed to. */
  public ObjectProperty<ShelfGroup> groupProperty() {
    return group;
  }

  /** The cards in sight. */
  public ReadOnlyObjectProperty<List<ShelfCard>> cardsProperty() {
    return cards.getReadOnlyProperty();
  }

  /** All that can be taken from the cards in sight, in order. */
  public List<ShelfEntry> entries() {
    return cards.get().stream().flatMap(card -> card.entries().stream()).toList();
  }

  /** What is selected; always in sight. */
  public ObjectProperty<Optional<ShelfEntry>> selectedProperty() {
    return selected;
  }

  public ReadOnlyBooleanProperty anySelectedProperty() {
    return anySelected.getReadOnlyProperty();
  }

  /** Whether what is selected is a preset of the builder's own. */
  public ReadOnlyBooleanProperty ownSelectedProperty() {
    return ownSelected.getReadOnlyProperty();
  }

  /** Whether strips move. */
  public BooleanProperty motionProperty() {
    return motion;
  }

  /** What would become of the selected pattern: where it would be placed. */
  public ReadOnlyObjectProperty<String> hintProperty() {
    return hint.getReadOnlyProperty();
  }

  /** Why the user's own presets could not be read or written; empty if they could. */
  public ReadOnlyObjectProperty<String> troubleProperty() {
    return users.troubleProperty();
  }

  public ShelfLights lights() {
    return lights;
  }

  public CueCommands commands() {
    return commands;
  }

  public Bench bench() {
    return bench;
  }

  /** The groups, and how many entries each has without a search. */
  public Map<ShelfGroup, Integer> counts() {
    Map<ShelfGroup, Integer> counts = new LinkedHashMap<>();
    groups().forEach(each -> counts.put(each, (int) all().stream().filter(each::holds).count()));
    return counts;
  }

  /** All groups, in order. */
  public static List<ShelfGroup> groups() {
    return Stream.of(
            Stream.of(ShelfGroup.ALL),
            Arrays.stream(PresetUse.values()).map(ShelfGroup::of),
            Stream.of(ShelfGroup.OWN))
        .flatMap(part -> part)
        .toList();
  }

  /** Places what is selected on the selected lamps, from the playhead on. */
  public void place() {
    selected
        .get()
        .ifPresent(
            entry -> {
              boolean placed =
                  commands.place(entry.placeable(), lamps(), playheadMs(), Optional.empty());
              if (!placed) {
                say();
              }
            });
  }

  /** Gives the selected cues what is selected as their pattern. */
  public void replace() {
    selected.get().ifPresent(entry -> commands.replacePattern(entry.placeable()));
  }

  /** Saves the pattern of the selected cue as a preset of the project. */
  public void saveInProject(String name) {
    save(ShelfEntry.Source.PROJECT, name);
  }

  /** Saves the pattern of the selected cue for every project. */
  public void saveForAll(String name) {
    save(ShelfEntry.Source.USER, name);
  }

  /** Gives the selected preset of the builder's own another name. */
  public void rename(String name) {
    String to = name.strip();
    ownSelection()
        .filter(entry -> !to.isEmpty() && !entry.name().equals(to))
        .ifPresent(
            entry ->
                change(
                    entry.source(),
                    "edit.rename",
                    entry.name(),
                    list -> PresetEdits.rename(list, entry.name(), to)));
  }

  /** Takes the selected preset of the builder's own away. */
  public void delete() {
    ownSelection()
        .ifPresent(
            entry ->
                change(
                    entry.source(),
                    "edit.delete",
                    entry.name(),
                    list -> PresetEdits.remove(list, entry.name())));
  }

  /** A name for a preset of the selected cue; empty if none is selected. */
  public String suggestedName() {
    return bench
        .cue()
        .map(
            cue ->
                KINDS.stream()
                    .filter(kind -> kind.name().equals(cue.pattern().kind()))
                    .findFirst()
                    .orElseThrow()
                    .title())
        .map(this::free)
        .orElse("");
  }

  private String free(String title) {
    List<String> taken = all().stream().filter(ShelfEntry::own).map(ShelfEntry::name).toList();
    String name = title;
    for (int n = 2; taken.contains(name); n++) {
      name = title + " " + n;
    }
    return name;
  }

  private Optional<Preset> fromCue(String name) {
    String plain = name.strip();
    Optional<Cue> cue = bench.cue();
    return plain.isEmpty() ? Optional.empty() : cue.map(c -> Preset.of(plain, c.pattern()));
  }

  private Optional<ShelfEntry> ownSelection() {
    return selected.get().filter(ShelfEntry::own);
  }

  private void save(ShelfEntry.Source where, String name) {
    fromCue(name)
        .ifPresent(
            preset -> change(where, "edit.save", name, list -> PresetEdits.save(list, preset)));
  }

  // Of the project as an edit that can be undone; the user's are in a file of their own.
  private void change(
      ShelfEntry.Source where, String key, String name, UnaryOperator<List<Preset>> change) {
    if (where == ShelfEntry.Source.PROJECT) {
      bench.apply(
          Edit.of(
              texts.get(key, name), (Project p) -> PresetEdits.in(p, change.apply(p.presets()))));
    } else {
      users.change(change);
    }
  }

  private List<String> lamps() {
    return List.copyOf(bench.selection().lamps());
  }

  private BigDecimal playheadMs() {
    return commands.playheadMs();
  }

  private List<ShelfEntry> all() {
    List<ShelfEntry> all = new ArrayList<>(KINDS);
    all.addAll(PROGRAM);
    all.addAll(own());
    return all;
  }

  private List<ShelfEntry> own() {
    return Stream.concat(
            bench.project().presets().stream()
                .map(preset -> ShelfEntry.of(ShelfEntry.Source.PROJECT, preset)),
            users.presetsProperty().get().stream()
                .map(preset -> ShelfEntry.of(ShelfEntry.Source.USER, preset)))
        .toList();
  }

  private void fill() {
    List<ShelfCard> filled = new ArrayList<>();
    for (ShelfEntry kind : KINDS) {
      List<ShelfEntry> presets =
          PROGRAM.stream()
              .filter(entry -> entry.pattern().kind().equals(kind.name()))
              .filter(this::shows)
              .toList();
      Optional<ShelfEntry> pattern =
          Optional.of(kind).filter(k -> shows(k) || (!presets.isEmpty() && !group.get().own()));
      if (pattern.isPresent()) {
        filled.add(new ShelfCard(kind.title(), fields(kind), pattern, presets));
      }
    }
    List<ShelfEntry> own = own().stream().filter(this::shows).toList();
    if (!own.isEmpty()) {
      filled.add(new ShelfCard(texts.get("own"), texts.get("own.hint"), Optional.empty(), own));
    }
    cards.set(List.copyOf(filled));
    render();
    List<ShelfEntry> now = entries();
    if (selected.get().filter(now::contains).isEmpty()) {
      selected.set(now.stream().findFirst());
    }
  }

  // What is in sight comes first. A shelf that nobody has looked at costs nothing.
  private void render() {
    if (lookedAt) {
      lights.request(
          Stream.concat(entries().stream(), all().stream()).map(ShelfEntry::pattern).toList());
    }
  }

  private boolean shows(ShelfEntry entry) {
    return group.get().holds(entry) && entry.matches(query.get());
  }

  private static String fields(ShelfEntry kind) {
    Texts names = Texts.of("settings");
    List<String> all =
        Stream.concat(
                PatternSettings.of(kind.pattern()).stream().map(Setting::key),
                Stream.of("colour", "level"))
            .toList();
    return all.stream().limit(HINTS).map(names::get).collect(Collectors.joining(", "));
  }

  private void say() {
    List<String> lamps = lamps();
    if (bench.scene().isEmpty() || lamps.isEmpty()) {
      hint.set(texts.get("hint.none"));
      return;
    }
    String names =
        lamps.stream()
            .flatMap(id -> bench.project().rig().lamp(id).stream())
            .map(Titles::of)
            .limit(2)
            .collect(Collectors.joining(", "));
    String more = lamps.size() > 2 ? texts.get("hint.more", names, lamps.size() - 2) : names;
    hint.set(texts.get("hint", more, TimeAxis.label(playheadMs().doubleValue())));
  }

  @Override
  public void close() {
    lights.close();
  }
}
