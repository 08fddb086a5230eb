package lampwright.app.live;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.UUID;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.disk.WholeFile;

/** The identifier by which receivers know this user's program, kept in the user's state folder. */
public final class SenderId {
  private static final String FILE = "sender-id";
  private static final int TEXT_LENGTH = 36;

  private SenderId() {}

  /** The one that is kept, or a new one, which is kept from now on if it can be. */
  public static UUID in(Path stateFolder) {
    Path file = stateFolder.resolve(FILE);
    try {
      byte[] kept = RegularFile.start(file, TEXT_LENGTH);
      return UUID.fromString(new String(kept, StandardCharsets.US_ASCII));
    } catch (IOException | IllegalArgumentException none) {
      return made(file);
    }
  }

  private static UUID made(Path file) {
    UUID made = UUID.randomUUID();
    try {
      WholeFile.write(file, made.toString());
    } catch (IOException forgotten) {
      // Receivers then take the next run for another sender, which is all.
    }
    return made;
  }
}
