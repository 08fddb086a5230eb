package lampwright.exporters.packed;

import java.util.List;

/** Codes the lamps of one scene. */
final class SceneCoder {
  private final List<int[]> lamps;
  private final PackScene scene;
  private final Coding coding;
  private final boolean merged;

  /** Values by column of the frame, then frame. */
  private final byte[][] columns;

  /**
   * Reads the scene.
   *
   * @param merged whether the one lamp is the whole frame, coded plainly if that is shorter
   */
  SceneCoder(PackLayout layout, List<int[]> lamps, PackScene scene, Coding coding, boolean merged) {
    this.lamps = lamps;
    this.scene = scene;
    this.coding = coding;
    this.merged = merged;
    columns = new byte[layout.frameBytes()][scene.frames()];
    byte[] frame = new byte[layout.frameBytes()];
    for (int f = 0; f < scene.frames(); f++) {
      scene.source().read(f, frame);
      for (int c = 0; c < frame.length; c++) {
        columns[c][f] = frame[c];
      }
    }
  }

  /**
   * Codes a lamp.
   *
   * @param haste 0 for the shortest code, up to {@link LampCoder#MOST_HASTE} for quicker ones
   */
  LampPart part(int lamp, int haste) {
    int[] absolute = lamps.get(lamp);
    int[] relative = new int[absolute.length];
    byte[][] values = new byte[absolute.length][];
    for (int i = 0; i < relative.length; i++) {
      relative[i] = absolute[i] - absolute[0];
      values[i] = columns[absolute[i]];
    }
    LampTable table = new LampTable(relative, values, scene.frames());
    List<FineGrid.Speed> speeds = Speeds.of(scene.periodMicros());
    LampCoder coder = new LampCoder(table, scene.loop(), coding, speeds, haste);
    Score score = coder.score();
    if (merged) {
      Score plain = PlainCoder.score(table);
      if (plain.size(coding) < score.size(coding) + coder.setup.length) {
        return new LampPart(new byte[0], plain);
      }
    }
    return new LampPart(coder.setup, score);
  }
}
