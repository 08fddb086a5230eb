package lampwright.exporters.packed.play;

import lampwright.exporters.packed.format.Format;

/** Plays the programs of lamps: entries, their sections' instructions, and how long each lasts. */
final class ProgramPlayer {
  /** Most frames until the program is looked at again: the AVR player counts them in a byte. */
  private static final int MAX_CHUNK = 255;

  private final PackedBytes data;
  private final SectionPlayer sections;
  private final CycleCount count;

  ProgramPlayer(PackedBytes data, CycleCount count) {
    this.data = data;
    this.count = count;
    sections = new SectionPlayer(data, count);
  }

  /** Carries out a list of PATCH and FILL; gives the place after its GO. */
  int list(int from, Voice voice, byte[] buffer) {
    int at = sections.patches(from, voice, buffer);
    if (data.u8(at) != Format.GO) {
      throw PackedBytes.badContents(at);
    }
    return at + 1;
  }

  /** Starts a program so that its first entry is due. */
  void start(int program, Voice voice, byte[] buffer) {
    voice.entry = list(program, voice, buffer) - entryBytes();
    voice.round = 0;
    voice.left = 0;
  }

  private int entryBytes() {
    return 2 + data.placeBytes;
  }

  /** Shows the next frame of a lamp. */
  void step(Voice voice, byte[] buffer) {
    count.add(PlayerStep.LAMP);
    if (voice.left == 0) {
      fetch(voice, buffer);
      if (voice.left == 0) {
        return;
      }
    }
    voice.left--;
    if (voice.held != 0) {
      sections.show(SectionHead.at(data.place(voice.entry + 2), data), voice, buffer);
    }
  }

  /** Reads on to the next instruction that takes time. */
  private void fetch(Voice voice, byte[] buffer) {
    if (voice.entry == 0) {
      return;
    }
    count.add(PlayerStep.INSTRUCTION);
    boolean fresh = voice.round == 0;
    if (fresh && !enter(voice)) {
      return;
    }
    SectionHead head = SectionHead.at(data.place(voice.entry + 2), data);
    int frames = MAX_CHUNK;
    if (head.plain()) {
      if (fresh) {
        voice.at = head.body();
      }
      voice.held = SectionPlayer.EMPTY;
    } else if (head.wave()) {
      if (fresh) {
        list(head.instructions(), voice, buffer);
        voice.at = 0;
      }
      voice.held = SectionPlayer.EMPTY;
    } else {
      frames = instruction(voice, head, fresh, buffer);
    }
    if (frames == 0) {
      throw PackedBytes.badContents(voice.at);
    }
    voice.left = Math.min(frames, voice.round);
    voice.round -= voice.left;
  }

  /** Goes to the next HOLD or ROWS; gives its frames. */
  private int instruction(Voice voice, SectionHead head, boolean fresh, byte[] buffer) {
    int at = sections.patches(fresh ? head.instructions() : voice.at, voice, buffer);
    if (data.u8(at) == Format.AGAIN) {
      count.add(PlayerStep.AGAIN);
      at = sections.patches(head.instructions(), voice, buffer);
    }
    int op = data.u8(at++);
    int frames;
    if (op < Format.PATCH) {
      frames = op + 1;
      voice.held = 0;
    } else if (op == Format.ROWS) {
      frames = data.u8(at++);
      voice.held = SectionPlayer.EMPTY;
    } else {
      throw PackedBytes.badContents(at - 1);
    }
    voice.at = at;
    return frames;
  }

  /** Enters the entry that is due; false if the program is over. */
  private boolean enter(Voice voice) {
    count.add(PlayerStep.ENTRY);
    int at = voice.entry + entryBytes();
    int first = data.u8(at);
    if (first == Format.REST) {
      voice.entry = 0;
      return false;
    }
    if (first == Format.BACK) {
      at -= data.number(at + 1, data.placeBytes);
    }
    voice.round = frames(at);
    voice.entry = at;
    return true;
  }

  private int frames(int entry) {
    int frames = (data.u8(entry) << 8) | data.u8(entry + 1);
    if (frames < 1 || frames > Format.MAX_ENTRY_FRAMES) {
      throw PackedBytes.badContents(entry);
    }
    return frames;
  }

  /**
   * Goes on until the next step shows the frame that is the given number ahead. Steps over each
   * entry twice at most.
   */
  void seek(Voice voice, int frames, byte[] buffer) {
    int ahead = frames;
    int first = voice.entry + entryBytes();
    int at = first;
    int round = 0;
    while (true) {
      if (data.u8(at) >= Format.REST) {
        if (data.u8(at) == Format.REST || at == first) {
          ahead = 0;
          break;
        }
        ahead %= round;
        at = first;
        continue;
      }
      int length = frames(at);
      if (ahead < length) {
        break;
      }
      ahead -= length;
      round += length;
      at += entryBytes();
    }
    voice.entry = at - entryBytes();
    for (; ahead > 0; ahead--) {
      step(voice, buffer);
    }
  }
}
