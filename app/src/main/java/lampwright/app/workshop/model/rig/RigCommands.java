package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import lampwright.app.workshop.edit.ChainEdits;
import lampwright.app.workshop.edit.ChainWalk;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.InputEdits;
import lampwright.app.workshop.edit.LampEdits;
import lampwright.app.workshop.edit.OutputEdits;
import lampwright.app.workshop.edit.PixelTypeEdits;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.SituationEdits;
import lampwright.app.workshop.edit.WiringEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/** All that is done to parts of the rig, and to scenes, from the menu and by buttons. */
public final class RigCommands {
  private final Texts texts = Texts.of("rig");
  private final RigModel model;
  private final Bench bench;
  private final Dialogs dialogs;

  public RigCommands(RigModel model, Dialogs dialogs) {
    this.model = model;
    this.bench = model.bench();
    this.dialogs = dialogs;
  }

  /** Adds a chain and shows it. */
  public void addChain() {
    if (apply("edit.addChain", ChainEdits::add)) {
      List<Chain> chains = bench.project().rig().chains();
      model.chosenProperty().set(new RigPart.OfChain(chains.get(chains.size() - 1).id()));
    }
  }

  /** Adds a driver output and shows it. */
  public void addOutput() {
    if (apply("edit.addOutput", OutputEdits::add)) {
      List<DriverOutput> outputs = bench.project().rig().outputs();
      model.chosenProperty().set(new RigPart.OfOutput(outputs.get(outputs.size() - 1).id()));
    }
  }

  /** Adds an input and shows it. */
  public void addInput() {
    if (apply("edit.addInput", InputEdits::add)) {
      List<Input> inputs = bench.project().rig().inputs();
      model.chosenProperty().set(new RigPart.OfInput(inputs.get(inputs.size() - 1).id()));
    }
  }

  /** Adds a pixel type of one's own, as the selected chain has it, and shows it. */
  public void addType() {
    PixelType of = testable().map(Chain::type).orElseGet(() -> BuiltInPixelTypes.all().get(0));
    if (apply("edit.addType", p -> PixelTypeEdits.add(p, of))) {
      List<PixelType> types = bench.project().pixelTypes();
      model.chosenProperty().set(new RigPart.OfType(types.get(types.size() - 1).id()));
    }
  }

