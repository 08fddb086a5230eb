package lampwright.exporters.firmware;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.ShowClock;
import lampwright.exporters.target.Target;

/**
 * What a proof on the simulator needs: the prover's source, and the words of its command line that
 * say what the firmware of a rig must do on which pins.
 */
public final class FirmwareProof {
  private static final BigDecimal MILLI = BigDecimal.valueOf(1000);

  private final Rig rig;
  private final Target target;

  /**
   * The proof of a rig's firmware.
   *
   * @param rig one that the firmware export accepts
   */
  public FirmwareProof(Rig rig) {
    this.rig = rig;
    this.target = Target.of(rig);
  }

  /** Whether the firmware drives the pins itself, so that there is something to prove. */
  public boolean possible() {
    return target.drivesPins();
  }

  /** Whether it is proved by its UF2 file on a model that comes with the program. */
  public boolean byUf2() {
    return Uf2Exporter.isFor(rig);
  }

  /** The controller in the words of compiler and simulator. */
  public String controller() {
    return target.controller().id();
  }

  /** The clock that the firmware is built for. */
  public int hertz() {
    return target.hertz().orElseThrow();
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
    words.addAll(List.of("--rate", millihertz.toPlainString()));
    if (!scene.loop()) {
      words.add("--once");
    }
    words.add("--skip-idle");
    words.addAll(target.proofWords(rig));
    return words;
  }

  /** The greatest error of the widths that it measures, us. */
  public double servoErrorUs() {
    return target.servoErrorUs();
  }

  /**
   * The prover's options for a drive, without the names of files.
   *
   * @param frames how many are compared
   */
  public List<String> driveOptions(ShowClock clock, int frames) {
    List<String> words = new ArrayList<>();
    BigDecimal millihertz =
        clock.framesPerSecond().multiply(MILLI).setScale(0, RoundingMode.HALF_UP);
    words.addAll(List.of("--rate", millihertz.toPlainString()));
    words.addAll(List.of("--once", "--frames", Integer.toString(frames)));
    words.addAll(target.proofWordsWithGaps(rig));
    return words;
  }
}
