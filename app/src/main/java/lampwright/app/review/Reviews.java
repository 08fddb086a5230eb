package lampwright.app.review;

import java.util.List;
import lampwright.engine.review.Review;
import lampwright.exporters.target.TargetFindings;

/** The review that check, measure, export and the workshop share. */
public final class Reviews {
  /** With everything that the program knows of supplies, controllers and eyes. */
  public static final Review ALL = new Review(List.of(new TargetFindings()));

  private Reviews() {}
}
