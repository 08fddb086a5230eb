/*
 * The computer's side of the bench link, and the line between: plays frames to a firmware on a
 * simulated AVR and judges what its pins and its answers are. Prints one JSON object; exit code 0
 * if nothing is wrong.
 *
 * The controller's receiver is modelled here and not left to the simulator, whose own keeps 64
 * bytes: two bytes are kept, a third can wait in the shift register, and a byte that begins while
 * all three are there is lost and marks the next one (datasheet, "Receiver error flags": DOR). A
 * byte is there in the middle of its stop bit. Bytes take their time both ways.
 *
 *   live_host elf=FILE mcu=NAME hz=N baud=N udr=0xC6 bytes=N layout=N chain=B0:48... output=0x88...
 *             reset-us=N own=FILE [own-first=N] [own-after=N] [latency-us=N] [frames=N] [faults=1]
 *             [noise=1] [rude=1] [dark=1] [pulses=D2...] [seed=N]
 *
 * own: the frames of the firmware's own show, which is expected before the first question
 * (own-first frames) and after the last frame (own-after), each time from its beginning.
 * latency-us: from the last bit of an answer to the first of the next packet. faults: damaged, cut,
 * foreign and repeated packets between the frames. noise: foreign bytes while the own show runs,
 * too. rude: packet after
 * packet, without waiting for answers; what is shown must be whole frames in the order sent.
 * pulses: servo pulses on these pins while it is live. dark: instead of the show a dark frame is
 * expected.
 */
#include <stdarg.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <simavr/avr_extint.h>
#include <simavr/avr_ioport.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>

#define MAX_CHAINS 8
#define MAX_OUTPUTS 8
#define MAX_PULSES 4
#define MAX_FRAME 2048
#define MAX_PACKET (MAX_FRAME + 64)
#define MAX_FAULTS 12
#define KEPT 2
#define NEVER 1e300
#define BITS_PER_BYTE 10
#define STOP_BIT_MIDDLE 9.5
#define ONE_US 0.6     /* a high time above is a 1 */
#define WITHIN_US 20.0 /* low times within a frame */
#define RUN_CYCLES 400

static avr_t *avr;
static double hertz, baud, bit_cycles, latency, reset_us;
static int udr, layout, frame_bytes, frames_wanted, own_first, own_after;
static bool with_faults, with_noise, is_rude, ends_dark;
static uint8_t *own;
static int own_frames;
static uint32_t seed = 1;
static int faults;
static char fault[MAX_FAULTS][160];

static double ms(double cycles) { return cycles / hertz * 1000; }
static double cycles_of_ms(double time) { return time * hertz / 1000; }

static void wrong(const char *format, ...) {
  va_list arguments;
  if (faults < MAX_FAULTS) {
    int begun = snprintf(fault[faults], sizeof fault[0], "%.3f ms: ", ms((double)avr->cycle));
    va_start(arguments, format);
    vsnprintf(fault[faults] + begun, sizeof fault[0] - (size_t)begun, format, arguments);
    va_end(arguments);
  }
  faults++;
}

static void die(const char *why, const char *what) {
  fprintf(stderr, "live_host: %s %s\n", why, what);
  exit(2);
}

static uint32_t any(uint32_t below) {
  seed ^= seed << 13;
  seed ^= seed >> 17;
  seed ^= seed << 5;
  return seed % below;
}

/*
 * CRC-16/MCRF4XX by its parameters in the RevEng catalogue: polynomial 0x1021, start 0xFFFF, input
 * and output reflected, no final xor; of "123456789" 0x6F91. Bit by bit and from the left, so in
 * another way than any code that is judged.
 */
static uint32_t reflected(uint32_t value, int bits) {
  uint32_t result = 0;
  for (int i = 0; i < bits; i++) {
    result |= (value >> i & 1) << (bits - 1 - i);
  }
  return result;
}

