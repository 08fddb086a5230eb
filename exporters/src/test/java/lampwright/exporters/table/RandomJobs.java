package lampwright.exporters.table;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.exporters.ExportJob;
import lampwright.exporters.TestJobs;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Small rigs and scenes of every shape. */
final class RandomJobs {
  private RandomJobs() {}

  static Arbitrary<ExportJob> jobs() {
    Arbitrary<Rig> rigs =
        Combinators.combine(
                Arbitraries.integers().between(-6, 6).filter(n -> n != 0).list().ofMaxSize(4),
                Arbitraries.integers().between(0, 3),
                Arbitraries.of(true, false))
            .as(RandomJobs::rig);
    Arbitrary<String> ids =
        Arbitraries.strings()
            .withCharRange('a', 'z')
            .withChars('-', '0', '9')
            .ofMinLength(1)
            .ofMaxLength(40);
    Arbitrary<BigDecimal> rates =
        Arbitraries.bigDecimals().between(BigDecimal.ONE, BigDecimal.valueOf(1000)).ofScale(3);
    Arbitrary<String> names = Arbitraries.strings().ofMaxLength(40);
    return Combinators.combine(
            rigs,
            ids,
            names,
            rates,
            Arbitraries.integers().between(1, 60),
            Arbitraries.longs().between(0, 1000))
        .as(RandomJobs::job);
  }

  /** One of them. */
  static ExportJob job(Random random) {
    List<Integer> chainPixels =
        random
            .ints(random.nextInt(5), 1, 7)
            .map(n -> random.nextBoolean() ? n : -n)
            .boxed()
            .toList();
    Rig rig = rig(chainPixels, random.nextInt(4), random.nextInt(4) > 0);
    String letters = "abcxyz019--";
    StringBuilder id = new StringBuilder();
    random
        .ints(1 + random.nextInt(40), 0, letters.length())
        .forEach(i -> id.append(letters.charAt(i)));
    StringBuilder name = new StringBuilder();
    random.ints(random.nextInt(40), 0, 0x250).forEach(name::appendCodePoint);
    BigDecimal rate = BigDecimal.valueOf(1000 + random.nextInt(999_001), 3);
    return job(
        rig, id.toString(), name.toString(), rate, 1 + random.nextInt(60), random.nextInt(1000));
  }

  // A chain of each number: RGBW of so many pixels above 0, RGB of so many below.
  private static Rig rig(List<Integer> chainPixels, int outputCount, boolean lit) {
    List<Chain> chains = new ArrayList<>();
    List<DriverOutput> outputs = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    for (int pixels : chainPixels) {
      String id = "c" + chains.size();
      int count = Math.abs(pixels);
      chains.add(pixels > 0 ? TestJobs.rgbw(id, count) : TestJobs.rgb(id, count));
      if (lit) {
        lamps.add(TestJobs.lamp(id, TestJobs.run(id, count / 2, count - count / 2)));
      }
    }
    // A rig needs at least one chain or output.
    int least = chains.isEmpty() ? 1 : 0;
    for (int o = 0; o < Math.max(least, outputCount); o++) {
      outputs.add(DriverOutput.of("o" + o));
      if (lit) {
        lamps.add(Lamp.ofOutput("o" + o, "o" + o));
      }
    }
    return Rig.of(chains, outputs, lamps);
  }

  private static ExportJob job(
      Rig rig, String id, String name, BigDecimal rate, int frames, long seed) {
    List<Track> tracks = new ArrayList<>();
    if (!rig.lamps().isEmpty()) {
      String[] lamps = rig.lamps().stream().map(Lamp::id).toArray(String[]::new);
      tracks.add(TestJobs.track(TestJobs.cycle(1 + seed, 0.7), 86_400_000, lamps));
      Look look = new Look(new Colour.Drive(0.9, 0.5, 0.1, 1), 1);
      tracks.add(TestJobs.track(new Flicker(look, seed, 1, BigDecimal.TEN), 500, lamps[0]));
    }
    BigDecimal lengthMs =
        BigDecimal.valueOf(frames * 1000L)
            .divide(rate, 3, RoundingMode.HALF_UP)
            .max(BigDecimal.ONE);
    Scene scene = new Scene(id, lengthMs, rate, seed % 2 == 0, Dither.OFF, tracks);
    return TestJobs.job(name, rig, scene);
  }
}
