package lampwright.exporters.firmware;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelType;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ProjectJob;

/**
 * Rigs for an RP2040, one from each seed: 1 to 8 chains of built-in and own parts, outputs, pins
 * stated and left out, odd frame rates; a few frames of noise. Pins and PWM channels are always
 * free, frames always long enough: only a part can be a reason for refusal.
 */
final class RandomRigs {
  private static final List<String> RATES =
      List.of("24", "25", "29.97", "33.333", "47.952", "59.94", "61.035", "99.9");

  /** GP0 to GP28; an output's channel is its pin's number modulo 16. RP2040 datasheet. */
  private static final int PINS = 29;

  private static final int CHANNELS = 16;
  private static final int MAX_CHAINS = 8;
  private static final int MAX_OUTPUTS = 6;
  private static final int MAX_PIXELS = 24;
  private static final int MAX_FRAMES = 5;

  /** A step of the data lines, ns. docs/decisions/0032. */
  private static final int STEP_NS = 40;

  private final Random random;
  private final FirmwareJobs jobs = FirmwareJobs.on("rp2040");
  private final List<String> impossible = new ArrayList<>();

  private RandomRigs(long seed) {
    random = new Random(seed);
  }

  /**
   * A rig with its scene.
   *
   * @param impossible chains and their parts that whole steps can't send: {@code chain c1}, {@code
   *     own-1}
   */
  record Case(long seed, ExportJob job, List<String> impossible) {}

  /** The first so many. */
  static Stream<Case> first(int count) {
    return IntStream.range(0, count).mapToObj(seed -> new RandomRigs(seed).make(seed));
  }

  private Case make(long seed) {
    List<Integer> pins = new ArrayList<>(IntStream.range(0, PINS).boxed().toList());
    Collections.shuffle(pins, random);
    int outputs = random.nextInt(MAX_OUTPUTS + 1);
    List<Integer> channels = new ArrayList<>();
    for (int o = 0; o < outputs; o++) {
      if (random.nextBoolean()) {
        jobs.output();
        continue;
      }
      Integer pin = pins.stream().filter(p -> !channels.contains(p % CHANNELS)).findFirst().get();
      pins.remove(pin);
      channels.add(pin % CHANNELS);
      jobs.output("GP" + pin);
    }
    int chains = 1 + random.nextInt(MAX_CHAINS);
    for (int c = 0; c < chains; c++) {
      Optional<Pin> pin =
          random.nextBoolean() ? Optional.of(new Pin("GP" + pins.remove(0))) : Optional.empty();
      jobs.chain(type(c), 1 + random.nextInt(MAX_PIXELS), pin);
    }
    jobs.rate(RATES.get(random.nextInt(RATES.size()))).frames(1 + random.nextInt(MAX_FRAMES));
    ProjectJob made = jobs.job();
    return new Case(
        seed,
        ExportJob.of(made.project(), made.scenes().get(0), ExportOptions.DEFAULT),
        List.copyOf(impossible));
  }

  private PixelType type(int chain) {
    if (random.nextInt(4) > 0) {
      List<PixelType> all = BuiltInPixelTypes.all();
      return all.get(random.nextInt(all.size()));
    }
    // Of any time and 80 ns to either side whole steps are within.
    int t0h = 200 + random.nextInt(200);
    int t0l = 750 + random.nextInt(250);
    int t1h = 600 + random.nextInt(250);
    int t1l = 400 + random.nextInt(200);
    int tolerance = 80 + random.nextInt(70);
    if (random.nextInt(16) == 0) {
      // Halfway between two steps, and not as far as to either of them.
      t0h = t0h / STEP_NS * STEP_NS + STEP_NS / 2;
      tolerance = 5 + random.nextInt(14);
      impossible.add("chain c" + chain);
      impossible.add("own-" + chain);
    }
    PixelType usual = BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow();
    return new PixelType(
        "own-" + chain,
        usual.order(),
        usual.idleMilliamps(),
        usual.volts(),
        usual.emitters(),
        LineTiming.ofNominal(t0h, t0l, t1h, t1l, tolerance, 50 + random.nextInt(250)));
  }
}
