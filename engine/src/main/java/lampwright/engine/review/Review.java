package lampwright.engine.review;

import com.google.common.collect.Ordering;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.document.Project;
import lampwright.engine.json.Positions;
import lampwright.engine.json.Problem;
import lampwright.engine.json.ReadResult;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.situation.Show;

/**
 * Every finding about a project, from one place: check, measure, the workshop and exports show
 * these and no others. Immutable.
 */
public final class Review {
  private static final List<Reviewer> OWN =
      List.of(
          new SupplyFindings(),
          new FeedFindings(),
          new OutputFindings(),
          new BatteryFindings(),
          new LightFindings(),
          new TimelineFindings(),
          new ColourFindings(),
          new SituationFindings());

  private static final Ordering<Finding> GRAVEST_FIRST =
      Ordering.natural()
          .onResultOf(Finding::severity)
          .compound(Ordering.natural().onResultOf(Finding::code));

  private final List<Reviewer> reviewers;

  /**
   * A review.
   *
   * @param more reviewers besides the engine's own, such as that of the controller
   */
  public Review(Collection<? extends Reviewer> more) {
    List<Reviewer> all = new ArrayList<>(OWN);
    all.addAll(more);
    reviewers = List.copyOf(all);
  }

  /** What the project itself shows, gravest first. */
  public List<Finding> ofProject(Project project) {
    Set<Finding> found = new LinkedHashSet<>();
    reviewers.forEach(reviewer -> reviewer.project(project, found::add));
    return sorted(found);
  }

  /**
   * What the situations of a project show, gravest first: an error keeps them from being played.
   */
  public static List<Finding> ofSituations(Project project) {
    Set<Finding> found = new LinkedHashSet<>();
    new SituationFindings().project(project, found::add);
    return sorted(found);
  }

  /** What keeps the situations of a project from being played. */
  public static List<Finding> errorsOfSituations(Project project) {
    return ofSituations(project).stream()
        .filter(finding -> finding.severity() == Severity.ERROR)
        .toList();
  }

  /**
   * What the situations of a project ask together, if a scene is named and nothing keeps them from
   * being played. This renders their scenes.
   */
  public static Optional<ShowMeasure> measureShow(Project project) {
    return Show.ifPlayable(project.rig(), project.scenes(), project.situations())
        .map(ShowMeasure::of);
  }

  /** What situations that are active together show, gravest first. */
  public static List<Finding> ofShow(Project project, ShowMeasure measure) {
    Set<Finding> found = new LinkedHashSet<>();
    ShowFindings.find(project, measure, found::add);
    return sorted(found);
  }

  /** What one scene shows, gravest first. */
  public List<Finding> ofScene(Project project, SceneReport report) {
    Set<Finding> found = new LinkedHashSet<>();
    reviewers.forEach(reviewer -> reviewer.scene(project, report, found::add));
    return sorted(found);
  }

  /** What the project, these scenes and its situations together show, gravest first. */
  public List<Finding> of(Project project, List<SceneReport> reports) {
    List<Finding> all = new ArrayList<>(ofProject(project));
    reports.forEach(report -> all.addAll(ofScene(project, report)));
    measureShow(project).ifPresent(measure -> all.addAll(ofShow(project, measure)));
    return sorted(all);
  }

  /** What is wrong with a file that holds no project. */
  public static List<Finding> ofFile(ReadResult result) {
    return result.problems().stream().map(Review::ofProblem).toList();
  }

  /** Findings with the positions at which their places are in a file. */
  public static List<Finding> located(List<Finding> findings, Positions positions) {
    return findings.stream()
        .map(
            finding ->
                finding
                    .place()
                    .map(at -> finding.at(new Location(at.path(), positions.of(at.path()))))
                    .orElse(finding))
        .toList();
  }

  /** Findings gravest first, each once. */
  public static List<Finding> sorted(Collection<Finding> findings) {
    return new LinkedHashSet<>(findings).stream().sorted(GRAVEST_FIRST).toList();
  }

  private static Finding ofProblem(Problem problem) {
    return Finding.of(Code.INVALID_VALUE, new Subject.WholeProject())
        .with("value", Figure.words(problem.value()))
        .with("allowed", Figure.words(problem.allowed()))
        .with(
            "suggestion",
            Figure.words(
                problem.suggestion().map(name -> "did you mean \"" + name + "\"?").orElse("")))
        .at(problem.path())
        .make()
        .at(new Location(problem.path(), Optional.of(problem.position())));
  }
}
