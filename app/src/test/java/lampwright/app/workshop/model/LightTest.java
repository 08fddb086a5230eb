package lampwright.app.workshop.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.engine.document.Project;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.FrameStore;
import lampwright.engine.render.FrameTable;
import lampwright.engine.scene.Scene;
import lampwright.exporters.picture.ScreenLight;
import lampwright.exporters.picture.Srgb8;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LightTest {
  @ParameterizedTest
  // IEC 61966-2-1: code = 255 x (12.92 l, or 1.055 l^(1/2.4) - 0.055 from 0.0031308 on).
  @CsvSource({
    "0, 0",
    "-1, 0",
    "0.0031308, 10",
    "0.01, 25",
    "0.18, 118",
    "0.2140, 127",
    "0.5, 188",
    "1, 255",
    "2, 255"
  })
  void srgbCodesAreThoseOfTheStandard(float light, int code) {
    assertThat(Srgb8.code(light)).isCloseTo(code, within(1));
  }

  /** Issue 10: a blue strobe was painted white. */
  @ParameterizedTest
  @ValueSource(floats = {1, 1.5f, 3, 100})
  void lightPastTheScreenKeepsItsHue(float light) {
    assertThat(Srgb8.argb(light, 0, 0)).isEqualTo(0xFFFF0000);
    // Lifted by 0.4 to (0, 0.3, 1.4): 0.3 / 1.4 of the light is code 128 (IEC 61966-2-1).
    assertThat(Srgb8.argb(-0.4f * light, -0.1f * light, light)).isEqualTo(0xFF0080FF);
    assertThat(Srgb8.argb(light, light, light)).isEqualTo(0xFFFFFFFF);
    // IEC 61966-2-1 of half the light is code 188.
    assertThat(Srgb8.argb(light, light / 2, 0) >> 8 & 0xFF).isEqualTo(188);
    assertThat(Srgb8.code(Float.NaN)).isZero();
  }

  // IEC 61966-2-1, and FACTS.md: #808080 is 0.21586.
  @Test
  void codesAreDecodedAsTheStandardDoes() {
    assertThat(Srgb8.linear(0)).isZero();
    assertThat(Srgb8.linear(10)).isCloseTo(10 / 255f / 12.92f, within(1e-7f));
    assertThat(Srgb8.linear(128)).isCloseTo(0.21586f, within(1e-5f));
    assertThat(Srgb8.linear(255)).isEqualTo(1);
  }

  @Test
  void brightestPixelAtFullDutyHasLuminanceOne() {
    ScreenLight screen = ScreenLight.of(new FrameLayout(Projects4Tests.small().rig()));
    byte[] frame = new byte[9];
    java.util.Arrays.fill(frame, (byte) 255);
    float[] rgb = new float[3];
    screen.addPixel(frame, 0, 0, rgb, 0);
    // Rec. 709 luminance, IEC 61966-2-1.
    assertThat(0.2126f * rgb[0] + 0.7152f * rgb[1] + 0.0722f * rgb[2]).isCloseTo(1, within(1e-3f));
  }

  @Test
  void whiteEmitterAloneHasItsChromaticityOnTheScreen() {
    var rig = Projects4Tests.small().rig();
    ScreenLight screen = ScreenLight.of(new FrameLayout(rig));
    byte[] frame = new byte[9];
    frame[3] = (byte) 255;
    float[] rgb = new float[3];
    screen.addPixel(frame, 0, 0, rgb, 0);
    // Back from linear sRGB by the standard's matrix.
    double x = 0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2];
    double y = 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    double z = 0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2];
    Chromaticity white =
        rig.chains()
            .get(0)
            .emitters()
            .get(lampwright.engine.light.EmitterKind.WHITE)
            .chromaticity();
    assertThat(x / (x + y + z)).isCloseTo(white.x(), within(1e-3));
    assertThat(y / (x + y + z)).isCloseTo(white.y(), within(1e-3));
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "mountain-rescue", "harbour-dusk", "bench-rgbw"})
  void keptFramesAreThoseOfTheFrameTable(String sample) {
    Project project = Projects4Tests.sample(sample);
    FrameTable table = FrameTable.of(project.rig(), project.scenes().get(0));
    FrameStore light = new FrameStore(table);
    int bytes = table.layout().bytes();
    byte[] early = new byte[bytes];
    int some = table.frameCount() / 2;
    assertThat(light.read(some, early)).isEqualTo(table.seeksAtOnce());
    if (table.seeksAtOnce()) {
      assertThat(early).isEqualTo(table.frame(some));
    }
    int[] calls = {0};
    light.render(() -> calls[0]++);
    assertThat(calls[0]).isPositive();
    assertThat(light.complete()).isTrue();
    FrameCursor cursor = table.cursor();
    byte[] expected = new byte[bytes];
    byte[] read = new byte[bytes];
    while (cursor.hasNext()) {
      int frame = cursor.position();
      cursor.next(expected);
      assertThat(light.read(frame, read)).isTrue();
      assertThat(read).isEqualTo(expected);
    }
    assertThatThrownBy(() -> light.read(table.frameCount(), read))
        .isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void lightRoomShowsTheSceneAndItsMeasureAfterEveryEdit() throws InterruptedException {
    BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
    Bench bench = new Bench(Projects4Tests.small());
    try (LightService room = new LightService(bench, screen::add)) {
      run(screen, () -> !room.measuringProperty().get() && complete(room));
      assertThat(peak(room)).isGreaterThan(10);
      byte[] frame = new byte[9];
      assertThat(room.lightProperty().get().orElseThrow().frames().read(0, frame)).isTrue();
      assertThat(frame[0]).isEqualTo((byte) 255);
      bench.apply(
          Edit.of("Dark", p -> Projects.inScene(p, "work", s -> Scene.TRACKS.with(s, List.of()))));
      assertThat(room.measuringProperty().get()).isTrue();
      // What was there before stays in sight until the new light comes.
      assertThat(room.lightProperty().get()).isPresent();
      run(screen, () -> !room.measuringProperty().get() && complete(room) && dark(room));
      assertThat(peak(room)).isCloseTo(2, within(1e-9));
      bench.select(bench.selection().withScene("rest"));
      assertThat(room.lightProperty().get()).isEmpty();
      run(screen, () -> complete(room));
      assertThat(room.lightProperty().get().map(l -> l.frames().frameCount()))
          .isEqualTo(Optional.of(25));
    }
  }

  @Test
  void packRoomPacksAllScenes() throws InterruptedException {
    BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
    Bench bench = new Bench(Projects4Tests.small());
    try (PackService room = new PackService(bench, screen::add)) {
      run(screen, () -> room.packedProperty().get().isPresent());
      assertThat(room.packedProperty().get().orElseThrow().bytes()).isBetween(20, 200);
      assertThat(room.progressProperty().get()).isEqualTo(1);
      bench.apply(Edit.of("Name", p -> Project.NAME.with(p, "other")));
      // A name takes no memory: nothing to pack anew.
      assertThat(room.packedProperty().get()).isPresent();
      bench.apply(Edit.of("No scenes", p -> Project.SCENES.with(p, List.of())));
      assertThat(room.packedProperty().get()).isEmpty();
    }
  }

  private static boolean complete(LightService room) {
    return room.lightProperty().get().filter(light -> light.frames().complete()).isPresent();
  }

  private static boolean dark(LightService room) {
    byte[] frame = new byte[9];
    return room.lightProperty().get().orElseThrow().frames().read(0, frame) && frame[0] == 0;
  }

  private static double peak(LightService room) {
    return room.reportProperty().get().orElseThrow().measure().supply().peakMilliamps();
  }

  private static void run(BlockingQueue<Runnable> screen, BooleanSupplier until)
      throws InterruptedException {
    while (!until.getAsBoolean()) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).as("work for the screen's thread").isNotNull();
      next.run();
    }
  }
}
