package lampwright.engine.meter;

import static lampwright.engine.meter.Figures.fixed;
import static lampwright.engine.meter.Figures.percent;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;

/** Advice on how lamps flash and in what colour they shine. */
final class LightAdvice {
  private static final String WCAG = "W3C WCAG 2.2, success criterion 2.3.1";

  /** So far outside a boundary, in x y, a colour still looks like one inside (our choice). */
  private static final double HARDLY_SEEN = 0.005;

  private final List<Advice> advice = new ArrayList<>();
  private final double framesPerSecond;

  private LightAdvice(double framesPerSecond) {
    this.framesPerSecond = framesPerSecond;
  }

  static List<Advice> of(FrameTable table, SceneMeasure measure) {
    LightAdvice found = new LightAdvice(table.framesPerSecond());
    found.caution(new Subject.WholeModel(), measure.model().caution());
    List<Lamp> lamps = table.layout().rig().lamps();
    for (int i = 0; i < lamps.size(); i++) {
      LightReport light = measure.lights().get(i);
      found.caution(subject(lamps.get(i)), light.caution());
      light.train().ifPresent(train -> found.rate(light.id(), train, lamps));
      found.colour(lamps.get(i), light);
    }
    return found.advice;
  }

  private static Subject subject(Lamp lamp) {
    return new Subject.OneLamp(lamp.id());
  }

  private void caution(Subject subject, FlashCaution caution) {
    worst(subject, "flashes", caution.general());
    worst(subject, "flashes to or from saturated red", caution.red());
  }

  private void worst(Subject subject, String what, FlashCaution.Worst worst) {
    if (worst.passes()) {
      return;
    }
    advice.add(
        new Advice(
            Weight.HARM,
            subject,
            OptionalInt.of((int) Math.round(worst.startSeconds() * framesPerSecond)),
            worst.flashes()
                + " "
                + what
                + " in the second from "
                + fixed(worst.startSeconds(), 2)
                + " s on",
            "three are safe",
            WCAG,
            "flash more slowly or in smaller groups; flashing light can trigger seizures in people"
                + " with photosensitive epilepsy: warn before you show it"));
  }

  private void rate(String id, FlashTrain train, List<Lamp> lamps) {
    Lamp lamp = lamps.stream().filter(l -> l.id().equals(id)).findFirst().orElseThrow();
    if (train.groupsPerMinute().isEmpty()) {
      return;
    }
    double perMinute = train.groupsPerMinute().getAsDouble();
    Optional<RateVerdict> verdict = RateVerdict.of(lamp.function(), perMinute);
    if (verdict.isEmpty()) {
      return;
    }
    if (!verdict.get().likeReal()) {
      advice.add(
          new Advice(
              Weight.LOOKS,
              subject(lamp),
              "flashes " + fixed(perMinute, 1) + " times a minute",
              verdict.get().words(),
              verdict.get().range().source(),
              "change its rate or period"));
    } else if (verdict.get().range() == FlashRange.SPECIAL_WARNING) {
      onAndOff(lamp, train, perMinute);
    }
  }

  // UN Regulation 65, annex 5 (from memory): on at most 0.4 of the period, off at least 0.1 s.
  private void onAndOff(Lamp lamp, FlashTrain train, double perMinute) {
    double period = 60 / perMinute;
    // A flash is known to a frame, so that what is a frame over may be none.
    double frame = 1 / framesPerSecond;
    double on =
        train.onSeconds() * train.flashesPerGroup()
            + train.gapSeconds() * (train.flashesPerGroup() - 1);
    if (on - frame > FlashRange.SPECIAL_WARNING_ON_SHARE * period) {
      advice.add(
          new Advice(
              Weight.LOOKS,
              subject(lamp),
              "is on for " + fixed(on, 2) + " s, " + percent(on / period) + " of its period",
              "a real special warning lamp is on for at most 40 %",
              "UN Regulation 65, annex 5 (from memory)",
              "make its flash shorter or its beam narrower"));
    }
    if (train.offSeconds() + frame < FlashRange.SPECIAL_WARNING_OFF_SECONDS) {
      advice.add(
          new Advice(
              Weight.LOOKS,
              subject(lamp),
              "is off for " + fixed(train.offSeconds(), 2) + " s between flashes",
              "a real special warning lamp is off for at least 0.1 s",
              "UN Regulation 65, annex 5 (from memory)",
              "make the gap longer"));
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
    String colours =
        ColourBoundary.ofFunction(lamp.function().key()).stream()
            .map(ColourBoundary::words)
            .sorted()
            .collect(Collectors.joining(" or "));
    advice.add(
        new Advice(
            Weight.LOOKS,
            subject(lamp),
            OptionalInt.of(light.brightestFrame()),
            "shines at x "
                + fixed(point.x(), 4)
                + " y "
                + fixed(point.y(), 4)
                + " in frame "
                + light.brightestFrame()
                + ", "
                + fixed(-place.get().margin(), 4)
                + " outside "
                + place.get().boundary().words()
                + " towards "
                + place.get().towards(),
            "a real one shines " + colours,
            place.get().boundary().source(),
            "use its signal colour; the nearest that these emitters mix may still lie outside"));
  }

  private void reserved(Lamp lamp, Chromaticity point) {
    for (ColourBoundary colour : List.of(ColourBoundary.BLUE, ColourBoundary.RED)) {
      if (colour.contains(point)) {
        advice.add(
            new Advice(
                Weight.HARM,
                subject(lamp),
                "is a " + colour.words() + " warning lamp",
                "on a real vehicle on a road such light is reserved by law in most places",
                "national road law",
                "for models only; local law and licensed practice decide"));
      }
    }
  }
}
