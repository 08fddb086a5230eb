package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import lampwright.app.workshop.edit.BatterySettings;
import lampwright.app.workshop.edit.ChainEdits;
import lampwright.app.workshop.edit.ChainSettings;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.FeedSettings;
import lampwright.app.workshop.edit.InputEdits;
import lampwright.app.workshop.edit.InputSettings;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.LampEdits;
import lampwright.app.workshop.edit.LampSettings;
import lampwright.app.workshop.edit.OutputEdits;
import lampwright.app.workshop.edit.OutputSettings;
import lampwright.app.workshop.edit.PixelTypeEdits;
import lampwright.app.workshop.edit.PixelTypeSettings;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.RigSettings;
import lampwright.app.workshop.edit.SceneSettings;
import lampwright.app.workshop.edit.Setting;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.SlotMaker;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/** Makes the forms of the rig's parts: which values each has, and how they are changed. */
final class RigForms {
  private record Structure(Class<?> part, String id, String variant) {}

  private final Texts texts = Texts.of("rig");
  private final Texts names = Texts.of("settings");
  private final Bench bench;
  private final Dialogs dialogs;
  private final Consumer<RigPart> choose;

  /**
   * @param choose shows a part under its new id
   */
  RigForms(Bench bench, Dialogs dialogs, Consumer<RigPart> choose) {
    this.bench = bench;
    this.dialogs = dialogs;
    this.choose = choose;
  }

  /** What {@link Form#structure} a part's form has now. */
  Object structure(RigPart part) {
    return new Structure(part.getClass(), id(part), variant(part));
  }

  /** The form of a part that the project has. */
  Form form(RigPart part, String title) {
    return new Form(structure(part), title, groups(part));
  }

