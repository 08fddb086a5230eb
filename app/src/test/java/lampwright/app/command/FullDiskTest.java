package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.common.hash.Hashing;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectReader;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saving and exporting to a disk that fills up at every stage: a file system of its own, in a
 * namespace of its own (util-linux's {@code unshare}), which goes with the process.
 */
class FullDiskTest {
  private static final String DISK_BYTES = "4m";

  @TempDir private Path folder;

  @Test
  void fullDiskLeavesEveryFileAsItWas() throws IOException, InterruptedException {
    String mount = "mount -t tmpfs -o size=" + DISK_BYTES + " none \"$0\"";
    Path disk = Files.createDirectory(folder.resolve("disk"));
    boolean canMount = run(disk, mount, "true") == 0;
    if (!canMount && System.getenv(OutsideTools.REQUIRE) == null) {
      Assumptions.abort("unshare can't mount a small disk here: full disks are left out");
    }
    assertThat(canMount).as("unshare and mount").isTrue();

    int code =
        run(
            disk,
            mount,
            "exec",
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            OnDisk.class.getName(),
            disk.toString());

    assertThat(code).as(Files.readString(folder.resolve("said"))).isZero();
  }

  /** Mounts, then runs the words as one command of the shell. */
  private int run(Path disk, String mount, String... words)
      throws IOException, InterruptedException {
    StringBuilder script = new StringBuilder(mount).append(" &&");
    for (String word : words) {
      script.append(word.equals("exec") ? " exec" : " '" + word + "'");
    }
    try {
      Process process =
          new ProcessBuilder("unshare", "-rm", "sh", "-c", script.toString(), disk.toString())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("said").toFile())
              .start();
      assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
      return process.exitValue();
    } catch (IOException noSuchTool) {
      return -1;
    }
  }

  /** What runs on the small disk. */
  static final class OnDisk {
    private static final int PAGE = 4096;
    private static final String FULL = "No space left on device";

    private final Path disk;
    private final Path ballast;

    private OnDisk(Path disk) {
      this.disk = disk;
      this.ballast = disk.resolve("ballast");
    }

    public static void main(String[] arguments) throws IOException {
      OnDisk here = new OnDisk(Path.of(arguments[0]));
      here.saves();
      here.exports();
    }

    private void saves() throws IOException {
      Path file = disk.resolve("model.lampwright.json");
      Files.copy(Run.sample("recovery-tractor"), file);
      Project small = read(Run.sample("bench-rgbw"));
      Project large = read(Run.sample("recovery-tractor"));
      assertThat(Files.size(file)).isGreaterThan(PAGE);
      for (int free = 0; free <= PAGE; free += PAGE) {
        leave(free);
        Map<String, String> before = files();

        assertThatThrownBy(() -> ProjectFiles.save(large, file))
            .isInstanceOf(IOException.class)
            .hasMessage(file + ": could not write: " + FULL);

        assertThat(files()).isEqualTo(before);
      }
      Files.delete(ballast);
      ProjectFiles.save(small, file);
      assertThat(read(file)).isEqualTo(small);
      Files.delete(file);
    }

    private void exports() throws IOException {
      Path to = disk.resolve("out");
      assertThat(export("bench-rgbw", to).code()).isZero();
      Map<String, String> old = files();
      leave(0);
      Run toNew = export("bench-rgbw", disk.resolve("new"));
      assertThat(toNew.code()).as(toNew.err()).isEqualTo(3);
      assertThat(files()).isEqualTo(old);
      int refused = 0;
      Run run = new Run(-1, "", "");
      for (int free = 0;
          run.code() != 0;
          free = free == 0 ? PAGE : free + free / 2 / PAGE * PAGE + PAGE) {
        leave(free);
        run = export("recovery-tractor", to);
        Files.delete(ballast);
        if (run.code() != 0) {
          refused++;
          assertThat(run.code()).as(run.err()).isEqualTo(3);
          assertThat(run.err()).contains(FULL).contains(to.toString());
          assertThat(files()).as("%d bytes were free", free).isEqualTo(old);
        }
      }
      assertThat(refused).isGreaterThan(5);
      assertThat(files()).isNotEqualTo(old);
    }

    private static Run export(String sample, Path to) {
      return Run.of(
          "export", Run.sample(sample), "--to", to, "--as", "c,bin,packed,hex,csv,firmware");
    }

    private static Project read(Path file) throws IOException {
      return ProjectReader.read(file.toString(), Files.readAllBytes(file)).project().orElseThrow();
    }

    /** Fills the disk but for some bytes. */
    private void leave(int freeBytes) throws IOException {
      Files.deleteIfExists(ballast);
      long bytes = Files.getFileStore(disk).getUsableSpace() - freeBytes;
      try (OutputStream out = Files.newOutputStream(ballast)) {
        for (long written = 0; written < bytes; written += PAGE) {
          out.write(new byte[PAGE]);
        }
      }
      assertThat(Files.getFileStore(disk).getUsableSpace()).isEqualTo(freeBytes);
    }

    /** All files by name with their digests, folders with none. */
    private Map<String, String> files() throws IOException {
      Map<String, String> files = new TreeMap<>();
      try (Stream<Path> all = Files.walk(disk)) {
        for (Path path : all.filter(p -> !p.equals(ballast)).toList()) {
          files.put(
              disk.relativize(path).toString(),
              Files.isDirectory(path)
                  ? ""
                  : Hashing.sha256().hashBytes(Files.readAllBytes(path)).toString());
        }
      }
      return files;
    }
  }
}
