package lampwright.engine.review;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.meter.ColourBoundary;
import lampwright.engine.meter.ColourPlace;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashRange;
import lampwright.engine.meter.FlashTrain;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.RateVerdict;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.project.Project;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.scene.Scene;

/** Findings on how lamps flash and in what colour they shine. */
final class LightFindings implements Reviewer {
  private static final String WCAG = "W3C WCAG 2.2, 2.3.1";

  /** So far outside a boundary, in x y, a colour still looks like one inside (our choice). */
  private static final double HARDLY_SEEN = 0.005;

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    new OfScene(report, found).all(project.rig().lamps());
  }

  private record OfScene(SceneReport report, Consumer<Finding> found) {
    void all(List<Lamp> lamps) {
      caution(new Subject.WholeModel(), report.measure().model().caution());
      for (int i = 0; i < lamps.size(); i++) {
        Lamp lamp = lamps.get(i);
        LightReport light = report.measure().lights().get(i);
        caution(Subject.OneLamp.of(lamp), light.caution());
        light.train().ifPresent(train -> rate(lamp, train));
        colour(lamp, light);
      }
    }

    private Scene scene() {
      return report.table().scene();
    }

    private double framesPerSecond() {
      return report.table().framesPerSecond();
    }

    private void caution(Subject subject, FlashCaution caution) {
      worst(Code.FLASH_GENERAL, subject, caution.general());
      worst(Code.FLASH_RED, subject, caution.red());
    }

    private void worst(Code code, Subject subject, FlashCaution.Worst worst) {
      if (worst.passes()) {
        return;
      }
      found.accept(
          Finding.of(code, subject)
              .with("flashes", Figure.count(worst.flashes()))
              .with("limit", Figure.count(FlashCaution.MOST_FLASHES, Unit.PER_SECOND))
              .in(scene(), (int) Math.round(worst.startSeconds() * framesPerSecond()))
              .source(WCAG)
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
                .with("rate", Figure.of(perMinute, 1, Unit.PER_MINUTE))
                .with("verdict", Figure.words(verdict.get().words()))
                .in(scene())
                .source(verdict.get().range().source())
                .make());
      } else if (verdict.get().range() == FlashRange.SPECIAL_WARNING) {
        onAndOff(lamp, train, perMinute);
      }
    }

    // UN Regulation 65, annex 5 (from memory): on at most 0.4 of the period, off at least 0.1 s.
    private void onAndOff(Lamp lamp, FlashTrain train, double perMinute) {
      double period = 60 / perMinute;
      // A flash is known to a frame, so that what is a frame over may be none.
      double frame = 1 / framesPerSecond();
      double on =
          train.onSeconds() * train.flashesPerGroup()
              + train.gapSeconds() * (train.flashesPerGroup() - 1);
      if (on - frame > FlashRange.SPECIAL_WARNING_ON_SHARE * period) {
        found.accept(
            Finding.of(Code.WARNING_ON_TIME, Subject.OneLamp.of(lamp))
                .with("on", Figure.of(on, 2, Unit.SECONDS))
                .with("share", Figure.percent(on / period))
                .with("limit", Figure.percent(FlashRange.SPECIAL_WARNING_ON_SHARE))
                .in(scene())
                .source("UN Regulation 65, annex 5")
                .make());
      }
      if (train.offSeconds() + frame < FlashRange.SPECIAL_WARNING_OFF_SECONDS) {
        found.accept(
            Finding.of(Code.WARNING_OFF_TIME, Subject.OneLamp.of(lamp))
                .with("off", Figure.of(train.offSeconds(), 2, Unit.SECONDS))
                .with("limit", Figure.of(FlashRange.SPECIAL_WARNING_OFF_SECONDS, 1, Unit.SECONDS))
                .in(scene())
                .source("UN Regulation 65, annex 5")
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
      String expected =
          ColourBoundary.ofFunction(lamp.function().key()).stream()
              .map(ColourBoundary::words)
              .sorted()
              .collect(Collectors.joining(" or "));
      found.accept(
          Finding.of(Code.COLOUR_OUTSIDE, Subject.OneLamp.of(lamp))
              .with("x", coordinate(point.x()))
              .with("y", coordinate(point.y()))
              .with("distance", coordinate(-place.get().margin()))
              .with("nearest", Figure.words(place.get().boundary().words()))
              .with("towards", Figure.words(place.get().towards()))
              .with("expected", Figure.words(expected))
              .in(scene(), light.brightestFrame())
              .source(place.get().boundary().source())
              .make());
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
