package lampwright.app.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.Bounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold of every drawing, whoever drew it. */
class ModelsTest {
  private static final double GROUND = 200;

  private static final Set<ModelKind> WHEELED =
      EnumSet.of(
          ModelKind.ROAD_TRACTOR,
          ModelKind.RECOVERY_VEHICLE,
          ModelKind.FIRE_CARRIER,
          ModelKind.FARM_TRACTOR,
          ModelKind.CAR,
          ModelKind.MOBILE_CRANE,
          ModelKind.AIRCRAFT);

  private static final Set<Tone> OF_THE_MODEL =
      EnumSet.of(Tone.BODY, Tone.SECOND, Tone.CHASSIS, Tone.TYRE, Tone.LENS, Tone.GLASS);

  static Stream<ModelKind> wheeled() {
    return WHEELED.stream();
  }

  static Stream<ModelKind> vehicles() {
    return Stream.of(ModelKind.values()).filter(kind -> Models.mainView(kind) == View.SIDE);
  }

  private static List<Bounds> of(Outline outline, Tone tone) {
    return outline.pieces().stream()
        .filter(piece -> piece.tone() == tone)
        .map(piece -> piece.path().bounds())
        .toList();
  }

  private static Bounds model(ModelKind kind, View view) {
    return Models.outline(kind, view).bounds(piece -> OF_THE_MODEL.contains(piece.tone()));
  }

  @Test
  void thereAreElevenKindsWithTitlesOfTheirOwn() {
    assertThat(Stream.of(ModelKind.values()).map(Models::title))
        .hasSize(11)
        .doesNotHaveDuplicates()
        .contains("Recovery vehicle", "Harbour front");
  }

