package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;

/**
 * Sees to it that the player has done with a frame in a quarter of the time that the wire takes for
 * it, as far as that goes: where many lamps change in one frame, the costliest of them are coded
 * anew, longer but quicker to play.
 */
final class SpeedTuning {
  /**
   * Most times that short data may grow, or nothing is changed: late frames are reported, and
   * memory is dearer. Of 40 mixed projects some are tuned with it: 71,590 bytes, with 1.1 68,977,
   * with 2 79,268.
   */
  private static final double SHORT_GROWTH = 1.3;

  /** Bytes that long data may grow: a part of the smallest controller's memory, */
  private static final int LONG_GROWTH_BYTES = 512;

  /** or that many times. */
  private static final double LONG_GROWTH = 1.1;

  /** Lamps that are coded anew, one after another. Found by trial: 32 change nothing. */
  private static final int TRIES = 16;

  // Packing is all but done.
  private static final double SHARE_DONE = 0.99;

  private final PartCoder coder;
  private final PackProgress progress;
  private final int longest;
  private final List<Packed.StandIn> standIns = new ArrayList<>();
  private Attempt best;

  SpeedTuning(Attempt first, List<Load> loads, PartCoder coder, PackProgress progress) {
    this.coder = coder;
    this.progress = progress;
    best = first;
    int length = first.data.length;
    longest =
        (int)
            Math.min(
                length * SHORT_GROWTH, Math.max(length + LONG_GROWTH_BYTES, length * LONG_GROWTH));
    for (int s = 0; s < first.scenes.size(); s++) {
      if (!loads.get(s).late().isEmpty()) {
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
    SpeedLevels[] levels = new SpeedLevels[best.lamps.size()];
    Arrays.fill(levels, SpeedLevels.NONE);
    Attempt attempt = best;
    Load load = first;
    for (int i = 0; i < TRIES && !load.late().isEmpty(); i++) {
      if (!progress.proceed(SHARE_DONE)) {
        throw new CancellationException("packing was stopped");
      }
      List<LampPart> parts = new ArrayList<>(attempt.parts.get(scene));
      if (!speedUpCostliest(lamps, parts, levels, load)) {
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
    if (load.late().isEmpty()) {
      best = attempt;
    }
  }

  /**
   * Codes anew the costliest lamp of the latest frame, and those coded like it; then those of late
   * frames on which that has no effect.
   *
   * @return false if in one of them no lamp can be sped up
   */
  private boolean speedUpCostliest(
      SceneCoder scene, List<LampPart> parts, SpeedLevels[] levels, Load load) {
    SpeedLevels[] before = levels.clone();
    for (Load.Late late : load.late()) {
      if (isRaised(late.frame(), parts, before, levels)) {
        continue;
      }
      int costliest = costliest(late, parts, levels);
      if (costliest < 0) {
        return false;
      }
      LampPart old = parts.get(costliest);
      for (int lamp = 0; lamp < levels.length; lamp++) {
        int piece = parts.get(lamp).pieceAt(late.frame());
        if (parts.get(lamp).sameAs(old) && levels[lamp].at(piece) < SpeedLevels.MOST) {
          levels[lamp] = levels[lamp].raised(piece);
        }
      }
    }
    for (int lamp = 0; lamp < levels.length; lamp++) {
      if (!levels[lamp].equals(before[lamp])) {
        parts.set(lamp, coder.part(scene, lamp, levels[lamp]));
      }
    }
    return true;
  }

  private static boolean isRaised(
      int frame, List<LampPart> parts, SpeedLevels[] before, SpeedLevels[] levels) {
    for (int lamp = 0; lamp < levels.length; lamp++) {
      int piece = parts.get(lamp).pieceAt(frame);
      if (levels[lamp].at(piece) > before[lamp].at(piece)) {
        return true;
      }
    }
    return false;
  }

  /** The lamp that takes most of a frame and can be sped up there; -1 if there is none. */
  private static int costliest(Load.Late late, List<LampPart> parts, SpeedLevels[] levels) {
    int costliest = -1;
    for (int lamp = 0; lamp < levels.length; lamp++) {
      int level = levels[lamp].at(parts.get(lamp).pieceAt(late.frame()));
      if (level < SpeedLevels.MOST
          && (costliest < 0
              || late.cyclesOfLamps().get(lamp) > late.cyclesOfLamps().get(costliest))) {
        costliest = lamp;
      }
    }
    return costliest;
  }
}
