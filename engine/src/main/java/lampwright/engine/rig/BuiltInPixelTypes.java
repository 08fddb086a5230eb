package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;

/** The pixel types that every project knows, by part number. */
public final class BuiltInPixelTypes {
  private BuiltInPixelTypes() {}

  /** All of them, in the order in which they are listed to people. */
  public static List<PixelType> all() {
    return PixelTypeTable.TYPES;
  }

  /** The type with this id. */
  public static Optional<PixelType> find(String id) {
    return all().stream().filter(type -> type.id().equals(id)).findFirst();
  }
}
