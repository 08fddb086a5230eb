package lampwright.engine.disk;

import java.time.Instant;
import java.util.Optional;

/**
 * The process that wrote a file.
 *
 * @param pid its number
 * @param started when it started, since numbers are used again; the epoch where the system does not
 *     say
 */
public record Owner(long pid, Instant started) {
  /** Used where a system does not say when a process started. */
  public static final Instant NEVER = Instant.EPOCH;

  /** This process. */
  public static Owner self() {
    return of(ProcessHandle.current());
  }

  private static Owner of(ProcessHandle process) {
    return new Owner(process.pid(), process.info().startInstant().orElse(NEVER));
  }

  /** Whether it still runs on this machine. */
  public boolean isAlive() {
    Optional<ProcessHandle> now = ProcessHandle.of(pid);
    return now.filter(ProcessHandle::isAlive).map(Owner::of).filter(this::equals).isPresent();
  }
}
