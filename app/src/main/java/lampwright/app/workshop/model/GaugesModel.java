package lampwright.app.workshop.model;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.review.Reviews;
import lampwright.app.workshop.model.problems.Target;
import lampwright.app.workshop.words.PlaceWords;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.meter.CurrentDraw;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashSpot;
import lampwright.engine.meter.FlashTrain;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.RateVerdict;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameStore;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.exporters.target.TargetFindings;
import org.jspecify.annotations.Nullable;

/** The gauges: what supply, data line, memory and eye get, now and at worst. */
public final class GaugesModel {
  private final Texts texts = Texts.of("gauges");
  private final Bench bench;
  private final LightService lights;
  private final PackService packs;
  private final Playhead playhead;
  private final LateValue<Gauge> supply = new LateValue<>(this::supplyNow);
  private final ReadOnlyObjectWrapper<Gauge> wire;
  private final ReadOnlyObjectWrapper<Gauge> memory;
  private final ReadOnlyObjectWrapper<Gauge> flash;
  private @Nullable FrameStore shown;
  private @Nullable FrameCurrent current;
  private byte[] frame = {};
  // Of the report, not of the frame that is shown.
  private String supplyProblems = "";

  public GaugesModel(Bench bench, LightService lights, PackService packs, Playhead playhead) {
    this.bench = bench;
    this.lights = lights;
    this.packs = packs;
    this.playhead = playhead;
    wire = new ReadOnlyObjectWrapper<>(wireNow());
    memory = new ReadOnlyObjectWrapper<>(memoryNow());
    flash = new ReadOnlyObjectWrapper<>(flashNow());
    bench.watch(BenchState::frame, (before, now) -> supply.changed());
    lights.progressProperty().addListener((of, before, now) -> supply.changed());
    lights.reportProperty().addListener((of, before, now) -> refresh());
    packs.packedProperty().addListener((of, before, now) -> memory.set(memoryNow()));
    packs.progressProperty().addListener((of, before, now) -> memory.set(memoryNow()));
    bench.watch(BenchState::project, (before, now) -> refresh());
    bench.watch(BenchState::selection, (before, now) -> flash.set(flashNow()));
    bench.watch(state -> state.selection().scene(), (before, now) -> wire.set(wireNow()));
  }

  /** All of them, from the left. */
  public List<ReadOnlyObjectProperty<Gauge>> all() {
    return List.of(supplyProperty(), wireProperty(), memoryProperty(), flashProperty());
  }

  /** Current now, at worst, and what the supply can give. */
  public ReadOnlyObjectProperty<Gauge> supplyProperty() {
    return supply;
  }

  /** The time of a frame on the data lines. */
  public ReadOnlyObjectProperty<Gauge> wireProperty() {
    return wire.getReadOnlyProperty();
  }

  /** What all scenes take of the controller's program memory. */
  public ReadOnlyObjectProperty<Gauge> memoryProperty() {
    return memory.getReadOnlyProperty();
  }

  /** How the selected lamp flashes. */
  public ReadOnlyObjectProperty<Gauge> flashProperty() {
    return flash.getReadOnlyProperty();
  }

  private void refresh() {
    supplyProblems =
        problems(
            about ->
                about instanceof Subject.Supply
                    || about instanceof Subject.Pack
                    || about instanceof Subject.OneChain
                    || about instanceof Subject.OneOutput);
    supply.changed();
    wire.set(wireNow());
    memory.set(memoryNow());
    flash.set(flashNow());
  }

  private Gauge supplyNow() {
    Rig rig = bench.project().rig();
    double limit = rig.supplyLimitMilliamps();
    Optional<CurrentDraw> worst = report().map(r -> r.measure().supply());
    OptionalDouble now = milliampsNow();
    String reading =
        now.isPresent()
            ? texts.get("supply.reading", amps(now.getAsDouble()), amps(limit))
            : texts.get("supply.dark", amps(limit));
    double peak = worst.map(CurrentDraw::peakMilliamps).orElse(now.orElse(0));
    String details =
        worst
            .map(
                w ->
                    texts.get(
                            "supply.details",
                            whole(w.peakMilliamps()),
                            whole(limit),
                            Integer.toString(w.peakFrame()),
                            whole(w.meanMilliamps()))
                        + supplyProblems)
            .orElse(texts.get("measuring"));
    return new Gauge(
        "supply",
        reading,
        now.isPresent() ? OptionalDouble.of(now.getAsDouble() / limit) : now,
        OptionalDouble.of(peak / limit),
        worst.isPresent() || now.isPresent() ? Gauge.state(peak / limit) : Gauge.State.OPEN,
        details,
        Optional.of(new Target.OfRig(Target.RigPart.SUPPLY)),
        worst.map(w -> OptionalInt.of(w.peakFrame())).orElseGet(OptionalInt::empty));
  }

