package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;

/** The ceiling, held against the current gauge and figures worked out by hand. */
class CeilingTest {
  private static Rig rig(List<Chain> chains, List<DriverOutput> outputs, double limit) {
    return Rig.SHAPE
        .draft(Rig.of(chains, outputs, List.of()))
        .set(Rig.SUPPLY_LIMIT_MILLIAMPS, limit)
        .set(Rig.CEILING, true)
        .make();
  }

  private static DriverOutput output(String id, double milliamps) {
    return DriverOutput.MILLIAMPS.with(DriverOutput.of(id), milliamps);
  }

  private static Ceiling ceiling(Rig rig) {
    return Ceiling.of(new FrameLayout(rig)).orElseThrow();
  }

  // 255 x 300 mA + 255 x 100 mA, of which half may be: 256 / 2 = 128; 255 x 128 / 256 = 127.5.
  @Test
  void frameOfTwiceTheLimitIsHalved() {
    Ceiling ceiling = ceiling(rig(List.of(), List.of(output("o", 300), output("p", 100)), 200));
    byte[] frame = {(byte) 255, (byte) 255, 77};
    assertThat(ceiling.factor(frame)).isEqualTo(128);
    ceiling.apply(frame);
    assertThat(frame).containsExactly(127, 127, 77);
  }

  // 300 mA x 128/255 + 100 mA x 126/255 = 200 mA.
  @Test
  void frameAtTheLimitIsLeftAndOneAboveItIsScaled() {
    Ceiling ceiling = ceiling(rig(List.of(), List.of(output("o", 300), output("p", 100)), 200));
    byte[] at = {(byte) 128, (byte) 126};
    assertThat(ceiling.factor(at)).isEqualTo(Ceiling.WHOLE);
    ceiling.apply(at);
    assertThat(at).containsExactly((byte) 128, 126);
    byte[] above = {(byte) 128, (byte) 127};
    assertThat(ceiling.factor(above)).isEqualTo(255);
  }

  // Ten chips at rest draw more than 1 mA.
  @Test
  void limitBelowTheIdleCurrentMakesAllDark() {
    Chain chain = new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 10);
    byte[] frame = new byte[30];
    frame[7] = 1;
    ceiling(rig(List.of(chain), List.of(), 1)).apply(frame);
    assertThat(frame).containsOnly(0);
  }

  @Test
  void rigWithoutCeilingHasNone() {
    Rig rig = Rig.CEILING.with(rig(List.of(), List.of(output("o", 300)), 1), false);
    assertThat(Ceiling.of(new FrameLayout(rig))).isEmpty();
  }

  @Test
  void scaledFramesAreNeverOverTheLimitAndNoDarkerThanTheyMust() {
    Random random = new Random(43);
    List<String> types = BuiltInPixelTypes.all().stream().map(type -> type.id()).toList();
    int scaled = 0;
    for (int i = 0; i < 2000; i++) {
      List<Chain> chains = new ArrayList<>();
      for (int c = random.nextInt(3); c > 0; c--) {
        String type = types.get(random.nextInt(types.size()));
        int pixels = 1 + random.nextInt(random.nextInt(20) == 0 ? 1000 : 30);
        chains.add(new Chain("c" + c, BuiltInPixelTypes.find(type).orElseThrow(), pixels));
      }
      List<DriverOutput> outputs = new ArrayList<>();
      for (int o = 1 + random.nextInt(4); o > 0; o--) {
        outputs.add(output("o" + o, random.nextInt(50) == 0 ? 0 : random.nextDouble() * 10_000));
      }
      FrameLayout layout = new FrameLayout(rig(chains, outputs, 1));
      FrameCurrent current = new FrameCurrent(layout);
      byte[] frame = new byte[layout.bytes()];
      random.nextBytes(frame);
      double light = current.milliamps(frame) - current.idleMilliamps();
      double limit = current.idleMilliamps() + Math.max(1, light * 2 * random.nextDouble());
      Ceiling ceiling = ceiling(rig(chains, outputs, limit));
      long sum = 0;
      for (int b = 0; b < frame.length; b++) {
        assertThat(ceiling.weight(b)).isBetween(0, Ceiling.MOST_WEIGHT);
        sum += ceiling.weight(b);
      }
      assertThat(sum).isLessThanOrEqualTo(Ceiling.MOST_SUM);
      byte[] sent = frame.clone();
      ceiling.apply(sent);
      assertThat(current.milliamps(sent)).isLessThanOrEqualTo(limit * (1 + 1e-12));
      if (current.milliamps(frame) <= limit * (1 - 1e-3)) {
        assertThat(sent).isEqualTo(frame);
      }
      if (!Arrays.equals(sent, frame)) {
        scaled++;
        // Rounded down by a 256th at most, and weights up by a thousandth or so.
        double share = (limit - current.idleMilliamps()) / light;
        assertThat(ceiling.factor(frame) / 256.0).isBetween(share * 0.998 - 1 / 256.0, share);
      }
    }
    assertThat(scaled).isBetween(500, 1500);
  }
}
