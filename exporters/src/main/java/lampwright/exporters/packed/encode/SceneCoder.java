package lampwright.exporters.packed.encode;

import java.util.List;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.play.DecodeCost;

/** Codes the lamps of one scene. */
final class SceneCoder {
  private final List<int[]> lamps;
  private final PackScene scene;
  private final Coding coding;
  private final DecodeCost cost;
  private final boolean merged;
  private final FoundWaves found;

  /** Values by column of the frame, then frame. */
  private final byte[][] columns;

  /**
   * Reads the scene.
   *
   * @param merged whether the one lamp is the whole frame, coded plainly if that is shorter
   * @param found what is known of the scene's curves by coding these lamps with these widths before
   */
  SceneCoder(
      PackLayout layout,
      List<int[]> lamps,
      PackScene scene,
      Coding coding,
      DecodeCost cost,
      boolean merged,
      FoundWaves found) {
    this.found = found;
    this.lamps = lamps;
    this.scene = scene;
    this.coding = coding;
    this.cost = cost;
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

  /** The scene's id. */
  String id() {
    return scene.id();
  }

  /**
   * Codes a lamp.
   *
   * @param levels how quick the code has to be
   */
  LampPart part(int lamp, SpeedLevels levels) {
    LampTable table = table(lamp);
    List<FineGrid.Speed> speeds = Speeds.of(scene.periodMicros());
    // The whole frame merged may be coded plainly in the end, and quicker code has a bound of its
    // own.
    boolean givesUp = coding.placeBytes() == 2 && levels.most() == 0 && !merged;
    LampCoder.Options options = new LampCoder.Options(coding, speeds, 0, cost, givesUp);
    CueBorders borders = merged ? CueBorders.all(scene.borders()) : scene.bordersOf(lamp);
    LampCoder coder = new LampCoder(table, scene.loop(), borders, options, found.ofLamp(lamp));
    Score score = coder.score(levels);
    return merged
        ? shorter(table, score)
        : new LampPart(new EventCoder(table, coding).setup(), score, coder.pieces());
  }

  /**
   * Codes a lamp so that little can go wrong: whole rows, or what each frame changes. The whole
   * frame merged is whole rows.
   */
  LampPart plain(int lamp) {
    LampTable table = table(lamp);
    if (merged) {
      return new LampPart(new byte[0], PlainCoder.score(table));
    }
    Score events = new EventCoder(table, coding).score();
    return PlainCoder.suits(table) ? shorter(table, events) : withSetup(table, events);
  }

  private LampPart withSetup(LampTable table, Score score) {
    return new LampPart(new EventCoder(table, coding).setup(), score);
  }

  /** The score, or whole rows if they are shorter. */
  private LampPart shorter(LampTable table, Score score) {
    LampPart part = withSetup(table, score);
    Score rows = PlainCoder.score(table);
    return rows.size(coding) < score.size(coding) + part.setup().length
        ? new LampPart(new byte[0], rows)
        : part;
  }

  private LampTable table(int lamp) {
    int[] absolute = lamps.get(lamp);
    int[] relative = new int[absolute.length];
    byte[][] values = new byte[absolute.length][];
    for (int i = 0; i < relative.length; i++) {
      relative[i] = absolute[i] - absolute[0];
      values[i] = columns[absolute[i]];
    }
    return new LampTable(relative, values, scene.frames());
  }
}
