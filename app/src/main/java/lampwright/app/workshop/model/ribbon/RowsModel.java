package lampwright.app.workshop.model.ribbon;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.disk.WindowState;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.LampEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.Lamp;

/** How the rows are seen: their height, folded groups, duty curves, the width of the titles. */
public final class RowsModel {
  /** Width of the titles at first, in lines of text. */
  public static final double USUAL_TITLE_LINES = 12;

  private static final double MOST_TITLE_LINES = 1000;

  private final Texts texts = Texts.of("ribbons");
  private final Bench bench;
  private final ObjectProperty<RowsLook> look = new SimpleObjectProperty<>(RowsLook.FIRST);
  private final DoubleProperty titleLines = new SimpleDoubleProperty(USUAL_TITLE_LINES);

  RowsModel(Bench bench) {
    this.bench = bench;
  }

  /** All but the width of the titles. */
  public ObjectProperty<RowsLook> lookProperty() {
    return look;
  }

  public RowsLook look() {
    return look.get();
  }

  /** Width of the titles in lines of text. */
  public DoubleProperty titleLinesProperty() {
    return titleLines;
  }

  /** How the rows are seen, for the window's state. */
  public WindowState.Rows state() {
    return new WindowState.Rows(
        Math.min(MOST_TITLE_LINES, titleLines.get()),
        look().height().name(),
        look().folded().asList());
  }

  /** Shows the rows as they were seen when the window was left. */
  public void show(WindowState.Rows before) {
    if (before.titles() > 0) {
      titleLines.set(before.titles());
    }
    RowHeight known =
        Arrays.stream(RowHeight.values())
            .filter(h -> h.name().equals(before.height()))
            .findFirst()
            .orElse(RowHeight.MEDIUM);
    look.set(look().withHeight(known).withFolded(Set.copyOf(before.folded())));
  }

  /** Goes on to the next height of rows. */
  public void nextHeight() {
    look.set(look().withHeight(look().height().next()));
  }

  /** Shows or hides the duty curves of a lamp. */
  public void toggleUnfolded(String lamp) {
    look.set(look().toggleUnfolded(lamp));
  }

  /** Folds a group or unfolds it. */
  public void toggleFolded(String group) {
    if (!group.isEmpty()) {
      look.set(look().toggleFolded(group));
    }
  }

  /** Folds all groups, or unfolds them if all are folded. */
  public void toggleAllFolded() {
    Set<String> groups =
        bench.project().rig().lamps().stream()
            .map(Lamp::group)
            .filter(group -> !group.isEmpty())
            .collect(Collectors.toSet());
    boolean all = look().folded().containsAll(groups);
    look.set(look().withFolded(all ? Set.of() : groups));
  }

  /**
   * Gives a group another name; it stays folded or unfolded. With the name of another group it
   * becomes part of that, with an empty one its lamps are in none.
   */
  public void renameGroup(String from, String to) {
    boolean folded = look().folded().contains(from);
    boolean done =
        bench.apply(
            Edit.of(texts.get("edit.renameGroup"), p -> LampEdits.renameGroup(p, from, to)));
    if (done && folded && !to.equals(from)) {
      Set<String> now = new LinkedHashSet<>(look().folded());
      now.remove(from);
      if (!to.isEmpty()) {
        now.add(to);
      }
      look.set(look().withFolded(now));
    }
  }
}
