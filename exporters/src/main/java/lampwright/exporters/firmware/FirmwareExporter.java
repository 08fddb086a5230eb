package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.Iterables;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Show;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectExporter;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;
import lampwright.exporters.target.TargetFindings;

/** One folder that plays the scenes on a microcontroller and builds as it is. */
public final class FirmwareExporter implements ProjectExporter {
  private static final String KEY = "firmware";
  private static final String README = "README.md";
  private static final String CONFIG = "src/lampwright_config.h";
  private static final String SCENES = "src/lampwright_scenes.h";
  private static final String SCENES_SOURCE = "src/lampwright_scenes.c";

  private static final List<String> SHARED =
      List.of(
          "src/lampwright_player.h",
          "src/lampwright_player.c",
          "src/lampwright_show.h",
          "src/lampwright_show.c",
          "src/lampwright_clock.h",
          "src/lampwright_outputs.h",
          "src/lampwright_wire.h");

  /** Of projects with situations. */
  private static final List<String> REACTS =
      List.of(
          "src/lampwright_inputs.h",
          "src/lampwright_situations.h",
          "src/lampwright_situations.c",
          "src/lampwright_react.h",
          "src/lampwright_react.c");

  /** Of those with a ceiling over them. */
  private static final List<String> LIMITS =
      List.of("src/lampwright_ceiling.h", "src/lampwright_ceiling.c");

  /** Keeps nothing, so one serves all. */
  public FirmwareExporter() {}

  @Override
  public String key() {
    return KEY;
  }

  @Override
  public String summary() {
    return "folder with all scenes, the player and a driver for the controller";
  }

  @Override
  public ExportFacts facts(ProjectJob job) {
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    long bytes = job.tables().stream().mapToLong(FrameTable::bytes).sum();
    // The folder plays the situations too: what keeps them from being played refuses it.
    List<Finding> findings = new ArrayList<>(Review.errorsOfSituations(job.project()));
    if (job.tables().isEmpty()) {
      findings.addAll(FirmwareFindings.noScene(KEY));
    } else {
      findings.addAll(ExportFacts.refused(KEY, ScenePacker.faults(job.tables())));
      findings.addAll(target.refusals(rig));
      if (reacts(job)) {
        findings.addAll(target.inputRefusals(rig));
      }
      job.scenes()
          .forEach(
              scene ->
                  findings.addAll(
                      TargetFindings.frameTime(target, rig, scene, job.show().isPresent())));
    }
    findings.addAll(FirmwareFindings.cautions(KEY, rig, target));
    return new ExportFacts(KEY, bytes, files(target, job), findings);
  }

  /** Every file of the folder, in the order in which it is written: the README first. */
  static List<String> files(Target target, ProjectJob job) {
    List<String> files = new ArrayList<>(List.of(README, LibraryFile.NAME));
    files.addAll(ExampleFiles.names(target, reacts(job)));
    files.addAll(SHARED);
    files.addAll(List.of(CONFIG, SCENES, SCENES_SOURCE));
    files.addAll(target.sourceNames());
    if (reacts(job)) {
      files.addAll(REACTS);
      files.addAll(limits(job));
      files.addAll(target.reactingSources());
      files.addAll(target.inputSourceNames(job.project().rig()));
    }
    target.fixedSources().forEach(source -> files.add(Resource.exportedName(source)));
    return files;
  }

  private static List<String> limits(ProjectJob job) {
    return job.project().rig().ceiling() ? LIMITS : List.of();
  }

  /** Whether the firmware plays the project's situations. */
  static boolean reacts(ProjectJob job) {
    return job.show().isPresent();
  }

  @Override
  public List<Finding> export(ProjectJob job, ExportTarget to, Progress progress)
      throws IOException, CancelledException {
    ExportFacts facts = facts(job);
    refuse(facts.refusals());
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    Optional<Show> show = job.show();
    Packed packed = ScenePacker.pack(KEY, job.tables(), show, target.decodeCost(), progress);
    refuse(FirmwareMemory.refusals(target, job, packed.data()));
    List<Finding> plain = ScenePacker.findings(packed);
    List<Finding> all = new ArrayList<>(findings(job, facts));
    all.addAll(plain);
    Map<String, String> texts = texts(job, target, packed.data(), Review.sorted(all));
    for (String name : facts.files()) {
      try (OutputStream out = to.open(name)) {
        out.write(texts.get(name).getBytes(UTF_8));
      }
    }
    return plain;
  }

  /** Every finding about the project and these scenes. */
  private static List<Finding> findings(ProjectJob job, ExportFacts facts) {
    Review review = new Review(List.of(new TargetFindings()));
    List<SceneReport> reports = job.tables().stream().map(SceneReport::of).toList();
    List<Finding> all = new ArrayList<>(review.of(job.project(), reports));
    all.addAll(facts.findings());
    return Review.sorted(all);
  }

  private static void refuse(List<Finding> refusals) {
    ExportRefusedException.throwIfAny(KEY, Optional.empty(), refusals);
  }

  private static Map<String, String> texts(
      ProjectJob job, Target target, byte[] packed, List<Finding> findings) throws IOException {
    Rig rig = job.project().rig();
    Map<String, String> texts = new LinkedHashMap<>();
    texts.put(LibraryFile.NAME, LibraryFile.text(job.project().name()));
    boolean reacts = reacts(job);
    texts.putAll(ExampleFiles.texts(target, rig, reacts));
    for (String name : SHARED) {
      texts.put(name, Resource.text(name));
    }
    MarkedHeader config = MarkedHeader.of(CONFIG, ConfigFile.of(job, target, packed));
    texts.put(CONFIG, config.header());
    MarkedHeader scenes =
        MarkedHeader.of(SCENES, ScenesFile.header(job, packed.length, reacts(job)), packed);
    texts.put(SCENES, scenes.header());
    texts.put(SCENES_SOURCE, ScenesFile.source(packed) + config.check() + scenes.check());
    target.sources(rig).forEach((name, text) -> texts.put(name, checked(name, text, config)));
    if (reacts) {
      for (String name : Iterables.concat(REACTS, limits(job), target.reactingSources())) {
        texts.put(name, Resource.text(name));
      }
      for (String source : target.fixedInputSources()) {
        texts.put(Resource.exportedName(source), Resource.text(source));
      }
      target
          .inputSources(rig)
          .forEach((name, text) -> texts.put(name, checked(name, text, config)));
    }
    for (String source : target.fixedSources()) {
      String from =
          reacts && source.endsWith("/main.c") ? target.family() + "-react/main.c" : source;
      texts.put(Resource.exportedName(source), Resource.filled(from, target.words()));
    }
    boolean dims = target.size(rig, FirmwareMemory.room(target, job, packed)).dims();
    texts.put(README, new ReadmeFile(job, target, dims, findings).text());
    return ImmutableMap.copyOf(texts);
  }

  // A source that was made for one rig and is beside the configuration of another compiles no
  // more.
  private static String checked(String name, String text, MarkedHeader config) {
    return name.endsWith(".c") ? text + config.include() + config.check() : text;
  }
}
