package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.disk.ProjectFolder;
import lampwright.engine.document.Picture;
import lampwright.engine.document.Project;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SmallEditsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({"1, 1", "' 1.50 ', 1.5", "'1,5', 1.5", "-3, -3", ".5, 0.5", "5., 5"})
  void numbersAreReadWithPointOrComma(String text, BigDecimal value) {
    assertThat(NumberText.parse(text).orElseThrow()).isEqualByComparingTo(value);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "-", ".", "1e9", "1.2.3", "1 2", "x", "٣", "0x10", "1234567890123"})
  void whatIsNoNumberIsNone(String text) {
    assertThat(NumberText.parse(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.00, 0", "1.50, 1.5", "100, 100", "1E+3, 1000"})
  void numbersAreWrittenPlain(BigDecimal value, String text) {
    assertThat(NumberText.of(value)).isEqualTo(text);
  }

  @Test
  void lampsMoveOnTheirDrawingAndStayOnIt() {
    Project placed = PlaceEdits.put(Projects4Tests.small(), "roof", View.TOP, 0.25, 0.75);
    Place place = placed.rig().lamp("roof").flatMap(Lamp::place).orElseThrow();
    assertThat(place).isEqualTo(new Place(View.TOP, 0.25, 0.75, 0.05));
    Project moved = PlaceEdits.move(placed, List.of("roof", "amber"), View.TOP, 0.9, -0.9);
    place = moved.rig().lamp("roof").flatMap(Lamp::place).orElseThrow();
    assertThat(place).isEqualTo(new Place(View.TOP, 1, 0, 0.05));
    assertThat(moved.rig().lamp("amber").flatMap(Lamp::place)).isEmpty();
    Project larger = PlaceEdits.resize(placed, List.of("roof"), View.TOP, 1000);
    assertThat(larger.rig().lamp("roof").flatMap(Lamp::place).orElseThrow().size()).isEqualTo(1);
    assertThat(PlaceEdits.remove(larger, List.of("roof"), View.TOP))
        .isEqualTo(Projects4Tests.small());
  }

  @Test
  void lampIsSeenFromSeveralSides() {
    Project top = PlaceEdits.put(Projects4Tests.small(), "roof", View.TOP, 0.25, 0.75);
    Project both = PlaceEdits.put(top, "roof", View.SIDE, 0.5, 0.1);
    Lamp lamp = both.rig().lamp("roof").orElseThrow();
    assertThat(lamp.places())
        .containsExactly(
            new Place(View.TOP, 0.25, 0.75, 0.05), new Place(View.SIDE, 0.5, 0.1, 0.05));
    Lamp turned =
        PlaceEdits.turn(both, List.of("roof"), View.SIDE, 200).rig().lamp("roof").orElseThrow();
    assertThat(turned.placeIn(View.SIDE).orElseThrow().turnDegrees()).isEqualTo(-160);
    assertThat(turned.placeIn(View.TOP)).isEqualTo(lamp.placeIn(View.TOP));
    Lamp left = PlaceEdits.remove(both, List.of("roof"), View.TOP).rig().lamp("roof").orElseThrow();
    assertThat(left.places()).containsExactly(new Place(View.SIDE, 0.5, 0.1, 0.05));
  }

  @Test
  void viewHasOnePictureOrNone() {
    Project one = PlaceEdits.picture(Projects4Tests.small(), View.TOP, Optional.of("a.png"));
    Project other = PlaceEdits.picture(one, View.TOP, Optional.of("b.jpg"));
    assertThat(other.pictures()).containsExactly(new Picture(View.TOP, "b.jpg"));
    assertThat(PlaceEdits.picture(other, View.TOP, Optional.empty()).pictures()).isEmpty();
  }

  // The files are made by the Java library's own encoders.
  @ParameterizedTest
  @ValueSource(strings = {"png", "jpg"})
  void sizeOfAPictureIsReadFromItsHead(String kind) throws IOException {
    Path file = folder.resolve("p." + kind);
    ImageIO.write(new BufferedImage(31, 17, BufferedImage.TYPE_INT_RGB), kind, file.toFile());
    assertThat(PictureFile.size(file)).contains(new PictureFile.Size(31, 17));
    byte[] bytes = Files.readAllBytes(file);
    for (int length : new int[] {0, 1, 4, 12, 20}) {
      Files.write(file, java.util.Arrays.copyOf(bytes, length));
      assertThat(PictureFile.size(file)).as(length + " bytes").isEmpty();
    }
  }

  @Test
  void pictureWithTooManyPixelsIsNone() throws IOException {
    Path file = folder.resolve("huge.png");
    ByteBuffer head = ByteBuffer.allocate(40);
    head.putLong(0x89504E470D0A1A0AL).putInt(13).putInt(0x49484452).putInt(100_000).putInt(5);
    Files.write(file, head.array());
    assertThat(PictureFile.size(file)).isEmpty();
    assertThat(PictureFile.size(folder)).isEmpty();
    assertThat(PictureFile.size(folder.resolve("none"))).isEmpty();
    Path inside = Files.createDirectory(folder.resolve("project"));
    Path outside = Files.writeString(folder.resolve("private.png"), "x");
    Path link = Files.createSymbolicLink(inside.resolve("model.png"), outside);
    Path own = Files.writeString(inside.resolve("own.png"), "x");
    assertThat(ProjectFolder.leadsOut(inside, link)).isTrue();
    assertThat(ProjectFolder.leadsOut(inside, own)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "flash",
        "indicator",
        "rotating-beacon",
        "fill",
        "colour-cycle",
        "keyframes",
        "light-character"
      })
  void patternsWithAPeriodHaveAPhaseThatIsKeptByOtherKinds(String kind) {
    Pattern pattern = Patterns.fresh(kind, Look.DEFAULT);
    Pattern shifted = pattern.withPhase(new BigDecimal("0.25"));
    assertThat(shifted.startPhase()).contains(new BigDecimal("0.25"));
    Pattern turned = PatternEdits.turned(shifted, "indicator");
    assertThat(turned.startPhase()).contains(new BigDecimal("0.25"));
    assertThat(pattern.period().orElseThrow().signum()).isPositive();
  }

  @Test
  void freeIdIsTheFirstThatNoneHas() {
    assertThat(Projects.freeId("lamp", List.of("lamp-1", "lamp-3"))).isEqualTo("lamp-2");
  }

  @Test
  void partnersAreFoundByNameOrIdAndPlacedInTheMirror() {
    Place front = new Place(View.FRONT, 0.2, 0.4, 0.05);
    Place top = new Place(View.TOP, 0.3, 0.1, 0.05);
    Lamp left =
        Lamp.SHAPE
            .draft(Lamp.ofPixels("lamp-1", new PixelRun("c", 0, 1)))
            .set(Lamp.NAME, "Tail lamp, left")
            .set(Lamp.PLACE, Optional.of(front))
            .set(Lamp.ALSO_AT, List.of(top))
            .make();
    Lamp right =
        Lamp.NAME.with(Lamp.ofPixels("lamp-2", new PixelRun("c", 1, 1)), "tail lamp, Right");
    Project project =
        Project.of(
            "pair",
            Rig.of(
                List.of(new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 2)),
                List.of(),
                List.of(left, right)),
            Projects.emptyScene("work", 1000));
    assertThat(Partners.of(project.rig(), left)).contains(right);
    assertThat(Partners.of(project.rig(), right)).contains(left);
    Project mirrored =
        Partners.mirrored(
            Partners.mirrored(project, List.of("lamp-1"), View.FRONT), List.of("lamp-1"), View.TOP);
    assertThat(mirrored.rig().lamp("lamp-2").orElseThrow().places())
        .containsExactly(
            new Place(View.FRONT, 0.8, 0.4, 0.05), new Place(View.TOP, 0.3, 0.9, 0.05));
    // From the side one hides the other, unless both are seen there.
    Project side = PlaceEdits.put(project, "lamp-1", View.SIDE, 0.1, 0.2);
    assertThat(Partners.mirrored(side, List.of("lamp-1"), View.SIDE)).isEqualTo(side);
    Project both = PlaceEdits.put(side, "lamp-2", View.SIDE, 0.7, 0.7);
    Lamp partner =
        Partners.mirrored(both, List.of("lamp-1"), View.SIDE).rig().lamp("lamp-2").orElseThrow();
    assertThat(partner.placeIn(View.SIDE))
        .isEqualTo(side.rig().lamp("lamp-1").orElseThrow().placeIn(View.SIDE));
  }
}
