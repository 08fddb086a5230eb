package lampwright.engine.meter;

import static lampwright.engine.meter.Figures.fixed;
import static lampwright.engine.meter.Figures.whole;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/** Advice on supply, wires and resistors. */
final class SupplyAdvice {
  private final Rig rig;
  private final List<Advice> advice = new ArrayList<>();

  private SupplyAdvice(Rig rig) {
    this.rig = rig;
  }

  static List<Advice> of(
      FrameTable table,
      SceneMeasure measure,
      List<Volts> volts,
      List<SceneReport.OutputResistor> resistors) {
    SupplyAdvice found = new SupplyAdvice(table.layout().rig());
    found.current(table, measure.supply());
    found.supplyVoltage();
    volts.forEach(found::chainVoltage);
    resistors.forEach(found::resistor);
    found.battery();
    return found.advice;
  }

  private void current(FrameTable table, Draw supply) {
    double limit = rig.supplyLimitMilliamps();
    if (supply.peakMilliamps() <= limit) {
      return;
    }
    double idle = new FrameCurrent(table.layout()).idleMilliamps();
    boolean dark = idle > limit;
    double cap =
        rig.brightnessCap() * (limit - idle) / Math.max(1e-9, supply.peakMilliamps() - idle);
    String remedy =
        dark
            ? "its dark pixels alone draw " + whole(idle) + " mA: take a larger supply"
            : "set currentCap to scene or frame, or brightnessCap to "
                + fixed(Math.floor(cap * 1000) / 1000, 3)
                + ", or take a larger supply; an overloaded supply sags or overheats";
    addAt(
        supply.peakFrame(),
        Weight.HARM,
        new Subject.Supply(),
        "draws "
            + whole(supply.peakMilliamps())
            + " mA in frame "
            + supply.peakFrame()
            + ", at "
            + fixed(supply.peakFrame() / table.framesPerSecond(), 3)
            + " s",
        "the limit is " + whole(limit) + " mA",
        "the rig's supplyLimitMilliamps",
        remedy);
  }

  private void supplyVoltage() {
    Set<PixelType> seen = new HashSet<>();
    for (Chain chain : rig.chains()) {
      if (!seen.add(chain.type())) {
        continue;
      }
      SupplyNeeds needs = chain.type().needs();
      double supply = rig.supplyVolts();
      String source = "pixel type " + chain.type().id();
      if (supply > needs.maxVolts()) {
        add(
            Weight.HARM,
            new Subject.OneChain(chain.id()),
            "is fed " + fixed(supply, 2) + " V",
            "its pixels stand " + fixed(needs.maxVolts(), 2) + " V at most",
            source,
            "put a regulator of " + fixed(chain.type().volts(), 1) + " V between");
      } else if (supply < needs.minVolts()) {
        add(
            Weight.FAILS,
            new Subject.OneChain(chain.id()),
            "is fed " + fixed(supply, 2) + " V",
            "its pixels need " + fixed(needs.minVolts(), 2) + " V at least",
            source,
            "take a supply or regulator of " + fixed(chain.type().volts(), 1) + " V");
      } else if (rig.dataVolts() < needs.inputHighVolts(supply)) {
        add(
            Weight.FAILS,
            new Subject.OneChain(chain.id()),
            "is driven with " + fixed(rig.dataVolts(), 2) + " V",
            "its data input needs " + fixed(needs.inputHighVolts(supply), 2) + " V",
            source,
            "put a level shifter in the data line, or lower the pixels' supply");
      }
    }
  }

  private void chainVoltage(Volts volts) {
    Subject subject = new Subject.OneChain(volts.chain());
    if (volts.firstBelow().isPresent()) {
      String remedy =
          volts.neededMm2().isEmpty()
              ? "no wire is thick enough: take a higher supply voltage or draw less"
              : "use wire of "
                  + wire(volts.neededMm2().getAsDouble())
                  + ", shorten the feed, feed the chain at both ends, or draw less";
      add(
          Weight.FAILS,
          subject,
          "pixel "
              + volts.firstBelow().getAsInt()
              + " and others get too little: pixel "
              + volts.lowestPixel()
              + " has "
              + fixed(volts.lowest(), 2)
              + " V in the worst frame",
          "they need " + fixed(volts.neededVolts(), 2) + " V",
          "pixel type's least supply; copper by IEC 60028",
          remedy);
    }
    double carries = FeedMeter.wire(rig.feed().orElseThrow()).cautionAmps();
    if (volts.feedAmps() > carries) {
      add(
          Weight.HARM,
          subject,
          "its feed carries " + fixed(volts.feedAmps(), 2) + " A",
          "such wire should carry " + fixed(carries, 2) + " A at most",
          "5 A/mm2, common practice",
          "use thicker wire: thin wire heats; fuse the feed at what the wire carries");
    }
  }

  private static String wire(double mm2) {
    OptionalInt gauge = Wire.gaugeAtLeast(mm2);
    return fixed(Math.ceil(mm2 * 1000) / 1000, 3)
        + " mm2 or more"
        + (gauge.isPresent() ? " (AWG " + gauge.getAsInt() + ")" : "");
  }

  private void resistor(SceneReport.OutputResistor found) {
    if (found.resistor().isPresent()) {
      return;
    }
    DriverOutput output =
        rig.outputs().stream().filter(o -> o.id().equals(found.output())).findFirst().orElseThrow();
    add(
        Weight.FAILS,
        new Subject.OneOutput(output.id()),
        output.ledsInSeries()
            + " LEDs in series need "
            + fixed(output.ledsInSeries() * output.forwardVolts(), 2)
            + " V",
        "the supply has " + fixed(rig.supplyVolts(), 2) + " V",
        "R = (Vs - n Vf) / If, common practice",
        "they can't light: put fewer in series, each string with a resistor of its own");
  }

  private void battery() {
    if (rig.battery().isPresent()) {
      add(
          Weight.HARM,
          new Subject.Pack(),
          "feeds this rig",
          "a pack can deliver far more than wire and pixels stand",
          "common practice",
          "fuse it close to the pack, charge it with the right charger, keep a LiPo off the pixels"
              + " without a regulator, and power up the first time with the wheels off the ground");
    }
  }

  private void add(
      Weight weight, Subject about, String finding, String limit, String source, String remedy) {
    advice.add(new Advice(weight, about, finding, limit, source, remedy));
  }

  private void addAt(
      int frame,
      Weight weight,
      Subject about,
      String finding,
      String limit,
      String source,
      String remedy) {
    advice.add(new Advice(weight, about, OptionalInt.of(frame), finding, limit, source, remedy));
  }
}
