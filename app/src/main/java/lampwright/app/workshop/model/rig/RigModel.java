package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.PixelTypeSettings;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.RigEdits;
import lampwright.app.workshop.edit.RigSettings;
import lampwright.app.workshop.edit.Setting;
import lampwright.app.workshop.model.Asker;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Sheet;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.SlotMaker;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.project.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.scene.Scene;

/** The rig editor: which part is chosen, its sheet, and what can be done. */
public final class RigModel {
  private record Shape(Class<?> part, String id, String variant) {}

  private final Texts texts = Texts.of("rig");
  private final Texts names = Texts.of("settings");
  private final Bench bench;
  private final Asker asker;
  private final ObjectProperty<RigPart> chosen = new SimpleObjectProperty<>(new RigPart.Supply());
  private final ObjectProperty<Set<Integer>> marked = new SimpleObjectProperty<>(Set.of());
  private final ReadOnlyObjectWrapper<Optional<Sheet>> sheet =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  public RigModel(Bench bench, Asker asker) {
    this.bench = bench;
    this.asker = asker;
    chosen.addListener(
        (of, before, now) -> {
          if (!before.equals(now)) {
            marked.set(Set.of());
          }
          look();
        });
    bench.projectProperty().addListener((of, before, now) -> look());
    bench
        .selectionProperty()
        .addListener(
            (of, before, now) -> {
              if (!before.lamp().equals(now.lamp())) {
                now.lamp().ifPresent(lamp -> chosen.set(new RigPart.OfLamp(lamp)));
              }
            });
    look();
  }

  public Bench bench() {
    return bench;
  }

  /** The part whose sheet is shown. */
  public ObjectProperty<RigPart> chosenProperty() {
    return chosen;
  }

  /** The marked pixels of the chosen chain. */
  public ObjectProperty<Set<Integer>> markedProperty() {
    return marked;
  }

  /** The values of the chosen part. */
  public ReadOnlyObjectProperty<Optional<Sheet>> sheetProperty() {
    return sheet.getReadOnlyProperty();
  }

  /** All parts in order. */
  public List<RigPart> parts() {
    Project project = bench.project();
    List<RigPart> parts = new ArrayList<>();
    parts.add(new RigPart.Supply());
    project.rig().chains().forEach(c -> parts.add(new RigPart.OfChain(c.id())));
    project.rig().outputs().forEach(o -> parts.add(new RigPart.OfOutput(o.id())));
    project.rig().lamps().forEach(l -> parts.add(new RigPart.OfLamp(l.id())));
    project.pixelTypes().forEach(t -> parts.add(new RigPart.OfType(t.id())));
    project.scenes().forEach(s -> parts.add(new RigPart.OfScene(s.id())));
    return parts;
  }

