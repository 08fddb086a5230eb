package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;

/**
 * Sees to it that the player has done with a frame in a quarter of the time that the wire takes for
 * it, as far as that goes: where many lamps change in one frame, the costliest of them are coded
 * anew, longer but quicker to play.
 */
final class SpeedTuning {
  /** Share of the wire's time, less what the target's cost may be wrong by. */
  private static final double SHARE = 0.25 * 0.95;

  /**
   * Most times that the packed data may grow, or nothing is changed: late frames are reported, and
   * memory is dearer. Of 40 mixed projects some are tuned with it: 71,590 bytes, with 1.1 68,977,
   * with 2 79,268.
   */
  private static final double GROWTH = 1.3;

  /** Lamps that are coded anew, one after another. Found by trial: 32 change nothing. */
  private static final int TRIES = 16;

  // Packing is all but done.
  private static final double SHARE_DONE = 0.99;

  private final PartCoder coder;
  private final PackProgress progress;
  private final double budget;
  private final int longest;
  private final List<Packed.StandIn> standIns = new ArrayList<>();
  private Attempt best;

  SpeedTuning(Attempt first, List<Load> loads, PartCoder coder, PackProgress progress) {
    this.coder = coder;
    this.progress = progress;
    best = first;
    budget = first.layout.wireMicros() * first.cost.megahertz() * SHARE;
    longest = (int) (first.data.length * GROWTH);
    for (int s = 0; s < first.scenes.size() && budget > 0 && !first.merged; s++) {
      if (loads.get(s).worst() > budget) {
        speedUp(s, loads.get(s));
      }
    }
  }

  /** The packed data, proved. */
  byte[] data() {
    return best.data;
  }

  /** Lamps whose quicker code failed its proof and was not taken. */
  List<Packed.StandIn> standIns() {
    return standIns;
  }

  private void speedUp(int scene, Load first) {
    SceneCoder lamps = best.coder(scene);
    int[] speedLevel = new int[best.lamps.size()];
    Attempt attempt = best;
    Load load = first;
    for (int i = 0; i < TRIES && load.worst() > budget; i++) {
      if (!progress.proceed(SHARE_DONE)) {
        throw new CancellationException("packing was stopped");
      }
      List<LampPart> parts = new ArrayList<>(attempt.parts.get(scene));
      if (!speedUpCostliest(lamps, parts, speedLevel, load)) {
        return;
      }
      attempt = attempt.with(scene, parts);
      if (attempt.data.length > longest || !attempt.fits()) {
        return;
      }
      PackProof proof = PackProof.of(attempt, PackProgress.NONE);
      if (!proof.passed()) {
        standIns.addAll(SafetyNet.standIns(attempt, proof.wrong()));
        return;
      }
      load = proof.loads().get(scene);
    }
    if (load.worst() <= budget) {
      best = attempt;
    }
  }

  /** Codes the costliest lamp anew, and those coded like it; false if no lamp can be sped up. */
  private boolean speedUpCostliest(
      SceneCoder scene, List<LampPart> parts, int[] speedLevel, Load load) {
    int costliest = -1;
    for (int lamp = 0; lamp < speedLevel.length; lamp++) {
      if (speedLevel[lamp] < LampCoder.MAX_SPEED_LEVEL
          && (costliest < 0 || load.ofLamp(lamp) > load.ofLamp(costliest))) {
        costliest = lamp;
      }
    }
    if (costliest < 0) {
      return false;
    }
    LampPart old = parts.get(costliest);
    int more = speedLevel[costliest] + 1;
    for (int lamp = 0; lamp < speedLevel.length; lamp++) {
      if (lamp == costliest || parts.get(lamp).sameAs(old)) {
        speedLevel[lamp] = more;
        parts.set(lamp, coder.part(scene, lamp, more));
      }
    }
    return true;
  }
}