static uint16_t crc(const uint8_t *bytes, size_t count) {
  uint32_t sum = 0xFFFF;
  for (size_t i = 0; i < count; i++) {
    sum ^= reflected(bytes[i], 8) << 8;
    for (int bit = 0; bit < 8; bit++) {
      sum = (sum << 1 ^ (sum & 0x8000 ? 0x1021 : 0)) & 0xFFFF;
    }
  }
  return (uint16_t)reflected(sum, 16);
}

/* ---- the wire ---- */

struct chain {
  char port;
  int pin;
  int bytes;
  int at; /* in the frame */
  bool level;
  double rise, fall;
  int bits;
  uint8_t sent[MAX_FRAME];
};

static struct chain chain[MAX_CHAINS];
static int chains;
static int output[MAX_OUTPUTS]; /* duty registers */
static int outputs;
static uint8_t wire[MAX_FRAME]; /* the last whole frame */
static uint64_t wire_frames;
static double wire_at; /* when its last bit fell */
static double least_reset = NEVER;

static void frame_is_sent(void);

static void pin_changed(struct avr_irq_t *irq, uint32_t value, void *parameter) {
  struct chain *c = parameter;
  double now = (double)avr->cycle;
  (void)irq;
  if ((value & 1) == c->level) {
    return;
  }
  c->level = value & 1;
  if (c->level) {
    double low_us = (now - c->fall) / hertz * 1e6;
    if (c->bits == 8 * c->bytes) {
      if (low_us < reset_us) {
        wrong("chain %d begins after %.1f us of reset", (int)(c - chain), low_us);
      }
      if (low_us < least_reset) {
        least_reset = low_us;
      }
      c->bits = 0;
    } else if (c->bits > 0 && low_us > WITHIN_US) {
      wrong("chain %d is low for %.1f us in a frame", (int)(c - chain), low_us);
    }
    c->rise = now;
    return;
  }
  if (c->rise == 0 || c->bits >= 8 * c->bytes) {
    return; /* before the first frame */
  }
  c->fall = now;
  uint8_t *byte = &c->sent[c->bits / 8];
  *byte = (uint8_t)(*byte << 1 | ((now - c->rise) / hertz * 1e6 > ONE_US));
  c->bits++;
  if (c->bits == 8 * c->bytes) {
    memcpy(wire + c->at, c->sent, (size_t)c->bytes);
    if (c == &chain[chains - 1]) {
      wire_frames++;
      wire_at = now;
      frame_is_sent();
    }
  }
}

static bool outputs_are(const uint8_t *frame) {
  for (int i = 0; i < outputs; i++) {
    if (avr->data[output[i]] != frame[frame_bytes - outputs + i]) {
      return false;
    }
  }
  return true;
}

/* ---- the serial line ---- */

struct cell {
  uint8_t byte;
  bool broken; /* without its stop bit */
  bool lost;   /* bytes before it were lost */
};

struct coming {
  double start;
  uint8_t byte;
  bool broken;
};

static struct cell kept[KEPT + 1]; /* the last one is the shift register */
static int keeps;
static struct coming line[MAX_PACKET];
static int line_next, line_count;
static bool receiving;
static bool lost_before;
static uint64_t lost;
static int deepest;
static double longest_wait;
static double arrived[KEPT + 1];

static bool tx_waits;
static uint8_t tx_waiting;
static double tx_end;
static struct {
  uint8_t byte;
  double at;
} heard[64];
static int heard_next, heard_count;

static double next_event; /* nothing happens before */

static void host_hears(uint8_t byte, double at);
static void host_acts(double at);
static double host_time(void);

static double controllers_bit(void) {
  int divider = avr->data[udr - 2] | (avr->data[udr - 1] & 15) << 8;
  return (avr->data[udr - 6] & 2 ? 8.0 : 16.0) * (divider + 1);
}

static void transmit(uint8_t byte, double at) {
  tx_end = at + BITS_PER_BYTE * controllers_bit();
  heard[heard_count % 64].byte = byte;
  heard[heard_count++ % 64].at = tx_end;
}

