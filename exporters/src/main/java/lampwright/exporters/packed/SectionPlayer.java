package lampwright.exporters.packed;

/** Plays the sections of one lamp's program, one frame a step. */
final class SectionPlayer {
  private static final int EMPTY = 128;
  private static final int MAX_CHUNK = 255;

  private final PackedBytes data;

  SectionPlayer(PackedBytes data) {
    this.data = data;
  }

  private void put(byte[] buffer, int column, int value) {
    if (column < 0 || column >= data.frameBytes) {
      throw PackedBytes.contents(column);
    }
    buffer[column] = (byte) value;
  }

  private int get(byte[] buffer, int column) {
    if (column < 0 || column >= data.frameBytes) {
      throw PackedBytes.contents(column);
    }
    return buffer[column] & 255;
  }

  /** Carries out PATCH and FILL from a place on; gives the place of the first other byte. */
  int patches(int from, Voice voice, byte[] buffer) {
    int at = from;
    while (true) {
      int op = data.u8(at);
      if (op < Format.PATCH || op >= Format.ROWS) {
        return at;
      }
      boolean fill = op >= Format.FILL;
      int pattern = (op & (fill ? Format.MAX_FILL_PATTERN - 1 : Format.MAX_PATCH - 1)) + 1;
      int to = voice.base + data.column(at + 1);
      at += 1 + data.columnBytes;
      int total = fill ? data.u8(at++) + 1 : pattern;
      for (int i = 0; i < total; i++) {
        put(buffer, to + i, data.u8(at + i % pattern));
      }
      at += pattern;
    }
  }

  /** Carries out a list of PATCH and FILL; gives the place after its GO. */
  int list(int from, Voice voice, byte[] buffer) {
    int at = patches(from, voice, buffer);
    if (data.u8(at) != Format.GO) {
      throw PackedBytes.contents(at);
    }
    return at + 1;
  }

  /** Shows the next frame of a lamp. */
  void step(Voice voice, byte[] buffer) {
    if (voice.left == 0) {
      fetch(voice, buffer);
      if (voice.left == 0) {
        return;
      }
    }
    voice.left--;
    if (voice.held != 0) {
      int section = data.place(voice.entry + 2);
      int kind = data.u8(section);
      if ((kind & Format.KIND_MASK) == Format.PLAIN) {
        plain(voice, data.number(section + 1, 2), buffer);
      } else if ((kind & Format.KIND_MASK) == Format.WAVE) {
        wave(voice, section + 3, buffer);
      } else {
        row(voice, section + 3, kind, buffer);
      }
    }
    if (voice.left == 0 && voice.round == 0) {
      voice.entry += 2 + data.placeBytes;
    }
  }

  /** Reads on to the next instruction that takes time. */
  private void fetch(Voice voice, byte[] buffer) {
    if (voice.entry == 0) {
      return;
    }
    boolean fresh = voice.round == 0;
    if (fresh && !enter(voice)) {
      return;
    }
    int section = data.place(voice.entry + 2);
    int kind = data.u8(section);
    int frames;
    if ((kind & Format.KIND_MASK) == Format.PLAIN) {
      if (fresh) {
        voice.at = section + 3;
      }
      frames = MAX_CHUNK;
      voice.held = EMPTY;
    } else if ((kind & Format.KIND_MASK) == Format.WAVE) {
      if (fresh) {
        list(section + 3 + data.number(section + 1, 2), voice, buffer);
        voice.at = 0;
      }
      frames = MAX_CHUNK;
      voice.held = EMPTY;
    } else {
      if (fresh) {
        voice.at = section + 3 + data.number(section + 1, 2);
      }
      int again = 0;
      voice.at = patches(voice.at, voice, buffer);
      while (data.u8(voice.at) == Format.AGAIN) {
        if (again++ > 0) {
          throw PackedBytes.contents(voice.at);
        }
        voice.at = patches(section + 3 + data.number(section + 1, 2), voice, buffer);
      }
      int op = data.u8(voice.at++);
      if (op < Format.PATCH) {
        frames = op + 1;
        voice.held = 0;
      } else if (op == Format.ROWS) {
        frames = data.u8(voice.at++);
        voice.held = EMPTY;
      } else {
        throw PackedBytes.contents(voice.at);
      }
    }
    voice.left = Math.min(frames, voice.round);
    voice.round -= voice.left;
  }

  /** Enters the entry that is due; false if the program is over. */
  private boolean enter(Voice voice) {
    int frames = data.number(voice.entry, 2);
    if (frames == 0) {
      int back = data.place(voice.entry + 2);
      if (back == 0) {
        voice.entry = 0;
        return false;
      }
      voice.entry -= back;
      frames = data.number(voice.entry, 2);
      if (frames == 0) {
        throw PackedBytes.contents(voice.entry);
      }
    }
    voice.round = frames;
    return true;
  }

