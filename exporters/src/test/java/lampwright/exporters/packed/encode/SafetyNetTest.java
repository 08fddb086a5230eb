package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import lampwright.exporters.packed.SecondReader;
import lampwright.exporters.packed.encode.Packed.StandIn;
import lampwright.exporters.packed.format.Format;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

/** What becomes of codings that are wrong: each test puts one in. */
class SafetyNetTest {
  private static final int FRAMES = 120;
  private static final byte[] SHORT_CODE = new byte[0];

  /** Three lamps of two bytes, the last of which has a gap between them. */
  private static final PackLayout LAYOUT =
      new PackLayout(
          7,
          0,
          List.of(
              new PackLayout.LampColumns("left", List.of(0, 1)),
              new PackLayout.LampColumns("right", List.of(2, 3)),
              new PackLayout.LampColumns("ends", List.of(4, 6))));

  private static final PackScene ROAD =
      scene("road", (f, c) -> c == 5 ? 0 : f / 5 * (c + 1) % (11 + c));
  private static final PackScene YARD = scene("yard", (f, c) -> c == 5 ? 0 : (f / 4 % 2) * (9 + c));

  @Test
  void rightCodingNeedsNoStandIn() {
    assertThat(
            Packer.pack(LAYOUT, List.of(ROAD, YARD), Target.slowestDecodeCost(), PackProgress.NONE)
                .standIns())
        .isEmpty();
  }

  @Test
  void lampThatShowsOtherBytesIsCodedPlainly() {
    Packed packed = pack(spoiling(1, SafetyNetTest::otherBytes), ROAD);
    assertThat(packed.standIns()).containsExactly(new StandIn("road", Optional.of("right")));
    assertPlays(packed, ROAD, 0);
  }

  @Test
  void lampWithAGapIsCodedPlainlyToo() {
    Packed packed = pack(spoiling(2, SafetyNetTest::otherBytes), ROAD);
    assertThat(packed.standIns()).containsExactly(new StandIn("road", Optional.of("ends")));
    assertPlays(packed, ROAD, 0);
  }

  @Test
  void lampThatCannotBeDecodedIsCodedPlainly() {
    Packed packed = pack(spoiling(0, part -> ofSection(new byte[] {0, 0, (byte) 0xFF})), ROAD);
    assertThat(packed.standIns()).containsExactly(new StandIn("road", Optional.of("left")));
    assertPlays(packed, ROAD, 0);
  }

  @Test
  void onlyTheSceneThatFailsIsCodedPlainly() {
    Packed packed =
        pack(
            (scene, lamp, levels) ->
                scene.id().equals("yard") && lamp == 0
                    ? otherBytes(scene.part(lamp, levels))
                    : scene.part(lamp, levels),
            ROAD,
            YARD);
    assertThat(packed.standIns()).containsExactly(new StandIn("yard", Optional.of("left")));
    assertPlays(packed, ROAD, 0);
    assertPlays(packed, YARD, 1);
  }

  /** Right for a round and one frame, and a frame late from then on. */
  @Test
  void codingThatGoesWrongInTheSecondRoundIsFound() {
    PackScene blink = scene("blink", (f, c) -> c == 5 ? 0 : f % 4 * (c + 1));
    Packed packed =
        pack(
            spoiling(
                0,
                part -> {
                  List<Score.Entry> entries = new ArrayList<>(part.score().entries());
                  Section first = entries.get(0).section();
                  entries.clear();
                  entries.add(new Score.Entry(FRAMES, first));
                  entries.add(new Score.Entry(1, first));
                  return new LampPart(part.setup(), new Score(entries));
                }),
            blink);
    assertThat(packed.standIns()).containsExactly(new StandIn("blink", Optional.of("left")));
    assertPlays(packed, blink, 0);
  }

  /** Byte 5 is no lamp's, so there is no telling which of them lit it. */
  @Test
  void lampThatReachesBeyondItsBytesMakesAllOfThemPlain() {
    byte[] beyond = {
      0, 0, (byte) (Format.PATCH + 1), 5, 1, 2, Format.HOLD + 99, (byte) Format.AGAIN
    };
    Packed packed = pack(spoiling(0, part -> ofSection(beyond)), ROAD);
    assertThat(packed.standIns())
        .containsExactly(
            new StandIn("road", Optional.of("left")),
            new StandIn("road", Optional.of("right")),
            new StandIn("road", Optional.of("ends")));
    assertPlays(packed, ROAD, 0);
  }

