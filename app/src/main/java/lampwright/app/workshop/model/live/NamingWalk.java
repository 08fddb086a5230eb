package lampwright.app.workshop.model.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.PixelNames;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.LampPicker;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;

/**
 * Walks a chain: one pixel after another lights up, and the builder names the lamp that it is, by a
 * click in the drawing or by its name. What was named becomes one step that can be undone. For the
 * screen's thread.
 */
public final class NamingWalk {
  /**
   * Where it is.
   *
   * @param chain of the walk
   * @param pixel that is lit; the number of pixels once all were
   * @param names so far
   */
  public record Step(Chain chain, int pixel, PixelNames names) {
    /** Whether all pixels were lit. */
    public boolean atEnd() {
      return pixel == chain.pixels();
    }

    /** What the pixel that is lit was named before, on the way back. */
    public Optional<String> named() {
      return Optional.ofNullable(names.lamps().get(pixel)).flatMap(lamp -> lamp);
    }
  }

  /**
   * A lamp to choose.
   *
   * @param words for people, on one line
   */
  public record Candidate(String id, String words) {}

  private final Texts texts = Texts.of("live");
  private final Bench bench;
  private final BenchLink link;
  private final LampPicker picker;
  private final Dialogs dialogs;
  private final ReadOnlyObjectWrapper<Optional<Step>> step =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<String> last = Optional.empty();

  public NamingWalk(Bench bench, BenchLink link, LampPicker picker, Dialogs dialogs) {
    this.bench = bench;
    this.link = link;
    this.picker = picker;
    this.dialogs = dialogs;
    bench.watch(state -> state.project().rig(), (before, now) -> rigChanged());
  }

  /** Where it is; empty while there is none. */
  public ReadOnlyObjectProperty<Optional<Step>> stepProperty() {
    return step.getReadOnlyProperty();
  }

  /** Begins a walk of a chain, at its first pixel. */
  public void start(Chain chain) {
    last = Optional.empty();
    picker.start(this::picked);
    go(new Step(chain, 0, PixelNames.none(chain.id())));
  }

  private void go(Step to) {
    step.set(Optional.of(to));
    link.test(
        Optional.of(
            to.atEnd()
                ? TestLight.dark(bench.project().rig())
                : TestLight.pixel(bench.project().rig(), to.chain(), to.pixel())));
  }

  private void end() {
    picker.stop();
    step.set(Optional.empty());
    link.test(Optional.empty());
  }

  // What is walked is no longer what is there.
  private void rigChanged() {
    step.get()
        .filter(now -> !bench.project().rig().chains().contains(now.chain()))
        .ifPresent(gone -> end());
  }

  /** The lamps whose names or ids have this text, those that begin with it first. */
  public List<Candidate> candidates(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    List<Candidate> starting = new ArrayList<>();
    List<Candidate> having = new ArrayList<>();
    for (Lamp lamp : bench.project().rig().lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels) {
        String words = Titles.of(lamp);
        Candidate found =
            new Candidate(
                lamp.id(),
                words.equals(lamp.id()) ? words : texts.get("walk.candidate", words, lamp.id()));
        String all = (words + " " + lamp.id()).toLowerCase(Locale.ROOT);
        if (all.startsWith(wanted) || lamp.id().toLowerCase(Locale.ROOT).startsWith(wanted)) {
          starting.add(found);
        } else if (all.contains(wanted)) {
          having.add(found);
        }
      }
    }
    return Stream.concat(starting.stream(), having.stream()).toList();
  }

  /** How many pixels a lamp was given in this walk. */
  public long given(String lamp) {
    return step.get()
        .map(now -> now.names().lamps().values().stream().filter(Optional.of(lamp)::equals).count())
        .orElse(0L);
  }

  private void picked(String lamp) {
    boolean pixels =
        bench
            .project()
            .rig()
            .lamp(lamp)
            .filter(l -> l.fitting() instanceof Fitting.Pixels)
            .isPresent();
    if (pixels) {
      name(lamp);
    } else {
      dialogs.tell(texts.get("walk.title"), texts.get("walk.output", lamp));
    }
  }

  /** The pixel that is lit is of this lamp; the next one lights up. */
  public void name(String lamp) {
    last = Optional.of(lamp);
    if (bench.project().rig().lamp(lamp).isPresent()) {
      bench.select(bench.selection().withLamps(List.of(lamp)));
    }
    answer(Optional.of(lamp));
  }

  /** It is of the same lamp as the one before. */
  public void sameAgain() {
    last.ifPresent(this::name);
  }

  /** It is of a new lamp. */
  public void nameNew() {
    List<String> taken =
        Stream.concat(
                bench.project().rig().lamps().stream().map(Lamp::id),
                step.get().stream()
                    .flatMap(now -> now.names().lamps().values().stream())
                    .flatMap(Optional::stream))
            .toList();
    name(Projects.freeId("lamp", taken));
  }

  /** It is of no lamp. */
  public void skip() {
    answer(Optional.empty());
  }

  private void answer(Optional<String> lamp) {
    step.get()
        .filter(now -> !now.atEnd())
        .ifPresent(
            now -> go(new Step(now.chain(), now.pixel() + 1, now.names().with(now.pixel(), lamp))));
  }

  /** Lights the pixel before once more; what it was named counts no more. */
  public void back() {
    step.get()
        .filter(now -> now.pixel() > 0)
        .ifPresent(
            now ->
                go(new Step(now.chain(), now.pixel() - 1, now.names().without(now.pixel() - 1))));
  }

  /** Ends the walk and gives the lamps their pixels. */
  public void done() {
    if (step.get().isEmpty()) {
      return;
    }
    PixelNames names = step.get().get().names();
    Project project = bench.project();
    List<Lamp> emptied = names.emptied(project);
    if (!emptied.isEmpty()) {
      dialogs.tell(
          texts.get("walk.title"),
          texts.get(
              "walk.emptied", emptied.stream().map(Titles::of).collect(Collectors.joining(", "))));
      return;
    }
    if (names.lamps().isEmpty() || bench.apply(Edit.of(texts.get("edit.walk"), names::apply))) {
      end();
    } else {
      dialogs.tell(texts.get("walk.title"), bench.refusalProperty().get().orElse(""));
    }
  }

  /** Ends the walk; nothing is changed. */
  public void cancel() {
    end();
  }
}
