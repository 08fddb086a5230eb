package lampwright.exporters.table;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.exporters.ExportJob;
import lampwright.exporters.target.Target;
import org.jspecify.annotations.Nullable;

/** The comment that tells a builder all that a loop of his own needs. */
final class CHeaderComment {
  private final ExportJob job;
  private final CNames names;
  private final FrameRate rate;
  private final BlockOutput out;
  private final FrameLayout layout;
  private final Map<String, @Nullable Lamp[]> lampsOfChain = new HashMap<>();
  private final Map<String, Lamp> lampOfOutput = new HashMap<>();

  CHeaderComment(ExportJob job, CNames names, FrameRate rate, BlockOutput out) {
    this.job = job;
    this.names = names;
    this.rate = rate;
    this.out = out;
    this.layout = job.table().layout();
    for (Chain chain : layout.rig().chains()) {
      lampsOfChain.put(chain.id(), new Lamp[chain.pixels()]);
    }
    for (Lamp lamp : layout.rig().lamps()) {
      if (lamp.fitting() instanceof Fitting.Output fitted) {
        lampOfOutput.put(fitted.output(), lamp);
      } else if (lamp.fitting() instanceof Fitting.Pixels fitted) {
        for (PixelRun run : fitted.runs()) {
          Arrays.fill(lampsOfChain.get(run.chain()), run.from(), run.end(), lamp);
        }
      }
    }
  }

  void write() throws IOException {
    out.line("/*");
    what();
    line("");
    howLarge();
    line("");
    frame();
    line("");
    use();
    out.line(" */");
  }

  private void what() throws IOException {
    String rounded = rate.wholeMicroseconds() ? "" : "about ";
    line(
        "Scene "
            + job.scene().id()
            + " of the project \""
            + CText.comment(job.project().name())
            + "\",");
    line("exported by Lampwright. To change it, edit the project.");
    line("");
    line(
        plural(job.table().frameCount(), "frame")
            + " of "
            + plural(layout.bytes(), "byte")
            + "; "
            + job.scene().framesPerSecond().toPlainString()
            + " frames/s ("
            + rounded
            + rate.microseconds()
            + " us per frame), "
            + (job.scene().loop() ? "loops." : "plays once."));
  }

  private void howLarge() throws IOException {
    line("The table takes " + plural(job.table().bytes(), "byte") + " of program memory:");
    for (Target target : Target.known()) {
      row(target.name(), FlashShare.words(target, job.table().bytes()));
    }
    if (job.table().bytes() > CExporter.AVR_MAX_TABLE_BYTES) {
      line("AVR compilers refuse it: one array has at most 32767 bytes.");
    }
  }

  private void frame() throws IOException {
    line("Bytes of a frame, 0 for dark to 255 for full duty:");
    List<Chain> chains = layout.rig().chains();
    for (int c = 0; c < chains.size(); c++) {
      chain(chains.get(c), layout.chainOffset(c));
    }
    int at = layout.outputsOffset();
    for (DriverOutput output : layout.rig().outputs()) {
      row("byte " + at++, "output " + output.id() + ": " + lamp(lampOfOutput.get(output.id())));
    }
  }

  private void chain(Chain chain, int offset) throws IOException {
    String order =
        chain.order().emitters().stream()
            .map(EmitterKind::name)
            .map(name -> name.toLowerCase(Locale.ROOT))
            .collect(Collectors.joining(", "));
    row(
        "bytes " + offset + " to " + (offset + chain.bytes() - 1),
        "chain " + chain.id() + ": " + plural(chain.pixels(), "pixel") + ", each " + order);
    @Nullable Lamp[] lamps = lampsOfChain.get(chain.id());
    int from = 0;
    while (from < lamps.length) {
      int to = from + 1;
      while (to < lamps.length && Objects.equals(lamps[to], lamps[from])) {
        to++;
      }
      String pixels = to - from == 1 ? "pixel " + from : "pixels " + from + " to " + (to - 1);
      row("", "  " + pixels + ": " + lamp(lamps[from]));
      from = to;
    }
  }

  private void use() throws IOException {
    line(
        "To play it: every "
            + names.constant("FRAME_US")
            + " microseconds, copy the next frame with");
    line(names.readFrame() + "(). Send each chain its bytes, which begin at its OFFSET, in the");
    line("order in which they are stored, most significant bit first; set each output's PWM");
    line("duty to its byte (0 to 255).");
  }

  private static String lamp(@Nullable Lamp lamp) {
    if (lamp == null) {
      return "no lamp";
    }
    String name = lamp.name().isEmpty() ? "" : " \"" + CText.comment(lamp.name()) + "\"";
    return "lamp " + lamp.id() + name;
  }

  private static String plural(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  private void row(String left, String right) throws IOException {
    line("  " + left + " ".repeat(Math.max(0, 20 - left.length())) + " " + right);
  }

  private void line(String text) throws IOException {
    out.line(text.isEmpty() ? " *" : " * " + text);
  }
}
