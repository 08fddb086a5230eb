package lampwright.exporters.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lampwright.engine.check.Checks;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.meter.ChainFeed;
import lampwright.engine.meter.CurrentDraw;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Situation;
import lampwright.engine.words.SituationWords;
import lampwright.engine.words.TextBundle;
import lampwright.exporters.sheet.BuildSheet.Part;
import lampwright.exporters.target.PinPlan;
import lampwright.exporters.target.Target;
import lampwright.exporters.wiring.WiringPart;
import lampwright.exporters.wiring.WiringPlan;

/** Makes the build sheet of a project from what was measured and found. */
public final class SheetMaker {
  static final TextBundle TEXTS =
      TextBundle.of(
          ResourceBundle.getBundle(
              "lampwright.exporters.sheet.sheet", Locale.ROOT, SheetMaker.class.getModule()));

  /** Findings of one code that are on the sheet: a project can have hundreds of thousands. */
  static final int MOST_OF_A_CODE = 20;

  /** Pixels of a segment that are numbered one by one; of longer ones first and last. */
  private static final int NUMBERED = 48;

  private static final double US_PER_MS = 1000;
  private static final double US_PER_SECOND = 1e6;

  private final Project project;
  private final Rig rig;
  private final List<SceneReport> reports;
  private final Optional<ShowMeasure> show;
  private final List<Finding> findings;
  private final WiringPlan wiring;

  private SheetMaker(
      Project project,
      List<SceneReport> reports,
      Optional<ShowMeasure> show,
      List<Finding> findings) {
    this.project = project;
    this.rig = project.rig();
    this.reports = reports;
    this.show = show;
    this.findings = findings;
    this.wiring = WiringPlan.of(rig, findings);
  }

  /**
   * The sheet of a project. This renders its scenes for their charts.
   *
   * @param reports of all its scenes
   * @param show what its situations ask together, if they can be played
   * @param findings about all of it, gravest first
   */
  public static BuildSheet make(
      Project project,
      List<SceneReport> reports,
      Optional<ShowMeasure> show,
      List<Finding> findings) {
    return new SheetMaker(project, reports, show, findings).sheet();
  }

  private BuildSheet sheet() {
    return new BuildSheet(
        project.name().isEmpty() ? "\u2013" : name(project.name()),
        facts(),
        parts(wiring.source()),
        currents(),
        chains(),
        outputs(),
        pins(),
        situations(),
        findings(),
        reports.stream().map(report -> SheetCharts.of(rig, report.table())).toList(),
        checklist(),
        Stream.of("flash", "eyes", "heat", "law", "figures")
            .map(key -> TEXTS.get("caution." + key))
            .toList());
  }

  static String name(String text) {
    return SafeText.text(text, SafeText.MAX_NAME);
  }

  private List<String> facts() {
    List<String> facts = new ArrayList<>();
    facts.add(
        TEXTS.get(
            "facts.supply", plain(rig.supplyVolts()), plain(rig.supplyLimitMilliamps() / 1000)));
    facts.add(
        rig.controller().isPresent()
            ? TEXTS.get("facts.controller", Target.of(rig).clockedName())
            : TEXTS.get("facts.noController"));
    if (!rig.chains().isEmpty()) {
      facts.add(TEXTS.get("facts.data", plain(rig.dataLevelVolts())));
    }
    facts.add(TEXTS.get("facts.counts", rig.lamps().size()));
    facts.add(
        TEXTS.get("facts.dark", whole(new FrameCurrent(new FrameLayout(rig)).idleMilliamps())));
    if (rig.ceiling()) {
      facts.add(TEXTS.get("facts.ceiling"));
    }
    return facts;
  }

  private static List<Part> parts(List<WiringPart> parts) {
    return parts.stream().map(part -> new Part(part.words(), mark(part.state()))).toList();
  }

  private static BuildSheet.Mark mark(WiringPart.State state) {
    return switch (state) {
      case FITTED -> BuildSheet.Mark.NONE;
      case ASKED -> BuildSheet.Mark.ADD;
      case TROUBLE -> BuildSheet.Mark.TROUBLE;
    };
  }