  private OptionalDouble milliampsNow() {
    Optional<SceneLight> light = lights.lightProperty().get();
    if (light.isEmpty()) {
      return OptionalDouble.empty();
    }
    FrameStore now = light.get().frames();
    FrameCurrent of = current;
    if (of == null || now != shown) {
      of = new FrameCurrent(now.table().layout());
      current = of;
      shown = now;
      frame = new byte[now.table().layout().bytes()];
    }
    int at = Math.min(playhead.frame(), now.frameCount() - 1);
    return now.read(at, frame) ? OptionalDouble.of(of.milliamps(frame)) : OptionalDouble.empty();
  }

  private Gauge wireNow() {
    Rig rig = bench.project().rig();
    double rate =
        bench.scene().map(scene -> scene.framesPerSecond().doubleValue()).orElse(Double.NaN);
    LineTimes times = lampwright.exporters.target.Target.lineTimesOf(rig);
    List<WireTime> wires = times.chains();
    if (wires.isEmpty() || Double.isNaN(rate)) {
      return open("wire", texts.get("wire.none"));
    }
    double inTurn = times.frameUs();
    double share = times.share(rate);
    String lines =
        wires.stream()
            .map(
                w ->
                    texts.get(
                        "wire.line",
                        w.chain(),
                        fixed(w.frameUs() / 1000, 2),
                        percent(w.share(rate)),
                        fixed(Math.floor(w.highestFramesPerSecond() * 10) / 10, 1),
                        Integer.toString(w.longestChain(rate))))
            .collect(Collectors.joining("\n"));
    WireTime longest =
        wires.stream().max(java.util.Comparator.comparingDouble(WireTime::frameUs)).orElseThrow();
    return new Gauge(
        "wire",
        texts.get("wire.reading", percent(share), fixed(1000 / rate, 1)),
        OptionalDouble.of(share),
        OptionalDouble.empty(),
        Gauge.state(share),
        lines + "\n" + texts.get("wire.together", fixed(inTurn / 1000, 2), percent(share)),
        Optional.of(new Target.OfChain(longest.chain())),
        OptionalInt.empty());
  }

  private Gauge memoryNow() {
    Optional<Target> spot = Optional.of(new Target.OfRig(Target.RigPart.CONTROLLER));
    Optional<PackService.Packed> packed = packs.packedProperty().get();
    if (packed.isEmpty()) {
      double done = packs.progressProperty().get();
      String reading =
          done < 1 ? texts.get("memory.packing", percent(done)) : texts.get("memory.unknown");
      return new Gauge(
          "memory",
          reading,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Gauge.State.OPEN,
          reading,
          spot,
          OptionalInt.empty());
    }
    if (packed.get().bytes() == 0) {
      return new Gauge(
          "memory",
          texts.get("memory.refused"),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Gauge.State.OVER,
          words(packed.get().refusals()),
          spot,
          OptionalInt.empty());
    }
    return memoryOf(packed.get(), spot);
  }

  private Gauge memoryOf(PackService.Packed packed, Optional<Target> spot) {
    Rig rig = bench.project().rig();
    lampwright.exporters.target.Target target = lampwright.exporters.target.Target.of(rig);
    OptionalInt free = target.memory().freeFlashBytes();
    if (rig.controller().isEmpty() || free.isEmpty()) {
      return new Gauge(
          "memory",
          texts.get("memory.bare", kibibytes(packed.bytes())),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Gauge.State.OPEN,
          texts.get("memory.choose", Integer.toString(packed.bytes())),
          spot,
          OptionalInt.empty());
    }
    int code = TargetFindings.programBytes(target, rig, packed.reacts());
    int needed = packed.bytes() + code;
    double share = (double) needed / free.getAsInt();
    String details =
        texts.get(
            "memory.details",
            Integer.toString(packed.bytes()),
            Integer.toString(code),
            Integer.toString(free.getAsInt()),
            target.name(),
            percent(share));
    return new Gauge(
        "memory",
        texts.get("memory.reading", kibibytes(needed), kibibytes(free.getAsInt())),
        OptionalDouble.of(share),
        OptionalDouble.empty(),
        Gauge.state(share),
        packed.refusals().isEmpty() ? details : details + "\n" + words(packed.refusals()),
        spot,
        OptionalInt.empty());
  }

