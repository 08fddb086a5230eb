package lampwright.app.workshop.view;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryUsage;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.stage.Stage;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.rig.View;

/**
 * Plays the large project of {@link WorkshopBenchmark} in the real window for a quarter of an hour
 * and prints, every ten seconds, the memory that the process has of the system, what the heap held
 * after its last collection, and its threads. At the end it prints the processor time that a frame
 * took of the two threads which lay out and paint it: unlike the time by the clock, that does not
 * grow where other programs run beside. Needs a display and Linux; docs/performance.md has the
 * command.
 */
public final class WorkshopEndurance {
  private static final int MINUTES = Integer.getInteger("lampwright.minutes", 15);
  private static final long EVERY_MS = 10_000;

  /** Frames at first, while Java still compiles. */
  private static final int WARMING = 300;

  /** What JavaFX calls the threads that lay out and paint. */
  private static final Set<String> PAINTERS =
      Set.of("JavaFX Application Thread", "QuantumRenderer-0");

  private WorkshopEndurance() {}

  /** Runs it. */
  public static void main(String[] arguments) {
    Application.launch(Window.class);
  }

  /** What was sampled at once; kilobytes. */
  private record Sample(long residentKb, long heapKb, long threads) {}

  /** The window. */
  public static final class Window extends Application {
    private final List<Sample> samples = new ArrayList<>();
    private final List<Long> frameNanos = Collections.synchronizedList(new ArrayList<>());
    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private boolean sampling;
    private long frames;
    private long spentNanos;
    private long[] painters = {};

    /** For JavaFX. */
    public Window() {}

    @Override
    public void start(Stage stage) throws IOException {
      Path folder = Files.createTempDirectory("lampwright-endurance");
      System.setProperty("lampwright.state", folder.resolve("state").toString());
      Path file = folder.resolve("large.lampwright.json");
      ProjectFiles.save(WorkshopBenchmark.large(), file);
      WorkshopWindow window = new WorkshopWindow(stage);
      stage.setWidth(1500);
      stage.setHeight(950);
      window.show(Optional.of(file));
      WorkshopParts parts = window.parts();
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          frames++;
          long spent = spentNanos();
          if (parts.player().playingProperty().get()) {
            frameNanos.add(spent - spentNanos);
          }
          spentNanos = spent;
          boolean measured =
              parts.lights().reportProperty().get().isPresent()
                  && !parts.lights().measuringProperty().get()
                  && parts.bench().project().rig().lamps().size() > 100;
          if (measured && !parts.player().playingProperty().get()) {
            parts.sheet().viewProperty().set(View.SIDE);
            parts.player().play();
            if (!sampling && parts.player().playingProperty().get()) {
              sampling = true;
              Thread sampler = new Thread(Window.this::sample, "sampler");
              sampler.setDaemon(true);
              sampler.start();
            }
          }
        }
      }.start();
    }

    private long spentNanos() {
      if (painters.length == 0) {
        painters =
            Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(Objects::nonNull)
                .filter(info -> PAINTERS.contains(info.getThreadName()))
                .mapToLong(ThreadInfo::getThreadId)
                .toArray();
      }
      return Arrays.stream(painters).map(threads::getThreadCpuTime).sum();
    }

    private void sample() {
      long end = System.currentTimeMillis() + MINUTES * 60_000L;
      try {
        while (System.currentTimeMillis() < end) {
          Thread.sleep(EVERY_MS);
          Sample now = new Sample(status("VmRSS"), heapKb(), status("Threads"));
          samples.add(now);
          System.out.printf(
              Locale.ROOT,
              "%4d s  resident %6d MiB  heap after collection %5d MiB  threads %3d  frames %d%n",
              samples.size() * EVERY_MS / 1000,
              now.residentKb() / 1024,
              now.heapKb() / 1024,
              now.threads(),
              frames);
        }
        // The first third is for opening, compiling and the heap's own growth.
        summary("second third", samples.subList(samples.size() / 3, samples.size() * 2 / 3));
        summary("last third", samples.subList(samples.size() * 2 / 3, samples.size()));
        List<Long> all = List.copyOf(frameNanos);
        List<Long> nanos =
            new ArrayList<>(all.subList(Math.min(WARMING, all.size() / 2), all.size()));
        Collections.sort(nanos);
        System.out.printf(
            Locale.ROOT,
            "%d frames, processor time: median %.1f ms, 99 of 100 within %.1f ms%n",
            nanos.size(),
            nanos.get(nanos.size() / 2) / 1e6,
            nanos.get(nanos.size() * 99 / 100) / 1e6);
      } catch (InterruptedException | IOException ended) {
        System.out.println(ended);
      }
      Runtime.getRuntime().halt(0);
    }

    private static void summary(String what, List<Sample> of) {
      List<Long> resident = new ArrayList<>(of.stream().map(Sample::residentKb).toList());
      List<Long> heap = new ArrayList<>(of.stream().map(Sample::heapKb).toList());
      List<Long> threads = new ArrayList<>(of.stream().map(Sample::threads).toList());
      Collections.sort(resident);
      Collections.sort(heap);
      Collections.sort(threads);
      int middle = of.size() / 2;
      System.out.printf(
          Locale.ROOT,
          "%s: median resident %d MiB (most %d), heap after collection %d MiB, threads %d to %d%n",
          what,
          resident.get(middle) / 1024,
          resident.get(of.size() - 1) / 1024,
          heap.get(middle) / 1024,
          threads.get(0),
          threads.get(of.size() - 1));
    }

    private static long status(String name) throws IOException {
      return Files.readAllLines(Path.of("/proc/self/status")).stream()
          .filter(line -> line.startsWith(name + ":"))
          .map(line -> line.replaceAll("[^0-9]", ""))
          .mapToLong(Long::parseLong)
          .findFirst()
          .orElse(0);
    }

    private static long heapKb() {
      long bytes = 0;
      for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
        MemoryUsage after = pool.getCollectionUsage();
        bytes += after == null ? 0 : after.getUsed();
      }
      return bytes / 1024;
    }
  }
}
