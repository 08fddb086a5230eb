package lampwright.app.workshop.model.sound;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.FileChoice;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.sound.SoundFile;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;

/** What is done to the guide sound of the scene on the bench. */
public final class GuideCommands {
  /** What a right click on it offers. */
  public static final List<String> ON_GUIDE =
      List.of("sound.act.mute", "sound.act.reset", "", "sound.act.set", "sound.act.remove");

  private final Texts texts = Texts.of("sound");
  private final Bench bench;
  private final GuideTrack track;
  private final FileChoice choice;

  public GuideCommands(Bench bench, GuideTrack track, FileChoice choice) {
    this.bench = bench;
    this.track = track;
    this.choice = choice;
  }

  /** All of them. */
  public List<Command> commands() {
    Command.InMenu play = new Command.InMenu(CommandMenu.PLAY, 4);
    ObservableBooleanValue there =
        Bindings.createBooleanBinding(
            () -> track.sound().isPresent(), bench.projectProperty(), bench.selectionProperty());
    return List.of(
        Command.of("sound.act.set", play, this::choose),
        Command.toggle("sound.act.mute", play, track.mutedProperty()).when(there).withShortcut("G"),
        Command.of("sound.act.reset", play, this::reset).when(there),
        Command.of("sound.act.remove", play, this::remove).when(there));
  }

  /** Asks for a file. */
  public void choose() {
    List<String> patterns = GuideSound.endings().stream().map(ending -> "*" + ending).toList();
    choice.choose(new FileChoice.Kind(texts, "file", patterns, SoundFile::isSound, this::take));
  }

  /** Takes another file; it begins where the one before began. */
  private void take(String file) {
    change(
        "edit.set",
        Optional.empty(),
        sound ->
            Optional.of(
                new GuideSound(file, sound.map(GuideSound::startMs).orElse(BigDecimal.ZERO))));
  }

  /** Lets it begin with the scene. */
  public void reset() {
    startAt(BigDecimal.ZERO, new Object());
    bench.endGesture();
  }

  /** Lets it begin at a time of the scene, as a step of a gesture. */
  public void startAt(BigDecimal ms, Object gesture) {
    change(
        "edit.move",
        Optional.of(gesture),
        sound -> sound.map(s -> GuideSound.START_MS.with(s, ms)));
  }

  /** Takes it out of the scene. */
  public void remove() {
    change("edit.remove", Optional.empty(), sound -> Optional.empty());
  }

  private void change(
      String name, Optional<Object> gesture, UnaryOperator<Optional<GuideSound>> change) {
    bench.applyToScene(
        texts.get(name),
        gesture,
        scene -> Scene.GUIDE_SOUND.with(scene, change.apply(scene.guideSound())));
  }
}
