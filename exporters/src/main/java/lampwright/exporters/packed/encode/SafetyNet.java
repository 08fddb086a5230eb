package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lampwright.engine.check.Fault;
import lampwright.exporters.packed.format.Coding;

/**
 * Sees to it that packed data plays what the frame tables say, whatever the coders made of them:
 * lamps that fail their proof are coded plainly; if that does not help, or grows too long, the
 * whole frame is.
 */
final class SafetyNet {
  private final Attempt attempt;
  private final List<Load> loads;
  private final List<Packed.StandIn> standIns;

  private SafetyNet(Attempt attempt, PackProof proof, List<Packed.StandIn> standIns) {
    this.attempt = attempt;
    this.loads = proof.loads();
    this.standIns = standIns;
  }

  /**
   * Proves an attempt, or one used instead.
   *
   * @param longest bytes from which on plainly coded lamps are given up for a plain frame, where
   *     that is shorter
   * @param progress told the share of the proof that is done
   * @throws PackRefusedException if not even plain frames come back, or they are too long
   */
  static SafetyNet under(Attempt attempt, long longest, PackProgress progress) {
    PackProof proof = PackProof.of(attempt, progress);
    if (proof.passed()) {
      return new SafetyNet(attempt, proof, List.of());
    }
    Attempt byLamp = plainly(attempt, proof.wrong());
    PackProof again = PackProof.of(byLamp, PackProgress.NONE);
    if (again.passed() && byLamp.data.length <= longest) {
      return new SafetyNet(byLamp, again, standIns(byLamp, proof.wrong()));
    }
    Attempt whole = whole(attempt);
    if (again.passed() && byLamp.data.length <= whole.data.length) {
      return new SafetyNet(byLamp, again, standIns(byLamp, proof.wrong()));
    }
    PackProof last = PackProof.of(whole, PackProgress.NONE);
    if (!last.passed()) {
      throw new PackRefusedException(
          new Fault(
              "packed data",
              whole.data.length + " bytes",
              "do not decode to the frames; this is a fault of the program, and other formats"
                  + " are not concerned"));
    }
    return new SafetyNet(
        whole,
        last,
        attempt.scenes.stream()
            .map(scene -> new Packed.StandIn(scene.id(), Optional.empty()))
            .toList());
  }

  /** What passed its proof. */
  Attempt attempt() {
    return attempt;
  }

  /** What the frames of each scene take. */
  List<Load> loads() {
    return loads;
  }

  /** For what a plainer coding is used. */
  List<Packed.StandIn> standIns() {
    return standIns;
  }

  /** Names what failed. */
  static List<Packed.StandIn> standIns(Attempt attempt, List<PackProof.Wrong> wrong) {
    List<PackLayout.LampColumns> named = attempt.layout.lamps();
    return wrong.stream()
        .map(
            w ->
                new Packed.StandIn(
                    attempt.scenes.get(w.scene()).id(),
                    attempt.merged || w.lamp() >= named.size()
                        ? Optional.empty()
                        : Optional.of(named.get(w.lamp()).id())))
        .toList();
  }

  private static Attempt plainly(Attempt attempt, List<PackProof.Wrong> wrong) {
    Attempt better = attempt;
    for (int s = 0; s < attempt.scenes.size(); s++) {
      int scene = s;
      List<PackProof.Wrong> here = wrong.stream().filter(w -> w.scene() == scene).toList();
      if (!here.isEmpty()) {
        SceneCoder coder = attempt.coder(s);
        List<LampPart> parts = new ArrayList<>(attempt.parts.get(s));
        here.forEach(w -> parts.set(w.lamp(), coder.plain(w.lamp())));
        better = better.with(s, parts);
      }
    }
    return better;
  }

  private static Attempt whole(Attempt attempt) {
    List<int[]> one = List.of(IntStream.range(0, attempt.layout.frameBytes()).toArray());
    Attempt plain = null;
    for (int placeBytes = 2; plain == null || !plain.fits(); placeBytes++) {
      Coding coding = new Coding(attempt.coding.columnBytes(), placeBytes);
      if (placeBytes > 3) {
        throw Packer.tooLong(plain);
      }
      List<List<LampPart>> parts = new ArrayList<>();
      List<FoundWaves> found = new ArrayList<>();
      for (PackScene scene : attempt.scenes) {
        found.add(new FoundWaves(1));
        SceneCoder coder =
            new SceneCoder(
                attempt.layout,
                one,
                scene,
                coding,
                attempt.cost,
                true,
                found.get(found.size() - 1));
        parts.add(List.of(coder.plain(0)));
      }
      plain =
          new Attempt(
              attempt.layout, one, attempt.scenes, coding, attempt.cost, true, parts, found);
    }
    return plain;
  }
}