  /** Adds an empty scene and puts it on the bench. */
  public void addScene() {
    String id = Projects.freeId("scene", bench.project().scenes().stream().map(Scene::id).toList());
    boolean taken =
        apply(
            "edit.addScene",
            p -> Project.SCENES.with(p, appended(p.scenes(), Projects.emptyScene(id, 4000))));
    if (taken) {
      bench.select(bench.selection().withScene(id));
      model.chosenProperty().set(new RigPart.OfScene(id));
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
                  "edit.copyScene",
                  p -> Project.SCENES.with(p, appended(p.scenes(), Scene.ID.with(scene, id))))) {
                bench.select(bench.selection().withScene(id));
              }
            });
  }

  /** Makes a lamp of the marked pixels that are free, or of all that are if none is marked. */
  public void makeLamp() {
    RigPart part = model.chosenProperty().get();
    if (part instanceof RigPart.OfOutput output) {
      lampOf(p -> LampEdits.addOfOutput(p, output.id()));
      return;
    }
    Optional<Chain> chain =
        part instanceof RigPart.OfChain c ? model.chain(c.id()) : Optional.empty();
    if (chain.isEmpty()) {
      return;
    }
    Set<Integer> free = ChainEdits.free(bench.project().rig(), chain.get());
    Set<Integer> pixels =
        new TreeSet<>(model.markedProperty().get().isEmpty() ? free : model.markedProperty().get());
    pixels.retainAll(free);
    if (!pixels.isEmpty()) {
      lampOf(p -> LampEdits.addOfPixels(p, chain.get().id(), pixels));
    }
  }

  /** Makes a lamp of each free pixel that is marked, or of each that is free if none is marked. */
  public void makeLamps() {
    Optional<Chain> chain =
        model.chosenProperty().get() instanceof RigPart.OfChain c
            ? model.chain(c.id())
            : Optional.empty();
    chain.ifPresent(
        c -> {
          Set<Integer> free = ChainEdits.free(bench.project().rig(), c);
          Set<Integer> pixels =
              new TreeSet<>(
                  model.markedProperty().get().isEmpty() ? free : model.markedProperty().get());
          pixels.retainAll(free);
          if (pixels.isEmpty()) {
            return;
          }
          apply(
              "edit.addLamps",
              p -> {
                Project with = p;
                for (int pixel : pixels) {
                  with = LampEdits.addOfPixels(with, c.id(), Set.of(pixel));
                }
                return with;
              });
          model.markedProperty().set(Set.of());
        });
  }

  /**
   * Moves the lamp that has a pixel along its chain to where another pixel is, as a step of a drag.
   *
   * @param from the project before the drag
   */
  public void moveAlong(Project from, String chain, int pixel, int to, Object gesture) {
    bench.apply(
        new Edit(
            texts.get("edit.wire"),
            p -> WiringEdits.move(from, chain, pixel, to),
            Optional.of(gesture)));
  }

  /**
   * Moves the lamp that has a pixel past its neighbour on the chain.
   *
   * @param by -1 towards the data input, 1 away from it
   * @return where that pixel is now
   */
  public int stepAlong(String chain, int pixel, int by) {
    Rig rig = bench.project().rig();
    Optional<Chain> on = model.chain(chain);
    Optional<WiringEdits.Piece> moved = on.flatMap(c -> WiringEdits.piece(rig, c, pixel));
    if (moved.isEmpty()) {
      return pixel;
    }
    int neighbour = by < 0 ? moved.get().from() - 1 : moved.get().end();
    Optional<WiringEdits.Piece> past = on.flatMap(c -> WiringEdits.piece(rig, c, neighbour));
    if (past.isEmpty()) {
      return pixel;
    }
    apply("edit.wire", p -> WiringEdits.move(p, chain, pixel, neighbour));
    return pixel + by * past.get().length();
  }

  /** Moves the selected lamp past its neighbour on its chain. */
  public void stepLamp(int by) {
    bench
        .lamp()
        .map(Lamp::fitting)
        .filter(Fitting.Pixels.class::isInstance)
        .map(fitting -> ((Fitting.Pixels) fitting).runs().get(0))
        .ifPresent(run -> stepAlong(run.chain(), run.from(), by));
  }

  private void lampOf(UnaryOperator<Project> change) {
    if (apply("edit.addLamp", change)) {
      List<Lamp> lamps = bench.project().rig().lamps();
      String id = lamps.get(lamps.size() - 1).id();
      model.markedProperty().set(Set.of());
      bench.select(bench.selection().withLamps(List.of(id)));
      model.chosenProperty().set(new RigPart.OfLamp(id));
    }
  }

  /** Whether there is a chain to test: the selected one, or the only one. */
  public Optional<Chain> testable() {
    List<Chain> chains = bench.project().rig().chains();
    return model.chosenProperty().get() instanceof RigPart.OfChain c
        ? model.chain(c.id())
        : chains.size() == 1 ? Optional.of(chains.get(0)) : Optional.empty();
  }

  /** Adds a bench test of the selected chain and puts it on the bench. */
  public void benchTest() {
    testable()
        .ifPresent(
            chain -> {
              if (apply("edit.benchTest", p -> ChainWalk.add(p, chain.id()))) {
                List<Scene> scenes = bench.project().scenes();
                bench.select(bench.selection().withScene(scenes.get(scenes.size() - 1).id()));
              }
            });
  }

  /** Removes the selected part, and what rests on it. The name of the step says what went. */
  public void remove() {
    RigPart part = model.chosenProperty().get();
    Project project = bench.project();
    UnaryOperator<Project> change;
    if (part instanceof RigPart.OfChain p) {
      change = q -> ChainEdits.remove(q, p.id());
    } else if (part instanceof RigPart.OfOutput p) {
      change = q -> OutputEdits.remove(q, p.id());
    } else if (part instanceof RigPart.OfInput p) {
      change = q -> InputEdits.remove(q, p.id());
    } else if (part instanceof RigPart.OfLamp p) {
      change = q -> LampEdits.remove(q, p.id());
    } else if (part instanceof RigPart.OfType p) {
      change =
          q ->
              Project.PIXEL_TYPES.with(
                  q, q.pixelTypes().stream().filter(t -> !t.id().equals(p.id())).toList());
    } else if (part instanceof RigPart.OfScene p) {
      if (!mayClear(p.id())) {
        return;
      }
      change = q -> SituationEdits.withoutScene(q, p.id());
    } else {
      return;
    }
    int lamps = project.rig().lamps().size();
    int with = lamps;
    try {
      with = lamps - change.apply(project).rig().lamps().size();
    } catch (InvalidModelException last) {
      // The model says why, below.
      with = 0;
    }
    String name =
        with > 0 && !(part instanceof RigPart.OfLamp)
            ? texts.get("edit.remove.with", model.title(part), Integer.toString(with))
            : texts.get("edit.remove", model.title(part));
    if (bench.apply(Edit.of(name, change))) {
      model.chosenProperty().set(new RigPart.Supply());
    } else {
      dialogs.tell(texts.get("remove.title"), bench.refusalProperty().get().orElse(""));
    }
  }

  // A scene that situations show is taken from them first.
  private boolean mayClear(String scene) {
    List<String> showing = SituationEdits.showing(bench.project(), scene);
    return showing.isEmpty()
        || dialogs.choose(
                texts.get("clear.title"),
                texts.get("clear.text", scene, String.join(", ", showing)),
                List.of(texts.get("clear.yes"), texts.get("clear.no")))
            == 0;
  }

  private boolean apply(String name, UnaryOperator<Project> change) {
    return bench.apply(Edit.of(texts.get(name), change));
  }

  private static <T> List<T> appended(List<T> list, T last) {
    List<T> longer = new ArrayList<>(list);
    longer.add(last);
    return longer;
  }
}
