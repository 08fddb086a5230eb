package lampwright.exporters.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import lampwright.engine.check.Checks;
import lampwright.engine.meter.OutputCircuit;
import lampwright.engine.meter.PixelParts;
import lampwright.engine.meter.SeriesResistor;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Regulator;
import lampwright.engine.rig.Rig;
import lampwright.engine.words.TextBundle;
import lampwright.exporters.target.PinPlan;
import lampwright.exporters.target.Target;
import lampwright.exporters.wiring.WiringPart.State;
import lampwright.exporters.wiring.WiringPart.Symbol;

/**
 * The parts in front of the pixels and LEDs of a rig, in the order in which they are wired: those
 * that the rig sets, those of common practice, and those that findings ask for. It has no rule of
 * its own about what is needed.
 *
 * @param source from battery or supply to the rig
 * @param chains of each chain, in the order of the rig
 * @param outputs of each output from its pin, in the order of the rig
 */
public record WiringPlan(
    List<WiringPart> source, List<OfChain> chains, List<List<WiringPart>> outputs) {
  /**
   * The parts of one chain.
   *
   * @param supply from the rig's supply to the first pixel
   * @param data from the controller to the data input
   * @param farSupply to the last pixel; empty where the chain is fed at one end
   */
  public record OfChain(
      Chain chain, List<WiringPart> supply, List<WiringPart> data, List<WiringPart> farSupply) {
    public OfChain {
      supply = List.copyOf(supply);
      data = List.copyOf(data);
      farSupply = List.copyOf(farSupply);
    }
  }

  public WiringPlan {
    source = List.copyOf(source);
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
  }

  /** The plan of a rig about which these findings are. */
  public static WiringPlan of(Rig rig, List<Finding> findings) {
    return new Maker(rig, findings).plan();
  }

  /** Parts in words: {@code wire AWG 24, 300 mm; fuse 2 A}. */
  public static String words(List<WiringPart> parts) {
    return parts.stream().map(WiringPart::words).collect(Collectors.joining("; "));
  }

  /**
   * The pin of a chain or output: that of the controller's plan, else the one that is set. What
   * does not fit the controller has none in its plan.
   */
  public static Optional<Pin> pin(
      Optional<Pin> set, Optional<List<Optional<Pin>>> planned, int index) {
    return planned
        .filter(pins -> index < pins.size())
        .flatMap(pins -> pins.get(index))
        .or(() -> set);
  }

  /** A conductor in words, {@code AWG 24} or {@code 0.25 mm2}. */
  public static String conductor(Conductor conductor) {
    return conductor.gauge().isPresent()
        ? WiringPart.TEXTS.get("gauge", Integer.toString(conductor.gauge().getAsInt()))
        : WiringPart.TEXTS.get("area", Checks.plain(conductor.area().orElseThrow()));
  }

  private static final class Maker {
    private final TextBundle texts = WiringPart.TEXTS;
    private final Rig rig;
    private final List<Finding> findings;

    Maker(Rig rig, List<Finding> findings) {
      this.rig = rig;
      this.findings = findings;
    }

    WiringPlan plan() {
      Optional<PinPlan> pins = rig.controller().map(known -> Target.of(rig).pins(rig));
      List<OfChain> chains = new ArrayList<>();
      for (int i = 0; i < rig.chains().size(); i++) {
        Chain chain = rig.chains().get(i);
        Optional<Pin> pin = pin(chain.pin(), pins.map(PinPlan::chains), i);
        chains.add(new OfChain(chain, supply(chain), data(chain, pin), farSupply(chain)));
      }
      List<List<WiringPart>> outputs = new ArrayList<>();
      for (int i = 0; i < rig.outputs().size(); i++) {
        DriverOutput output = rig.outputs().get(i);
        outputs.add(output(output, pin(output.pin(), pins.map(PinPlan::outputs), i)));
      }
      return new WiringPlan(source(), chains, outputs);
    }

    private List<WiringPart> source() {
      List<WiringPart> parts = new ArrayList<>();
      rig.battery().ifPresent(battery -> battery(battery, parts));
      if (rig.battery().isEmpty()) {
        parts.add(
            fitted(
                Symbol.BOX,
                "supply",
                "volts.amps",
                plain(rig.supplyVolts()),
                plain(rig.supplyLimitMilliamps() / 1000)));
      }
      boolean set = rig.battery().map(b -> b.regulator() != Regulator.NONE).orElse(false);
      Optional<Finding> over =
          find(Set.of(Code.PIXEL_OVER_VOLTAGE), Optional.empty())
              .or(
                  () ->
                      find(
                          Set.of(Code.BATTERY_OVER_VOLTAGE, Code.BATTERY_UNDER_VOLTAGE),
                          Optional.of(new Subject.Pack())));
      if (!set && over.isPresent()) {
        parts.add(asked(Symbol.BOX, "regulator", figure(over.get(), "usual")));
      }
      return parts;
    }

    private void battery(Battery battery, List<WiringPart> parts) {
      parts.add(
          fitted(
              Symbol.BOX,
              "battery",
              "volts.capacity",
              plain(battery.volts(rig.supplyVolts())),
              plain(battery.milliampHours())));
      fuse(
          battery.fuseAmps(),
          find(Set.of(Code.BATTERY_UNFUSED), Optional.of(new Subject.Pack())),
          "fuse",
          find(
              Set.of(Code.BATTERY_FUSE_LARGE, Code.BATTERY_FUSE_SMALL),
              Optional.of(new Subject.Pack())),
          parts);
      if (battery.regulator() != Regulator.NONE) {
        boolean trouble =
            find(Set.of(Code.BATTERY_REGULATOR), Optional.of(new Subject.Pack())).isPresent();
        parts.add(
            new WiringPart(
                Symbol.BOX,
                texts.get("regulator." + battery.regulator().key()),
                texts.get("volts", plain(rig.supplyVolts())),
                trouble ? State.TROUBLE : State.FITTED));
      }
    }

    private List<WiringPart> supply(Chain chain) {
      List<WiringPart> parts = new ArrayList<>();
      rig.feedOf(chain).ifPresent(feed -> lead(chain, feed, feed.supplyMm(), parts));
      parts.add(
          fitted(
              Symbol.CAPACITOR,
              "capacitor",
              "capacitor.figure",
              plain(PixelParts.CAPACITOR_MICROFARADS),
              plain(PixelParts.capacitorVolts(rig.supplyVolts()))));
      return parts;
    }

    private List<WiringPart> farSupply(Chain chain) {
      List<WiringPart> parts = new ArrayList<>();
      rig.feedOf(chain)
          .filter(feed -> feed.ends() == Ends.BOTH)
          .ifPresent(feed -> lead(chain, feed, feed.farMm(chain.pixels()), parts));
      return parts;
    }

    private void lead(Chain chain, Feed feed, double millimetres, List<WiringPart> parts) {
      Optional<Subject> about = Optional.of(new Subject.OneChain(chain.id()));
      fuse(
          feed.fuseAmps(),
          find(Set.of(Code.LEAD_UNFUSED), about),
          "limit",
          find(Set.of(Code.LEAD_FUSE_LARGE, Code.LEAD_FUSE_SMALL), about),
          parts);
      Optional<Finding> hot = find(Set.of(Code.LEAD_HEAT), about);
      String wire = texts.get("wire.figure", conductor(feed.lead()), plain(millimetres));
      parts.add(
          new WiringPart(
              Symbol.WIRE,
              texts.get("wire"),
              hot.map(
                      finding ->
                          texts.get(
                              "wire.hot",
                              wire,
                              figure(finding, "current"),
                              figure(finding, "limit")))
                  .orElse(wire),
              hot.isPresent() ? State.TROUBLE : State.FITTED));
    }

    private void fuse(
        OptionalDouble amps,
        Optional<Finding> missing,
        String figure,
        Optional<Finding> wrong,
        List<WiringPart> parts) {
      if (amps.isPresent()) {
        parts.add(
            new WiringPart(
                Symbol.FUSE,
                texts.get("fuse"),
                texts.get("amps", plain(amps.getAsDouble())),
                wrong.isPresent() ? State.TROUBLE : State.FITTED));
      } else {
        missing.ifPresent(
            finding -> {
              String most = figure(finding, figure);
              parts.add(
                  asked(
                      Symbol.FUSE, "fuse", figure.equals("limit") ? texts.get("most", most) : ""));
            });
      }
    }

    private List<WiringPart> data(Chain chain, Optional<Pin> pin) {
      List<WiringPart> parts = new ArrayList<>();
      parts.add(controller(pin));
      parts.add(
          fitted(
              Symbol.RESISTOR,
              "resistor",
              "ohms.range",
              plain(PixelParts.DATA_OHMS.get(0)),
              plain(PixelParts.DATA_OHMS.get(1))));
      Optional<Finding> low =
          find(
              Set.of(Code.DATA_LEVEL_LOW, Code.DATA_LEVEL_HIGH),
              Optional.of(new Subject.OneChain(chain.id())));
      Optional<Finding> stated = find(Set.of(Code.DATA_LEVEL_STATED), Optional.empty());
      if (low.isPresent()) {
        parts.add(
            asked(Symbol.SHIFTER, "shifter", level(figure(low.get(), "volts"), "limit", low)));
      } else if (stated.isPresent()) {
        parts.add(
            new WiringPart(
                Symbol.SHIFTER,
                texts.get("shifter"),
                texts.get(
                    "shifter.to", figure(stated.get(), "limit"), figure(stated.get(), "volts")),
                State.FITTED));
      }
      return parts;
    }

    private String level(String volts, String limit, Optional<Finding> of) {
      return of.filter(finding -> finding.code() == Code.DATA_LEVEL_LOW)
          .map(finding -> texts.get("shifter.least", volts, figure(finding, limit)))
          .orElseGet(() -> texts.get("shifter.most", volts, figure(of.orElseThrow(), limit)));
    }

    private WiringPart controller(Optional<Pin> pin) {
      return new WiringPart(
          Symbol.BOX,
          rig.controller().map(c -> c.name()).orElseGet(() -> texts.get("controller")),
          pin.map(p -> texts.get("pin", p.name())).orElse(""),
          State.FITTED);
    }

    private List<WiringPart> output(DriverOutput output, Optional<Pin> pin) {
      Optional<Subject> about = Optional.of(new Subject.OneOutput(output.id()));
      List<WiringPart> parts = new ArrayList<>();
      parts.add(controller(pin));
      boolean driver =
          output.drive().filter(OutputDrive.DRIVER::equals).isPresent()
              || output.supply() == OutputSupply.CURRENT;
      boolean wanted =
          find(
                  Set.of(Code.OUTPUT_PIN_CURRENT, Code.OUTPUT_PIN_UNSTATED, Code.OUTPUT_PIN_HIGH),
                  about)
              .isPresent();
      if (driver) {
        boolean tight =
            find(
                    Set.of(
                        Code.OUTPUT_HEADROOM, Code.OUTPUT_HEADROOM_TIGHT, Code.OUTPUT_CANNOT_LIGHT),
                    about)
                .isPresent();
        parts.add(
            new WiringPart(
                Symbol.BOX,
                texts.get("driver"),
                output.supply() == OutputSupply.CURRENT
                    ? texts.get("milliamps", plain(output.milliamps()))
                    : "",
                wanted ? State.ASKED : tight ? State.TROUBLE : State.FITTED));
      } else if (wanted) {
        parts.add(asked(Symbol.BOX, "driver", ""));
      }
      OutputCircuit.of(rig, output).resistor().ifPresent(r -> parts.add(resistor(r, about)));
      parts.add(
          fitted(
              Symbol.LED,
              "leds",
              "leds.figure",
              Integer.toString(output.ledsInSeries()),
              plain(output.milliamps())));
      return parts;
    }

    private WiringPart resistor(SeriesResistor resistor, Optional<Subject> about) {
      return new WiringPart(
          Symbol.RESISTOR,
          texts.get("resistor"),
          resistor.ratingWatts().isPresent()
              ? texts.get(
                  "ohms.watts", plain(resistor.ohms()), plain(resistor.ratingWatts().getAsDouble()))
              : texts.get("ohms", plain(resistor.ohms())),
          find(Set.of(Code.RESISTOR_MARGIN), about).isPresent() ? State.TROUBLE : State.FITTED);
    }

    private WiringPart fitted(Symbol symbol, String name, String figure, String... values) {
      return new WiringPart(
          symbol, texts.get(name), texts.get(figure, (Object[]) values), State.FITTED);
    }

    private WiringPart asked(Symbol symbol, String name, String figure) {
      return new WiringPart(symbol, texts.get("asked", texts.get(name)), figure, State.ASKED);
    }

    private Optional<Finding> find(Set<Code> codes, Optional<Subject> about) {
      return findings.stream()
          .filter(finding -> codes.contains(finding.code()))
          .filter(finding -> about.isEmpty() || about.get().equals(finding.subject()))
          .findFirst();
    }

    private static String figure(Finding finding, String name) {
      return Optional.ofNullable(finding.figures().get(name)).map(Figure::text).orElse("");
    }

    private static String plain(double value) {
      return Checks.plain(value);
    }
  }
}
