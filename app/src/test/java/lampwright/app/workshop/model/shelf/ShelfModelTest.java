package lampwright.app.workshop.model.shelf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.engine.document.Preset;
import lampwright.engine.document.PresetUse;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.scene.Cue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShelfModelTest {
  /** Does work at once. */
  private static final Background AT_ONCE =
      new Background() {
        @Override
        public void run(Runnable work) {
          work.run();
        }

        @Override
        public void runAfter(Duration delay, Runnable work) {
          work.run();
        }

        @Override
        public Duration now() {
          return Duration.ZERO;
        }
      };

  @TempDir Path state;

  private final Bench bench = new Bench(Projects4Tests.small());
  private LightService lights;
  private RibbonsModel ribbons;
  private ShelfModel shelf;

  @BeforeEach
  void make() {
    lights = new LightService(bench, work -> {});
    Playhead playhead = new Playhead(bench);
    ribbons =
        new RibbonsModel(
            bench,
            lights,
            playhead,
            new DrawingSheet(),
            new PixelExplainer(bench, work -> {}),
            work -> {});
    shelf = shelf();
  }

  private ShelfModel shelf() {
    return new ShelfModel(
        bench,
        new CueCommands(ribbons, new ReadyAnswers()),
        new OwnPresets(state, AT_ONCE, Runnable::run),
        work -> {});
  }

  @AfterEach
  void close() {
    shelf.close();
    ribbons.close();
    lights.close();
  }

  @Test
  void everyPatternIsACardWithItsPresets() {
    assertThat(shelf.cardsProperty().get()).hasSize(14);
    assertThat(shelf.cardsProperty().get().get(1).title()).isEqualTo("Flash");
    assertThat(shelf.cardsProperty().get().get(1).presets())
        .extracting(ShelfEntry::title)
        .contains("Double flash 120");
    assertThat(shelf.counts().get(ShelfGroup.of(PresetUse.TEST))).isEqualTo(3);
    assertThat(shelf.counts().get(ShelfGroup.OWN)).isZero();
  }

  @Test
  void searchFindsNamesEffectsAndUses() {
    assertThat(found("blue beacon")).containsExactly("Rotating beacon", "Blue beacon 180");
    assertThat(found("runway")).containsExactly("Chase", "Approach lights");
    assertThat(found("FIRE")).contains("Fire", "Flicker");
    assertThat(found("buoy")).contains("Light character", "Port buoy Fl R 4s");
    assertThat(found("no such effect")).isEmpty();
    assertThat(shelf.selectedProperty().get()).isEmpty();
  }

  private List<String> found(String query) {
    shelf.queryProperty().set(query);
    return shelf.entries().stream().map(ShelfEntry::title).toList();
  }

  @Test
  void usesNarrowTheShelf() {
    shelf.groupProperty().set(ShelfGroup.of(PresetUse.TEST));
    assertThat(shelf.cardsProperty().get()).hasSize(1);
    assertThat(shelf.entries()).extracting(ShelfEntry::title).startsWith("Test walk");
    shelf.groupProperty().set(ShelfGroup.OWN);
    assertThat(shelf.cardsProperty().get()).isEmpty();
  }

  @Test
  void aPresetIsPlacedOnTheSelectedLampAtThePlayhead() {
    bench.select(bench.selection().withScene("rest").withLamps(List.of("amber")));
    bench.go(10);
    select("Amber beacon 150");
    assertThat(shelf.hintProperty().get()).contains("amber").contains("0.2 s");
    shelf.place();
    Cue cue = bench.cue().orElseThrow();
    assertThat(cue.startMs()).isEqualByComparingTo("200");
    assertThat(cue.lengthMs()).isEqualByComparingTo("300");
    assertThat(cue.pattern().kind()).isEqualTo("rotating-beacon");
    assertThat(cue.pattern().look().colour()).isEqualTo(new Colour.Signal(SignalColour.AMBER));
    assertThat(bench.undoNameProperty().get()).contains("Add Amber beacon 150");
  }

  @Test
  void withoutALampNothingIsPlaced() {
    select("Amber beacon 150");
    var before = bench.project();
    shelf.place();
    assertThat(bench.project()).isEqualTo(before);
    assertThat(shelf.hintProperty().get()).startsWith("Select a lamp");
  }

  @Test
  void aPresetReplacesThePatternOfTheSelectedCueAndLeavesItsTimes() {
    bench.select(bench.selection().withCues(List.of(new CueRef(0, 0))));
    Cue before = bench.cue().orElseThrow();
    select("Fire");
    shelf.replace();
    Cue now = bench.cue().orElseThrow();
    assertThat(now.pattern()).isEqualTo(shelf.selectedProperty().get().orElseThrow().pattern());
    assertThat(Cue.PATTERN.with(now, before.pattern())).isEqualTo(before);
    bench.undo();
    assertThat(bench.cue()).contains(before);
  }

  @Test
  void aKindOfPatternKeepsTheColourOfTheCueThatItReplaces() {
    bench.applyToCues(
        "colour",
        Optional.empty(),
        scene ->
            lampwright.app.workshop.edit.CueEdits.each(
                scene,
                List.of(new CueRef(0, 0)),
                cue -> Cue.PATTERN.with(cue, new Steady(new Look(new Colour.Srgb(1, 2, 3), 0.5)))));
    select("Breathe");
    shelf.replace();
    assertThat(bench.cue().orElseThrow().pattern().look())
        .isEqualTo(new Look(new Colour.Srgb(1, 2, 3), 0.5));
  }

  @Test
  void aCueIsSavedInTheProjectAsOneUndoableStep() {
    bench.select(bench.selection().withCues(List.of(new CueRef(0, 0))));
    shelf.saveInProject("  Roof light ");
    assertThat(bench.project().presets())
        .containsExactly(Preset.of("Roof light", new Steady(Look.DEFAULT)));
    assertThat(bench.undoNameProperty().get()).contains("Save preset   Roof light ");
    select("Roof light");
    assertThat(shelf.ownSelectedProperty().get()).isTrue();
    shelf.rename("Cab light");
    assertThat(bench.project().presets()).extracting(Preset::name).containsExactly("Cab light");
    select("Cab light");
    shelf.delete();
    assertThat(bench.project().presets()).isEmpty();
    bench.undo();
    bench.undo();
    assertThat(bench.project().presets()).extracting(Preset::name).containsExactly("Roof light");
    bench.undo();
    assertThat(bench.project().presets()).isEmpty();
  }

  @Test
  void aNameThatIsTakenIsRefusedForARename() {
    bench.select(bench.selection().withCues(List.of(new CueRef(0, 0))));
    shelf.saveInProject("A");
    shelf.saveInProject("B");
    select("B");
    shelf.rename("A");
    assertThat(bench.project().presets()).extracting(Preset::name).containsExactly("A", "B");
    assertThat(bench.refusalProperty().get().orElseThrow()).startsWith("preset B, name: A: ");
  }

  @Test
  void aCueIsSavedForAllProjectsAndFoundByTheNextWindow() {
    bench.select(bench.selection().withCues(List.of(new CueRef(0, 0))));
    shelf.saveForAll("Everywhere");
    assertThat(bench.project().presets()).isEmpty();
    assertThat(bench.undoNameProperty().get()).isEmpty();
    try (ShelfModel next = shelf()) {
      next.groupProperty().set(ShelfGroup.OWN);
      assertThat(next.entries()).extracting(ShelfEntry::title).containsExactly("Everywhere");
      next.rename("Anywhere");
      assertThat(next.entries()).extracting(ShelfEntry::title).containsExactly("Anywhere");
      next.delete();
      assertThat(next.entries()).isEmpty();
    }
  }

  @Test
  void aDamagedFileIsNamedAndLeftAlone() throws IOException {
    String text = "{\"lampwright\": 1, \"presets\": [{\"name\": \"A\\u202e\"";
    Files.writeString(state.resolve("presets.json"), text);
    shelf.close();
    shelf = shelf();
    assertThat(shelf.troubleProperty().get()).contains("presets.json").contains("line 1");
    bench.select(bench.selection().withCues(List.of(new CueRef(0, 0))));
    shelf.saveForAll("Mine");
    assertThat(shelf.troubleProperty().get()).contains("presets.json");
    assertThat(Files.readString(state.resolve("presets.json"))).isEqualTo(text);
  }

  @Test
  void hostileNamesAreShownHarmless() throws IOException {
    Files.writeString(
        state.resolve("presets.json"),
        "{\"lampwright\": 1, \"presets\": [{\"name\": \"A\\u202e\\nB\","
            + " \"pattern\": {\"kind\": \"steady\"}}]}");
    shelf.close();
    shelf = shelf();
    shelf.groupProperty().set(ShelfGroup.OWN);
    assertThat(shelf.entries().get(0).title()).doesNotContain("\u202e").doesNotContain("\n");
  }

  @Test
  void stripsThatFlashMoreThanTheLimitAreDimmedWhereTheyMove() {
    // WCAG 2.2, 2.3.1: three flashes a second at most; the emergency stop has four.
    ShelfLight over = ShelfLight.of(entry("Emergency stop 240").pattern());
    assertThat(over.flashes().passes()).isFalse();
    assertThat(over.stripes()).hasSize(8).allMatch(row -> row.size() == 200);
    // The code of 0.06 of white by IEC 61966-2-1 is 255 (1.055 x 0.06^(1/2.4) - 0.055) = 69.3.
    assertThat(over.moving(0, 0) >> 16 & 0xFF).isBetween(68, 70);
    assertThat(over.stripes().get(0).argb(0) >> 16 & 0xFF).isGreaterThan(200);
    ShelfLight under = ShelfLight.of(entry("Direction indicator 90").pattern());
    assertThat(under.flashes().passes()).isTrue();
    assertThat(under.moving(0, 0)).isEqualTo(under.stripes().get(0).argb(0));
  }

  private ShelfEntry entry(String title) {
    return shelf.entries().stream().filter(e -> e.title().equals(title)).findFirst().orElseThrow();
  }

  private void select(String title) {
    shelf.selectedProperty().set(Optional.of(entry(title)));
  }
}
