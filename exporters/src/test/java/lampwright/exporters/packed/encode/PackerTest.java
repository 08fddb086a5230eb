package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.zip.CRC32;
import lampwright.exporters.packed.Corpus;
import lampwright.exporters.packed.CorpusScene;
import lampwright.exporters.packed.Model;
import lampwright.exporters.packed.PackedCorpus;
import lampwright.exporters.packed.Patterns;
import lampwright.exporters.packed.SecondReader;
import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.PackedDataException;
import lampwright.exporters.packed.play.PlayerStep;
import lampwright.exporters.packed.play.Unpacker;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PackerTest {
  private static final Corpus.Table TRACTOR = PackedCorpus.table("recovery-tractor");

  @Test
  void packingTwiceGivesTheSameBytes() {
    byte[] again =
        Packer.pack(
                TRACTOR.layout(),
                List.of(TRACTOR.scene()),
                Target.slowestDecodeCost(),
                PackProgress.NONE)
            .data();
    assertThat(again).isEqualTo(PackedCorpus.packed(TRACTOR));
  }

  @Test
  void progressRisesToOne() {
    List<Double> shares = new ArrayList<>();
    Packer.pack(
        TRACTOR.layout(), List.of(TRACTOR.scene()), Target.slowestDecodeCost(), shares::add);
    assertThat(shares).isSorted().hasSizeGreaterThan(10).endsWith(1.0);
  }

  @Test
  void packingStopsWhenToldTo() {
    assertThatThrownBy(
            () ->
                Packer.pack(
                    TRACTOR.layout(),
                    List.of(TRACTOR.scene()),
                    Target.slowestDecodeCost(),
                    share -> share < 0.5))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void tooLargeTableIsRefusedBeforeItIsRead() {
    PackLayout layout = new Model().chain(false, 1000).layout();
    PackScene scene =
        new PackScene(
            "long",
            30000,
            true,
            20000,
            (frame, into) -> {
              throw new AssertionError("read");
            });
    assertThatThrownBy(
            () ->
                Packer.pack(layout, List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "scene long: 30000 frames of 3000 bytes are 90000000 bytes: at most 67108864 can be"
                + " packed; a shorter scene or a lower frame rate helps");
  }

  @Test
  void onceThroughSceneKeepsItsLastFrame() {
    PackLayout layout = new Model().outputs(1).layout();
    int[] level = {0, 10, 10, 40, 90, 255};
    PackScene scene =
        new PackScene("rise", 6, false, 20000, (frame, into) -> into[0] = (byte) level[frame]);
    byte[] packed =
        Packer.pack(layout, List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE).data();
    List<int[]> rows = new SecondReader(packed).play(0, 50);
    assertThat(rows.get(4)[0]).isEqualTo(90);
    assertThat(rows.subList(5, 56)).allMatch(row -> row[0] == 255);
  }

  @Test
  void bytesOfNoLampAreKept() {
    Model model = new Model().outputs(3);
    PackLayout whole = model.layout();
    PackLayout layout = new PackLayout(3, 0, whole.lamps().subList(0, 1));
    PackScene scene =
        new PackScene("stray", 4, true, 20000, (f, into) -> Arrays.fill(into, (byte) (f * 7)));
    byte[] packed =
        Packer.pack(layout, List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE).data();
    assertThat(new SecondReader(packed).play(0, 0).get(3)).containsExactly(21, 21, 21);
  }

  @Test
  void lampsPlayDifferentScenesAtOnce() {
    Model model = Corpus.tractor();
    byte[] working = TRACTOR.bytes();
    byte[] resting =
        new CorpusScene(model, 50, 700, true, false)
            .cue(0, Patterns.flash(Patterns.srgb(0, 0, 255), 60, 60, 2, 380))
            .cue(4, Patterns.steady(Patterns.srgb(200, 100, 20), 0.4))
            .render();
    int size = model.frameBytes;
    PackLayout layout = model.layout();
    PackScene scene =
        new PackScene(
            "resting",
            700,
            true,
            20000,
            (f, into) -> System.arraycopy(resting, f * size, into, 0, size));
    Unpacker unpacker =
        new Unpacker(
            Packer.pack(
                    layout,
                    List.of(TRACTOR.scene(), scene),
                    Target.slowestDecodeCost(),
                    PackProgress.NONE)
                .data());
    byte[] buffer = new byte[size];
    unpacker.select(0, buffer);
    for (int f = 0; f < 123; f++) {
      unpacker.frame(buffer);
    }
    unpacker.select(0, 1, 0, buffer);
    unpacker.select(4, 1, 650, buffer);
    unpacker.dark(5, buffer);
    for (int f = 0; f < 1000; f++) {
      unpacker.frame(buffer);
      for (int lamp = 0; lamp < layout.lamps().size(); lamp++) {
        for (int column : layout.lamps().get(lamp).columns()) {
          int want =
              switch (lamp) {
                case 0 -> resting[f % 700 * size + column];
                case 4 -> resting[(650 + f) % 700 * size + column];
                case 5 -> 0;
                default -> working[(123 + f) % 3000 * size + column];
              };
          if (buffer[column] != want) {
            assertThat(buffer[column]).as("frame %d, lamp %d", f, lamp).isEqualTo((byte) want);
          }
        }
      }
    }
  }

  /** Noise can't be packed; what is added to it is bounded. */
  @ParameterizedTest
  @CsvSource({"1, 16384", "4, 16384", "300, 2", "8190, 1"})
  void noiseGrowsByAtMost64Bytes(int bytes, int frames) {
    byte[] noise = new byte[bytes * frames];
    new Random(20261128).nextBytes(noise);
    List<PackLayout.LampColumns> lamps = new ArrayList<>();
    for (int c = 0; c < Math.min(bytes, 200); c++) {
      lamps.add(new PackLayout.LampColumns("lamp-" + c, List.of(c)));
    }
    PackScene scene =
        new PackScene(
            "noise",
            frames,
            true,
            20000,
            (f, into) -> System.arraycopy(noise, f * bytes, into, 0, bytes));
    byte[] packed =
        Packer.pack(
                new PackLayout(bytes, 400, lamps),
                List.of(scene),
                Target.slowestDecodeCost(),
                PackProgress.NONE)
            .data();
    assertThat(packed).hasSizeLessThanOrEqualTo(noise.length + 64);
  }

  /**
   * Six pixels that fade at once, so differently that their rows are wide: too much for a frame.
   */
  @Test
  void lampsOfACrowdedFrameAreCodedToPlayQuicker() {
    Model model = new Model().chain(true, 1, 1, 1, 1, 1, 1);
    CorpusScene stage = new CorpusScene(model, 50, 200, true, false);
    for (int lamp = 0; lamp < 6; lamp++) {
      double[] from = Patterns.srgb(40 * lamp, 200 - 30 * lamp, 20);
      double[] to = Patterns.srgb(200, 30 * lamp, 250 - 40 * lamp);
      int half = 1500 + 200 * lamp;
      stage.cue(
          lamp,
          Patterns.keyframes(
              true,
              new Patterns.Key(0, from, 0.1),
              new Patterns.Key(half, to, 1),
              new Patterns.Key(4000, from, 0.1)));
    }
    byte[] bytes = stage.render();
    int size = model.frameBytes;
    PackScene scene =
        new PackScene(
            "crowd",
            200,
            true,
            20000,
            (f, into) -> System.arraycopy(bytes, f * size, into, 0, size));
    List<PackLayout.LampColumns> lamps = model.layout().lamps();
    // Without a chain there is no wire to keep up with, and the shortest code is taken.
    byte[] shortest =
        Packer.pack(
                new PackLayout(size, 0, lamps),
                List.of(scene),
                Target.slowestDecodeCost(),
                PackProgress.NONE)
            .data();
    int dear = worst(shortest);
    double wireMicros = dear / 16.0 * 4 * 0.99;
    byte[] quicker =
        Packer.pack(
                new PackLayout(size, wireMicros, lamps),
                List.of(scene),
                Target.slowestDecodeCost(),
                PackProgress.NONE)
            .data();
    assertThat(worst(quicker)).isLessThanOrEqualTo((int) (wireMicros * 16 / 4));
    assertThat(quicker.length).isGreaterThan(shortest.length);
  }

  /**
   * A picture of three colours that repeats along six pixels and runs to and fro: pixels 0 and 3
   * are alike, so their phase was that of pixel 3, from which a wave can't swing.
   */
  @Test
  void pictureThatRepeatsAlongThePixelsSwings() {
    Model model = new Model().chain(false, 6);
    int[] colours = {209, 121, 200};
    PackScene scene =
        new PackScene(
            "marquee",
            30,
            true,
            20000,
            (f, into) -> {
              int at = f % 10;
              for (int k = 0; k < 6; k++) {
                int place = Math.floorMod(at < 5 ? at + k : at - k, 10);
                Arrays.fill(into, 3 * k, 3 * k + 3, (byte) colours[place % 3]);
                into[3 * k + 1] = (byte) (colours[place % 3] / 2);
              }
            });
    Packed packed =
        Packer.pack(model.layout(), List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE);
    assertThat(packed.standIns()).isEmpty();
  }

  /** Seven bits a byte packed, eight coded to play quicker: that would pass 65,279 bytes. */
  @Test
  void quickerCodeDoesNotOutgrowShortPlaces() {
    int frames = 4600;
    byte[] table = new byte[15 * frames];
    Random random = new Random(20261203);
    for (int i = 0; i < table.length; i++) {
      table[i] = (byte) random.nextInt(128);
    }
    PackScene scene =
        new PackScene(
            "wide", frames, true, 20000, (f, into) -> System.arraycopy(table, 15 * f, into, 0, 15));
    List<PackLayout.LampColumns> lamps = new ArrayList<>();
    for (int c = 0; c < 15; c += 3) {
      lamps.add(new PackLayout.LampColumns("lamp-" + c, List.of(c, c + 1, c + 2)));
    }
    Packed packed =
        Packer.pack(
            new PackLayout(15, 60, lamps),
            List.of(scene),
            Target.slowestDecodeCost(),
            PackProgress.NONE);
    assertThat(packed.size()).isBetween(55_000, 65_279);
    assertThat(packed.standIns()).isEmpty();
  }

  /** Cycles of the costliest frame. */
  static int worst(byte[] packed) {
    DecodeCost cost = Target.slowestDecodeCost();
    Unpacker unpacker = new Unpacker(packed, cost);
    byte[] buffer = new byte[unpacker.frameBytes()];
    unpacker.select(0, buffer);
    int worst = 0;
    for (int f = 0; f <= unpacker.frames(0); f++) {
      unpacker.frame(buffer);
      int lamps = Arrays.stream(unpacker.cyclesOfLamps()).sum();
      worst = Math.max(worst, cost.cycles(PlayerStep.FRAME) + lamps);
    }
    return worst;
  }

  @Test
  void truncationAtEachOffsetIsRefused() {
    byte[] packed = PackedCorpus.packed(PackedCorpus.table("hazards"));
    for (int length = 0; length < packed.length; length++) {
      byte[] cut = Arrays.copyOf(packed, length);
      assertThatThrownBy(() -> new Unpacker(cut))
          .as("length %d", length)
          .isInstanceOf(PackedDataException.class);
    }
  }

  @Test
  void eachFlippedBitIsRefused() {
    byte[] packed = PackedCorpus.packed(PackedCorpus.table("hazards"));
    for (int bit = 0; bit < packed.length * 8; bit++) {
      byte[] bad = packed.clone();
      bad[bit / 8] ^= (byte) (1 << (bit % 8));
      assertThatThrownBy(() -> new Unpacker(bad))
          .as("bit %d", bit)
          .isInstanceOf(PackedDataException.class);
    }
  }

  @Test
  void faultsAreToldApart() {
    byte[] packed = PackedCorpus.packed(PackedCorpus.table("hazards"));
    assertThat(faultOf(packed, 0, 'X')).isEqualTo(PackedDataException.Damage.NOT_PACKED);
    assertThat(faultOf(packed, 6, 1)).isEqualTo(PackedDataException.Damage.VERSION);
    assertThat(faultOf(packed, 7, 16)).isEqualTo(PackedDataException.Damage.VERSION);
    assertThat(faultOf(packed, 12, packed[12] ^ 1)).isEqualTo(PackedDataException.Damage.SIZE);
    assertThat(faultOf(packed, 40, packed[40] ^ 1)).isEqualTo(PackedDataException.Damage.CHECKSUM);
  }

  private static PackedDataException.Damage faultOf(byte[] packed, int at, int value) {
    byte[] bad = packed.clone();
    bad[at] = (byte) value;
    try {
      new Unpacker(bad);
      throw new AssertionError("accepted");
    } catch (PackedDataException e) {
      return e.damage();
    }
  }

  /** IEEE 802.3 CRC-32; the check value is published with the polynomial. */
  @Test
  void checksumIsThatOfIeee8023() {
    CRC32 crc = new CRC32();
    crc.update("123456789".getBytes(StandardCharsets.US_ASCII));
    assertThat(crc.getValue()).isEqualTo(0xCBF43926L);
    byte[] packed = PackedCorpus.packed(TRACTOR);
    crc.reset();
    crc.update(packed, 6, packed.length - 6);
    int stored = (packed[2] & 255) | ((packed[3] & 255) << 8) | ((packed[4] & 255) << 16);
    assertThat(stored).isEqualTo((int) (crc.getValue() & 0xFFFFFF));
  }

  /** Data that version 2 players have read must stay readable, byte for byte. */
  @Test
  void goldenFileOfVersionTwoStaysReadable() throws IOException {
    byte[] packed = resource("version-2.packed");
    byte[] table = resource("version-2.bin");
    Unpacker unpacker = new Unpacker(packed, Target.slowestDecodeCost());
    byte[] buffer = new byte[unpacker.frameBytes()];
    unpacker.select(0, buffer);
    for (int f = 0; f < unpacker.frames(0); f++) {
      unpacker.frame(buffer);
      assertThat(buffer)
          .as("frame %d", f)
          .isEqualTo(Arrays.copyOfRange(table, f * buffer.length, (f + 1) * buffer.length));
    }
  }

  private static byte[] resource(String name) throws IOException {
    try (InputStream in = PackerTest.class.getResourceAsStream(name)) {
      return Objects.requireNonNull(in, name).readAllBytes();
    }
  }
}
