package lampwright.exporters.packed.play;

import lampwright.exporters.packed.format.Format;

/** Makes frames of sections: patches, rows, waves and echoes. */
final class SectionPlayer {
  /** No bits in hand. */
  static final int EMPTY = 128;

  private final PackedBytes data;

  private final CycleCount count;

  SectionPlayer(PackedBytes data, CycleCount count) {
    this.data = data;
    this.count = count;
  }

  private void put(byte[] buffer, int column, int value) {
    if (column < 0 || column >= data.frameBytes) {
      throw PackedBytes.badContents(column);
    }
    buffer[column] = (byte) value;
  }

  private int get(byte[] buffer, int column) {
    if (column < 0 || column >= data.frameBytes) {
      throw PackedBytes.badContents(column);
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
      count.add(PlayerStep.PATCH);
      count.add(PlayerStep.PATCH_BYTE, total);
    }
  }

  /** Makes a frame of the section that a lamp is in. */
  void show(SectionHead head, Voice voice, byte[] buffer) {
    count.add(PlayerStep.MOVE);
    if (head.plain()) {
      plain(voice, head.skip(), buffer);
    } else if (head.wave()) {
      wave(voice, head, buffer);
    } else {
      row(voice, head, buffer);
    }
  }

  private void plain(Voice voice, int bytes, byte[] buffer) {
    count.add(PlayerStep.PLAIN);
    count.add(PlayerStep.PLAIN_BYTE, bytes);
    for (int i = 0; i < bytes; i++) {
      put(buffer, voice.base + i, data.u8(voice.at++));
    }
  }

  private void wave(Voice voice, SectionHead head, byte[] buffer) {
    int body = head.body();
    int size = data.number(body, 2);
    if (size < 1 || size > Format.MAX_WAVE_SIZE) {
      throw PackedBytes.badContents(body);
    }
    int pace = phase(body + 2, size);
    int at = body + 4;
    boolean back = false;
    if (head.swings()) {
      back = voice.at >= phase(at, size);
      at += 2;
    }
    int groups = data.u8(at++);
    count.add(PlayerStep.WAVE);
    count.add(PlayerStep.WAVE_GROUP, groups);
    for (int i = 0; i < groups; i++) {
      int wave = data.place(at);
      at += data.placeBytes;
      int column = voice.base + data.column(at);
      at += data.columnBytes;
      int slots = nonZero(at++);
      int stride = slots == 1 ? 0 : (byte) data.u8(at++);
      int phase = phase(at, size);
      int step = slots == 1 ? 0 : phase(at + 2, size);
      at += slots == 1 ? 2 : 4;
      step = back ? size - step : step;
      span(slots, 1);
      count.add(PlayerStep.WAVE_SLOT, slots);
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

  /** A number that has to be less than the size of the wave. */
  private int phase(int at, int size) {
    int phase = data.number(at, 2);
    if (phase >= size) {
      throw PackedBytes.badContents(at);
    }
    return phase;
  }

  /** A count that can't be 0. */
  private int nonZero(int at) {
    int count = data.u8(at);
    if (count == 0) {
      throw PackedBytes.badContents(at);
    }
    return count;
  }

  private int sample(int wave, int phase, int size) {
    int kind = data.u8(wave);
    if (kind > Format.MIRROR_BETWEEN) {
      throw PackedBytes.badContents(wave);
    }
    int first = data.number(wave + 1, 2);
    int last = data.number(wave + 3, 2);
    int at = kind == 0 ? phase : Math.min(phase, size + 1 - kind - phase);
    return data.u8(wave + 5 + Math.max(0, Math.min(last, at - first)));
  }

  private void row(Voice voice, SectionHead head, byte[] buffer) {
    boolean raw = head.kind() == Format.RAW;
    count.add(PlayerStep.ROW);
    count.add(PlayerStep.BITS, raw ? 0 : 1);
    count.add(PlayerStep.FLAG, head.flagged() ? 1 : 0);
    if (head.flagged() && bits(voice, 1) == 0) {
      return;
    }
    int groups = data.u8(head.body());
    int at = head.body() + 1;
    for (int i = 0; i < groups; i++) {
      int column = voice.base + data.column(at);
      at += data.columnBytes;
      int slots = nonZero(at++);
      int stride = slots == 1 ? 0 : (byte) data.u8(at++);
      count.add(PlayerStep.ROW_GROUP);
      span(slots, 1);
      count.add(raw ? PlayerStep.ROW_BYTE : PlayerStep.SLOT, slots);
      for (int slot = 0; slot < slots; slot++) {
        if (raw) {
          put(buffer, column, data.u8(voice.at++));
        } else {
          int rest = bits(voice, width(at));
          put(buffer, column, predict(at, column, voice.base, buffer) + rest);
          at += (data.u8(at) & 0xF0) == Format.SCALED ? 3 + data.columnBytes : 2;
        }
        column += stride;
      }
    }
    echo(at, voice, buffer);
  }

  private int width(int rule) {
    int width = data.u8(rule) & ~Format.PREDICTOR_MASK;
    if (width > Format.MAX_WIDTH) {
      throw PackedBytes.badContents(rule);
    }
    return width;
  }

  private int predict(int rule, int column, int base, byte[] buffer) {
    int bias = data.u8(rule + 1);
    return switch (data.u8(rule) & Format.PREDICTOR_MASK) {
      case Format.ABSOLUTE -> bias;
      case Format.STEP -> get(buffer, column) + bias;
      case Format.SCALED -> {
        int factor = data.u8(rule + 2 + data.columnBytes);
        int source = get(buffer, base + data.column(rule + 2));
        count.add(PlayerStep.SCALED_SLOT);
        yield ((source * factor) >> 8) + bias;
      }
      default -> throw PackedBytes.badContents(rule);
    };
  }

  private void echo(int from, Voice voice, byte[] buffer) {
    int at = from + 1;
    count.add(PlayerStep.ECHOES);
    for (int i = data.u8(from); i > 0; i--) {
      int to = voice.base + data.column(at);
      int source = voice.base + data.column(at + data.columnBytes);
      at += 2 * data.columnBytes;
      int bytes = nonZero(at++);
      int stride = bytes == 1 ? 0 : (byte) data.u8(at++);
      count.add(PlayerStep.ECHO);
      span(bytes, 2);
      count.add(PlayerStep.ECHO_BYTE, bytes);
      for (int k = bytes; k > 0; k--) {
        put(buffer, to, get(buffer, source));
        to += stride;
        source += stride;
      }
    }
  }

  private void span(int parts, int times) {
    count.add(PlayerStep.SPAN, parts == 1 ? 0 : times);
  }

  private int bits(Voice voice, int width) {
    int value = 0;
    count.add(PlayerStep.BIT, width);
    for (int i = 0; i < width; i++) {
      if (voice.held == EMPTY) {
        int next = data.u8(voice.at++);
        count.add(PlayerStep.NEXT_BYTE);
        value = value << 1 | next >> 7;
        voice.held = (next << 1 | 1) & 255;
      } else {
        value = value << 1 | voice.held >> 7;
        voice.held = voice.held << 1 & 255;
      }
    }
    return value;
  }
}
