package lampwright.engine.review;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.meter.ColourBoundary;
import lampwright.engine.meter.ColourPlace;
import lampwright.engine.meter.DitherFlicker;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashCaution.Worst;
import lampwright.engine.meter.FlashRange;
import lampwright.engine.meter.FlashSpot;
import lampwright.engine.meter.FlashTrain;
import lampwright.engine.meter.LampCaution;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.RateVerdict;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.scene.Scene;

/** Findings on how lamps flash and in what colour they shine. */
final class LightFindings implements Reviewer {
  private static final String WCAG =
      TradeNumbers.get("flash caution", "flashes in one second").citation();

  /** So far outside a boundary, in x y, a colour still looks like one inside. */
  private static final double HARDLY_SEEN =
      TradeNumbers.number("colour difference", "barely visible outside a boundary");

  /** So far outside it is worth a note, and no caution. */
  private static final double NEAR = TradeNumbers.number("colour difference", "near a boundary");

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    // The lamps as they were measured: the project may be a step ahead.
    new OfScene(report, found).all(report.table().layout().rig().lamps());
  }

  private record OfScene(SceneReport report, Consumer<Finding> found) {
    void all(List<Lamp> lamps) {
      for (int i = 0; i < lamps.size(); i++) {
        Lamp lamp = lamps.get(i);
        LightReport light = report.measure().lights().get(i);
        LampCaution caution = light.caution();
        flashes(
            Code.FLASH_GENERAL,
            lamp,
            light.worstGeneral(),
            caution.whole().general(),
            caution.general());
        flashes(Code.FLASH_RED, lamp, light.worstRed(), caution.whole().red(), caution.red());
        light.train().ifPresent(train -> rate(lamp, train));
        colour(lamp, light);
        light.dither().filter(DitherFlicker::isCoarse).ifPresent(d -> dither(lamp, d));
      }
      model(Code.FLASH_MODEL, report.measure().worstGeneral());
      model(Code.FLASH_MODEL_RED, report.measure().worstRed());
    }

    private Scene scene() {
      return report.table().scene();
    }

    private double framesPerSecond() {
      return report.table().framesPerSecond();
    }

    // One finding per lamp: of the whole lamp, or of its worst pixel where that is worse.
    private void flashes(
        Code code, Lamp lamp, FlashSpot spot, Worst whole, LampCaution.OfPixel pixel) {
      if (spot.worst().passes()) {
        return;
      }
      Finding.Draft draft = draft(code, Subject.OneLamp.of(lamp), spot.worst());
      if (lamp.fitting().lights() == 1) {
        draft.with("part", Figure.words("whole lamp"));
      } else {
        draft
            .with("part", Figure.words(part(spot.pixel().isPresent(), whole, pixel)))
            .with("pixel", Figure.count(pixel.pixel()))
            .with("pixelFlashes", Figure.count(pixel.worst().flashes()))
            .with("wholeFlashes", Figure.count(whole.flashes()));
      }
      found.accept(draft.make());
    }

    private static String part(boolean ofPixel, Worst whole, LampCaution.OfPixel pixel) {
      String one = "pixel " + pixel.pixel();
      if (ofPixel) {
        return one + "; whole lamp " + whole.flashes();
      }
      return pixel.worst().flashes() == whole.flashes()
          ? "whole lamp"
          : "whole lamp; " + one + " alone " + pixel.worst().flashes();
    }

    // What a lamp does by itself is not told again of the model.
    private void model(Code code, FlashSpot spot) {
      if (!spot.worst().passes() && spot.lamp().isEmpty()) {
        found.accept(draft(code, new Subject.WholeModel(), spot.worst()).make());
      }
    }

    private Finding.Draft draft(Code code, Subject subject, Worst worst) {
      return Finding.of(code, subject)
          .with("flashes", Figure.count(worst.flashes()))
          .with("limit", Figure.count(FlashCaution.MOST_FLASHES, Unit.PER_SECOND))
          .in(scene(), (int) Math.round(worst.startSeconds() * framesPerSecond()))
          .source(WCAG);
    }

    private void dither(Lamp lamp, DitherFlicker flicker) {
      found.accept(
          Finding.of(Code.DITHER_FLICKER, Subject.OneLamp.of(lamp))
              .with("pixel", Figure.count(flicker.pixel()))
              .with("low", Figure.count(flicker.low()))
              .with("high", Figure.count(flicker.high()))
              .with("rate", Figure.count(flicker.hertz(), Unit.HERTZ))
              .with("share", Figure.of(100 * flicker.share(), 1, Unit.PERCENT))
              .with("limit", Figure.percent(DitherFlicker.LEAST_STEP))
              .in(scene())
              .make());
    }

    private void rate(Lamp lamp, FlashTrain train) {
      if (train.groupsPerMinute().isEmpty()) {
        return;
      }
      double perMinute = train.groupsPerMinute().getAsDouble();
      Optional<RateVerdict> verdict = RateVerdict.of(lamp.function(), perMinute);
      if (verdict.isEmpty()) {
        return;
      }
      if (!verdict.get().likeReal()) {
        found.accept(
            Finding.of(Code.FLASH_RATE, Subject.OneLamp.of(lamp))
                .with("rate", Figure.words(train.rateWords()))
                .with("perMinute", Figure.of(perMinute, 1, Unit.PER_MINUTE))
                .with("verdict", Figure.words(verdict.get().words()))
                .in(scene())
                .source(verdict.get().range().source())
                .make());
      } else if (verdict.get().range() == FlashRange.SPECIAL_WARNING) {
        onAndOff(lamp, train, perMinute);
      }
    }

    // UN Regulation 65, annex 5: on at most 0.4 of the period, off at least 0.1 s; a
    // group of flashes counts as one.
    private void onAndOff(Lamp lamp, FlashTrain train, double perMinute) {
      double period = 60 / perMinute;
      // A flash is known to a frame, so that what is a frame over may be none.
      double frame = 1 / framesPerSecond();
      double on = train.groupOnSeconds();
      double off = train.groupOffSeconds();
      if (on - frame > FlashRange.SPECIAL_WARNING_ON_SHARE * period) {
        found.accept(
            Finding.of(Code.WARNING_ON_TIME, Subject.OneLamp.of(lamp))
                .with("on", Figure.of(on, 2, Unit.SECONDS))
                .with("share", Figure.percent(on / period))
                .with("limit", Figure.percent(FlashRange.SPECIAL_WARNING_ON_SHARE))
                .in(scene())
                .source(FlashRange.SPECIAL_WARNING_TIMES_SOURCE)
                .make());
      }
      if (off + frame < FlashRange.SPECIAL_WARNING_OFF_SECONDS) {
        found.accept(
            Finding.of(Code.WARNING_OFF_TIME, Subject.OneLamp.of(lamp))
                .with("off", Figure.of(off, 2, Unit.SECONDS))
                .with("limit", Figure.of(FlashRange.SPECIAL_WARNING_OFF_SECONDS, 1, Unit.SECONDS))
                .in(scene())
                .source(FlashRange.SPECIAL_WARNING_TIMES_SOURCE)
                .make());
      }
    }

    private void colour(Lamp lamp, LightReport light) {
      // The colour of a plain LED is only the one that it is drawn in.
      if (lamp.fitting() instanceof Fitting.Output || light.brightest().isEmpty()) {
        return;
      }
      Chromaticity point = light.brightest().get();
      if (lamp.function() == LampFunction.SPECIAL_WARNING) {
        reserved(lamp, point);
      }
      Optional<ColourPlace> place = ColourPlace.of(lamp.function(), point);
      if (place.isEmpty() || place.get().margin() > -HARDLY_SEEN) {
        return;
      }
      Set<ColourBoundary> allowed = ColourBoundary.ofFunction(lamp.function().key());
      Optional<ColourBoundary> other =
          Arrays.stream(ColourBoundary.values()).filter(b -> b.contains(point)).findFirst();
      boolean near = place.get().margin() >= -NEAR;
      Code code =
          near
              ? Code.COLOUR_NEAR_BOUNDARY
              : other.isPresent() ? Code.COLOUR_OTHER : Code.COLOUR_OUTSIDE;
      Finding.Draft draft =
          Finding.of(code, Subject.OneLamp.of(lamp))
              .with("x", coordinate(point.x()))
              .with("y", coordinate(point.y()))
              .with("distance", coordinate(-place.get().margin()))
              .with("nearest", Figure.words(place.get().boundary().words()))
              .with("towards", Figure.words(place.get().towards()))
              .with(
                  "expected",
                  Figure.words(
                      allowed.stream()
                          .map(ColourBoundary::words)
                          .sorted()
                          .collect(Collectors.joining(" or "))))
              .in(scene(), light.brightestFrame())
              .source(place.get().boundary().source());
      other.ifPresent(colour -> draft.with("colour", Figure.words(colour.words())));
      found.accept(draft.make());
    }

    private void reserved(Lamp lamp, Chromaticity point) {
      for (ColourBoundary colour : List.of(ColourBoundary.BLUE, ColourBoundary.RED)) {
        if (colour.contains(point)) {
          found.accept(
              Finding.of(Code.RESERVED_COLOUR, Subject.OneLamp.of(lamp))
                  .with("colour", Figure.words(colour.words()))
                  .source("national road law")
                  .make());
        }
      }
    }

    private static Figure coordinate(double value) {
      return Figure.of(value, 4, Unit.NONE);
    }
  }
}
