package lampwright.exporters.packed;

import java.util.Arrays;
import java.util.Objects;

/**
 * Plays packed data as the C player does: frame by frame into a buffer that has to keep its bytes
 * from one frame to the next. Not safe for use by several threads.
 */
public final class Unpacker {
  private final PackedBytes data;
  private final SectionPlayer sections;
  private final Voice[] voices;
  private final int scenesAt;

  /**
   * Reads and checks packed data.
   *
   * @param bytes the data
   * @throws PackedDataException if it can't be played
   */
  public Unpacker(byte[] bytes) {
    data = new PackedBytes(bytes);
    sections = new SectionPlayer(data);
    voices = new Voice[data.lamps];
    for (int i = 0; i < voices.length; i++) {
      voices[i] = new Voice();
      voices[i].base = data.number(lampAt(i), 2);
    }
    scenesAt = lampAt(voices.length);
  }

  private int lampAt(int lamp) {
    return data.place(Format.TABLES_AT) + lamp * (2 + data.placeBytes);
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
    return data.number(sceneAt(scene), 3);
  }

  /** Time from frame to frame of a scene, in microseconds. */
  public int periodMicros(int scene) {
    return data.number(sceneAt(scene) + 3, 3);
  }

  /** Whether a scene's last frame is followed by its first. */
  public boolean loops(int scene) {
    return data.u8(sceneAt(scene) + 6) != 0;
  }

  private int sceneAt(int scene) {
    Objects.checkIndex(scene, data.scenes);
    return scenesAt + scene * (7 + data.lamps * data.placeBytes);
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
    int program = data.place(sceneAt(scene) + 7 + lamp * data.placeBytes);
    dark(lamp, buffer);
    if (program != 0) {
      Voice voice = voices[lamp];
      voice.entry = sections.list(program, voice, buffer);
      sections.seek(voice, frame, buffer);
    }
  }

  /** Stops a lamp and clears its bytes. */
  public void dark(int lamp, byte[] buffer) {
    Voice voice = voices[lamp];
    voice.entry = 0;
    voice.round = 0;
    voice.left = 0;
    int list = data.place(lampAt(lamp) + 2);
    if (list != 0) {
      sections.list(list, voice, buffer);
    } else if (voice.base < data.frameBytes) {
      Arrays.fill(buffer, voice.base, data.frameBytes, (byte) 0);
    } else {
      throw PackedBytes.contents(lampAt(lamp));
    }
  }

  /** Brings the buffer to the next frame. */
  public void frame(byte[] buffer) {
    for (Voice voice : voices) {
      sections.step(voice, buffer);
    }
  }
}
