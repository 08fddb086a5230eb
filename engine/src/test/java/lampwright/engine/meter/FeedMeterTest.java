package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Consumer;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 60 mA white and 1 mA idle a pixel of the type ws2812b (practice). */
class FeedMeterTest {
  private static final PixelType TYPE = BuiltInPixelTypes.find("ws2812b").orElseThrow();

  /** IEC 60028, ohm mm2/m. */
  private static final double COPPER = 0.017241;

  private static List<ChainFeed> measure(
      List<Chain> chains, Optional<Feed> feed, List<byte[]> frames) {
    return measure(5, chains, feed, frames);
  }

  private static List<ChainFeed> measure(
      double supplyVolts, List<Chain> chains, Optional<Feed> feed, List<byte[]> frames) {
    Rig rig =
        new Rig(
            supplyVolts,
            100_000,
            OptionalDouble.empty(),
            new Curve.Linear(),
            ColourMatching.DIRECT,
            false,
            1,
            CurrentCap.OFF,
            false,
            feed,
            Optional.empty(),
            Optional.empty(),
            chains,
            List.of(),
            List.of(),
            List.of());
    FeedMeter meter = new FeedMeter(new FrameLayout(rig));
    Consumer<FrameGauge> show =
        gauge -> {
          for (int i = 0; i < frames.size(); i++) {
            gauge.frame(i, frames.get(i));
          }
        };
    show.accept(meter);
    return meter.feeds(show);
  }

  private static Chain chain(String id, int pixels) {
    return new Chain(id, TYPE, pixels);
  }

  // A frame in which the pixels of some bytes are white.
  private static byte[] frame(int bytes, int from, int end) {
    byte[] frame = new byte[bytes];
    Arrays.fill(frame, from, end, (byte) 255);
    return frame;
  }

  private static Feed lead(int awg) {
    return Feed.of(new Conductor.Gauge(awg));
  }

  /**
   * Two chains lit in turn, 60 pixels and 8: in its own worst frame the first draws 60 x 61 mA =
   * 3.66 A, the second 8 x 61 mA = 0.488 A. By hand through 2 x 0.3 m of AWG 28 (0.2129 ohm/m by
   * handbook tables): 0.468 V and 0.0623 V before the first pixels.
   */
  @Test
  void everyChainHasItsOwnWorstFrame() {
    List<ChainFeed> feeds =
        measure(
            List.of(chain("long", 60), chain("short", 8)),
            Optional.of(Feed.PITCH_MM.with(lead(28), 0.0)),
            List.of(frame(204, 180, 204), frame(204, 0, 180), frame(204, 0, 0)));

    assertThat(feeds.get(0).lead().amps()).isCloseTo(3.66, within(1e-9));
    assertThat(feeds.get(0).lead().frame()).isEqualTo(1);
    assertThat(feeds.get(0).lowestVolts()).isCloseTo(5 - 0.468, within(0.001));
    assertThat(feeds.get(0).lowestFrame()).isEqualTo(1);
    assertThat(feeds.get(0).lead().isOver()).isTrue();
    assertThat(feeds.get(1).lead().amps()).isCloseTo(0.488, within(1e-9));
    assertThat(feeds.get(1).lead().frame()).isZero();
    assertThat(feeds.get(1).lowestVolts()).isCloseTo(5 - 0.0623, within(0.001));
    assertThat(feeds.get(1).lowestFrame()).isZero();
  }

  /** Each pixel has its least in the frame in which it, and what lies beyond, draws most. */
  @Test
  void everyPixelHasItsOwnLeastVoltage() {
    Feed feed = Feed.PITCH_MM.with(Feed.STRIP.with(lead(28), new Conductor.Gauge(30)), 100.0);
    List<byte[]> frames = List.of(frame(30, 0, 15), frame(30, 15, 30));
    ChainFeed both = measure(List.of(chain("c", 10)), Optional.of(feed), frames).get(0);
    for (int pixel = 0; pixel < 10; pixel++) {
      double least = Double.MAX_VALUE;
      for (byte[] frame : frames) {
        least =
            Math.min(
                least,
                measure(List.of(chain("c", 10)), Optional.of(feed), List.of(frame))
                    .get(0)
                    .leastVolts()
                    .get(pixel));
      }
      assertThat(both.leastVolts().get(pixel)).isEqualTo(least);
    }
  }