static void arrive(double at) {
  struct cell cell = {line[line_next].byte, line[line_next].broken, lost_before};
  line_next++;
  receiving = false;
  lost_before = false;
  if (!(avr->data[udr - 5] & 1 << 4)) {
    return; /* the receiver is off */
  }
  double off = controllers_bit() / bit_cycles - 1;
  if (off > 0.035 || off < -0.035) {
    cell.broken = true;
  }
  arrived[keeps] = at;
  kept[keeps++] = cell;
  if (keeps > deepest) {
    deepest = keeps;
  }
}

static double rx_time(void) {
  if (line_next == line_count) {
    return NEVER;
  }
  return line[line_next].start + (receiving ? STOP_BIT_MIDDLE * bit_cycles : 0);
}

/* Brings line and computer to an instant. */
static void advance(double now) {
  while (next_event <= now) {
    double rx = rx_time();
    double tx = tx_waits ? tx_end : NEVER;
    double hear = heard_next < heard_count ? heard[heard_next % 64].at : NEVER;
    double host = host_time();
    if (rx <= tx && rx <= hear && rx <= host && rx <= now) {
      if (receiving) {
        arrive(rx);
      } else if (keeps == KEPT + 1) {
        line_next++;
        lost_before = true;
        lost++;
      } else {
        receiving = true;
      }
    } else if (tx <= hear && tx <= host && tx <= now) {
      tx_waits = false;
      transmit(tx_waiting, tx_end);
    } else if (hear <= host && hear <= now) {
      host_hears(heard[heard_next % 64].byte, hear);
      heard_next++;
    } else if (host <= now) {
      host_acts(host);
    } else {
      double first = rx < tx ? rx : tx;
      first = hear < first ? hear : first;
      next_event = host < first ? host : first;
    }
  }
}

static uint8_t status_read(avr_t *on, avr_io_addr_t address, void *parameter) {
  (void)parameter;
  advance((double)on->cycle);
  uint8_t value = on->data[address] & 3;
  if (keeps > 0) {
    value |= (uint8_t)(1 << 7 | kept[0].broken << 4 | kept[0].lost << 3);
  }
  return value | (uint8_t)(!tx_waits << 5);
}

static void status_write(avr_t *on, avr_io_addr_t address, uint8_t value, void *parameter) {
  (void)parameter;
  on->data[address] = value;
}

static uint8_t data_read(avr_t *on, avr_io_addr_t address, void *parameter) {
  (void)address;
  (void)parameter;
  advance((double)on->cycle);
  if (keeps == 0) {
    wrong("a byte is read where none is");
    return 0;
  }
  uint8_t byte = kept[0].byte;
  double waited = (double)on->cycle - arrived[0];
  longest_wait = waited > longest_wait ? waited : longest_wait;
  keeps--;
  memmove(kept, kept + 1, sizeof kept - sizeof *kept);
  memmove(arrived, arrived + 1, sizeof arrived - sizeof *arrived);
  return byte;
}

static void data_write(avr_t *on, avr_io_addr_t address, uint8_t value, void *parameter) {
  (void)address;
  (void)parameter;
  double now = (double)on->cycle;
  advance(now);
  if (!(on->data[udr - 5] & 1 << 3)) {
    wrong("a byte is sent while the sender is off");
  } else if (tx_waits) {
    wrong("a byte is sent while one waits");
  } else if (tx_end > now) {
    tx_waits = true;
    tx_waiting = value;
  } else {
    transmit(value, now);
  }
  next_event = 0;
}

/* Puts bytes on the line from an instant on; gives the instant at which the last one ends. */
static double put(const uint8_t *bytes, int count, int broken, double at) {
  line_next = line_count = 0;
  receiving = false;
  for (int i = 0; i < count; i++) {
    line[line_count].start = at + i * BITS_PER_BYTE * bit_cycles;
    line[line_count].byte = bytes[i];
    line[line_count++].broken = i == broken;
  }
  next_event = 0;
  return at + count * BITS_PER_BYTE * bit_cycles;
}

/* ---- the computer ---- */

