package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.value.ObservableBooleanValue;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.LampCueEdits;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.scene.Scene;

/** What is done to the cues of the selected lamps in one step, from the menu. */
public final class LampCueCommands {
  private static final List<Integer> STEPS_MS = List.of(20, 40, 60, 100, 200, 500);

  private final Texts texts = Texts.of("ribbons");
  private final Bench bench;
  private final Dialogs dialogs;

  public LampCueCommands(Bench bench, Dialogs dialogs) {
    this.bench = bench;
    this.dialogs = dialogs;
  }

  /** All of them. */
  public List<Command> commands() {
    Command.InMenu cues = new Command.InMenu(CommandMenu.CUES, 4);
    ObservableBooleanValue several = atLeast(2);
    return List.of(
        Command.of("ribbons.act.spreadPhases", cues, this::spreadPhases)
            .when(several)
            .withShortcut("Shortcut+Shift+F"),
        Command.of("ribbons.act.stagger", cues, this::stagger)
            .when(several)
            .withShortcut("Shortcut+Shift+G"),
        Command.of("ribbons.act.mirror", cues, this::mirror)
            .when(atLeast(1))
            .withShortcut("Shortcut+Shift+M"),
        Command.of("ribbons.act.copyToLamps", cues, this::copyToLamps).when(several),
        Command.of("ribbons.act.copyToScene", cues, this::copyToScene).when(atLeast(1)));
  }

  private BooleanBinding atLeast(int lamps) {
    return Bindings.createBooleanBinding(
        () -> bench.selection().lamps().size() >= lamps && bench.scene().isPresent(),
        bench.selectionProperty());
  }

  /** Spreads the phases of the selected lamps evenly, in the order in which they were selected. */
  public void spreadPhases() {
    inScene("edit.spreadPhases", scene -> LampCueEdits.spreadPhases(scene, lamps()));
  }

  /** Lets each selected lamp start later than the one before, by a step that is asked for. */
  public void stagger() {
    List<String> answers = new ArrayList<>();
    STEPS_MS.forEach(ms -> answers.add(texts.get("stagger.ms", Integer.toString(ms))));
    answers.add(texts.get("answer.cancel"));
    int answer = dialogs.choose(texts.get("stagger.title"), texts.get("stagger.text"), answers);
    if (answer < STEPS_MS.size()) {
      BigDecimal step = BigDecimal.valueOf(STEPS_MS.get(answer));
      inScene("edit.stagger", scene -> LampCueEdits.stagger(scene, lamps(), step));
    }
  }

  /** Mirrors the cues over the selected lamps. */
  public void mirror() {
    inScene("edit.mirror", scene -> LampCueEdits.mirror(scene, lamps()));
  }

  /** Gives the selected lamps the cues of the one selected first, in place of their own. */
  public void copyToLamps() {
    List<String> lamps = lamps();
    if (lamps.size() > 1) {
      inScene(
          "edit.copyToLamps",
          scene -> LampCueEdits.copyToLamps(scene, lamps.get(0), lamps.subList(1, lamps.size())));
    }
  }

  /** Copies the cues of the selected lamps to another scene, or to all others. */
  public void copyToScene() {
    Optional<Scene> from = bench.scene();
    List<String> others =
        bench.project().scenes().stream()
            .map(Scene::id)
            .filter(id -> from.isPresent() && !id.equals(from.get().id()))
            .toList();
    if (others.isEmpty()) {
      dialogs.tell(texts.get("copyToScene.title"), texts.get("copyToScene.none"));
      return;
    }
    List<String> answers = new ArrayList<>();
    others.forEach(id -> answers.add(SafeText.text(id, SafeText.MAX_NAME)));
    answers.add(texts.get("copyToScene.all"));
    answers.add(texts.get("answer.cancel"));
    int answer =
        dialogs.choose(texts.get("copyToScene.title"), texts.get("copyToScene.text"), answers);
    if (answer > others.size()) {
      return;
    }
    List<String> to = answer == others.size() ? others : List.of(others.get(answer));
    bench.apply(
        Edit.of(
            texts.get("edit.copyToScene"),
            project -> {
              var changed = project;
              for (String id : to) {
                changed =
                    Projects.inScene(
                        changed, id, scene -> LampCueEdits.copyToScene(from.get(), scene, lamps()));
              }
              return changed;
            }));
  }

  private List<String> lamps() {
    return List.copyOf(bench.selection().lamps());
  }

  // Tracks may be others then, so no cue stays selected.
  private void inScene(String key, UnaryOperator<Scene> change) {
    if (bench.applyToScene(texts.get(key), Optional.empty(), change)) {
      bench.select(bench.selection().withCues(List.of()));
    }
  }
}