  /** One byte a lamp: plain lamps would take far more than the table. */
  @Test
  void plainLampsThatTakeTooMuchBecomeAPlainFrame() {
    byte[] noise = new byte[40 * FRAMES];
    new Random(20261201).nextBytes(noise);
    List<PackLayout.LampColumns> lamps = new ArrayList<>();
    for (int c = 0; c < 40; c++) {
      lamps.add(new PackLayout.LampColumns("lamp-" + c, List.of(c)));
    }
    PackScene scene = scene("noise", (f, c) -> noise[40 * f + c]);
    PartCoder wrong = (s, lamp, levels) -> ofSection(new byte[] {0, 0, Format.HOLD, (byte) 0xE1});
    Packed packed =
        Packer.pack(
            new PackLayout(40, 0, lamps),
            List.of(scene),
            Target.slowestDecodeCost(),
            wrong,
            PackProgress.NONE);
    assertThat(packed.standIns()).containsExactly(new StandIn("noise", Optional.empty()));
    assertThat(packed.size()).isLessThanOrEqualTo(noise.length + 64);
    assertPlays(packed, scene, 0);
  }

  /** The shortest code is right here, so it stays where the quicker one is wrong. */
  @Test
  void quickerCodeThatIsWrongIsNotTaken() {
    PackLayout hasty = new PackLayout(7, 0.001, LAYOUT.lamps());
    AtomicInteger hurried = new AtomicInteger();
    PartCoder coder =
        (scene, lamp, levels) -> {
          hurried.addAndGet(levels.most());
          LampPart part = scene.part(lamp, levels);
          return levels.most() > 0 ? otherBytes(part) : part;
        };
    Packed packed =
        Packer.pack(hasty, List.of(ROAD), Target.slowestDecodeCost(), coder, PackProgress.NONE);
    assertThat(hurried.get()).isPositive();
    assertThat(packed.standIns()).hasSize(1);
    assertThat(packed.data())
        .isEqualTo(
            Packer.pack(LAYOUT, List.of(ROAD), Target.slowestDecodeCost(), PackProgress.NONE)
                .data());
  }

  /** Nothing can be proved of frames that are never twice the same. */
  @Test
  void framesThatChangeWhileTheyAreReadAreRefused() {
    Random random = new Random(20261202);
    PackScene unsteady =
        new PackScene("unsteady", FRAMES, true, 20000, (f, c) -> random.nextBytes(c));
    assertThatThrownBy(
            () ->
                Packer.pack(
                    LAYOUT, List.of(unsteady), Target.slowestDecodeCost(), PackProgress.NONE))
        .isInstanceOf(PackRefusedException.class)
        .hasMessageContaining("do not decode to the frames");
  }

  @Test
  void standInsBecomeFindings() {
    Packed packed =
        new Packed(
            SHORT_CODE,
            List.of(
                new StandIn("road", Optional.of("left")), new StandIn("yard", Optional.empty())));
    assertThat(ScenePacker.findings(packed))
        .extracting(finding -> finding.about() + ": " + finding.what())
        .containsExactly(
            "scene road: the best packing of lamp left failed its check; a simpler, verified"
                + " packing is used instead",
            "scene yard: the best packing of all lamps failed its check; a simpler, verified"
                + " packing is used instead");
  }

  @FunctionalInterface
  private interface Value {
    int at(int frame, int column);
  }

  @FunctionalInterface
  private interface Spoiler {
    LampPart spoil(LampPart part);
  }

  private static PackScene scene(String id, Value value) {
    return new PackScene(
        id,
        FRAMES,
        true,
        20000,
        (f, into) -> {
          for (int c = 0; c < into.length; c++) {
            into[c] = (byte) value.at(f, c);
          }
        });
  }

  private static PartCoder spoiling(int spoilt, Spoiler spoiler) {
    return (scene, lamp, levels) -> {
      LampPart part = scene.part(lamp, levels);
      return lamp == spoilt ? spoiler.spoil(part) : part;
    };
  }

  /** The same, but that its first byte starts out otherwise and the section is never followed. */
  private static LampPart otherBytes(LampPart part) {
    return ofSection(
        new byte[] {0, 0, (byte) Format.PATCH, 0, 123, Format.HOLD + 9, (byte) Format.AGAIN});
  }

  private static LampPart ofSection(byte[] bytes) {
    Section section = new Section(bytes, List.of());
    return new LampPart(new byte[0], Score.of(FRAMES, FRAMES, section));
  }

  private static Packed pack(PartCoder coder, PackScene... scenes) {
    return Packer.pack(
        LAYOUT, List.of(scenes), Target.slowestDecodeCost(), coder, PackProgress.NONE);
  }

  private static void assertPlays(Packed packed, PackScene scene, int number) {
    List<int[]> rows = new SecondReader(packed.data()).play(number, 3 * FRAMES);
    byte[] want = new byte[rows.get(0).length];
    for (int f = 0; f < rows.size(); f++) {
      scene.source().read(f % FRAMES, want);
      for (int c = 0; c < want.length; c++) {
        assertThat(rows.get(f)[c]).as("frame %d, column %d", f, c).isEqualTo(want[c] & 255);
      }
    }
  }
}