static enum { OWN, ASKING, LIVE, SILENT, DONE } phase;

static uint8_t frame[MAX_FRAME];
static uint8_t packet[MAX_PACKET];
static int packet_bytes;
static uint8_t sequence;
static int frame_number = -1;
static double act_at;      /* NEVER while an answer is awaited without a limit */
static bool awaits_answer; /* of packet */
static bool repeats;       /* packet has been taken before */
static uint64_t wire_before;
static int own_next;
static int questions, resent, taken, tried;
static double first_taken, last_taken, first_question, answered_at, back_at;
static uint8_t answer[16];
static int answer_bytes;
static int noises;

static double host_time(void) { return act_at; }

static int make_packet(uint8_t *to, const uint8_t *bytes, int count, uint8_t number) {
  to[0] = 0xA7;
  to[1] = (uint8_t)count;
  to[2] = (uint8_t)(count >> 8);
  to[3] = number;
  if (count > 0) {
    memcpy(to + 4, bytes, (size_t)count);
  }
  uint16_t sum = crc(to + 1, (size_t)count + 3);
  to[count + 4] = (uint8_t)sum;
  to[count + 5] = (uint8_t)(sum >> 8);
  return count + 6;
}

/* What looks like a packet in a frame is a harder test than noise. */
static void new_frame(void) {
  frame_number++;
  for (int i = 0; i < frame_bytes; i++) {
    frame[i] = (uint8_t)any(256);
  }
  if (frame_number % 4 == 1) {
    memset(frame, frame_number % 8 == 1 ? 0xA7 : 0, (size_t)frame_bytes);
  } else if (frame_number % 4 == 2) {
    for (int i = 0; i + 3 <= frame_bytes; i += 3) {
      frame[i] = 0xA7;
      frame[i + 1] = (uint8_t)(i % 2 ? frame_bytes : 0);
      frame[i + 2] = (uint8_t)(i % 2 ? frame_bytes >> 8 : 0);
    }
  }
}

static void send_packet(double at) {
  wire_before = wire_frames;
  awaits_answer = true;
  answer_bytes = 0;
  act_at = put(packet, packet_bytes, -1, at) + cycles_of_ms(150);
}

/* A packet that must change nothing; gives the instant from which the next one may come. */
static double send_fault(int kind, double at) {
  uint8_t bad[MAX_PACKET];
  int count = packet_bytes;
  int broken = -1;
  double pause = 60; /* ms; longer than a gap that ends a packet */
  memcpy(bad, packet, (size_t)count);
  bad[3] = (uint8_t)(sequence + 100);
  uint16_t sum = crc(bad + 1, (size_t)count - 3);
  bad[count - 2] = (uint8_t)sum;
  bad[count - 1] = (uint8_t)(sum >> 8);
  switch (kind) {
  case 0: /* in the frame */
    bad[4 + any((uint32_t)frame_bytes)] ^= (uint8_t)(1 << any(8));
    pause = 0;
    break;
  case 1: /* in the CRC */
    bad[count - 1 - (int)any(2)] ^= (uint8_t)(1 << any(8));
    pause = 0;
    break;
  case 2: /* in the sequence number */
    bad[3] ^= (uint8_t)(1 << any(8));
    pause = 0;
    break;
  case 3: /* in the length */
    bad[1 + any(2)] ^= (uint8_t)(1 << any(8));
    break;
  case 4: /* cut off */
    count = 1 + (int)any((uint32_t)count - 1);
    break;
  case 5: /* a byte is missing */
    memmove(bad + 5, bad + 6, (size_t)count - 6);
    count--;
    break;
  case 6: /* of a longer frame */
    memset(bad + packet_bytes, 0, 3);
    count = make_packet(bad, packet + 4, frame_bytes + 3, (uint8_t)(sequence + 100));
    break;
  case 7: /* of a shorter frame */
    count = make_packet(bad, packet + 4, frame_bytes - 1, (uint8_t)(sequence + 100));
    break;
  case 8: /* foreign bytes */
    count = 40;
    for (int i = 0; i < count; i++) {
      bad[i] = any(3) == 0 ? 0xA7 : (uint8_t)any(256);
    }
    break;
  case 9: /* a byte without its stop bit */
    broken = 4 + (int)any((uint32_t)frame_bytes);
    break;
  default: /* a first byte alone */
    count = 1;
    break;
  }
  tried++;
  return put(bad, count, broken, at) + cycles_of_ms(pause);
}

