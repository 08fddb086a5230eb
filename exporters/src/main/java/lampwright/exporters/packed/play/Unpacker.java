package lampwright.exporters.packed.play;

import java.util.Arrays;
import java.util.Objects;
import lampwright.exporters.packed.format.Format;

/**
 * Plays packed data as the C player does: frame by frame into a buffer that has to keep its bytes
 * from one frame to the next. Not safe for use by several threads.
 */
public final class Unpacker {
  private final PackedBytes data;
  private final ProgramPlayer programs;
  private final Voice[] voices;
  private final CycleCount count;
  private final int[] cycles;

  /**
   * Reads and checks packed data.
   *
   * @param bytes the data
   * @throws PackedDataException if it can't be played
   */
  public Unpacker(byte[] bytes) {
    this(bytes, new CycleCount(null));
  }

  /**
   * Reads and checks packed data, to play it and count what a controller would take for it.
   *
   * @param bytes the data
   * @param cost what the controller takes for each step
   * @throws PackedDataException if it can't be played
   */
  public Unpacker(byte[] bytes, DecodeCost cost) {
    this(bytes, new CycleCount(cost));
  }

  private Unpacker(byte[] bytes, CycleCount count) {
    this.count = count;
    data = new PackedBytes(bytes);
    programs = new ProgramPlayer(data, count);
    voices = new Voice[data.lamps];
    for (int i = 0; i < voices.length; i++) {
      voices[i] = new Voice();
      voices[i].base = data.table(data.lampAt(i), data.columnBytes);
      if (voices[i].base >= data.frameBytes) {
        throw PackedBytes.badContents(data.lampAt(i));
      }
    }
    for (int i = 0; i < data.scenes; i++) {
      if (frames(i) == 0) {
        throw PackedBytes.badContents(data.sceneAt(i));
      }
    }
    cycles = new int[voices.length];
  }

  PackedBytes data() {
    return data;
  }

  /** Whether the data has a show: what situations do with the scenes. */
  public boolean hasShow() {
    return data.showAt < data.size();
  }

  /** Bytes of a frame. */
  public int frameBytes() {
    return data.frameBytes;
  }

  /**
   * Lamps that can be told what to play; one more than the rig has if bytes of no lamp shine, and a
   * single one if the rig's lamps would have taken too much room one by one.
   */
  public int lamps() {
    return data.lamps;
  }

  /** Scenes. */
  public int scenes() {
    return data.scenes;
  }

  /** Frames of a scene. */
  public int frames(int scene) {
    return data.table(sceneAt(scene), 3);
  }

  /** Time from frame to frame of a scene, in microseconds. */
  public int periodMicros(int scene) {
    return data.table(sceneAt(scene) + 3, 3) & ~Format.LOOP;
  }

  /** Whether a scene's last frame is followed by its first. */
  public boolean loops(int scene) {
    return (data.table(sceneAt(scene) + 3, 3) & Format.LOOP) != 0;
  }

  private int sceneAt(int scene) {
    Objects.checkIndex(scene, data.scenes);
    return data.sceneAt(scene);
  }

  /**
   * Starts a scene on every lamp.
   *
   * @param buffer the frame buffer; cleared
   */
  public void select(int scene, byte[] buffer) {
    Arrays.fill(buffer, (byte) 0);
    for (int lamp = 0; lamp < voices.length; lamp++) {
      select(lamp, scene, 0, buffer);
    }
  }

  /**
   * Starts a scene on one lamp, so that the next frame shows the given frame of the scene.
   *
   * @param buffer the frame buffer; the lamp's bytes are changed
   */
  public void select(int lamp, int scene, int frame, byte[] buffer) {
    Objects.checkIndex(frame, frames(scene));
    int program = data.tablePlace(sceneAt(scene) + Format.SCENE_BYTES + lamp * data.placeBytes);
    dark(lamp, buffer);
    if (program != 0) {
      Voice voice = voices[lamp];
      programs.start(program, voice, buffer);
      programs.seek(voice, frame, buffer);
    }
  }

  /** Stops a lamp and clears its bytes. */
  public void dark(int lamp, byte[] buffer) {
    Voice voice = voices[lamp];
    voice.entry = 0;
    voice.round = 0;
    voice.left = 0;
    voice.held = 0;
    int at = data.lampAt(lamp) + data.columnBytes;
    int dark = data.table(at, data.placeBytes);
    int row = Format.darkRow(data.placeBytes);
    if (dark != 0 && dark < row) {
      programs.list(data.tablePlace(at), voice, buffer);
      return;
    }
    int end = dark == 0 ? data.frameBytes : voice.base + dark - row + 1;
    if (end > data.frameBytes) {
      throw PackedBytes.badContents(at);
    }
    Arrays.fill(buffer, voice.base, end, (byte) 0);
  }

  /** Brings the buffer to the next frame. */
  public void frame(byte[] buffer) {
    for (int lamp = 0; lamp < voices.length; lamp++) {
      frame(lamp, buffer);
    }
  }

  /** Brings one lamp to the next frame. */
  public void frame(int lamp, byte[] buffer) {
    count.take();
    programs.step(voices[lamp], buffer);
    cycles[lamp] = count.take();
  }

  /** Where a lamp is in its program. */
  public Voice voice(int lamp) {
    return voices[lamp].copy();
  }

  /**
   * What each lamp's part of the last frame takes on the controller, about, in clock cycles,
   * without {@link PlayerStep#FRAME}; 0 where no cost was given.
   */
  public int[] cyclesOfLamps() {
    return cycles.clone();
  }
}
