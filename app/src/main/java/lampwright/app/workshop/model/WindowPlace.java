package lampwright.app.workshop.model;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.disk.WindowState;

/**
 * Where a window opens that was left on other screens, or at another scale: wholly on one of those
 * that are there now.
 */
public final class WindowPlace {
  /** What a screen has for windows, in the pixels that JavaFX counts. */
  public record Room(double x, double y, double width, double height) {
    private double covered(WindowState.Frame frame) {
      return overlap(frame.x(), frame.width(), x, width)
          * overlap(frame.y(), frame.height(), y, height);
    }
  }

  private WindowPlace() {}

  /**
   * The frame pulled into the room of which it covers most: moved, and no larger than it.
   *
   * @return nothing if it covers no room, or one too small for a window
   */
  public static Optional<WindowState.Frame> of(WindowState.Frame left, List<Room> rooms) {
    return rooms.stream()
        .filter(room -> room.covered(left) > 0)
        .max(Comparator.comparingDouble(room -> room.covered(left)))
        .filter(room -> Math.min(room.width(), room.height()) >= WindowState.Frame.LEAST)
        .map(room -> pulled(left, room));
  }

  private static WindowState.Frame pulled(WindowState.Frame left, Room room) {
    double width = Math.min(left.width(), room.width());
    double height = Math.min(left.height(), room.height());
    return new WindowState.Frame(
        within(left.x(), room.x(), room.x() + room.width() - width),
        within(left.y(), room.y(), room.y() + room.height() - height),
        width,
        height);
  }

  private static double within(double wanted, double least, double most) {
    return Math.max(least, Math.min(wanted, most));
  }

  private static double overlap(double from, double length, double otherFrom, double otherLength) {
    return Math.max(
        0, Math.min(from + length, otherFrom + otherLength) - Math.max(from, otherFrom));
  }
}
