package lampwright.exporters.firmware;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lampwright.engine.light.Checks;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/**
 * What a proof on the simulator needs: the prover's source, and the words of its command line that
 * say what the firmware of a rig must do on which pins.
 */
public final class FirmwareProof {
  /** The time of a bit where a pixel type states none: the WS2812B's. */
  private static final LineTime.Range PERIOD = new LineTime.Range(650, 1850);

  private static final BigDecimal MILLI = BigDecimal.valueOf(1000);

  private final Rig rig;
  private final Board board;
  private final PinPlan pins;

  /**
   * The proof of a rig's firmware.
   *
   * @param rig one that the firmware export accepts
   */
  public FirmwareProof(Rig rig) {
    this.rig = rig;
    this.board = Board.of(rig.controller());
    this.pins = PinPlan.of(rig, board);
  }

  /** Whether the firmware drives the pins itself, so that there is something to prove. */
  public boolean possible() {
    return board.driven();
  }

  /** The controller in the words of compiler and simulator. */
  public String controller() {
    return board.controller().id();
  }

  /** The clock that the firmware is built for. */
  public int hertz() {
    return board.hertz();
  }

  /** The prover's source: a C program for libsimavr. */
  public static byte[] proverSource() throws IOException {
    try (InputStream in =
        FirmwareProof.class.getResourceAsStream("/lampwright/exporters/prover/prover.c")) {
      return Objects.requireNonNull(in, "prover.c").readAllBytes();
    }
  }

  /** The prover's options for a scene, without the names of files. */
  public List<String> options(Scene scene) {
    List<String> words = new ArrayList<>();
    BigDecimal millihertz =
        scene.framesPerSecond().multiply(MILLI).setScale(0, RoundingMode.HALF_UP);
    add(words, "--mcu", controller());
    add(words, "--hz", Integer.toString(board.hertz()));
    add(words, "--rate", millihertz.toPlainString());
    if (!scene.loop()) {
      words.add("--once");
    }
    words.add("--skip-idle");
    int at = 0;
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      add(words, "--chain", chain(chain, pins.chains().get(c), at));
      at += chain.bytes();
    }
    for (Pin pin : pins.outputs()) {
      add(words, "--output", "at=" + at++ + "," + PwmRegisters.duty(board, pin));
      PwmRegisters.timer(board, pin).forEach(register -> add(words, "--register", register));
    }
    add(words, "--frame-bytes", Integer.toString(at));
    return words;
  }

  private static String chain(Chain chain, Pin pin, int at) {
    LineTiming line = chain.type().line();
    return "pin="
        + pin.name().substring(1)
        + ",at="
        + at
        + ",bytes="
        + chain.bytes()
        + limits("t0h", line.t0h())
        + limits("t0l", line.t0l())
        + limits("t1h", line.t1h())
        + limits("t1l", line.t1l())
        + limits("period", line.bit().orElse(PERIOD))
        + ",reset="
        + Checks.plain(line.resetUs());
  }

  private static String limits(String name, LineTime time) {
    String least = Checks.plain(time.leastNs());
    String greatest = Checks.plain(time.greatestNs());
    return "," + name + "-min=" + least + "," + name + "-max=" + greatest;
  }

  private static void add(List<String> words, String option, String value) {
    words.add(option);
    words.add(value);
  }
}