  @ParameterizedTest
  @EnumSource
  void everySideIsDrawnWithinItsEdges(ModelKind kind) {
    for (View view : View.values()) {
      Outline outline = Models.outline(kind, view);
      Bounds drawn = outline.bounds(piece -> true);
      String what = kind.key() + " " + view.key() + " " + drawn;
      assertThat(drawn.left()).as(what).isNotNegative();
      assertThat(drawn.top()).as(what).isNotNegative();
      assertThat(drawn.right()).as(what).isLessThanOrEqualTo(outline.width());
      assertThat(drawn.bottom()).as(what).isLessThanOrEqualTo(outline.height());
      assertThat(Models.outline(kind, view)).isSameAs(outline);
      // A finished drawing, not a sketch.
      assertThat(outline.pieces()).as(what).hasSizeGreaterThan(20);
      assertThat(of(outline, Tone.BODY)).as(what).isNotEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource
  void sidesHaveTheirSizes(ModelKind kind) {
    Outline side = Models.outline(kind, View.SIDE);
    assertThat(side.width()).isEqualTo(400);
    assertThat(side.height()).isEqualTo(220);
    assertThat(Models.outline(kind, View.TOP).width()).isEqualTo(400);
    assertThat(Models.outline(kind, View.FRONT).height()).isEqualTo(220);
    assertThat(Models.outline(kind, View.REAR).height()).isEqualTo(220);
    assertThat(Models.outline(kind, View.REAR).width())
        .isEqualTo(Models.outline(kind, View.FRONT).width());
  }

  @ParameterizedTest
  @MethodSource("wheeled")
  void wheelsAreRoundAndStandOnTheGround(ModelKind kind) {
    List<Bounds> side = of(Models.outline(kind, View.SIDE), Tone.TYRE);
    assertThat(side).hasSizeGreaterThanOrEqualTo(2);
    for (Bounds tyre : side) {
      assertThat(tyre.width()).as(tyre.toString()).isCloseTo(tyre.height(), within(0.5));
      assertThat(tyre.bottom()).as(tyre.toString()).isCloseTo(GROUND, within(3.0));
    }
    for (View view : List.of(View.SIDE, View.FRONT, View.REAR)) {
      Outline outline = Models.outline(kind, view);
      assertThat(outline.bounds(piece -> piece.tone() == Tone.TYRE).bottom())
          .as(view.key())
          .isCloseTo(GROUND, within(0.1));
      assertThat(of(outline, Tone.OUTLINE).stream())
          .as("the line of the ground, " + view.key())
          .anyMatch(
              line ->
                  line.top() == GROUND
                      && line.height() == 0
                      && line.width() > outline.width() * 0.8);
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"LAUNCH", "HARBOUR_FRONT"})
  void whatFloatsHasWater(ModelKind kind) {
    for (View view : List.of(View.SIDE, View.FRONT)) {
      Outline outline = Models.outline(kind, view);
      Bounds water = outline.bounds(piece -> piece.tone() == Tone.WATER);
      assertThat(water.top()).as(view.key()).isBetween(180.0, 190.0);
      assertThat(water.width()).as(view.key()).isGreaterThan(outline.width() * 0.95);
    }
  }

  /** A locomotive stands on rails: the line of them is the ground. */
  @Test
  void locomotiveStandsOnRails() {
    assertThat(of(Models.outline(ModelKind.LOCOMOTIVE, View.SIDE), Tone.OUTLINE))
        .anyMatch(line -> line.top() == 199.5 && line.height() == 0 && line.width() > 380);
    double wheels =
        of(Models.outline(ModelKind.LOCOMOTIVE, View.SIDE), Tone.SECOND).stream()
            .filter(
                piece -> Math.abs(piece.width() - 36) < 0.1 && Math.abs(piece.height() - 36) < 0.1)
            .mapToDouble(Bounds::bottom)
            .max()
            .orElseThrow();
    assertThat(wheels).isCloseTo(199.5, within(2.0));
  }

  @ParameterizedTest
  @MethodSource("vehicles")
  void lampsAndTyresAreTheSameAtBothSides(ModelKind kind) {
    for (View view : List.of(View.FRONT, View.REAR)) {
      Outline outline = Models.outline(kind, view);
      for (Tone tone : List.of(Tone.LENS, Tone.TYRE)) {
        for (Bounds piece : of(outline, tone)) {
          assertThat(of(outline, tone))
              .as(kind.key() + " " + view.key() + " " + tone + " " + piece)
              .anyMatch(
                  other ->
                      Math.abs(other.left() - (outline.width() - piece.right())) < 0.1
                          && Math.abs(other.right() - (outline.width() - piece.left())) < 0.1
                          && Math.abs(other.top() - piece.top()) < 0.1
                          && Math.abs(other.bottom() - piece.bottom()) < 0.1);
        }
      }
      Bounds body = outline.bounds(piece -> piece.tone() == Tone.BODY);
      assertThat(body.left() + body.right())
          .as(kind.key() + " " + view.key())
          .isCloseTo(outline.width(), within(1.0));
    }
  }

  @ParameterizedTest
  @MethodSource("vehicles")
  void sidesAgreeWithEachOther(ModelKind kind) {
    Bounds side = model(kind, View.SIDE);
    Bounds front = model(kind, View.FRONT);
    Bounds rear = model(kind, View.REAR);
    Bounds top = model(kind, View.TOP);
    assertThat(top.left()).as("nose").isCloseTo(side.left(), within(8.0));
    assertThat(top.right()).as("tail").isCloseTo(side.right(), within(8.0));
    assertThat(front.top()).as("height from the front").isCloseTo(side.top(), within(9.0));
    assertThat(rear.top()).as("height from the rear").isCloseTo(side.top(), within(9.0));
    // Mirrors and gutters do not show from everywhere.
    double bodyFront = Models.outline(kind, View.FRONT).bounds(p -> p.tone() == Tone.BODY).width();
    double bodyRear = Models.outline(kind, View.REAR).bounds(p -> p.tone() == Tone.BODY).width();
    double bodyTop = Models.outline(kind, View.TOP).bounds(p -> p.tone() == Tone.BODY).height();
    assertThat(bodyRear).as("width from the rear").isCloseTo(bodyFront, within(8.0));
    assertThat(bodyTop).as("width from above").isCloseTo(bodyFront, within(20.0));
  }
}
