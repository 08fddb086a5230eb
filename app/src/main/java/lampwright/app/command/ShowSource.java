package lampwright.app.command;

import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.json.ReadResult;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.situation.Show;

/** What the situations of a project play, for commands that play a drive. */
final class ShowSource {
  private ShowSource() {}

  /**
   * The show; none if it can't be played, and then the terminal has the reason.
   *
   * @param read of the file, with a project
   */
  static Optional<Show> of(ProjectFile file, ReadResult read, Terminal terminal) {
    Project project = read.project().orElseThrow();
    List<Finding> errors = Review.located(Review.errorsOfSituations(project), read.positions());
    if (!errors.isEmpty()) {
      FindingText.print(read.source(), errors, terminal.err());
      return Optional.empty();
    }
    Optional<Show> show = Show.of(project.rig(), project.scenes(), project.situations());
    if (show.isEmpty()) {
      terminal.refuse(file.shown() + ": no situation has a scene, so there is nothing to play");
    }
    return show;
  }
}