#define FAULT_KINDS 11

/* Of a computer that waits for nothing: its last frames, and which of them was shown last. */
#define REMEMBERED 16
static uint8_t remembered[REMEMBERED][MAX_FRAME];
static int shown_number = -1;
static int rude_shown;

static void send_rudely(double at) {
  if (frame_number >= frames_wanted) {
    phase = SILENT;
    own_next = 0;
    last_taken = at;
    return;
  }
  new_frame();
  memcpy(remembered[frame_number % REMEMBERED], frame, (size_t)frame_bytes);
  packet_bytes = make_packet(packet, frame, frame_bytes, ++sequence);
  act_at = put(packet, packet_bytes, -1, at);
}

static void is_shown_rudely(void) {
  int number = shown_number + 1;
  if (number <= frame_number - REMEMBERED) {
    number = frame_number - REMEMBERED + 1;
  }
  while (number <= frame_number &&
         memcmp(wire, remembered[number % REMEMBERED], (size_t)(frame_bytes - outputs)) != 0) {
    number++;
  }
  if (number > frame_number) {
    wrong("what is on the wire is no frame that was sent after frame %d", shown_number);
  }
  shown_number = number;
  rude_shown++;
}

static void send_frame(double at) {
  packet_bytes = make_packet(packet, frame, frame_bytes, ++sequence);
  repeats = false;
  send_packet(at);
}

static void go_on(double at) {
  if (is_rude) {
    send_rudely(at);
    return;
  }
  if (taken == frames_wanted) {
    phase = own_after > 0 ? SILENT : DONE;
    act_at = NEVER;
    own_next = 0;
    return;
  }
  new_frame();
  if (with_faults && taken % 3 != 0) {
    /* The fault now, the frame when its time is over. */
    awaits_answer = false;
    wire_before = wire_frames;
    packet_bytes = make_packet(packet, frame, frame_bytes, (uint8_t)(sequence + 1));
    act_at = send_fault(taken % FAULT_KINDS, at);
  } else {
    send_frame(at);
  }
}

static void host_acts(double at) {
  act_at = NEVER;
  next_event = 0;
  if (phase == OWN && with_noise && own_next < own_first) {
    /* Even a frame that is whole must wait for a question. */
    new_frame();
    packet_bytes = make_packet(packet, frame, frame_bytes, 7);
    act_at = (noises % 3 == 0 ? put(packet, packet_bytes, -1, at)
                              : send_fault(noises % FAULT_KINDS, at)) +
             cycles_of_ms(100 + any(300));
    noises++;
  } else if (phase == OWN) {
    /* The first question comes at the worst of times, while a frame is sent. */
    bool sends = chain[0].bits > 8 && chain[0].bits < 8 * chain[0].bytes - 8;
    act_at = at + cycles_of_ms(0.02);
    if (own_next >= own_first && sends) {
      phase = ASKING;
      first_question = act_at;
    }
  } else if (phase == ASKING) {
    packet_bytes = make_packet(packet, NULL, 0, ++sequence);
    send_packet(at);
    questions++;
    act_at = at + cycles_of_ms(100);
    if (at - first_question > cycles_of_ms(5000)) {
      wrong("no answer within 5 s");
      phase = DONE;
    }
  } else if (phase == LIVE && is_rude) {
    send_rudely(at);
  } else if (phase == LIVE && !awaits_answer) {
    if (wire_frames != wire_before) {
      wrong("a packet that is none changed the wire");
    }
    send_frame(at);
  } else if (phase == LIVE) {
    resent++;
    send_frame(at);
  }
}

