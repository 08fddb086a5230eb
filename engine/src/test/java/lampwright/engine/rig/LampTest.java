package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Fault;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lamp by itself: its places, its lights, its title, and what is said of two that collide. */
class LampTest {
  private static final Place FIRST = new Place(View.SIDE, 0.1, 0.2, 0.05);
  private static final Place SECOND = new Place(View.SIDE, 0.3, 0.4, 0.05);
  private static final Place ABOVE = new Place(View.TOP, 0.5, 0.6, 0.05);

  private static Lamp placed(Place place, Place... alsoAt) {
    return Lamp.SHAPE
        .draft(Lamp.ofOutput("l", "o"))
        .set(Lamp.PLACE, Optional.of(place))
        .set(Lamp.ALSO_AT, List.of(alsoAt))
        .make();
  }

  private static Optional<Place> moved(Place place) {
    return Optional.of(Place.X.with(place, place.x() + 0.5));
  }

  @Test
  void placesAreTheFirstAndTheFurtherOnes() {
    Lamp lamp = placed(FIRST, ABOVE, SECOND);
    assertThat(lamp.places()).containsExactly(FIRST, ABOVE, SECOND);
    assertThat(lamp.placeIn(View.SIDE)).contains(FIRST);
    assertThat(lamp.placeIn(View.TOP)).contains(ABOVE);
    assertThat(lamp.placeIn(View.REAR)).isEmpty();
    assertThat(Lamp.ofOutput("l", "o").places()).isEmpty();
  }

  @Test
  void placesOfOneSideAreChangedAndNoOthers() {
    Lamp lamp = placed(FIRST, ABOVE, SECOND).withPlacesIn(View.SIDE, LampTest::moved);
    assertThat(lamp.places())
        .containsExactly(
            new Place(View.SIDE, 0.6, 0.2, 0.05), ABOVE, new Place(View.SIDE, 0.8, 0.4, 0.05));
  }

  /** The next place becomes the first; with the last one the lamp is off the drawing. */
  @Test
  void placeThatIsTakenAwayLeavesTheOthers() {
    Lamp above = placed(FIRST, ABOVE, SECOND).withPlacesIn(View.SIDE, at -> Optional.empty());
    assertThat(above.place()).contains(ABOVE);
    assertThat(above.alsoAt()).isEmpty();
    Lamp nowhere = above.withPlacesIn(View.TOP, at -> Optional.empty());
    assertThat(nowhere).isEqualTo(Lamp.ofOutput("l", "o"));
  }

  @Test
  void lightsAreThePixelsOfAllRunsOrTheOneOfAnOutput() {
    Lamp lamp = Lamp.ofPixels("l", new PixelRun("a", 0, 3), new PixelRun("b", 7, 1));
    assertThat(lamp.fitting().lights()).isEqualTo(4);
    assertThat(new PixelRun("a", 5, 3).end()).isEqualTo(8);
    assertThat(Lamp.ofOutput("l", "o").fitting().lights()).isEqualTo(1);
  }

  @Test
  void titleIsTheNameOrElseTheId() {
    Lamp lamp = Lamp.ofOutput("tail-left", "o");
    assertThat(lamp.title()).isEqualTo("tail-left");
    assertThat(Lamp.NAME.with(lamp, "Tail lamp").title()).isEqualTo("Tail lamp");
  }

  /** Colours of UN Regulation No. 48, 5.15; side marker lamps are amber there as a rule. */
  @ParameterizedTest
  @CsvSource({
    "DIRECTION_INDICATOR, AMBER",
    "HAZARD, AMBER",
    "SIDE_MARKER, AMBER",
    "STOP, RED",
    "REAR_FOG, RED"
  })
  void colourIsThatOfTheRegulation(LampFunction function, SignalColour colour) {
    assertThat(function.usualColour()).isEqualTo(new Colour.Signal(colour));
  }

  @ParameterizedTest
  @CsvSource({"MAIN_BEAM", "DIPPED_BEAM", "REVERSING", "DAYTIME_RUNNING", "WORK", "OTHER"})
  void othersAreWhite(LampFunction function) {
    assertThat(function.usualColour()).isEqualTo(Colour.WHITE);
  }

  @Test
  void everyFaultOfALampIsReportedAtOnce() {
    assertThatThrownBy(
            () ->
                Lamp.SHAPE
                    .draft(Lamp.ofOutput("l", "o"))
                    .set(Lamp.ID, "Not an id")
                    .set(Lamp.NAME, "x".repeat(500))
                    .make())
        .isInstanceOfSatisfying(
            InvalidModelException.class,
            refused ->
                assertThat(refused.faults())
                    .extracting(Fault::field)
                    .containsExactly("id", "name"));
  }

  /** What the builder reads of two lamps on one pixel, one output and past the end of a chain. */
  @Test
  void collisionNamesTheLampThatWasThereFirst() {
    List<Chain> chains =
        List.of(new Chain("a", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 8));
    List<DriverOutput> outputs = List.of(DriverOutput.of("o"));
    assertThat(
            RigFaults.find(
                    chains,
                    outputs,
                    List.of(
                        Lamp.ofPixels("first", new PixelRun("a", 0, 4)),
                        Lamp.ofPixels("second", new PixelRun("a", 3, 2)),
                        Lamp.ofPixels("third", new PixelRun("a", 6, 3)),
                        Lamp.ofOutput("fourth", "o"),
                        Lamp.ofOutput("fifth", "o")),
                    List.of())
                .stream()
                .map(Fault::toString))
        .containsExactly(
            "lamps[1].pixels[0].from: pixel 3 of chain a: belongs to the lamp first already",
            "lamps[2].pixels[0].count: pixels 6 to 8: past the end of chain a, whose last pixel is"
                + " 7",
            "lamps[4].output: o: belongs to the lamp fourth already");
  }

  /** A claim that collides takes nothing: the pixels that it would have had are free for others. */
  @Test
  void lampThatCollidesClaimsNoPixel() {
    List<Chain> chains =
        List.of(new Chain("a", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 8));
    assertThat(
            RigFaults.find(
                chains,
                List.of(),
                List.of(
                    Lamp.ofPixels("first", new PixelRun("a", 0, 4)),
                    Lamp.ofPixels("second", new PixelRun("a", 3, 2)),
                    Lamp.ofPixels("third", new PixelRun("a", 4, 1))),
                List.of()))
        .extracting(Fault::field)
        .containsExactly("lamps[1].pixels[0].from");
  }
}
