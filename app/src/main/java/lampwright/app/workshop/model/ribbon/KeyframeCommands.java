package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableBooleanValue;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.scene.Cue;

/** What is done to the keyframes of the selected cue, and which of them is selected. */
public final class KeyframeCommands {
  private final RibbonsModel model;
  private final Bench bench;
  private final ReadOnlyObjectWrapper<Optional<Integer>> selected =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  KeyframeCommands(RibbonsModel model) {
    this.model = model;
    this.bench = model.bench();
    bench.watch(state -> state.selection().cue(), (before, now) -> select(Optional.empty()));
    // After an undo the one that was selected may be another, or none.
    bench.watch(
        state -> frames().map(f -> f.frames().size()),
        (before, now) -> selected.get().ifPresent(i -> select(Optional.of(i))));
  }

  /** All of them. */
  public List<Command> commands() {
    Command.InMenu cues = new Command.InMenu(CommandMenu.CUES, 5);
    ObservableBooleanValue any =
        Bindings.createBooleanBinding(
            () -> frames().isPresent(), bench.selectionProperty(), bench.projectProperty());
    ObservableBooleanValue several =
        Bindings.createBooleanBinding(
            () -> frames().filter(f -> f.frames().size() > 1).isPresent(),
            bench.selectionProperty(),
            bench.projectProperty());
    return List.of(
        Command.of("ribbons.act.keyframeAdd", cues, this::add).when(any).withShortcut("Shortcut+K"),
        Command.of("ribbons.act.keyframeRemove", cues, this::remove)
            .when(several)
            .withShortcut("Shortcut+Shift+K"),
        Command.of("ribbons.act.keyframeNext", cues, () -> step(1))
            .when(any)
            .withShortcut("Shortcut+Period"),
        Command.of("ribbons.act.keyframePrevious", cues, () -> step(-1))
            .when(any)
            .withShortcut("Shortcut+Comma"));
  }

  /** Index of the selected one in the selected cue. */
  public ReadOnlyObjectProperty<Optional<Integer>> selectedProperty() {
    return selected.getReadOnlyProperty();
  }

  /** Selects one of the selected cue, or none. */
  public void select(Optional<Integer> frame) {
    int count = frames().map(f -> f.frames().size()).orElse(0);
    selected.set(frame.filter(i -> i >= 0 && i < count));
  }

  /** Adds one at the playhead, if that is within the selected cue, and selects it. */
  public void add() {
    Optional<Cue> cue = bench.cue().filter(c -> c.pattern() instanceof Keyframes);
    BigDecimal at = model.time().playheadMs();
    boolean within =
        cue.filter(c -> c.startMs().compareTo(at) <= 0 && at.compareTo(c.endMs()) < 0).isPresent();
    if (within) {
      KeyframeDrag.add(model, bench.selection().cue().orElseThrow(), at.doubleValue());
      select(nearest(at));
    }
  }

  /** Removes the selected one, or else the one nearest to the playhead; the last one stays. */
  public void remove() {
    Optional<Integer> gone = selected.get().or(() -> nearest(model.time().playheadMs()));
    Optional<CueRef> cue = bench.selection().cue();
    if (gone.isPresent() && cue.isPresent()) {
      KeyframeDrag.remove(model, cue.get(), gone.get());
      select(Optional.empty());
    }
  }

  /** Selects the next (1) or previous (-1) one and goes to its frame. */
  public void step(int by) {
    Optional<Cue> cue = bench.cue();
    Optional<Keyframes> pattern = frames();
    if (cue.isEmpty() || pattern.isEmpty()) {
      return;
    }
    int count = pattern.get().frames().size();
    int from = by > 0 ? -1 : count;
    int to = Math.max(0, Math.min(count - 1, selected.get().orElse(from) + by));
    select(Optional.of(to));
    BigDecimal at = cue.get().startMs().add(pattern.get().frames().get(to).atMs());
    bench.scene().ifPresent(s -> bench.go((int) CueEdits.nearestFrame(s, at)));
  }

  private Optional<Keyframes> frames() {
    return bench
        .cue()
        .flatMap(c -> c.pattern() instanceof Keyframes k ? Optional.of(k) : Optional.empty());
  }

  private Optional<Integer> nearest(BigDecimal sceneMs) {
    BigDecimal at = sceneMs.subtract(bench.cue().map(Cue::startMs).orElse(BigDecimal.ZERO));
    return frames()
        .flatMap(
            f ->
                IntStream.range(0, f.frames().size())
                    .boxed()
                    .min(Comparator.comparing(i -> f.frames().get(i).atMs().subtract(at).abs())));
  }
}