static void is_here(double at) {
  uint16_t bytes = (uint16_t)(answer[5] | answer[6] << 8);
  uint16_t number = (uint16_t)(answer[7] | answer[8] << 8);
  if (answer[3] != 1 || answer[4] != 0 || bytes != frame_bytes || number != layout) {
    wrong("the answer has version %d, flags %d, %d bytes, layout 0x%04X", answer[3], answer[4],
          bytes, number);
  }
  if (phase != ASKING) {
    wrong("an answer without a question");
    return;
  }
  if (answer[2] != sequence) {
    return; /* of an earlier question: the latest is on its way */
  }
  answered_at = at;
  phase = LIVE;
  deepest = 0;
  longest_wait = 0;
  lost = 0;
  go_on(at + latency);
}

static void is_taken(double at) {
  if (is_rude) {
    taken++;
    last_taken = at;
    return;
  }
  uint64_t sent = wire_frames - wire_before;
  if (phase != LIVE || !awaits_answer || answer[2] != sequence) {
    wrong("an answer to no packet");
    return;
  }
  if (repeats) {
    if (sent != 0) {
      wrong("a repeated packet is sent to the wire again");
    }
  } else if (sent != 1) {
    wrong("frame %d: %d frames on the wire", frame_number, (int)sent);
  } else if (memcmp(wire, frame, (size_t)(frame_bytes - outputs)) != 0 || !outputs_are(frame)) {
    wrong("frame %d is not what is on the wire", frame_number);
  }
  if (!repeats) {
    first_taken = taken == 0 ? at : first_taken;
    last_taken = at;
    taken++;
    if (with_faults && taken % 5 == 0) {
      repeats = true; /* the answer is lost, and the packet comes again */
      send_packet(at + latency);
      return;
    }
  }
  awaits_answer = false;
  go_on(at + latency);
}

static void host_hears(uint8_t byte, double at) {
  if (answer_bytes == 0 && byte != 0x7A) {
    wrong("an answer begins with 0x%02X", byte);
    return;
  }
  answer[answer_bytes++] = byte;
  int whole = answer_bytes < 2 ? 16 : answer[1] == 1 ? 11 : 5;
  if (answer_bytes < whole) {
    return;
  }
  answer_bytes = 0;
  uint16_t sum = crc(answer + 1, (size_t)whole - 3);
  if (answer[whole - 2] != (sum & 255) || answer[whole - 1] != sum >> 8) {
    wrong("an answer has a wrong CRC");
  } else if (answer[1] == 1) {
    is_here(at);
  } else if (answer[1] == 2) {
    is_taken(at);
  } else {
    wrong("an answer of kind %d", answer[1]);
  }
}

/* Frames of the own show come one after another, whatever is on the line. */
static void frame_is_sent(void) {
  if (phase == LIVE || (is_rude && phase == SILENT && wire_at < last_taken + hertz / 10)) {
    if (is_rude) {
      is_shown_rudely();
    }
    return;
  }
  if (phase == SILENT && ends_dark) {
    for (int i = 0; i < frame_bytes - outputs; i++) {
      if (wire[i] != 0) {
        wrong("a frame after the silence is not dark");
        break;
      }
    }
  } else if (memcmp(wire, own + own_next % own_frames * frame_bytes,
                    (size_t)(frame_bytes - outputs)) != 0) {
    wrong("frame %d of the own show is not what is on the wire", own_next);
  }
  if (phase == SILENT && own_next == 0) {
    back_at = wire_at;
    double silence = ms(back_at - last_taken);
    if (silence < 1000 || silence > 1300) {
      wrong("the own show is back after %.1f ms", silence);
    }
  }
  own_next++;
  if (phase == SILENT && own_next >= own_after) {
    phase = DONE;
  }
}

/* ---- servo pulses, while it is live ---- */

static struct {
  char port;
  int pin;
  bool level;
  double next;
} pulse[MAX_PULSES];
static int pulses;