  @Property(tries = 200, seed = "91")
  void toldVoltageIsTheLeastOverAllFrames(
      @ForAll @IntRange(min = 1, max = 24) int pixels,
      @ForAll @IntRange(min = 1, max = 12) int count,
      @ForAll @DoubleRange(min = 0.02, max = 2) double leadMm2,
      @ForAll @DoubleRange(min = 0.02, max = 2) double stripMm2,
      @ForAll @DoubleRange(min = 10, max = 3000) double leadMm,
      @ForAll @DoubleRange(min = 10, max = 3000) double farMm,
      @ForAll @DoubleRange(min = 1, max = 200) double pitchMm,
      @ForAll boolean bothEnds,
      @ForAll Random random) {
    Feed feed =
        new Feed(
            new Conductor.Area(leadMm2),
            leadMm,
            bothEnds ? Ends.BOTH : Ends.ONE,
            OptionalDouble.of(farMm),
            new Conductor.Area(stripMm2),
            pitchMm,
            OptionalDouble.empty());
    List<byte[]> frames = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      byte[] frame = new byte[3 * pixels];
      random.nextBytes(frame);
      frames.add(frame);
      // The same frame twice, and again later, is no news.
      frames.add(frames.get(random.nextInt(frames.size())));
    }
    ChainFeed told = measure(List.of(chain("c", pixels)), Optional.of(feed), frames).get(0);