  private void plain(Voice voice, int count, byte[] buffer) {
    for (int i = 0; i < count; i++) {
      put(buffer, voice.base + i, data.u8(voice.at++));
    }
  }

  private void wave(Voice voice, int body, byte[] buffer) {
    int size = data.number(body, 2);
    int pace = data.number(body + 2, 2);
    int groups = data.u8(body + 4);
    int at = body + 5;
    for (int i = 0; i < groups; i++) {
      int wave = data.place(at);
      at += data.placeBytes;
      int column = voice.base + data.column(at);
      at += data.columnBytes;
      int slots = data.u8(at);
      int stride = (byte) data.u8(at + 1);
      int phase = data.number(at + 2, 2);
      int step = data.number(at + 4, 2);
      at += 6;
      phase = (phase + voice.at) % size;
      for (int slot = 0; slot < slots; slot++) {
        put(buffer, column, sample(wave, phase, size));
        column += stride;
        phase = (phase + step) % size;
      }
    }
    voice.at = (voice.at + pace) % size;
    echo(at, voice, buffer);
  }

  private int sample(int wave, int phase, int size) {
    int kind = data.u8(wave);
    int first = data.number(wave + 1, 2);
    int last = data.number(wave + 3, 2);
    int at = kind == 0 ? phase : Math.min(phase, size + 1 - kind - phase);
    return data.u8(wave + 5 + Math.max(0, Math.min(last, at - first)));
  }

  private void row(Voice voice, int body, int kind, byte[] buffer) {
    boolean raw = (kind & Format.KIND_MASK) == Format.RAW;
    if ((kind & Format.FLAGGED) != 0 && bits(voice, 1) == 0) {
      return;
    }
    int groups = data.u8(body);
    int at = body + 1;
    for (int i = 0; i < groups; i++) {
      int column = voice.base + data.column(at);
      at += data.columnBytes;
      int slots = data.u8(at);
      int stride = (byte) data.u8(at + 1);
      at += 2;
      for (int slot = 0; slot < slots; slot++) {
        if (raw) {
          put(buffer, column, data.u8(voice.at++));
        } else {
          int rest = bits(voice, data.u8(at) & 15);
          put(buffer, column, predict(at, column, voice.base, buffer) + rest);
          at += (data.u8(at) & 0xF0) == Format.SCALED ? 3 + data.columnBytes : 2;
        }
        column += stride;
      }
    }
    echo(at, voice, buffer);
  }

  private int predict(int rule, int column, int base, byte[] buffer) {
    int bias = data.u8(rule + 1);
    return switch (data.u8(rule) & Format.PREDICTOR_MASK) {
      case Format.ABSOLUTE -> bias;
      case Format.STEP -> get(buffer, column) + bias;
      case Format.SCALED -> {
        int factor = data.u8(rule + 2 + data.columnBytes);
        int source = get(buffer, base + data.column(rule + 2));
        yield ((source * factor) >> 8) + bias;
      }
      default -> throw PackedBytes.contents(rule);
    };
  }

  private void echo(int from, Voice voice, byte[] buffer) {
    int at = from + 1;
    for (int i = data.u8(from); i > 0; i--) {
      int to = voice.base + data.column(at);
      int source = voice.base + data.column(at + data.columnBytes);
      at += 2 * data.columnBytes;
      int stride = (byte) data.u8(at + 1);
      for (int k = data.u8(at); k > 0; k--) {
        put(buffer, to, get(buffer, source));
        to += stride;
        source += stride;
      }
      at += 2;
    }
  }

  private int bits(Voice voice, int width) {
    int value = 0;
    for (int i = 0; i < width; i++) {
      if (voice.held == EMPTY) {
        int next = data.u8(voice.at++);
        value = value << 1 | next >> 7;
        voice.held = (next << 1 | 1) & 255;
      } else {
        value = value << 1 | voice.held >> 7;
        voice.held = voice.held << 1 & 255;
      }
    }
    return value;
  }

  /** Goes on until the next step shows the frame that is the given number ahead. */
  void seek(Voice voice, int frames, byte[] buffer) {
    int ahead = frames;
    int first = voice.entry;
    int since = 0;
    while (true) {
      int length = data.number(voice.entry, 2);
      if (length == 0) {
        if (since == 0 || data.place(voice.entry + 2) == 0) {
          return;
        }
        voice.entry = first;
        ahead %= since;
        since = 0;
      } else if (ahead >= length) {
        ahead -= length;
        since += length;
        voice.entry += 2 + data.placeBytes;
      } else {
        break;
      }
    }
    for (; ahead > 0; ahead--) {
      step(voice, buffer);
    }
  }
}
