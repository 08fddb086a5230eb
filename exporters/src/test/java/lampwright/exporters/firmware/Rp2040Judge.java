package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import lampwright.exporters.ExportJob;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;

/** Runs UF2 files on a general simulator of the RP2040, and reads what is on its pins. */
public final class Rp2040Judge {
  private static final Path FOLDER = Path.of("src/test/js").toAbsolutePath();

  /** A low time after which a bit is of the next frame; no part's bits are low for so long. */
  private static final long GAP_NS = 20_000;

  // One for all tests of a JVM: node compiles the simulator anew whenever it is started.
  private static final Map<OutsideTools.Tool, Judging> JUDGING = new ConcurrentHashMap<>();

  private final OutsideTools.Tool node = OutsideTools.onThisMachine().findNode(FOLDER, "rp2040js");
  private final Path folder;

  /** A judge with a folder for its files. */
  public Rp2040Judge(Path folder) {
    this.folder = folder;
  }

  /**
   * A change of a pin.
   *
   * @param ns since the second boot stage began
   */
  public record Edge(long ns, boolean high) {}

  /** A bit: how long the line was high, and low after it; 0 after the last of a frame. */
  public record Bit(long highNs, long lowNs) {}

  /** The bits of a frame, and when the first began. */
  public record Burst(long ns, List<Bit> bits) {
    /** The bytes, most significant bit first; a 1 is high for longer than the threshold. */
    public byte[] bytes(double thresholdNs) {
      byte[] bytes = new byte[bits.size() / 8];
      for (int i = 0; i < 8 * bytes.length; i++) {
        if (bits.get(i).highNs > thresholdNs) {
          bytes[i / 8] |= (byte) (0x80 >> i % 8);
        }
      }
      return bytes;
    }
  }

  /**
   * What the pins did.
   *
   * @param exit 0: it ran; 1: the boot ROM would refuse the file
   * @param edges by GP number
   * @param asleep share of the cycles that the core slept
   * @param stackBytes of its deepest stack
   */
  public record Run(
      int exit, String errors, Map<Integer, List<Edge>> edges, double asleep, int stackBytes) {
    /** What was sent on a pin; a frame that the end of the run cut is left out. */
    public List<Burst> bursts(int pin, int bytes) {
      List<Edge> all = edges.getOrDefault(pin, List.of());
      List<Burst> bursts = new ArrayList<>();
      List<Bit> bits = new ArrayList<>();
      long start = 0;
      for (int i = 0; i + 1 < all.size(); i += 2) {
        long rise = all.get(i).ns;
        long fall = all.get(i + 1).ns;
        start = bits.isEmpty() ? rise : start;
        long low = i + 2 < all.size() ? all.get(i + 2).ns - fall : Long.MAX_VALUE;
        bits.add(new Bit(fall - rise, low > GAP_NS ? 0 : low));
        if (low > GAP_NS) {
          if (low != Long.MAX_VALUE || bits.size() == 8 * bytes) {
            bursts.add(new Burst(start, List.copyOf(bits)));
          }
          bits.clear();
        }
      }
      return bursts;
    }
  }

  /** The file that is exported for a job. */
  public static byte[] uf2(ExportJob job) throws Exception {
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    new Uf2Exporter().export(job, name -> out, Progress.SILENT);
    return out.toByteArray();
  }

  private static String text(DriveSignal drive) {
    return drive.edges().stream()
        .map(e -> e.ns() + " " + e.pin().number() + " " + (e.level() ? 1 : 0))
        .collect(Collectors.joining("\n"));
  }

  /** Runs a file. */
  public Run run(byte[] uf2, int milliseconds) {
    return run(uf2, milliseconds, Optional.empty());
  }

  /** Runs a file with a drive on the pins of its inputs. */
  public Run run(byte[] uf2, int milliseconds, DriveSignal drive) {
    return run(uf2, milliseconds, Optional.of(drive));
  }

  private Run run(byte[] uf2, int milliseconds, Optional<DriveSignal> drive) {
    try {
      List<String> order = new ArrayList<>();
      order.add(quoted(Files.write(folder.resolve("judged.uf2"), uf2)));
      order.add(Integer.toString(milliseconds));
      if (drive.isPresent()) {
        order.add(quoted(Files.writeString(folder.resolve("judged.drive"), text(drive.get()))));
      }
      return JUDGING.computeIfAbsent(node, Rp2040Judge::start).run(order.toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String quoted(Path file) {
    return "\"" + file.toAbsolutePath() + "\"";
  }

  private static Judging start(OutsideTools.Tool node) {
    try {
      return new Judging(
          new ProcessBuilder(node.program().toString(), FOLDER.resolve("judge.mjs").toString())
              .directory(FOLDER.toFile())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A judge that runs one file after the other, and ends with these tests, as its input does. */
  private static final class Judging {
    private final Process process;
    private final BufferedReader answers;
    private final Writer orders;

    Judging(Process process) {
      this.process = process;
      this.answers = process.inputReader(UTF_8);
      this.orders = process.outputWriter(UTF_8);
    }

    synchronized Run run(String order) throws IOException {
      orders.write(order + "\n");
      orders.flush();
      Map<Integer, List<Edge>> edges = new TreeMap<>();
      double asleep = 0;
      int stackBytes = 0;
      while (true) {
        String line = answers.readLine();
        if (line == null) {
          throw new IOException("the judge ended: " + process);
        }
        String[] words = line.split(" ", 3);
        switch (words[0]) {
          case "exit" -> {
            return new Run(Integer.parseInt(words[1]), words[2], edges, asleep, stackBytes);
          }
          case "end" -> {
            String[] figures = words[2].split(" ", -1);
            asleep = Double.parseDouble(figures[0]);
            stackBytes = Double.valueOf(figures[1]).intValue();
          }
          default ->
              edges
                  .computeIfAbsent(Integer.valueOf(words[1]), pin -> new ArrayList<>())
                  .add(new Edge(Long.parseLong(words[0]), words[2].equals("1")));
        }
      }
    }
  }
}
