package lampwright.app.workshop.model.files;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.Executor;
import lampwright.app.workshop.disk.Background;

/** The screen's and the disk's threads in turns on one, with a clock that a test moves. */
public final class Turns implements Background, Executor {
  private record Later(Duration at, Runnable work) {}

  private final Deque<Runnable> next = new ArrayDeque<>();
  private final List<Later> later = new ArrayList<>();
  private Duration now = Duration.ZERO;

  @Override
  public void execute(Runnable work) {
    next.add(work);
  }

  @Override
  public void run(Runnable work) {
    next.add(work);
  }

  @Override
  public void runAfter(Duration delay, Runnable work) {
    later.add(new Later(now.plus(delay), work));
  }

  @Override
  public Duration now() {
    return now;
  }

  /** Does the next thing, if there is one. */
  boolean step() {
    if (next.isEmpty()) {
      return false;
    }
    next.remove().run();
    return true;
  }

  /** Lets so much time go by in which nothing is done, but what was to be done then is next. */
  void later(long millis) {
    now = now.plusMillis(millis);
    later.stream()
        .filter(each -> each.at().compareTo(now) <= 0)
        .sorted(Comparator.comparing(Later::at))
        .forEach(each -> next.add(each.work()));
    later.removeIf(each -> each.at().compareTo(now) <= 0);
  }

  /** Does all that can be done without time going on. */
  public void drain() {
    while (!next.isEmpty()) {
      next.remove().run();
    }
  }

  /** Lets so much time go by. */
  public void pass(long millis) {
    Duration end = now.plusMillis(millis);
    drain();
    while (true) {
      Later soonest = later.stream().min(Comparator.comparing(Later::at)).orElse(null);
      if (soonest == null || soonest.at().compareTo(end) > 0) {
        now = end;
        return;
      }
      later.remove(soonest);
      now = soonest.at();
      soonest.work().run();
      drain();
    }
  }
}
