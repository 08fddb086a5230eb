package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.NUMBER;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.light.Fault;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;

/** Reads what the rig is fed from and played by. */
final class PowerReader {
  private static final ValueKind<Controller> CONTROLLER =
      ValueKind.choice(Controller.all().toArray(Controller[]::new), Controller::id);

  private static final ValueKind<Ends> ENDS = ValueKind.choice(Ends.values(), Ends::key);

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
    Fields f = at.fields().expect("awg", "mm2");
    OptionalInt awg = f.has("awg") ? OptionalInt.of(f.whole("awg", 0)) : OptionalInt.empty();
    OptionalDouble mm2 =
        f.given("mm2", NUMBER).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    Optional<Feed> feed =
        f.build(
            () ->
                Optional.of(
                    new Feed(
                        awg,
                        mm2,
                        f.optional("supplyMm", NUMBER, Feed.DEFAULT_SUPPLY_MM),
                        f.optional("pitchMm", NUMBER, Feed.DEFAULT_PITCH_MM),
                        f.optional("ends", ENDS, Feed.DEFAULT_ENDS))),
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
                        f.optional("usableShare", NUMBER, Battery.DEFAULT_USABLE_SHARE))),
            Optional::empty);
    return closed(f, parent, "battery", battery);
  }

  private static <T> Optional<T> closed(Fields f, Fields parent, String name, Optional<T> value) {
    f.close();
    if (!f.sound()) {
      parent.breaks(name);
    }
    return value;
  }
}
