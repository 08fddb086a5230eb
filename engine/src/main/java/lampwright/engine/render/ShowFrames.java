package lampwright.engine.render;

import com.google.common.collect.ArrayListMultimap;
import com.google.common.collect.ListMultimap;
import com.google.common.primitives.Ints;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Change;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.ShowMachine;
import lampwright.engine.situation.Start;

/**
 * The frames of a show, one after another as its inputs are read: for each lamp the bytes of the
 * scene whose situation has it, below the rig's ceiling. Not safe for use by several threads.
 */
public final class ShowFrames {
  /** The most bytes of scenes that are kept in all. */
  private static final long MAX_KEPT_BYTES = 64L << 20;

  private final Show show;
  private final FrameLayout layout;
  private final Optional<Ceiling> ceiling;
  private final int[][] bytesOfLamp;
  private final SceneReel[] reels;
  private ShowMachine machine;

  public ShowFrames(Show show) {
    this.show = show;
    this.machine = show.machine();
    this.layout = new FrameLayout(show.rig());
    this.ceiling = Ceiling.of(layout);
    this.bytesOfLamp = bytesOfLamps(layout);
    this.reels = reels(show);
  }

  private static int[][] bytesOfLamps(FrameLayout layout) {
    ListMultimap<String, Integer> bytes = ArrayListMultimap.create();
    List<Column> columns = layout.columns();
    for (int i = 0; i < columns.size(); i++) {
      int at = i;
      columns.get(i).lamp().ifPresent(owner -> bytes.put(owner.lamp(), at));
    }
    return layout.rig().lamps().stream()
        .map(lamp -> Ints.toArray(bytes.get(lamp.id())))
        .toArray(int[][]::new);
  }

  // Situations that show the same scene share its reel where its frames are kept, or where they
  // are always at the same frame.
  private SceneReel[] reels(Show show) {
    Map<String, SceneReel> shared = new HashMap<>();
    Map<String, FrameTable> tables = new HashMap<>();
    SceneReel[] found = new SceneReel[show.situations().size()];
    long left = MAX_KEPT_BYTES;
    for (int i = 0; i < found.length; i++) {
      if (show.scene(i).isEmpty()) {
        continue;
      }
      Scene scene = show.scene(i).get();
      FrameTable table = tables.computeIfAbsent(scene.id(), id -> FrameTable.of(show.rig(), scene));
      boolean shares = show.situations().get(i).start() == Start.SHARED;
      SceneReel known = shared.get(scene.id());
      if (known == null && shares) {
        known = shared.get(sharedKey(scene));
      }
      if (known == null) {
        boolean keep = table.bytes() <= left;
        left -= keep ? table.bytes() : 0;
        known = new SceneReel(table, keep);
        if (keep || shares) {
          shared.put(keep ? scene.id() : sharedKey(scene), known);
        }
      }
      found[i] = known;
    }
    return found;
  }

  // No id has a space.
  private static String sharedKey(Scene scene) {
    return scene.id() + " shared";
  }

  /** What takes the readings of inputs, and knows what is active in the frame written last. */
  public ShowMachine machine() {
    return machine;
  }

  /** Begins anew before frame 0; frames of scenes that are kept stay. */
  public void restart() {
    machine = show.machine();
  }

  /** Bytes per frame. */
  public int frameBytes() {
    return layout.bytes();
  }

  /**
   * Writes the next frame.
   *
   * @param into room for at least one frame; bytes past it are left alone
   * @return what begins or ends in it
   */
  public List<Change> next(byte[] into) {
    Objects.checkFromIndexSize(0, layout.bytes(), into.length);
    List<Change> changes = machine.next();
    compose(into);
    return changes;
  }

  /**
   * Writes the frame that the machine worked out last.
   *
   * @param into room for at least one frame; bytes past it are left alone
   */
  public void compose(byte[] into) {
    Objects.checkFromIndexSize(0, layout.bytes(), into.length);
    Arrays.fill(into, 0, layout.bytes(), (byte) 0);
    for (int lamp = 0; lamp < bytesOfLamp.length; lamp++) {
      OptionalInt has = machine.having(lamp);
      if (has.isPresent()) {
        int situation = has.getAsInt();
        byte[] frame = reels[situation].frame(machine.sceneFrame(situation));
        for (int at : bytesOfLamp[lamp]) {
          into[at] = frame[at];
        }
      }
    }
    ceiling.ifPresent(limit -> limit.apply(into));
  }
}