static void set_level(int number, bool level) {
  static uint8_t mask[26], value[26];
  int port = pulse[number].port - 'A';
  uint8_t bit = (uint8_t)(1 << pulse[number].pin);
  mask[port] |= bit;
  value[port] = (uint8_t)(level ? value[port] | bit : value[port] & ~bit);
  avr_ioport_external_t external = {
      .name = pulse[number].port, .mask = mask[port], .value = value[port]};
  avr_ioctl(avr, AVR_IOCTL_IOPORT_SET_EXTERNAL(pulse[number].port), &external);
  avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(pulse[number].port), pulse[number].pin),
                level);
  pulse[number].level = level;
}

/* All at nearly the same time, so that their routines come in a row. */
static void play_pulses(void) {
  for (int i = 0; i < pulses; i++) {
    bool live = phase == LIVE;
    if ((live || pulse[i].level) && (double)avr->cycle >= pulse[i].next) {
      bool level = !pulse[i].level;
      set_level(i, level);
      pulse[i].next = (double)avr->cycle + cycles_of_ms(level ? 1.5 : 18.5);
    }
  }
}

/* ---- the rest ---- */

static uint8_t *read_file(const char *name, int *size) {
  FILE *file = fopen(name, "rb");
  if (file == NULL) {
    die("cannot read", name);
  }
  fseek(file, 0, SEEK_END);
  *size = (int)ftell(file);
  rewind(file);
  uint8_t *bytes = malloc((size_t)*size + 1);
  if (bytes == NULL || fread(bytes, 1, (size_t)*size, file) != (size_t)*size) {
    die("cannot read", name);
  }
  fclose(file);
  return bytes;
}

static void quiet(avr_t *on, const int level, const char *format, va_list arguments) {
  (void)on;
  if (level <= LOG_ERROR) {
    vfprintf(stderr, format, arguments);
  }
}

