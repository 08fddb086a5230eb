package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import lampwright.exporters.packed.play.PackedDataException;
import lampwright.exporters.packed.play.Unpacker;
import lampwright.exporters.packed.play.Voice;

/**
 * What comes of decoding packed data: which lamps of which scenes show something else than the
 * frame tables, and what the frames take to play.
 *
 * <p>A scene is played to its end and a frame further. A lamp is right if its bytes are those of
 * the table, and if it is then, to the last bit of what the player keeps, as it was one round
 * before (or at rest, where the scene plays once): so it is right however long it plays.
 */
final class PackProof {
  private final List<Load> loads = new ArrayList<>();
  private final List<Wrong> wrong = new ArrayList<>();

  /** A lamp that does not show in a scene what it should, both by number. */
  record Wrong(int scene, int lamp) {}

  private PackProof() {}

  /**
   * Decodes and compares.
   *
   * @param progress told the share that is done
   * @throws CancellationException if {@code progress} says stop
   */
  static PackProof of(Attempt attempt, PackProgress progress) {
    PackProof proof = new PackProof();
    try {
      Unpacker unpacker = new Unpacker(attempt.data, attempt.cost);
      for (int s = 0; s < attempt.scenes.size(); s++) {
        proof.play(attempt, unpacker, s, progress);
      }
    } catch (PackedDataException unreadable) {
      proof.allWrong(attempt);
    }
    return proof;
  }

  boolean passed() {
    return wrong.isEmpty();
  }

  /** Lamps that show something else, in order of scene and lamp. */
  List<Wrong> wrong() {
    return List.copyOf(wrong);
  }

  /** What the frames of each scene take; of use only if the proof passed. */
  List<Load> loads() {
    return List.copyOf(loads);
  }

  private void allWrong(Attempt attempt) {
    wrong.clear();
    for (int s = 0; s < attempt.scenes.size(); s++) {
      for (int lamp = 0; lamp < attempt.lamps.size(); lamp++) {
        wrong.add(new Wrong(s, lamp));
      }
    }
  }

  private void play(Attempt attempt, Unpacker unpacker, int number, PackProgress progress) {
    PackScene scene = attempt.scenes.get(number);
    Load load = new Load(attempt.cost, attempt.frameBudget());
    loads.add(load);
    boolean[] bad = new boolean[attempt.lamps.size()];
    byte[] want = new byte[attempt.layout.frameBytes()];
    byte[] got = new byte[want.length];
    List<Voice> first = new ArrayList<>();
    for (int lamp = 0; lamp < bad.length; lamp++) {
      bad[lamp] = !select(unpacker, lamp, number, got);
    }
    int frames = scene.frames() + 1;
    for (int f = 0; f < frames; f++) {
      if (f % 256 == 0) {
        double share = (number + (double) f / frames) / attempt.scenes.size();
        if (!progress.proceed(share)) {
          throw new CancellationException("packing was stopped");
        }
      }
      int shown = f < scene.frames() ? f : scene.loop() ? 0 : scene.frames() - 1;
      scene.source().read(shown, want);
      for (int lamp = 0; lamp < bad.length; lamp++) {
        bad[lamp] = bad[lamp] || !step(unpacker, lamp, got);
      }
      load.take(unpacker.cyclesOfLamps());
      if (!Arrays.equals(want, got)) {
        compare(attempt.lamps, want, got, bad);
      }
      if (f == 0) {
        for (int lamp = 0; lamp < bad.length; lamp++) {
          first.add(unpacker.voice(lamp));
        }
      }
    }
    for (int lamp = 0; lamp < bad.length; lamp++) {
      Voice end = unpacker.voice(lamp);
      bad[lamp] |= scene.loop() ? !end.sameAs(first.get(lamp)) : !end.rests();
      if (bad[lamp]) {
        wrong.add(new Wrong(number, lamp));
      }
    }
  }

  private static void compare(List<int[]> lamps, byte[] want, byte[] got, boolean[] bad) {
    boolean[] owned = new boolean[want.length];
    for (int lamp = 0; lamp < bad.length; lamp++) {
      for (int column : lamps.get(lamp)) {
        owned[column] = true;
        bad[lamp] |= want[column] != got[column];
      }
    }
    // A byte of no lamp is dark, so one of them reached beyond its own; there is no telling which.
    for (int c = 0; c < owned.length; c++) {
      if (!owned[c] && got[c] != want[c]) {
        Arrays.fill(bad, true);
      }
    }
  }

  private static boolean select(Unpacker unpacker, int lamp, int scene, byte[] buffer) {
    try {
      unpacker.select(lamp, scene, 0, buffer);
      return true;
    } catch (PackedDataException broken) {
      return false;
    }
  }

  private static boolean step(Unpacker unpacker, int lamp, byte[] buffer) {
    try {
      unpacker.frame(lamp, buffer);
      return true;
    } catch (PackedDataException broken) {
      return false;
    }
  }
}
