package lampwright.engine.json;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where the values of a project are in the file that it was read from. */
public final class Positions {
  /** Of a project that was read from no file. */
  public static final Positions NONE = new Positions(null);

  private final @Nullable Json root;

  private Positions(@Nullable Json root) {
    this.root = root;
  }

  static Positions of(Json root) {
    return new Positions(root);
  }

  /**
   * The position of a value, or of the last one on the way to it, as a value left out is nowhere.
   *
   * @param path as in {@code scenes[0].tracks[2].lamps[0]}
   */
  public Optional<Position> of(String path) {
    if (root == null) {
      return Optional.empty();
    }
    Json at = FaultPath.find(root, path);
    return Optional.of(new Position(at.line(), at.column()));
  }
}