  private List<BuildSheet.Current> currents() {
    List<BuildSheet.Current> currents = new ArrayList<>();
    String limit = TEXTS.get("milliamps", whole(rig.supplyLimitMilliamps()));
    LineTimes line = rig.chains().isEmpty() ? null : Target.lineTimesOf(rig);
    for (SceneReport report : reports) {
      CurrentDraw draw = report.measure().supply();
      double rate = report.table().framesPerSecond();
      currents.add(
          new BuildSheet.Current(
              TEXTS.get("scene", report.table().scene().id()),
              TEXTS.get(
                  "current.peak", whole(draw.peakMilliamps()), fixed(draw.peakFrame() / rate, 2)),
              TEXTS.get("milliamps", whole(draw.meanMilliamps())),
              limit,
              line == null
                  ? ""
                  : TEXTS.get(
                      "data",
                      fixed(line.frameUs() / US_PER_MS, 2),
                      fixed(US_PER_SECOND / US_PER_MS / rate, 1))));
    }
    show.ifPresent(
        measure ->
            currents.add(
                new BuildSheet.Current(
                    TEXTS.get("current.together"),
                    TEXTS.get(
                        "current.bound", whole(measure.sent(rig, measure.supply()).milliamps())),
                    "",
                    limit,
                    "")));
    return currents;
  }