int main(int count, char **arguments) {
  const char *elf = NULL, *mcu = "atmega328p", *own_name = NULL;
  int own_bytes = 0;
  own_first = 3;
  own_after = 3;
  frames_wanted = 100;
  udr = 0xC6;
  for (int i = 1; i < count; i++) {
    const char *value = strchr(arguments[i], '=');
    if (value == NULL) {
      die("needs a value:", arguments[i]);
    }
    size_t length = (size_t)(value++ - arguments[i]);
    long number = strtol(value, NULL, 0);
#define IS(name) (strlen(name) == length && strncmp(arguments[i], name, length) == 0)
    if (IS("elf")) {
      elf = value;
    } else if (IS("mcu")) {
      mcu = value;
    } else if (IS("own")) {
      own_name = value;
    } else if (IS("hz")) {
      hertz = (double)number;
    } else if (IS("baud")) {
      baud = (double)number;
    } else if (IS("udr")) {
      udr = (int)number;
    } else if (IS("bytes")) {
      frame_bytes = (int)number;
    } else if (IS("layout")) {
      layout = (int)number;
    } else if (IS("reset-us")) {
      reset_us = (double)number;
    } else if (IS("own-first")) {
      own_first = (int)number;
    } else if (IS("own-after")) {
      own_after = (int)number;
    } else if (IS("latency-us")) {
      latency = (double)number;
    } else if (IS("frames")) {
      frames_wanted = (int)number;
    } else if (IS("faults")) {
      with_faults = number != 0;
    } else if (IS("noise")) {
      with_noise = number != 0;
    } else if (IS("rude")) {
      is_rude = number != 0;
    } else if (IS("dark")) {
      ends_dark = number != 0;
    } else if (IS("seed")) {
      seed = (uint32_t)number;
    } else if (IS("chain") && chains < MAX_CHAINS) {
      struct chain *c = &chain[chains];
      if (sscanf(value, "%c%d:%d", &c->port, &c->pin, &c->bytes) != 3) {
        die("is no chain:", value);
      }
      c->at = chains == 0 ? 0 : chain[chains - 1].at + chain[chains - 1].bytes;
      chains++;
    } else if (IS("pulses") && pulses < MAX_PULSES) {
      pulse[pulses].port = value[0];
      pulse[pulses++].pin = value[1] - '0';
    } else if (IS("output") && outputs < MAX_OUTPUTS) {
      output[outputs++] = (int)number;
    } else {
      die("is no option:", arguments[i]);
    }
  }
  if (elf == NULL || own_name == NULL || hertz <= 0 || baud <= 0 || chains == 0 ||
      frame_bytes > MAX_FRAME) {
    die("something is missing", "");
  }
  if (crc((const uint8_t *)"123456789", 9) != 0x6F91) {
    die("the CRC here is wrong", "");
  }
  own = read_file(own_name, &own_bytes);
  own_frames = own_bytes / frame_bytes;
  bit_cycles = hertz / baud;
  latency = latency * hertz / 1e6;

  avr_global_logger_set(quiet);
  elf_firmware_t firmware;
  memset(&firmware, 0, sizeof firmware);
  if (elf_read_firmware(elf, &firmware) != 0) {
    die("is no firmware:", elf);
  }
  avr = avr_make_mcu_by_name(mcu);
  if (avr == NULL) {
    die("is no controller:", mcu);
  }
  avr_init(avr);
  firmware.frequency = (uint32_t)hertz;
  avr_load_firmware(avr, &firmware);
  avr->frequency = (uint32_t)hertz;
  for (uint8_t i = 0; i < EXTINT_COUNT; i++) {
    avr_extint_set_strict_lvl_trig(avr, i, 0); /* see prover.c */
  }
  for (int i = 0; i < chains; i++) {
    avr_irq_register_notify(
        avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(chain[i].port), chain[i].pin), pin_changed,
        &chain[i]);
  }
  avr->io[AVR_DATA_TO_IO(udr)].r.c = data_read;
  avr->io[AVR_DATA_TO_IO(udr)].w.c = data_write;
  avr->io[AVR_DATA_TO_IO(udr - 6)].r.c = status_read;
  avr->io[AVR_DATA_TO_IO(udr - 6)].w.c = status_write;

  avr->run_cycle_limit = RUN_CYCLES;
  for (int i = 0; i < pulses; i++) {
    set_level(i, false);
  }
  int state = cpu_Running;
  double limit = hertz * (20 + frames_wanted * (0.4 + latency / hertz));
  while (phase != DONE && (double)avr->cycle < limit && state != cpu_Done && state != cpu_Crashed) {
    state = avr_run(avr);
    advance((double)avr->cycle);
    play_pulses();
  }
  if (phase != DONE) {
    wrong("not all frames came: phase %d, %d taken", (int)phase, taken);
  }
  if (lost > 0 && !is_rude) {
    wrong("%d bytes were lost while it was live", (int)lost);
  }
  if (resent > 0) {
    wrong("%d frames had no answer", resent);
  }
  printf("{\"passed\":%s,\"taken\":%d,\"faultyPackets\":%d,\"questions\":%d,\"linkMs\":%.2f,"
         "\"framesPerSecond\":%.1f,\"bytesKept\":%d,\"longestWaitCycles\":%.0f,"
         "\"shownRudely\":%d,\"byteCycles\":%.1f,\"silenceMs\":%.2f,\"leastResetUs\":%.1f,"
         "\"simulatedMs\":%.0f,"
         "\"faults\":[",
         faults == 0 ? "true" : "false", taken, tried, questions, ms(answered_at - first_question),
         taken > 1 ? (taken - 1) * hertz / (last_taken - first_taken) : 0, deepest, longest_wait,
         rude_shown, BITS_PER_BYTE * bit_cycles, ms(back_at - last_taken), least_reset,
         ms((double)avr->cycle));
  for (int i = 0; i < faults && i < MAX_FAULTS; i++) {
    printf("%s\"%s\"", i > 0 ? "," : "", fault[i]);
  }
  printf("],\"faultCount\":%d}\n", faults);
  return faults == 0 ? 0 : 1;
}