  private String words(List<Finding> findings) {
    return findings.stream()
        .map(finding -> PlaceWords.line(bench.project(), finding))
        .collect(Collectors.joining("\n"));
  }

  private Gauge flashNow() {
    Optional<Lamp> lamp = bench.lamp();
    Optional<LightReport> light =
        lamp.flatMap(
            l ->
                report()
                    .flatMap(
                        r ->
                            r.measure().lights().stream()
                                .filter(of -> of.id().equals(l.id()))
                                .findFirst()));
    if (lamp.isEmpty()) {
      return open("flash", texts.get("flash.choose"));
    }
    Optional<Target> spot = Optional.of(new Target.OfLamp(lamp.get().id()));
    String title = Titles.of(lamp.get());
    if (light.isEmpty()) {
      return flashGauge(texts.get("flash.unknown", title), Gauge.State.OPEN, "", spot);
    }
    Optional<FlashTrain> train = light.get().train();
    boolean passes = light.get().caution().passes();
    String caution = "\n" + flashCaution(light.get());
    if (train.isEmpty() || train.get().groupsPerMinute().isEmpty()) {
      return flashGauge(
          texts.get(train.isEmpty() ? "flash.steady" : "flash.once", title),
          passes ? Gauge.State.OPEN : Gauge.State.OVER,
          caution,
          spot);
    }
    double rate = train.get().groupsPerMinute().getAsDouble();
    Optional<RateVerdict> verdict = RateVerdict.of(lamp.get().function(), rate);
    boolean likeReal = verdict.map(RateVerdict::likeReal).orElse(true);
    String words = verdict.map(v -> "\n" + v.words() + " (" + v.range().source() + ")").orElse("");
    String details =
        texts.get(
            "flash.details",
            train.get().rateWords(),
            fixed(train.get().onSeconds(), 2),
            fixed(train.get().offSeconds(), 2));
    return flashGauge(
        texts.get("flash.reading", title, fixed(train.get().flashesPerMinute().getAsDouble(), 0)),
        !passes ? Gauge.State.OVER : likeReal ? Gauge.State.FITS : Gauge.State.NEAR,
        "\n" + details + words + caution,
        spot);
  }

  private String flashCaution(LightReport light) {
    FlashSpot worst = light.worstGeneral();
    if (light.worstRed().worst().flashes() > worst.worst().flashes()) {
      worst = light.worstRed();
    }
    return texts.get(
        worst.pixel().isPresent() ? "flash.caution.pixel" : "flash.caution",
        Integer.toString(worst.worst().flashes()),
        Integer.toString(FlashCaution.MOST_FLASHES),
        Integer.toString(worst.pixel().orElse(0)));
  }

  private static Gauge flashGauge(
      String reading, Gauge.State state, String more, Optional<Target> spot) {
    return new Gauge(
        "flash",
        reading,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        state,
        reading + more,
        spot,
        OptionalInt.empty());
  }

  private Optional<SceneReport> report() {
    return lights.reportProperty().get();
  }

  // The problems of the scene with these subjects.
  private String problems(Predicate<Subject> about) {
    return report().stream()
        .flatMap(r -> Reviews.ALL.ofScene(bench.project(), r).stream())
        .filter(f -> f.severity().problem() && about.test(f.subject()))
        .map(f -> "\n" + f.text())
        .collect(Collectors.joining());
  }

  private static Gauge open(String key, String reading) {
    return new Gauge(
        key,
        reading,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Gauge.State.OPEN,
        reading,
        Optional.empty(),
        OptionalInt.empty());
  }

  private static String amps(double milliamps) {
    return fixed(milliamps / 1000, 2);
  }

  private static String kibibytes(int bytes) {
    return fixed(bytes / 1024.0, 1);
  }

  private static String whole(double value) {
    return fixed(value, 0);
  }

  private static String percent(double share) {
    return fixed(100 * share, 0) + "\u00a0%";
  }

  private static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