  private static String id(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return p.id();
    } else if (part instanceof RigPart.OfOutput p) {
      return p.id();
    } else if (part instanceof RigPart.OfInput p) {
      return p.id();
    } else if (part instanceof RigPart.OfLamp p) {
      return p.id();
    } else if (part instanceof RigPart.OfType p) {
      return p.id();
    }
    return part instanceof RigPart.OfScene p ? p.id() : "";
  }

  // A chain of another type has other orders to choose from; a lamp may be of pixels or an output;
  // a type's times have one value or two.
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
    if (part instanceof RigPart.OfType p) {
      return type(bench.project(), p.id())
          .map(t -> PixelTypeSettings.of(t).stream().map(Setting::key).toList().toString())
          .orElse("");
    }
    return "";
  }

  private List<Form.Group> groups(RigPart part) {
    if (part instanceof RigPart.OfChain p) {
      return chainGroups(p.id());
    } else if (part instanceof RigPart.OfOutput p) {
      return outputGroups(p.id());
    } else if (part instanceof RigPart.OfInput p) {
      return inputGroups(p.id());
    } else if (part instanceof RigPart.OfLamp p) {
      return lampGroups(p.id());
    } else if (part instanceof RigPart.OfType p) {
      return typeGroups(p.id());
    } else if (part instanceof RigPart.OfScene p) {
      return sceneGroups(p.id());
    }
    SlotMaker<Rig> rig =
        new SlotMaker<>(
            bench,
            q -> Optional.of(q.rig()),
            (q, change) -> Project.RIG.with(q, change.apply(q.rig())),
            this::editName);
    Slot<String> name =
        new SlotMaker<Project>(bench, Optional::of, (q, change) -> change.apply(q), this::editName)
            .slot(
                new Setting<>(
                    "project.name", new Kind.Text(200), Project::name, Project.NAME::with));
    return List.of(
        new Form.Group("project", List.of(name)),
        group("supply", rig, RigSettings.supply()),
        group("controller", rig, RigSettings.controller()),
        group("battery", rig, BatterySettings.all()),
        group("feed", rig, FeedSettings.ofRig()),
        group("rigLight", rig, RigSettings.light()));
  }

  private List<Form.Group> chainGroups(String id) {
    SlotMaker<Chain> slots =
        new SlotMaker<>(
            bench,
            q -> q.rig().chains().stream().filter(c -> c.id().equals(id)).findFirst(),
            (q, change) -> ChainEdits.change(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    for (Setting<Chain, ?> setting :
        ChainSettings.of(bench.project().pixelTypes(), chain(id).orElseThrow().type())) {
      all.add(setting.key().equals("pixels") ? pixelsSlot(id) : slots.slot(setting));
    }
    all.add(idSlot(id, "chain.id", ChainEdits::rename, RigPart.OfChain::new));
    return List.of(new Form.Group("chain", all), group("chainFeed", slots, FeedSettings.ofChain()));
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
          List<Lamp> cut = ChainEdits.cutBy(bench.project().rig(), id, pixels);
          if (!cut.isEmpty()) {
            String lamps = cut.stream().map(Lamp::title).collect(Collectors.joining(", "));
            int answer =
                dialogs.choose(
                    texts.get("cut.title"),
                    texts.get("cut.text", value.toString(), lamps),
                    List.of(texts.get("cut.yes"), texts.get("cut.no")));
            if (answer != 0) {
              return Optional.of(texts.get("cut.left", lamps));
            }
          }
          Edit edit =
              new Edit(editName("pixels"), q -> ChainEdits.setPixels(q, id, pixels), gesture);
          return bench.apply(edit) ? Optional.empty() : bench.refusalProperty().get();
        });
  }

  private List<Form.Group> outputGroups(String id) {
    SlotMaker<DriverOutput> slots =
        new SlotMaker<>(
            bench,
            q -> q.rig().outputs().stream().filter(o -> o.id().equals(id)).findFirst(),
            (q, change) -> OutputEdits.change(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    OutputSettings.all().forEach(setting -> all.add(slots.slot(setting)));
    all.add(idSlot(id, "output.id", OutputEdits::rename, RigPart.OfOutput::new));
    return List.of(new Form.Group("output", all));
  }

  private List<Form.Group> inputGroups(String id) {
    SlotMaker<Input> slots =
        new SlotMaker<>(
            bench,
            q -> InputEdits.find(q, id),
            (q, change) -> InputEdits.change(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(idSlot(id, "input.id", InputEdits::rename, RigPart.OfInput::new));
    InputSettings.all().forEach(setting -> all.add(slots.slot(setting)));
    return List.of(new Form.Group("input", all));
  }

  private List<Form.Group> lampGroups(String id) {
    SlotMaker<Lamp> slots =
        new SlotMaker<>(
            bench,
            q -> q.rig().lamp(id),
            (q, change) -> LampEdits.change(q, id, change),
            this::editName);
    Lamp lamp = bench.project().rig().lamp(id).orElseThrow();
    List<Slot<?>> all = new ArrayList<>();
    LampSettings.of(lamp).forEach(setting -> all.add(slots.slot(setting)));
    all.add(idSlot(id, "lamp.id", LampEdits::rename, RigPart.OfLamp::new));
    List<Slot<?>> place = new ArrayList<>();
    LampSettings.place().forEach(setting -> place.add(slots.slot(setting)));
    return List.of(new Form.Group("lamp", all), new Form.Group("place", place));
  }

  private List<Form.Group> typeGroups(String id) {
    Function<Project, Optional<PixelType>> find = q -> type(q, id);
    SlotMaker<PixelType> slots =
        new SlotMaker<>(
            bench, find, (q, change) -> PixelTypeEdits.change(q, id, change), this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(
        idSlot(
            id,
            "type.id",
            (q, from, to) -> PixelTypeEdits.change(q, from, t -> PixelType.ID.with(t, to)),
            RigPart.OfType::new));
    List<Slot<?>> line = new ArrayList<>();
    for (Setting<PixelType, ?> setting :
        PixelTypeSettings.of(find.apply(bench.project()).orElseThrow())) {
      (setting.key().startsWith("line.") ? line : all).add(slots.slot(setting));
    }
    return List.of(new Form.Group("type", all), new Form.Group("line", line));
  }

  private List<Form.Group> sceneGroups(String id) {
    SlotMaker<Scene> slots =
        new SlotMaker<>(
            bench,
            q -> q.scene(id),
            (q, change) -> Projects.inScene(q, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(idSlot(id, "scene.id", Projects::withSceneId, RigPart.OfScene::new));
    SceneSettings.all().forEach(setting -> all.add(slots.slot(setting)));
    return List.of(new Form.Group("scene", all));
  }

  private <R> Form.Group group(String key, SlotMaker<R> maker, List<Setting<R, ?>> settings) {
    List<Slot<?>> slots = new ArrayList<>();
    settings.forEach(setting -> slots.add(maker.slot(setting)));
    return new Form.Group(key, slots);
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
          choose.accept(now);
          return Optional.empty();
        });
  }

  private String editName(String key) {
    return texts.get("edit.set", names.get(key));
  }

  private static Optional<PixelType> type(Project project, String id) {
    return project.pixelTypes().stream().filter(t -> t.id().equals(id)).findFirst();
  }

  private Optional<Chain> chain(String id) {
    return bench.project().rig().chains().stream().filter(c -> c.id().equals(id)).findFirst();
  }
}
