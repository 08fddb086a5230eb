package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.NUMBER;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.check.Fault;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Regulator;

/** Reads what the rig is fed from and played by. */
final class PowerReader {
  private static final ValueKind<Controller> CONTROLLER =
      ValueKind.choice(Controller.all().toArray(Controller[]::new), Controller::id);

  private static final ValueKind<Ends> ENDS = ValueKind.choice(Ends.values(), Ends::key);
  private static final ValueKind<Regulator> REGULATOR =
      ValueKind.choice(Regulator.values(), Regulator::key);

  private PowerReader() {}

  /** The controller at its clock. */
  static Optional<Controller> controller(Fields f) {
    Optional<Controller> named = f.given("controller", CONTROLLER);
    if (f.find("clockMegahertz").isEmpty()) {
      return named;
    }
    int clock = f.whole("clockMegahertz", Controller.MIN_MEGAHERTZ);
    if (!f.has("controller")) {
      f.report(
          new Fault(
              "clockMegahertz", Integer.toString(clock), "needs a controller, whose clock it is"),
          References.NONE);
    }
    return f.build(
        () -> named.map(controller -> controller.withClock(OptionalInt.of(clock))),
        Optional::empty);
  }

  static Optional<Feed> feed(Located at, Fields parent) {
    Fields f = at.fields().expect("awg", "mm2", "supplyMm", "pitchMm", "ends", "farSupplyMm");
    f.expect("stripAwg", "stripMm2", "fuseAmps");
    Optional<Conductor> lead = conductor(f, "awg", "mm2");
    if (lead.isEmpty() && f.sound()) {
      f.missing("awg", "needs one of awg and mm2");
    }
    Conductor strip = conductor(f, "stripAwg", "stripMm2").orElse(Feed.DEFAULT_STRIP);
    Optional<Feed> feed =
        f.build(
            () ->
                Optional.of(
                    new Feed(
                        lead.orElse(Feed.DEFAULT_STRIP),
                        f.optional("supplyMm", NUMBER, Feed.DEFAULT_SUPPLY_MM),
                        f.optional("ends", ENDS, Feed.DEFAULT_ENDS),
                        number(f, "farSupplyMm"),
                        strip,
                        f.optional("pitchMm", NUMBER, Feed.DEFAULT_PITCH_MM),
                        number(f, "fuseAmps"))),
            Optional::empty);
    return closed(f, parent, "feed", feed);
  }

  static Optional<Battery> battery(Located at, Fields parent) {
    Fields f = at.fields();
    Optional<Battery> battery =
        f.build(
            () ->
                Optional.of(
                    new Battery(
                        f.required("milliampHours", NUMBER, 1.0),
                        f.optional("usableShare", NUMBER, Battery.DEFAULT_USABLE_SHARE),
                        number(f, "packVolts"),
                        f.optional("regulator", REGULATOR, Battery.DEFAULT_REGULATOR),
                        number(f, "efficiency"),
                        number(f, "fuseAmps"))),
            Optional::empty);
    return closed(f, parent, "battery", battery);
  }

  // By gauge or by area, or not stated; both at once contradict each other.
  private static Optional<Conductor> conductor(Fields f, String awg, String mm2) {
    if (f.has(awg) && f.has(mm2)) {
      f.report(
          new Fault(awg, awg + " and " + mm2, "needs one of " + awg + " and " + mm2),
          References.NONE);
    }
    if (f.has(awg)) {
      return Optional.of(new Conductor.Gauge(f.whole(awg, 0)));
    }
    return f.given(mm2, NUMBER).map(Conductor.Area::new);
  }

  /** A number that may be left out. */
  static OptionalDouble number(Fields f, String name) {
    return f.given(name, NUMBER).map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private static <T> Optional<T> closed(Fields f, Fields parent, String name, Optional<T> value) {
    f.close();
    if (!f.sound()) {
      parent.breaks(name);
    }
    return value;
  }
}
