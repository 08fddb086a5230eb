package lampwright.app.live;

/**
 * How a link does.
 *
 * @param sent frames sent, those sent again among them
 * @param taken of them, answered
 * @param unanswered of them, not answered in time
 * @param damaged answers that came damaged
 * @param losses how often the link was lost and came back
 * @param framesPerSecond taken in the last second or so
 */
public record LinkFigures(
    long sent, long taken, long unanswered, long damaged, int losses, double framesPerSecond) {
  public static final LinkFigures NONE = new LinkFigures(0, 0, 0, 0, 0, 0);
}