  /** A part's name in the list. */
  public String title(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return texts.get("part.chain", p.id(), chain(p.id()).map(c -> c.type().id()).orElse(""));
    } else if (part instanceof RigPart.OfOutput p) {
      return texts.get("part.output", p.id());
    } else if (part instanceof RigPart.OfLamp p) {
      return texts.get(
          "part.lamp", bench.project().rig().lamp(p.id()).map(Lamp::title).orElse(p.id()));
    } else if (part instanceof RigPart.OfType p) {
      return texts.get("part.type", p.id());
    } else if (part instanceof RigPart.OfScene p) {
      return texts.get("part.scene", p.id());
    }
    return texts.get("part.supply");
  }

  /** What is worth knowing about the chosen part: sources, cautions; several lines. */
  public String notes() {
    RigPart part = chosen.get();
    if (part instanceof RigPart.OfChain p && chain(p.id()).isPresent()) {
      Chain chain = chain(p.id()).get();
      String sources =
          BuiltInPixelTypes.numbers(chain.type().id()).stream()
              .map(n -> n.source() + ", " + n.document())
              .distinct()
              .limit(3)
              .collect(Collectors.joining("\n"));
      String free =
          texts.get(
              "notes.free",
              Integer.toString(RigEdits.free(bench.project().rig(), chain).size()),
              Integer.toString(chain.pixels()));
      return free + (sources.isEmpty() ? "" : "\n" + texts.get("notes.sources", sources));
    }
    return part instanceof RigPart.Supply ? texts.get("notes.supply") : "";
  }

  /** Adds a chain and shows it. */
  public void addChain() {
    if (apply("edit.addChain", RigEdits::addChain)) {
      List<Chain> chains = bench.project().rig().chains();
      chosen.set(new RigPart.OfChain(chains.get(chains.size() - 1).id()));
    }
  }

  /** Adds a driver output and shows it. */
  public void addOutput() {
    if (apply("edit.addOutput", RigEdits::addOutput)) {
      List<DriverOutput> outputs = bench.project().rig().outputs();
      chosen.set(new RigPart.OfOutput(outputs.get(outputs.size() - 1).id()));
    }
  }

  /** Adds a pixel type of one's own, as the chosen chain has it, and shows it. */
  public void addType() {
    PixelType of = testable().map(Chain::type).orElseGet(() -> BuiltInPixelTypes.all().get(0));
    if (apply("edit.addType", p -> RigEdits.addType(p, of))) {
      List<PixelType> types = bench.project().pixelTypes();
      chosen.set(new RigPart.OfType(types.get(types.size() - 1).id()));
    }
  }

  /** Adds an empty scene and puts it on the bench. */
  public void addScene() {
    String id = Projects.freeId("scene", bench.project().scenes().stream().map(Scene::id).toList());
    boolean taken =
        apply(
            "edit.addScene",
            p -> p.withScenes(appended(p.scenes(), Projects.emptyScene(id, 4000))));
    if (taken) {
      bench.select(bench.selection().withScene(id));
      chosen.set(new RigPart.OfScene(id));
    }
  }

  /** Adds a copy of the scene on the bench and puts it there. */
  public void copyScene() {
    bench
        .scene()
        .ifPresent(
            scene -> {
              String id =
                  Projects.freeId(
                      scene.id().length() > 34 ? "scene" : scene.id(),
                      bench.project().scenes().stream().map(Scene::id).toList());
              if (apply(
                  "edit.copyScene", p -> p.withScenes(appended(p.scenes(), scene.withId(id))))) {
                bench.select(bench.selection().withScene(id));
              }
            });
  }

  /** Makes a lamp of the marked pixels that are free, or of all that are if none is marked. */
  public void makeLamp() {
    RigPart part = chosen.get();
    if (part instanceof RigPart.OfOutput output) {
      lampOf(p -> RigEdits.addLampOfOutput(p, output.id()));
      return;
    }
    Optional<Chain> chain = part instanceof RigPart.OfChain c ? chain(c.id()) : Optional.empty();
    if (chain.isEmpty()) {
      return;
    }
    Set<Integer> free = RigEdits.free(bench.project().rig(), chain.get());
    Set<Integer> pixels = new TreeSet<>(marked.get().isEmpty() ? free : marked.get());
    pixels.retainAll(free);
    if (!pixels.isEmpty()) {
      lampOf(p -> RigEdits.addLamp(p, chain.get().id(), pixels));
    }
  }

  /** Makes a lamp of each free pixel that is marked, or of each that is free if none is marked. */
  public void makeLamps() {
    Optional<Chain> chain =
        chosen.get() instanceof RigPart.OfChain c ? chain(c.id()) : Optional.empty();
    chain.ifPresent(
        c -> {
          Set<Integer> free = RigEdits.free(bench.project().rig(), c);
          Set<Integer> pixels = new TreeSet<>(marked.get().isEmpty() ? free : marked.get());
          pixels.retainAll(free);
          if (pixels.isEmpty()) {
            return;
          }
          apply(
              "edit.addLamps",
              p -> {
                Project with = p;
                for (int pixel : pixels) {
                  with = RigEdits.addLamp(with, c.id(), Set.of(pixel));
                }
                return with;
              });
          marked.set(Set.of());
        });
  }

  private void lampOf(UnaryOperator<Project> change) {
    if (apply("edit.addLamp", change)) {
      List<Lamp> lamps = bench.project().rig().lamps();
      String id = lamps.get(lamps.size() - 1).id();
      marked.set(Set.of());
      bench.select(bench.selection().withLamps(List.of(id)));
      chosen.set(new RigPart.OfLamp(id));
    }
  }

  /** Whether there is a chain to test: the chosen one, or the only one. */
  public Optional<Chain> testable() {
    List<Chain> chains = bench.project().rig().chains();
    return chosen.get() instanceof RigPart.OfChain c
        ? chain(c.id())
        : chains.size() == 1 ? Optional.of(chains.get(0)) : Optional.empty();
  }

  /** Adds a bench test of the chosen chain and puts it on the bench. */
  public void benchTest() {
    testable()
        .ifPresent(
            chain -> {
              if (apply("edit.benchTest", p -> RigEdits.benchTest(p, chain.id()))) {
                List<Scene> scenes = bench.project().scenes();
                bench.select(bench.selection().withScene(scenes.get(scenes.size() - 1).id()));
              }
            });
  }

  /** Removes the chosen part, and what rests on it. The name of the step says what went. */
  public void remove() {
    RigPart part = chosen.get();
    Project project = bench.project();
    UnaryOperator<Project> change;
    if (part instanceof RigPart.OfChain p) {
      change = q -> RigEdits.removeChain(q, p.id());
    } else if (part instanceof RigPart.OfOutput p) {
      change = q -> RigEdits.removeOutput(q, p.id());
    } else if (part instanceof RigPart.OfLamp p) {
      change = q -> RigEdits.removeLamp(q, p.id());
    } else if (part instanceof RigPart.OfType p) {
      change =
          q ->
              q.withPixelTypes(
                  q.pixelTypes().stream().filter(t -> !t.id().equals(p.id())).toList());
    } else if (part instanceof RigPart.OfScene p) {
      change = q -> q.withScenes(q.scenes().stream().filter(s -> !s.id().equals(p.id())).toList());
    } else {
      return;
    }
    int lamps = project.rig().lamps().size();
    int with = lamps;
    try {
      with = lamps - change.apply(project).rig().lamps().size();
    } catch (lampwright.engine.light.InvalidModelException last) {
      // The model says why, below.
      with = 0;
    }
    String name =
        with > 0 && !(part instanceof RigPart.OfLamp)
            ? texts.get("edit.remove.with", title(part), Integer.toString(with))
            : texts.get("edit.remove", title(part));
    if (bench.apply(Edit.of(name, change))) {
      chosen.set(new RigPart.Supply());
    } else {
      asker.tell(texts.get("remove.title"), bench.refusalProperty().get().orElse(""));
    }
  }

  private Optional<Chain> chain(String id) {
    return bench.project().rig().chains().stream().filter(c -> c.id().equals(id)).findFirst();
  }

  private boolean apply(String name, UnaryOperator<Project> change) {
    return bench.apply(Edit.of(texts.get(name), change));
  }

  private static <T> List<T> appended(List<T> list, T last) {
    List<T> longer = new ArrayList<>(list);
    longer.add(last);
    return longer;
  }

  private void look() {
    RigPart part = chosen.get();
    if (!parts().contains(part)) {
      chosen.set(new RigPart.Supply());
      return;
    }
    Shape shape = new Shape(part.getClass(), id(part), variant(part));
    Optional<Sheet> shown = sheet.get();
    if (shown.map(Sheet::shape).filter(shape::equals).isPresent()) {
      shown.orElseThrow().refresh();
    } else {
      sheet.set(Optional.of(new Sheet(shape, title(part), groups(part))));
    }
  }

  private static String id(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return p.id();
    } else if (part instanceof RigPart.OfOutput p) {
      return p.id();
    } else if (part instanceof RigPart.OfLamp p) {
      return p.id();
    } else if (part instanceof RigPart.OfType p) {
      return p.id();
    }
    return part instanceof RigPart.OfScene p ? p.id() : "";
  }

  // A chain of another type has other orders to choose from; a lamp may be of pixels or an output.
  private String variant(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return chain(p.id()).map(c -> Integer.toString(c.type().order().size())).orElse("");
    }
    if (part instanceof RigPart.OfLamp p) {
      return bench
          .project()
          .rig()
          .lamp(p.id())
          .map(l -> l.fitting().getClass().getSimpleName())
          .orElse("");
    }
    return "";
  }

  private List<Sheet.Group> groups(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return chainGroups(p.id());
    } else if (part instanceof RigPart.OfOutput p) {
      return outputGroups(p.id());
    } else if (part instanceof RigPart.OfLamp p) {
      return lampGroups(p.id());
    } else if (part instanceof RigPart.OfType p) {
      return typeGroups(p.id());
    } else if (part instanceof RigPart.OfScene p) {
      return sceneGroups(p.id());
    }
    SlotMaker<lampwright.engine.rig.Rig> rig =
        new SlotMaker<>(
            bench,
            q -> Optional.of(q.rig()),
            (q, change) -> q.withRig(change.apply(q.rig())),
            this::editName);
    Slot<String> name =
        new SlotMaker<Project>(bench, Optional::of, (q, change) -> change.apply(q), this::editName)
            .slot(
                new Setting<>(
                    "project.name", new Kind.Text(200), Project::name, Project::withName));
    return List.of(
        new Sheet.Group("project", List.of(name)),
        group("supply", rig, RigSettings.supply()),
        group("controller", rig, RigSettings.controller()),
        group("battery", rig, RigSettings.battery()),
        group("feed", rig, RigSettings.feed()),
        group("rigLight", rig, RigSettings.light()));
  }

  private List<Sheet.Group> chainGroups(String id) {
    SlotMaker<Chain> slots =
        new SlotMaker<>(
            bench,
            q -> q.rig().chains().stream().filter(c -> c.id().equals(id)).findFirst(),
            (q, change) -> RigEdits.inChain(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(idSlot(id, "chain.id", RigEdits::renameChain, RigPart.OfChain::new));
    for (Setting<Chain, ?> setting :
        RigSettings.chain(bench.project().pixelTypes(), chain(id).orElseThrow().type())) {
      all.add(setting.key().equals("pixels") ? pixelsSlot(id) : slots.slot(setting));
    }
    return List.of(new Sheet.Group("chain", all));
  }

  // Lamps may lose pixels; that is asked first, unless a hand is still dragging.
  private Slot<Long> pixelsSlot(String id) {
    return new Slot<>(
        "pixels",
        new Kind.Whole("", 1, Chain.MAX_PIXELS),
        (long) chain(id).orElseThrow().pixels(),
        () -> chain(id).map(c -> (long) c.pixels()),
        (value, gesture) -> {
          int pixels = Math.toIntExact(value);
          List<Lamp> cut = RigEdits.cutBy(bench.project().rig(), id, pixels);
          if (!cut.isEmpty()) {
            String lamps = cut.stream().map(Lamp::title).collect(Collectors.joining(", "));
            int answer =
                asker.choose(
                    texts.get("cut.title"),
                    texts.get("cut.text", value.toString(), lamps),
                    List.of(texts.get("cut.yes"), texts.get("cut.no")));
            if (answer != 0) {
              return Optional.of(texts.get("cut.left", lamps));
            }
          }
          Edit edit = new Edit(editName("pixels"), q -> RigEdits.setPixels(q, id, pixels), gesture);
          return bench.apply(edit) ? Optional.empty() : bench.refusalProperty().get();
        });
  }

  private List<Sheet.Group> outputGroups(String id) {
    SlotMaker<DriverOutput> slots =
        new SlotMaker<>(
            bench,
            q -> q.rig().outputs().stream().filter(o -> o.id().equals(id)).findFirst(),
            (q, change) -> RigEdits.inOutput(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(idSlot(id, "output.id", RigEdits::renameOutput, RigPart.OfOutput::new));
    RigSettings.output().forEach(setting -> all.add(slots.slot(setting)));
    return List.of(new Sheet.Group("output", all));
  }

  private List<Sheet.Group> lampGroups(String id) {
    SlotMaker<Lamp> slots =
        new SlotMaker<>(
            bench,
            q -> q.rig().lamp(id),
            (q, change) -> RigEdits.inLamp(q, id, change),
            this::editName);
    Lamp lamp = bench.project().rig().lamp(id).orElseThrow();
    List<Slot<?>> all = new ArrayList<>();
    all.add(idSlot(id, "lamp.id", RigEdits::renameLamp, RigPart.OfLamp::new));
    RigSettings.lamp(lamp).forEach(setting -> all.add(slots.slot(setting)));
    List<Slot<?>> place = new ArrayList<>();
    RigSettings.place().forEach(setting -> place.add(slots.slot(setting)));
    return List.of(new Sheet.Group("lamp", all), new Sheet.Group("place", place));
  }

  private List<Sheet.Group> typeGroups(String id) {
    Function<Project, Optional<PixelType>> find =
        q -> q.pixelTypes().stream().filter(t -> t.id().equals(id)).findFirst();
    SlotMaker<PixelType> slots =
        new SlotMaker<>(bench, find, (q, change) -> RigEdits.inType(q, id, change), this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(
        idSlot(
            id,
            "type.id",
            (q, from, to) -> RigEdits.inType(q, from, t -> PixelTypeSettings.withId(t, to)),
            RigPart.OfType::new));
    List<Slot<?>> line = new ArrayList<>();
    for (Setting<PixelType, ?> setting :
        PixelTypeSettings.of(find.apply(bench.project()).orElseThrow())) {
      (setting.key().startsWith("line.") ? line : all).add(slots.slot(setting));
    }
    return List.of(new Sheet.Group("type", all), new Sheet.Group("line", line));
  }

  private List<Sheet.Group> sceneGroups(String id) {
    SlotMaker<Scene> slots =
        new SlotMaker<>(
            bench,
            q -> q.scene(id),
            (q, change) -> Projects.inScene(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(
        idSlot(
            id,
            "scene.id",
            (q, from, to) -> Projects.inScene(q, from, s -> s.withId(to)),
            RigPart.OfScene::new));
    RigSettings.scene().forEach(setting -> all.add(slots.slot(setting)));
    return List.of(new Sheet.Group("scene", all));
  }

  private <R> Sheet.Group group(String key, SlotMaker<R> maker, List<Setting<R, ?>> settings) {
    List<Slot<?>> slots = new ArrayList<>();
    settings.forEach(setting -> slots.add(maker.slot(setting)));
    return new Sheet.Group(key, slots);
  }

  /** Renames a part. */
  @FunctionalInterface
  private interface Rename {
    Project in(Project project, String from, String to);
  }

  private Slot<String> idSlot(
      String id, String key, Rename rename, Function<String, RigPart> part) {
    BiFunction<Project, String, Project> to = (q, wanted) -> rename.in(q, id, wanted);
    return new Slot<>(
        key,
        new Kind.Text(40),
        id,
        () -> Optional.of(id),
        (value, gesture) -> {
          boolean lampChosen = bench.selection().lamps().contains(id);
          boolean onBench = bench.selection().scene().equals(Optional.of(id));
          Edit edit = new Edit(editName(key), q -> to.apply(q, value), gesture);
          if (!bench.apply(edit)) {
            return bench.refusalProperty().get();
          }
          RigPart now = part.apply(value);
          if (now instanceof RigPart.OfLamp && lampChosen) {
            bench.select(bench.selection().withLamps(List.of(value)));
          }
          if (now instanceof RigPart.OfScene && onBench) {
            bench.select(bench.selection().withScene(value));
          }
          chosen.set(now);
          return Optional.empty();
        });
  }

  private String editName(String key) {
    return texts.get("edit.set", names.get(key).toLowerCase(Locale.ROOT));
  }

  /** Which lamp has a pixel. */
  public Optional<Lamp> owner(String chain, int pixel) {
    return bench.project().rig().lamps().stream()
        .filter(
            l ->
                l.fitting() instanceof Fitting.Pixels f
                    && f.runs().stream()
                        .anyMatch(
                            r -> r.chain().equals(chain) && r.from() <= pixel && pixel < r.end()))
        .findFirst();
  }
}
