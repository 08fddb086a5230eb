package lampwright.app.workshop.disk;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A recovery file on the disk.
 *
 * @param place where it lies
 * @param content what it holds; none if it is damaged
 */
public record FoundRecovery(Path place, Optional<Recovery> content) {}
