package lampwright.app.outline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import lampwright.app.outline.UsualLamp.OneLamp;
import lampwright.app.outline.UsualLamp.UsualFitting;
import lampwright.app.review.Reviews;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Ratio;
import lampwright.exporters.picture.Bounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class UsualLampsTest {
  private static final Set<ModelKind> ROAD_VEHICLES =
      EnumSet.of(
          ModelKind.ROAD_TRACTOR,
          ModelKind.RECOVERY_VEHICLE,
          ModelKind.FIRE_CARRIER,
          ModelKind.FARM_TRACTOR,
          ModelKind.CAR,
          ModelKind.MOBILE_CRANE);

  private static UsualLamp lamp(ModelKind kind, String key) {
    return UsualLamps.of(kind).stream()
        .filter(lamp -> lamp.key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  private static List<Place> places(OneLamp lamp, View view) {
    return lamp.places().stream().filter(place -> place.view() == view).toList();
  }

  @ParameterizedTest
  @EnumSource
  void everyKindHasLampsWithIdsAndNames(ModelKind kind) {
    List<UsualLamp> lamps = UsualLamps.of(kind);
    assertThat(lamps).hasSizeBetween(6, 14);
    assertThat(lamps).extracting(UsualLamp::key).doesNotHaveDuplicates();
    assertThat(lamps).extracting(UsualLamp::title).doesNotHaveDuplicates();
    assertThat(lamps.stream().mapToInt(UsualLamp::count).sum()).as("lit at once").isPositive();
    List<String> names = new ArrayList<>();
    for (UsualLamp lamp : lamps) {
      assertThat(lamp.key()).matches("[a-z][a-z0-9-]{0,29}");
      assertThat(lamp.document()).isNotBlank();
      for (int k = 0; k < lamp.greatest(); k++) {
        names.add(lamp.name(k));
      }
    }
    assertThat(names).doesNotHaveDuplicates().allMatch(name -> name.length() <= 40);
  }

  /** The lamps are on the model: no place lies off everything that is drawn of it. */
  @ParameterizedTest
  @EnumSource
  void placesAreOnTheDrawing(ModelKind kind) {
    for (UsualLamp lamp : UsualLamps.of(kind)) {
      for (OneLamp one : lamp.each()) {
        for (Place place : one.places()) {
          Outline outline = Models.outline(kind, place.view());
          double x = place.x() * outline.width();
          double y = place.y() * outline.height();
          assertThat(outline.pieces())
              .as(kind.key() + " " + lamp.key() + " " + one.label() + " " + place)
              .anyMatch(
                  piece -> {
                    Bounds box = piece.path().bounds();
                    return piece.tone() != Tone.SHADE
                        && piece.tone() != Tone.OUTLINE
                        && x >= box.left() - 3
                        && x <= box.right() + 3
                        && y >= box.top() - 5
                        && y <= box.bottom() + 5;
                  });
        }
      }
    }
  }

  /**
   * A vehicle's left is at the right from the front, at the left from behind and below from above;
   * what is at both sides is as far out and as high.
   */
  @ParameterizedTest
  @EnumSource(
      mode = EnumSource.Mode.EXCLUDE,
      names = {"HOUSE", "HARBOUR_FRONT"})
  void leftIsLeft(ModelKind kind) {
    int pairs = 0;
    for (UsualLamp lamp : UsualLamps.of(kind)) {
      for (OneLamp left : lamp.each()) {
        if (!left.label().endsWith("left")) {
          continue;
        }
        String label = left.label().replaceAll("left$", "right");
        OneLamp right =
            lamp.each().stream().filter(one -> one.label().equals(label)).findFirst().orElseThrow();
        for (Place place : left.places()) {
          if (place.view() == View.SIDE) {
            continue;
          }
          pairs++;
          String what = lamp.key() + " " + place;
          Place other = places(right, place.view()).get(0);
          boolean top = place.view() == View.TOP;
          assertThat(top ? other.y() : other.x())
              .as(what)
              .isCloseTo(1 - (top ? place.y() : place.x()), within(0.0002));
          assertThat(top ? other.x() : other.y())
              .as(what)
              .isCloseTo(top ? place.x() : place.y(), within(0.0002));
          boolean farRight = place.view() == View.FRONT && place.x() > 0.5;
          boolean farLeft = place.view() == View.REAR && place.x() < 0.5;
          assertThat(farRight || farLeft || (top && place.y() > 0.5)).as(what).isTrue();
        }
      }
    }
    assertThat(pairs).isPositive();
  }

  /** COLREG 1972, rules 21 and 23: red to port, green to starboard, white masthead and stern. */
  @Test
  void launchHasTheLightsOfAPowerDrivenVessel() {
    assertThat(colour(lamp(ModelKind.LAUNCH, "port-light"))).isEqualTo(SignalColour.RED);
    assertThat(colour(lamp(ModelKind.LAUNCH, "starboard-light"))).isEqualTo(SignalColour.GREEN);
    assertThat(colour(lamp(ModelKind.LAUNCH, "masthead"))).isEqualTo(SignalColour.WHITE);
    assertThat(colour(lamp(ModelKind.LAUNCH, "stern-light"))).isEqualTo(SignalColour.WHITE);
    OneLamp port = lamp(ModelKind.LAUNCH, "port-light").each().get(0);
    OneLamp starboard = lamp(ModelKind.LAUNCH, "starboard-light").each().get(0);
    // The left side shows red alone; from the front red is at the viewer's right.
    assertThat(places(port, View.SIDE)).hasSize(1);
    assertThat(places(starboard, View.SIDE)).isEmpty();
    assertThat(places(port, View.FRONT).get(0).x()).isGreaterThan(0.5);
    assertThat(places(starboard, View.FRONT).get(0).x()).isLessThan(0.5);
    assertThat(places(port, View.TOP).get(0).y()).isGreaterThan(0.5);
  }

  /**
   * 14 CFR 23 and CS-23, from memory: red left, green right, white behind; 40 to 100 per minute.
   */
  @Test
  void aircraftHasPositionLightsAndBeacons() {
    assertThat(colour(lamp(ModelKind.AIRCRAFT, "port-position"))).isEqualTo(SignalColour.RED);
    assertThat(colour(lamp(ModelKind.AIRCRAFT, "starboard-position")))
        .isEqualTo(SignalColour.GREEN);
    assertThat(colour(lamp(ModelKind.AIRCRAFT, "tail-position"))).isEqualTo(SignalColour.WHITE);
    for (String key : List.of("beacons", "strobes")) {
      Ratio period = lamp(ModelKind.AIRCRAFT, key).pattern().period().orElseThrow();
      assertThat(60_000 / period.doubleValue()).as(key).isBetween(40.0, 100.0);
    }
  }

  private static SignalColour colour(UsualLamp lamp) {
    Steady steady = (Steady) lamp.pattern();
    return ((Colour.Signal) steady.look().colour()).colour();
  }

  /** UN Regulation 48: what every road vehicle has at least. */
  @Test
  void roadVehiclesHaveTheirLamps() {
    for (ModelKind kind : ROAD_VEHICLES) {
      assertThat(UsualLamps.of(kind).stream().filter(lamp -> lamp.count() > 0))
          .as(kind.key())
          .extracting(UsualLamp::function)
          .contains(
              LampFunction.DIPPED_BEAM, LampFunction.DIRECTION_INDICATOR, LampFunction.POSITION);
      assertThat(lamp(kind, "indicators").count()).isEqualTo(4);
      // Real ones: 90 +- 30 per minute.
      assertThat(((Indicator) lamp(kind, "indicators").pattern()).perMinute())
          .isBetween(new BigDecimal(60), new BigDecimal(120));
    }
    // The fire service's are blue.
    assertThat(((RotatingBeacon) lamp(ModelKind.FIRE_CARRIER, "beacons").pattern()).look().colour())
        .isEqualTo(new Colour.Signal(SignalColour.BLUE));
  }

  /** SAE J845 and UN Regulation 65, from memory: 1 to 4 flashes per second. */
  @Test
  void warningLampsFlashOneToFourTimesASecond() {
    for (ModelKind kind : ModelKind.values()) {
      for (UsualLamp lamp : UsualLamps.of(kind)) {
        if (lamp.function() == LampFunction.SPECIAL_WARNING) {
          Ratio period = lamp.pattern().period().orElseThrow();
          int flashes = lamp.pattern() instanceof Flash flash ? flash.flashes() : 1;
          assertThat(flashes * 1000 / period.doubleValue())
              .as(kind.key() + " " + lamp.key())
              .isBetween(1.0, 4.0);
        }
      }
    }
  }

  /** So that a scene of four seconds loops without a jump. */
  @ParameterizedTest
  @EnumSource
  void rhythmsFitFourSeconds(ModelKind kind) {
    for (UsualLamp lamp : UsualLamps.of(kind)) {
      lamp.pattern()
          .period()
          .ifPresent(
              period -> {
                Ratio turns = Ratio.of(4000).over(period);
                assertThat(turns)
                    .as(kind.key() + " " + lamp.key() + " " + period)
                    .isEqualByComparingTo(Ratio.of(turns.floor()));
              });
      if (lamp.stagger().signum() > 0) {
        assertThat(lamp.pattern().period()).as(lamp.key()).isPresent();
      }
    }
  }

  @Test
  void harbourHasCharactersWindowsFiresAndNeon() {
    List<Class<?>> patterns = new ArrayList<>();
    for (UsualLamp lamp : UsualLamps.of(ModelKind.HARBOUR_FRONT)) {
      patterns.add(lamp.pattern().getClass());
    }
    assertThat(patterns).contains(LightCharacter.class, Flicker.class);
    assertThat(lamp(ModelKind.HARBOUR_FRONT, "windows").count()).isGreaterThan(3);
  }

  /** All lamps of a kind in a project with the function, colour and rhythm that they have. */
  @ParameterizedTest
  @EnumSource
  void reviewFindsRatesAndColoursLikeReal(ModelKind kind) {
    Project project = project(kind);
    SceneReport report = SceneReport.of(FrameTable.of(project.rig(), project.scenes().get(0)));
    List<Code> wrong =
        List.of(
            Code.FLASH_RATE,
            Code.WARNING_ON_TIME,
            Code.WARNING_OFF_TIME,
            Code.FLASH_GENERAL,
            Code.FLASH_RED,
            Code.COLOUR_OTHER,
            Code.COLOUR_OUTSIDE,
            Code.COLOUR_OUT_OF_REACH);
    List<Finding> found = Reviews.ALL.ofScene(project, report);
    assertThat(found.stream().filter(finding -> wrong.contains(finding.code()))).isEmpty();
  }

  private static Project project(ModelKind kind) {
    StringBuilder outputs = new StringBuilder();
    StringBuilder lamps = new StringBuilder();
    int pixels = 0;
    int lampCount = 0;
    List<Pattern> patterns = new ArrayList<>();
    for (UsualLamp lamp : UsualLamps.of(kind)) {
      for (int k = 0; k < lamp.greatest(); k++) {
        String id = lamp.key() + "-" + k;
        String fitting;
        if (lamp.fitting() instanceof UsualFitting.Pixels each) {
          fitting =
              "\"pixels\": [{\"chain\": \"c\", \"from\": %d, \"count\": %d}]"
                  .formatted(pixels, each.count());
          pixels += each.count();
        } else {
          UsualFitting.Led led = (UsualFitting.Led) lamp.fitting();
          outputs
              .append(outputs.isEmpty() ? "" : ",")
              .append(
                  "{\"id\": \"%s\", \"colour\": \"#%02X%02X%02X\", \"forwardVolts\": %s}"
                      .formatted(
                          id,
                          led.colour().red(),
                          led.colour().green(),
                          led.colour().blue(),
                          led.forwardVolts()));
          fitting = "\"output\": \"" + id + "\"";
        }
        lamps
            .append(lampCount++ == 0 ? "" : ",")
            .append(
                "{\"id\": \"%s\", \"function\": \"%s\", %s}"
                    .formatted(id, lamp.function().key(), fitting));
        patterns.add(lamp.pattern());
      }
    }
    List<String> ids =
        Stream.of(lamps.toString().split("\"id\": \"", -1))
            .skip(1)
            .map(part -> part.substring(0, part.indexOf('"')))
            .toList();
    StringBuilder tracks = new StringBuilder();
    for (String id : ids) {
      tracks
          .append(tracks.isEmpty() ? "" : ",")
          .append(
              ("{\"lamps\": [\"%s\"], \"cues\": [{\"startMs\": 0, \"lengthMs\": 4000, \"pattern\":"
                      + " {\"kind\": \"steady\"}}]}")
                  .formatted(id));
    }
    String text =
        """
        {"lampwright": 1,
         "rig": {"chains": [{"id": "c", "pixelType": "sk6812-rgbw", "pixels": %d}],
                 "outputs": [%s], "lamps": [%s]},
         "scenes": [{"id": "working", "lengthMs": 4000, "framesPerSecond": 50, "tracks": [%s]}]}
        """
            .formatted(pixels, outputs, lamps, tracks);
    Project project = ProjectReader.read("test", text.getBytes(UTF_8)).project().orElseThrow();
    return withPatterns(project, patterns);
  }

  private static Project withPatterns(Project project, List<Pattern> patterns) {
    Scene scene = project.scenes().get(0);
    List<Track> tracks = new ArrayList<>(scene.tracks());
    for (int k = 0; k < tracks.size(); k++) {
      Cue cue = Cue.PATTERN.with(tracks.get(k).cues().get(0), patterns.get(k));
      tracks.set(k, Track.CUES.with(tracks.get(k), List.of(cue)));
    }
    return Project.SCENES.with(project, List.of(Scene.TRACKS.with(scene, tracks)));
  }
}
