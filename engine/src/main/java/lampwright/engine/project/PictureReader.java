package lampwright.engine.project;

import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.View;

/** Reads the pictures of the model. */
final class PictureReader {
  static final ValueKind<View> VIEW = ValueKind.choice(View.values(), View::key);

  private PictureReader() {}

  /** The pictures; empty if any of them was not accepted. */
  static Optional<List<Picture>> all(Fields project) {
    List<Optional<Picture>> pictures =
        project.list("pictures", Project.PICTURES).stream().map(PictureReader::read).toList();
    return pictures.stream().allMatch(Optional::isPresent)
        ? Optional.of(pictures.stream().flatMap(Optional::stream).toList())
        : Optional.empty();
  }

  private static Optional<Picture> read(Located at) {
    Fields f = at.fields().expect("view", "file");
    View view = f.required("view", VIEW, View.SIDE);
    String file = f.required("file", ValueKind.TEXT, "");
    Optional<Picture> picture =
        f.build(() -> Optional.of(new Picture(view, file)), Optional::empty);
    f.close();
    return picture;
  }
}