  private List<BuildSheet.ChainPlan> chains() {
    List<BuildSheet.ChainPlan> chains = new ArrayList<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      WiringPlan.OfChain plan = wiring.chains().get(i);
      String type = name(chain.type().id());
      chains.add(
          new BuildSheet.ChainPlan(
              chain.id(),
              TEXTS.get(
                  "chain.title",
                  chain.id(),
                  chain.pixels(),
                  chain.whiteKelvin().isPresent()
                      ? type
                          + ", "
                          + TEXTS.get("chain.white", plain(chain.whiteKelvin().getAsDouble()))
                      : type,
                  chain.order().letters()),
              parts(plan.supply()),
              parts(plan.data()),
              parts(plan.farSupply()),
              loads(chain, i),
              segments(chain)));
    }
    return chains;
  }

  private List<String> loads(Chain chain, int index) {
    List<String> loads = new ArrayList<>();
    reports.stream()
        .max(Comparator.comparingDouble(r -> r.measure().chains().get(index).peakMilliamps()))
        .ifPresent(
            report -> {
              String peak =
                  TEXTS.get(
                      "chain.peak",
                      whole(report.measure().chains().get(index).peakMilliamps()),
                      report.table().scene().id());
              loads.add(
                  show.map(m -> whole(m.sent(rig, m.chain(chain.id())).milliamps()))
                      .map(bound -> peak + "; " + TEXTS.get("chain.together", bound))
                      .orElse(peak));
            });
    List<ChainFeed> feeds =
        reports.stream().flatMap(report -> report.feedOf(chain.id()).stream()).toList();
    if (feeds.isEmpty()) {
      loads.add(TEXTS.get("chain.unset"));
      return loads;
    }
    ChainFeed lead = most(feeds, feed -> feed.lead().amps());
    ChainFeed strip = most(feeds, feed -> feed.strip().amps());
    ChainFeed low = most(feeds, feed -> -feed.lowestVolts());
    loads.add(
        TEXTS.get(
            "chain.lead",
            TEXTS.get(lead.feed().ends() == Ends.BOTH ? "chain.end.both" : "chain.end.first"),
            fixed(lead.lead().amps(), 2),
            fixed(lead.lead().limitAmps(), 2),
            WiringPlan.conductor(lead.feed().lead())));
    loads.add(
        TEXTS.get(
            "chain.strip",
            fixed(strip.strip().amps(), 2),
            fixed(strip.strip().limitAmps(), 2),
            WiringPlan.conductor(strip.feed().strip())));
    loads.add(
        TEXTS.get(
            "chain.volts",
            fixed(low.lowestVolts(), 2),
            Integer.toString(low.lowestPixel()),
            fixed(low.neededVolts(), 2)));
    OptionalDouble fuse = lead.fuse();
    loads.add(
        fuse.isPresent()
            ? TEXTS.get("chain.fuse", plain(fuse.getAsDouble()))
            : TEXTS.get("chain.noFuse"));
    return loads;
  }

  private static ChainFeed most(List<ChainFeed> feeds, ToDoubleFunction<ChainFeed> figure) {
    return feeds.stream().max(Comparator.comparingDouble(figure)).orElseThrow();
  }

  /** A pixel of a lamp: which, and the how-manieth of it. */
  private record Owner(Lamp lamp, int index) {}

  private List<BuildSheet.Segment> segments(Chain chain) {
    Owner[] owners = new Owner[chain.pixels()];
    for (Lamp lamp : rig.lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels pixels) {
        int index = 0;
        for (PixelRun run : pixels.runs()) {
          for (int k = 0; k < run.count(); k++, index++) {
            if (run.chain().equals(chain.id())) {
              owners[run.from() + k] = new Owner(lamp, index);
            }
          }
        }
      }
    }
    List<BuildSheet.Segment> segments = new ArrayList<>();
    for (int from = 0, to; from < owners.length; from = to) {
      to = from + 1;
      while (to < owners.length && follows(owners[to - 1], owners[to])) {
        to++;
      }
      segments.add(segment(owners[from], from, to));
    }
    return segments;
  }

  private static boolean follows(Owner before, Owner next) {
    if (before == null || next == null) {
      return before == null && next == null;
    }
    return before.lamp().id().equals(next.lamp().id()) && next.index() == before.index() + 1;
  }

  private static BuildSheet.Segment segment(Owner owner, int from, int to) {
    String numbers =
        to - from <= NUMBERED
            ? IntStream.range(from, to)
                .mapToObj(Integer::toString)
                .collect(Collectors.joining(", "))
            : TEXTS.get(
                "pixels.all",
                Integer.toString(from),
                Integer.toString(to - 1),
                Integer.toString(to - from));
    if (owner == null) {
      return new BuildSheet.Segment(numbers, Optional.empty(), "");
    }
    int all = owner.lamp().fitting().lights();
    int first = owner.index() + 1;
    int last = owner.index() + to - from;
    String within =
        first == 1 && last == all
            ? ""
            : first == last
                ? TEXTS.get("within.one", Integer.toString(first), Integer.toString(all))
                : TEXTS.get(
                    "within.many",
                    Integer.toString(first),
                    Integer.toString(last),
                    Integer.toString(all));
    return new BuildSheet.Segment(numbers, Optional.of(title(owner.lamp())), within);
  }

  /** Name and id, as messages and files have either. */
  static String title(Lamp lamp) {
    return lamp.name().isEmpty() ? lamp.id() : name(lamp.name()) + " (" + lamp.id() + ")";
  }

  private List<BuildSheet.OutputPlan> outputs() {
    List<BuildSheet.OutputPlan> outputs = new ArrayList<>();
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      int index = i;
      outputs.add(
          new BuildSheet.OutputPlan(
              output.id(),
              lampOn(output).map(SheetMaker::title),
              parts(wiring.outputs().get(i)),
              TEXTS.get(
                  "milliamps",
                  whole(
                      reports.stream()
                          .mapToDouble(r -> r.measure().outputs().get(index).peakMilliamps())
                          .max()
                          .orElse(0)))));
    }
    return outputs;
  }

  private Optional<Lamp> lampOn(DriverOutput output) {
    return rig.lamps().stream()
        .filter(
            lamp -> lamp.fitting() instanceof Fitting.Output on && on.output().equals(output.id()))
        .findFirst();
  }

  private List<BuildSheet.PinUse> pins() {
    Target target = Target.of(rig);
    Optional<PinPlan> plan = rig.controller().map(known -> target.pins(rig));
    List<BuildSheet.PinUse> uses = new ArrayList<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      uses.add(
          use(
              WiringPlan.pin(chain.pin(), plan.map(PinPlan::chains), i),
              target,
              TEXTS.get("pin.chain", kindAndId("chain", chain.id()))));
    }
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      String name = kindAndId("output", output.id());
      uses.add(
          use(
              WiringPlan.pin(output.pin(), plan.map(PinPlan::outputs), i),
              target,
              lampOn(output)
                  .map(lamp -> TEXTS.get("pin.outputLamp", name, title(lamp)))
                  .orElse(name)));
    }
    for (Input input : rig.inputs()) {
      uses.add(
          use(
              input.pin().map(pin -> rig.controller().isPresent() ? target.named(pin) : pin),
              target,
              input.isChannel()
                  ? TEXTS.get("pin.channel", input.id())
                  : TEXTS.get("pin.switch", input.id(), input.activeLow() ? 1 : 0)));
    }
    return uses;
  }

  private BuildSheet.PinUse use(Optional<Pin> pin, Target target, String words) {
    return new BuildSheet.PinUse(
        pin.map(Pin::name),
        rig.controller().flatMap(known -> pin.flatMap(target::inSketch)).orElse(""),
        words);
  }

  private List<BuildSheet.SituationRow> situations() {
    SituationWords words = new SituationWords();
    return project.situations().stream()
        .sorted(Comparator.comparingInt(Situation::priority).reversed())
        .map(
            situation ->
                new BuildSheet.SituationRow(
                    situation.priority(),
                    situation.id(),
                    words.when(situation),
                    situation
                        .scene()
                        .map(
                            scene ->
                                TEXTS.get(
                                    "shows", scene, TEXTS.get("start." + situation.start().key())))
                        .orElseGet(() -> TEXTS.get("shows.none"))))
        .toList();
  }

  private List<BuildSheet.FindingRow> findings() {
    List<BuildSheet.FindingRow> rows = new ArrayList<>();
    Map<Code, Integer> seen = new EnumMap<>(Code.class);
    for (Finding finding : findings) {
      if (seen.merge(finding.code(), 1, Integer::sum) <= MOST_OF_A_CODE) {
        String limit = finding.limitWithSource();
        rows.add(
            new BuildSheet.FindingRow(
                finding.severity().key(),
                finding.subjectAndTime(),
                limit.isEmpty() ? finding.what() : finding.what() + "; " + limit,
                finding.remedy()));
      }
    }
    seen.forEach(
        (code, count) -> {
          if (count > MOST_OF_A_CODE) {
            rows.add(
                new BuildSheet.FindingRow(
                    code.severity().key(),
                    code.key(),
                    TEXTS.get("more", Integer.toString(count - MOST_OF_A_CODE)),
                    ""));
          }
        });
    return rows;
  }

  private List<String> checklist() {
    List<String> steps = new ArrayList<>();
    boolean chains = !rig.chains().isEmpty();
    boolean outputs = !rig.outputs().isEmpty();
    steps.add(TEXTS.get("check.off"));
    steps.add(TEXTS.get("check.continuity"));
    steps.add(TEXTS.get("check.polarity"));
    if (chains) {
      steps.add(TEXTS.get("check.data"));
    }
    if (outputs) {
      steps.add(TEXTS.get("check.outputs"));
    }
    steps.add(TEXTS.get("check.ground"));
    steps.add(TEXTS.get("check.fuse"));
    steps.add(TEXTS.get("check.add"));
    double expected =
        Stream.concat(
                reports.stream().map(r -> r.measure().supply().peakMilliamps()),
                show.stream().map(m -> m.sent(rig, m.supply()).milliamps()))
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(rig.supplyLimitMilliamps());
    steps.add(
        TEXTS.get(
            "check.limit",
            plain(rig.supplyVolts()),
            whole(Math.min(benchLimit(expected), rig.supplyLimitMilliamps())),
            whole(Math.ceil(expected))));
    if (chains) {
      steps.add(TEXTS.get("check.measure", plain(rig.supplyVolts())));
      steps.add(
          benchScene()
              .map(scene -> TEXTS.get("check.bench", scene))
              .orElseGet(() -> TEXTS.get("check.benchNone")));
    }
    if (project.situations().stream().anyMatch(s -> s.scene().isPresent())) {
      steps.add(TEXTS.get("check.situations"));
    }
    if (rig.battery().isPresent()) {
      steps.add(TEXTS.get("check.battery"));
    }
    return steps;
  }

  /** A quarter more, or meters and switching peaks alone would limit; common practice, ours. */
  private static double benchLimit(double milliamps) {
    return Math.ceil(1.25 * milliamps / 10) * 10;
  }

  /** The scene that lights one pixel after the other, if there is one. */
  private Optional<String> benchScene() {
    return project.scenes().stream()
        .filter(
            scene ->
                scene.tracks().stream()
                    .flatMap(track -> track.cues().stream())
                    .anyMatch(cue -> cue.pattern().kind().equals("test-walk")))
        .map(scene -> scene.id())
        .findFirst();
  }

  /** What it is and its id; once only where the id has the word in it. */
  static String kindAndId(String kind, String id) {
    return id.contains(kind) ? id : kind + " " + id;
  }

  static String plain(double value) {
    return Checks.plain(value);
  }

  private static String whole(double value) {
    return fixed(value, 0);
  }

  static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
