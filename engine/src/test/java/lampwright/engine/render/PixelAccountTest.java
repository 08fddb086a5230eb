package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the renderer gives as its account: it ends in the bytes of the table, and each step follows
 * from the one before by the formulas of DESIGN section 5, typed here once more.
 */
class PixelAccountTest {
  private static final double ROUNDING = 1e-12;

  @ParameterizedTest
  @ValueSource(longs = {1, 1001, 2001, 3001})
  void accountsOfRandomScenesEndInTheBytesOfTheTable(long first) {
    for (long seed = first; seed < first + 25; seed++) {
      FrameTable table = RandomScenes.table(seed);
      Random random = new Random(seed);
      List<Lamp> lamps = table.layout().rig().lamps();
      int frame = random.nextInt(Math.min(200, table.frameCount()));
      byte[] bytes = table.frame(frame);
      for (Lamp lamp : lamps) {
        int pixel = random.nextInt(lamp.fitting().lights());
        PixelAccount account = table.account(frame, lamp.id(), pixel);
        assertFollows(table, account);
        for (PixelAccount.ByteStep step : account.bytes()) {
          assertThat(step.duty())
              .as("seed %d, frame %d, lamp %s, byte %d", seed, frame, lamp.id(), step.at())
              .isEqualTo(bytes[step.at()] & 0xFF);
        }
      }
    }
  }

  private static void assertFollows(FrameTable table, PixelAccount account) {
    int count = account.bytes().size();
    double[] now = new double[count];
    for (PixelAccount.Layer layer : account.layers()) {
      Cue cue = table.scene().tracks().get(layer.track()).cues().get(layer.cue());
      assertThat(layer.sinceStartMs())
          .isCloseTo(account.timeMs() - cue.startMs().doubleValue(), within(1e-6));
      double a = table.layout().rig().curve().light(layer.faded());
      assertThat(layer.a()).isCloseTo(a, within(ROUNDING));
      layer.period().ifPresent(place -> assertThat(place.atMs()).isBetween(0.0, place.periodMs()));
      for (int i = 0; i < count; i++) {
        assertThat(layer.under().get(i)).isCloseTo(now[i], within(ROUNDING));
        if (!layer.isHidden()) {
          now[i] = blend(cue.blend(), now[i], layer.painted().get(i), a);
        }
        assertThat(layer.result().get(i)).isCloseTo(now[i], within(ROUNDING));
      }
    }
    for (int i = 0; i < count; i++) {
      PixelAccount.ByteStep step = account.bytes().get(i);
      assertThat(step.mixed()).isCloseTo(now[i], within(ROUNDING));
      double capped =
          step.felt() * account.brightnessCap() * account.sceneFactor() * account.frameFactor();
      assertThat(step.capped()).isCloseTo(capped, within(ROUNDING));
      // Next to a half both bytes would do here.
      double exact = 255 * step.capped() + step.carried();
      assertThat((double) step.duty())
          .isCloseTo(Math.max(0, Math.min(255, exact)), within(0.5 + 1e-9));
    }
  }

  private static double blend(Blend blend, double under, double over, double a) {
    return switch (blend) {
      case COVER -> under * (1 - a) + over * a;
      case ADD -> Math.min(1, under + over * a);
      case BRIGHTER -> Math.max(under, over * a);
      case SCALE -> under * (1 - a + a * over);
    };
  }

  @Test
  void framesLampsAndPixelsThatAreNotThereAreRefused() {
    FrameTable table = RandomScenes.table(7);
    String lamp = table.layout().rig().lamps().get(0).id();
    int pixels = table.layout().rig().lamps().get(0).fitting().lights();
    assertThatThrownBy(() -> table.account(table.frameCount(), lamp, 0))
        .isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> table.account(0, lamp, pixels))
        .isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> table.account(0, "nobody", 0)).hasMessageContaining("nobody");
  }
}