    double near = 2 * COPPER / leadMm2 * leadMm / 1000;
    double between = 2 * COPPER / stripMm2 * pitchMm / 1000;
    double far = bothEnds ? 2 * COPPER / leadMm2 * farMm / 1000 : -1;
    double[] least = new double[pixels];
    Arrays.fill(least, Double.MAX_VALUE);
    double lead = 0;
    double strip = 0;
    for (byte[] frame : frames) {
      double[] amps = new double[pixels];
      for (int i = 0; i < frame.length; i++) {
        amps[i / 3] += 0.020 * (frame[i] & 0xFF) / 255;
      }
      for (int i = 0; i < pixels; i++) {
        amps[i] += 0.001;
      }
      double[] volts = DenseLadder.volts(5, near, between, far, amps);
      for (int i = 0; i < pixels; i++) {
        least[i] = Math.min(least[i], volts[i]);
        if (i > 0) {
          strip = Math.max(strip, Math.abs(volts[i] - volts[i - 1]) / between);
        }
      }
      lead = Math.max(lead, (5 - volts[0]) / near);
      lead = bothEnds ? Math.max(lead, (5 - volts[pixels - 1]) / far) : lead;
    }
    for (int i = 0; i < pixels; i++) {
      assertThat(told.leastVolts().get(i)).isCloseTo(least[i], within(1e-7));
    }
    assertThat(told.lowestVolts())
        .isCloseTo(Arrays.stream(least).min().orElseThrow(), within(1e-7));
    assertThat(told.lead().amps()).isCloseTo(lead, within(1e-7));
    assertThat(told.strip().amps()).isCloseTo(strip, within(1e-6));
  }

  /**
   * Where the second lead is not stated it runs along the chain: 0.3 m and 59 x 17 mm. A lead as
   * short as the first would feed the far end too well.
   */
  @Test
  void forgottenSecondLeadIsNoShortOne() {
    Feed feed = Feed.ENDS.with(lead(20), Ends.BOTH);
    List<byte[]> white = List.of(frame(180, 0, 180));
    double usual = lowest(feed, white);
    double stated = lowest(Feed.FAR_SUPPLY_MM.with(feed, OptionalDouble.of(300 + 59 * 17)), white);
    double shorter = lowest(Feed.FAR_SUPPLY_MM.with(feed, OptionalDouble.of(300)), white);
    assertThat(usual).isEqualTo(stated).isLessThan(shorter);
  }

  private static double lowest(Feed feed, List<byte[]> frames) {
    return measure(List.of(chain("c", 60)), Optional.of(feed), frames).get(0).lowestVolts();
  }

  /**
   * A thick lead does nothing for the strip's own copper. By hand: 60 pixels of 61 mA along 0.1 mm2
   * (0.3448 ohm/m for both conductors), 17 mm apart: 0.061 x 0.00586 x 60 x 59 / 2 = 0.633 V.
   */
  @Test
  void stripAndLeadAreApart() {
    Feed feed = Feed.SUPPLY_MM.with(Feed.of(new Conductor.Area(120)), 0.0);
    assertThat(lowest(feed, List.of(frame(180, 0, 180)))).isCloseTo(5 - 0.633, within(0.001));
    Feed soldered = Feed.STRIP.with(feed, new Conductor.Area(10));
    assertThat(lowest(soldered, List.of(frame(180, 0, 180)))).isCloseTo(5 - 0.00633, within(1e-4));
  }

  @Test
  void chainMayStateWiresOfItsOwn() {
    List<ChainFeed> feeds =
        measure(
            List.of(
                chain("roof", 10),
                Chain.FEED.with(chain("rear", 10), Optional.of(lead(30))),
                chain("x", 1)),
            Optional.empty(),
            List.of(frame(63, 0, 63)));
    assertThat(feeds).hasSize(1);
    assertThat(feeds.get(0).chain()).isEqualTo("rear");
    assertThat(feeds.get(0).lead().limitAmps()).isCloseTo(0.255, within(0.001));
  }

  /**
   * 60 white pixels at one end of a strip: 3.66 A. What is recommended keeps voltage, heat (5
   * A/mm2, practice) and fuse (1.25 of the peak) at once; the strip's 0.1 mm2 may carry 2.56 A
   * (IPC-2221), so that only feeding at both ends is left.
   */
  @Test
  void remedyKeepsEveryLimitAtOnce() {
    ChainFeed feed =
        measure(List.of(chain("c", 60)), Optional.of(lead(28)), List.of(frame(180, 0, 180))).get(0);
    assertThat(feed.lead().isOver()).isTrue();
    assertThat(feed.strip().isOver()).isTrue();
    assertThat(feed.fuse()).isEmpty();
    assertThat(feed.remedies()).hasSize(1);
    ChainFeed.Remedy remedy = feed.remedies().get(0);
    assertThat(remedy.ends()).isEqualTo(Ends.BOTH);
    // Half of 3.66 A is 1.83 A, somewhat more through the shorter lead: 1.25 of it asks for 3 A,
    // and
    // that for 0.6 mm2. Handbook areas: AWG 20 0.518 mm2, AWG 18 0.823 mm2.
    assertThat(remedy.leadAmps()).isBetween(1.83, 2.4);
    assertThat(remedy.awg()).isEqualTo(18);
    assertThat(remedy.lowestVolts()).isGreaterThanOrEqualTo(feed.neededVolts());

    ChainFeed wired =
        measure(
                List.of(chain("c", 60)),
                Optional.of(Feed.ENDS.with(lead(18), Ends.BOTH)),
                List.of(frame(180, 0, 180)))
            .get(0);
    assertThat(wired.remedies()).isEmpty();
    assertThat(wired.lowestVolts()).isEqualTo(remedy.lowestVolts());
  }

  /** With wire from pixel to pixel that bears the current, a thicker lead alone does as well. */
  @Test
  void thickerLeadIsOfferedWhereItHelps() {
    Feed feed = Feed.SUPPLY_MM.with(Feed.STRIP.with(lead(28), new Conductor.Gauge(14)), 500.0);
    ChainFeed found =
        measure(List.of(chain("c", 60)), Optional.of(feed), List.of(frame(180, 0, 180))).get(0);
    assertThat(found.remedies()).extracting(ChainFeed.Remedy::ends).containsExactly(Ends.values());
    // 3.66 A asks for a fuse of 5 A, and that for 1 mm2: AWG 16 is 1.31 mm2, AWG 18 0.823 mm2.
    assertThat(found.remedies().get(0).awg()).isEqualTo(16);
    assertThat(found.remedies().get(0).fuseAmps()).hasValue(5);
  }

  /** 20 white pixels of 61 mA draw 1.22 A, whatever the chain beside them needs. */
  @Test
  void everyChainHasItsOwnRemedies() {
    Feed feed = Feed.SUPPLY_MM.with(Feed.STRIP.with(lead(28), new Conductor.Gauge(14)), 500.0);
    List<ChainFeed> found =
        measure(
            List.of(chain("long", 60), chain("short", 20)),
            Optional.of(feed),
            List.of(frame(240, 0, 240)));
    assertThat(found.get(0).remedies().get(0).leadAmps()).isCloseTo(3.66, within(1e-9));
    assertThat(found.get(1).remedies().get(0).leadAmps()).isCloseTo(1.22, within(1e-9));
    assertThat(found.get(1).remedies().get(0).fuseAmps()).hasValue(2);
  }

  /**
   * The WS2812B's data sheet states its behaviour for 4.5 V and more; below 3.5 V it fails. Of a
   * supply that has no more than 4.5 V the wires can't be asked to keep it.
   */
  @ParameterizedTest
  @CsvSource({"5, 4.5", "4.6, 4.5", "4.5, 3.5", "4, 3.5"})
  void pixelsNeedWhatTheSupplyCanGive(double supplyVolts, double neededVolts) {
    List<byte[]> white = List.of(frame(3, 0, 3));
    ChainFeed feed =
        measure(supplyVolts, List.of(chain("c", 1)), Optional.of(lead(24)), white).get(0);
    assertThat(feed.neededVolts()).isEqualTo(neededVolts);
    assertThat(feed.isShort()).isFalse();
  }

  @Test
  void onePixelHasNoStrip() {
    ChainFeed feed =
        measure(List.of(chain("c", 1)), Optional.of(lead(24)), List.of(frame(3, 0, 3))).get(0);
    assertThat(feed.strip().amps()).isZero();
    assertThat(feed.lead().amps()).isCloseTo(0.061, within(1e-12));
  }
}
