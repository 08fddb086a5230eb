package lampwright.app.workshop.model.drawing;

import java.nio.file.Path;
import java.util.function.Consumer;

/** A picture of the builder's own model. */
public interface OwnPicture {
  /**
   * Asks for one.
   *
   * @param then gets the file, once it is known to be a picture; not called without one
   */
  void ask(Consumer<Path> then);

  /** Shows it in place of the drawing; it is copied beside the project's file if need be. */
  void use(Path file);
}
