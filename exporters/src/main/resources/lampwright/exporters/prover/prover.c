/*
 * Runs a firmware on a simulated AVR, reads the pins of its chains at exact cycles, and compares
 * what was sent with the frame table that it should send. Prints one JSON object; `prover --help`
 * tells the options.
 */
#define _POSIX_C_SOURCE 200809L

#include <ctype.h>
#include <errno.h>
#include <fcntl.h>
#include <gelf.h>
#include <inttypes.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <simavr/avr_extint.h>
#include <simavr/avr_ioport.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_core.h>
#include <simavr/sim_elf.h>

#define MAX_CHAINS 16
#define MAX_OUTPUTS 16
#define MAX_REGISTERS 16
#define MAX_LEVELS 4
#define MAX_FAULTS 12
#define STACK_PAINT 0xC5
#define IDLE_CYCLES 500
#define RATE_SLACK_NS 1e6

static const char USAGE[] =
    "usage: prover --elf FILE --mcu NAME --hz N --table FILE --frame-bytes N [options]\n"
    "  --chain pin=B0,at=0,bytes=24,t0h=400,t0l=850,t1h=800,t1l=450,tol=150,period=1250,\n"
    "          ptol=600,reset=280[,gap=US][,t0h-min=NS][,t0h-max=NS]...\n"
    "                     a chain: its pin, where its bytes are in the frame, the limits of its\n"
    "                     bits in ns, its reset in us. gap: the longest low time between bits, in\n"
    "                     us, that is put down to an interrupt instead of counted outside limits.\n"
    "  --output at=24,ocr=0x88,ddr=0x24.1,com=0x80.7\n"
    "                     a driver output: its byte in the frame, and in data space its duty\n"
    "                     register, direction bit and compare output bit\n"
    "  --register 0x81/0xFF=0x03\n"
    "                     a register of the timers that must hold a value, under a mask, whenever\n"
    "                     a frame is on the pins\n"
    "  --once             the scene does not loop: the last frame is held\n"
    "  --frames N         frames to compare (default: two loops and three frames)\n"
    "  --skip N           frames sent before the first of the table (default 0)\n"
    "  --rate MILLIHERTZ  expected frame rate; over the whole run the frames may be off by 1 ms\n"
    "  --probe ADDRESS    data address of the register that takes the marks 1, 2, 3 (decode "
    "begins,\n"
    "                     decoded, sent); default: general-purpose register 0 of the controller\n"
    "  --seconds S        simulated time at which to give up (default: half as long again as the\n"
    "                     frames should take at --rate, and 5 s)\n"
    "  --skip-idle        leaps over most of the waiting between frames (needs --rate and the "
    "marks):\n"
    "                     several times faster, for firmware that uses no interrupts\n"
    "  --slow             watches every instruction for how long interrupts are off, those "
    "between\n"
    "                     frames too\n"
    "  --level B3=1       a level from outside on an input pin, such as of a switch\n"
    "  --drive FILE       levels from outside on input pins: lines of a time in ns from the first "
    "mark\n"
    "                     1, a pin and its level, such as 20000000 D2 1, in order of time\n"
    "  --vcd FILE         writes the chains' pins, times in ns\n"
    "  --vcd-frames N     that many frames of each (default 2)\n"
    "  --vcd-idle US      low times longer than that are cut to that (default 400)\n";

/* A range of times and what was seen of it, in cycles except for the limits. */
struct span {
  double min_ns;
  double max_ns;
  uint64_t seen;
  uint64_t least;
  uint64_t most;
};

struct chain {
  char port;
  int bit;
  uint32_t at;
  uint32_t bytes;
  struct span high[2];
  struct span low[2];
  struct span period;
  double reset_us;
  double gap_us;
  /* reading */
  bool level;
  bool begun;
  bool has_bit;
  int value;
  uint64_t rise;
  uint64_t fall;
  uint64_t frame_rise;
  uint8_t *frame;
  uint64_t bits_in_frame;
  /* results */
  uint64_t frames;
  uint64_t wrong;
  uint64_t bits;
  uint64_t wrong_bits;
  uint64_t outside;
  uint64_t stretched;
  uint64_t longest_stretch;
  uint64_t least_reset;
  uint64_t vcd_frames;
};

struct output {
  uint32_t at;
  uint16_t ocr;
  uint16_t ddr;
  int ddr_bit;
  uint16_t com;
  int com_bit;
  uint64_t compared;
  uint64_t wrong;
};

struct setting {
  uint16_t address;
  uint8_t mask;
  uint8_t value;
  bool wrong;
};

/* A level from outside. */
struct edge {
  double ns;
  char port;
  int bit;
  bool level;
};

struct prover {
  avr_t *avr;
  struct edge *edge;
  size_t edges;
  size_t next_edge;
  uint64_t last_edge;
  uint64_t drive_from;
  uint8_t outside_mask[26];
  uint8_t outside_value[26];
  bool idle;
  double ns_per_cycle;
  struct chain chain[MAX_CHAINS];
  int chains;
  struct output output[MAX_OUTPUTS];
  int outputs;
  struct setting setting[MAX_REGISTERS];
  int settings;
  const uint8_t *table;
  uint64_t table_frames;
  uint32_t frame_bytes;
  bool once;
  bool slow;
  uint64_t wanted;
  uint64_t skip;
  /* marks */
  uint64_t mark_at;
  uint64_t begun_at;
  uint64_t decodes;
  uint64_t decode_sum;
  uint64_t decode_worst;
  uint64_t sends;
  uint64_t send_sum;
  uint64_t send_worst;
  /* frame periods, from the first rising edge of the first chain or from mark 1 */
  bool opened;
  uint64_t first_frame;
  uint64_t last_frame;
  uint64_t periods;
  uint64_t period_least;
  uint64_t period_most;
  /* interrupts */
  bool in_interrupt;
  uint64_t interrupts;
  bool was_on;
  uint64_t off_since;
  uint64_t off_most;
  bool ever_on;
  uint64_t isr_since;
  uint64_t isr_most;
  /* faults */
  char fault[MAX_FAULTS][200];
  int faults;
  FILE *vcd;
  uint64_t vcd_limit;
  uint64_t vcd_idle;
  uint64_t vcd_cut;
  uint64_t vcd_last;
  bool vcd_any;
};

static struct prover prover;

static void die(const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  fputs("prover: ", stderr);
  vfprintf(stderr, format, arguments);
  fputc('\n', stderr);
  va_end(arguments);
  exit(2);
}

static void note(const char *format, ...) {
  if (prover.faults < MAX_FAULTS) {
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(prover.fault[prover.faults], sizeof prover.fault[0], format, arguments);
    va_end(arguments);
  }
  prover.faults++;
}

static double ns(uint64_t cycles) { return (double)cycles * prover.ns_per_cycle; }

/* Takes a time into the statistics of its range and says whether it is inside the limits. */
static bool take(struct span *span, uint64_t cycles) {
  if (span->seen == 0 || cycles < span->least) {
    span->least = cycles;
  }
  if (cycles > span->most) {
    span->most = cycles;
  }
  span->seen++;
  return ns(cycles) >= span->min_ns - 0.001 && ns(cycles) <= span->max_ns + 0.001;
}

static const uint8_t *expected(uint64_t frame) {
  uint64_t index = frame % prover.table_frames;
  if (prover.once && frame >= prover.table_frames) {
    index = prover.table_frames - 1;
  }
  return prover.table + index * prover.frame_bytes;
}

static void write_vcd(int chain, bool level, uint64_t cycle) {
  struct chain *c = &prover.chain[chain];
  if (prover.vcd == NULL || c->vcd_frames >= prover.vcd_limit) {
    return;
  }
  if (!prover.vcd_any) {
    /* a little idle time first: readers need a level to see the first edge from */
    prover.vcd_cut = cycle - (uint64_t)(10000 / prover.ns_per_cycle);
    prover.vcd_last = cycle;
    prover.vcd_any = true;
  }
  if (cycle - prover.vcd_last > prover.vcd_idle) {
    prover.vcd_cut += cycle - prover.vcd_last - prover.vcd_idle;
  }
  prover.vcd_last = cycle;
  /* to whole ns, outward: a reader then never finds a high time shorter than it is */
  uint64_t picoseconds = (uint64_t)(ns(cycle - prover.vcd_cut) * 1000 + 0.5);
  fprintf(prover.vcd, "#%" PRIu64 "\n%d%c\n", (picoseconds + (level ? 0 : 999)) / 1000, level,
          '!' + chain);
}

/* Compares a frame of a chain that has come to its end. */
static void end_frame(int number) {
  struct chain *c = &prover.chain[number];
  uint64_t sent = c->frames++;
  c->vcd_frames = c->frames;
  if (sent < prover.skip) {
    return;
  }
  const uint8_t *want = expected(sent - prover.skip) + c->at;
  uint64_t bits = (uint64_t)c->bytes * 8;
  if (c->bits_in_frame != bits) {
    note("chain %d, frame %" PRIu64 ": %" PRIu64 " bits, expected %" PRIu64, number, sent,
         c->bits_in_frame, bits);
    c->wrong++;
    c->wrong_bits += bits;
    return;
  }
  uint64_t before = c->wrong_bits;
  for (uint32_t i = 0; i < c->bytes; i++) {
    if (c->frame[i] != want[i]) {
      if (c->wrong_bits == before) {
        note("chain %d, frame %" PRIu64 ": byte %" PRIu32 " is %02X, expected %02X", number, sent,
             i, c->frame[i], want[i]);
      }
      c->wrong_bits += (uint64_t)__builtin_popcount(c->frame[i] ^ want[i]);
    }
  }
  c->wrong += c->wrong_bits != before;
}

/* The first frame is left out: it comes when the scene is opened, the others when the clock ticks.
 */
static void time_frame(uint64_t cycle) {
  if (!prover.opened) {
    prover.opened = true;
    return;
  }
  if (prover.first_frame == 0) {
    prover.first_frame = cycle;
  } else {
    uint64_t period = cycle - prover.last_frame;
    if (prover.periods == 0 || period < prover.period_least) {
      prover.period_least = period;
    }
    if (period > prover.period_most) {
      prover.period_most = period;
    }
    prover.periods++;
  }
  prover.last_frame = cycle;
}

static void outside(struct chain *c, int number, const char *what, uint64_t cycles) {
  c->outside++;
  note("chain %d, frame %" PRIu64 ", bit %" PRIu64 ": %s %.1f ns", number, c->frames,
       c->bits_in_frame, what, ns(cycles));
}

static void rising(struct chain *c, int number, uint64_t cycle) {
  bool starts = true;
  if (c->has_bit) {
    uint64_t low = cycle - c->fall;
    if (ns(low) >= c->reset_us * 1000 - 0.001) {
      if (c->least_reset == 0 || low < c->least_reset) {
        c->least_reset = low;
      }
      end_frame(number);
    } else {
      starts = false;
      if (c->gap_us > 0 && ns(low) > c->low[c->value].max_ns && ns(low) <= c->gap_us * 1000) {
        c->stretched++;
        if (low > c->longest_stretch) {
          c->longest_stretch = low;
        }
      } else {
        bool inside = take(&c->low[c->value], low);
        inside &= take(&c->period, cycle - c->rise);
        if (!inside) {
          outside(c, number, c->value ? "T1L" : "T0L", low);
        }
      }
    }
  }
  if (starts) {
    c->bits_in_frame = 0;
    memset(c->frame, 0, c->bytes);
    c->frame_rise = cycle;
    if (number == 0) {
      time_frame(cycle);
    }
  }
  c->rise = cycle;
}

static void falling(struct chain *c, int number, uint64_t cycle) {
  uint64_t high = cycle - c->rise;
  int value = ns(high) > (c->high[0].max_ns + c->high[1].min_ns) / 2;
  c->value = value;
  c->has_bit = true;
  c->fall = cycle;
  c->bits++;
  if (!take(&c->high[value], high)) {
    outside(c, number, value ? "T1H" : "T0H", high);
  }
  if (c->bits_in_frame < (uint64_t)c->bytes * 8) {
    c->frame[c->bits_in_frame / 8] |= (uint8_t)(value << (7 - c->bits_in_frame % 8));
  }
  c->bits_in_frame++;
}

static void pin_changed(struct avr_irq_t *irq, uint32_t value, void *parameter) {
  (void)irq;
  int number = (int)(intptr_t)parameter;
  struct chain *c = &prover.chain[number];
  bool level = value & 1;
  if (level == c->level) {
    return;
  }
  c->level = level;
  uint64_t cycle = prover.avr->cycle;
  write_vcd(number, level, cycle);
  if (level) {
    c->begun = true;
    rising(c, number, cycle);
  } else if (c->begun) {
    falling(c, number, cycle);
  }
}

/*
 * The simulator's timer 1 of the ATtiny85 counts every cycle, whatever its prescaler. Its count is
 * put right here, for firmware that only reads it: datasheet, table 12-5.
 */
static uint8_t tiny_timer_1(avr_t *avr, avr_io_addr_t address, void *parameter) {
  (void)parameter;
  int select = avr->data[0x50] & 15; /* TCCR1 */
  uint8_t count = select == 0 ? 0 : (uint8_t)(avr->cycle >> (select - 1));
  avr->data[address] = count;
  return count;
}

static int bit_of(uint16_t address, int bit) { return prover.avr->data[address] >> bit & 1; }

static void compare_outputs(void) {
  uint64_t sent = prover.sends;
  if (sent < prover.skip) {
    return;
  }
  const uint8_t *want = expected(sent - prover.skip);
  for (int i = 0; i < prover.outputs; i++) {
    struct output *o = &prover.output[i];
    uint8_t duty = prover.avr->data[o->ocr];
    bool driven =
        (o->ddr == 0 || bit_of(o->ddr, o->ddr_bit)) && (o->com == 0 || bit_of(o->com, o->com_bit));
    o->compared++;
    if (!driven || duty != want[o->at]) {
      o->wrong++;
      note("output %d, frame %" PRIu64 ": duty %d%s, expected %d", i, sent, duty,
           driven ? "" : " (pin not driven)", want[o->at]);
    }
  }
}

static void compare_settings(void) {
  for (int i = 0; i < prover.settings; i++) {
    struct setting *setting = &prover.setting[i];
    uint8_t value = prover.avr->data[setting->address] & setting->mask;
    if (value != setting->value && !setting->wrong) {
      setting->wrong = true;
      note("register 0x%02X holds 0x%02X under the mask 0x%02X, expected 0x%02X", setting->address,
           value, setting->mask, setting->value);
    }
  }
}

static void marked(struct avr_t *avr, avr_io_addr_t address, uint8_t value, void *parameter) {
  (void)parameter;
  avr->data[address] = value;
  uint64_t taken = avr->cycle - prover.mark_at;
  prover.mark_at = avr->cycle;
  /*
   * Between frames the firmware waits, and many instructions may be run at a time; in a frame it is
   * one, so that the interrupt flag is seen after each.
   */
  prover.idle = value == 3;
  avr->run_cycle_limit = value == 3 && !prover.slow ? IDLE_CYCLES : 1;
  avr->run_cycle_count = 1;
  if (value == 1) {
    prover.begun_at = avr->cycle;
    if (prover.chains == 0) {
      time_frame(avr->cycle);
    }
  } else if (value == 2) {
    prover.decodes++;
    prover.decode_sum += taken;
    if (taken > prover.decode_worst) {
      prover.decode_worst = taken;
    }
  } else if (value == 3) {
    prover.send_sum += taken;
    if (taken > prover.send_worst) {
      prover.send_worst = taken;
    }
    compare_outputs();
    compare_settings();
    prover.sends++;
  }
}

static void interrupt_changed(struct avr_irq_t *irq, uint32_t value, void *parameter) {
  (void)irq;
  (void)parameter;
  if (value != 0) {
    if (!prover.in_interrupt) {
      prover.isr_since = prover.avr->cycle;
    }
    prover.interrupts++;
  } else if (prover.in_interrupt) {
    uint64_t took = prover.avr->cycle - prover.isr_since;
    if (took > prover.isr_most) {
      prover.isr_most = took;
    }
  }
  prover.in_interrupt = value != 0;
}

/* Follows how long interrupts are held off outside interrupt routines. */
static void watch_interrupts(void) {
  if (prover.avr->run_cycle_limit != 1) {
    prover.was_on = false;
    prover.ever_on = false;
    return;
  }
  bool on = prover.avr->sreg[S_I] || prover.in_interrupt;
  if (on && !prover.was_on && prover.ever_on) {
    uint64_t off = prover.avr->cycle - prover.off_since;
    if (off > prover.off_most) {
      prover.off_most = off;
    }
  } else if (!on && prover.was_on) {
    prover.off_since = prover.avr->cycle;
  }
  prover.ever_on |= on;
  prover.was_on = on;
}

/*
 * The simulator lets two instructions pass after SEI and RETI before it serves an interrupt; the
 * controllers let one pass (AVR Instruction Set Manual, SEI and RETI). Puts that right after a
 * step.
 */
static void hasten_interrupts(avr_t *avr) {
  if (avr->interrupt_state == -1) {
    avr->interrupt_state = avr_has_pending_interrupts(avr) ? 1 : 0;
  }
}

static uint8_t *read_file(const char *name, size_t *size) {
  FILE *file = fopen(name, "rb");
  if (file == NULL) {
    die("%s: %s", name, strerror(errno));
  }
  fseek(file, 0, SEEK_END);
  long length = ftell(file);
  rewind(file);
  uint8_t *bytes = length < 0 ? NULL : malloc((size_t)length + 1);
  if (bytes == NULL || fread(bytes, 1, (size_t)length, file) != (size_t)length) {
    die("%s: could not be read", name);
  }
  fclose(file);
  *size = (size_t)length;
  return bytes;
}

struct sizes {
  uint64_t flash;
  uint64_t data_in_flash;
  uint64_t ram;
  uint64_t frame_buffer;
  uint64_t ram_end;
  uint64_t functions;
};

/* Sizes from the ELF file: what is put into flash, and static RAM. */
static struct sizes read_sizes(const char *name) {
  struct sizes sizes = {0, 0, 0, 0, 0, 0};
  int file = open(name, O_RDONLY);
  if (file < 0 || elf_version(EV_CURRENT) == EV_NONE) {
    die("%s: %s", name, strerror(errno));
  }
  Elf *elf = elf_begin(file, ELF_C_READ, NULL);
  Elf_Scn *section = NULL;
  while ((section = elf_nextscn(elf, section)) != NULL) {
    GElf_Shdr header;
    if (gelf_getshdr(section, &header) == NULL) {
      die("%s: not a readable ELF file", name);
    }
    if (header.sh_flags & SHF_ALLOC && header.sh_size > 0) {
      bool in_ram = header.sh_addr >= 0x800000 && header.sh_addr < 0x810000;
      if (in_ram) {
        sizes.ram += header.sh_size;
      }
      if (header.sh_type == SHT_PROGBITS && header.sh_addr < 0x810000) {
        sizes.flash += header.sh_size;
      }
    }
    if (header.sh_type == SHT_SYMTAB) {
      Elf_Data *data = elf_getdata(section, NULL);
      int count = (int)(header.sh_size / header.sh_entsize);
      for (int i = 0; i < count; i++) {
        GElf_Sym symbol;
        gelf_getsym(data, i, &symbol);
        const char *label = elf_strptr(elf, header.sh_link, symbol.st_name);
        if (label == NULL) {
          continue;
        }
        int type = GELF_ST_TYPE(symbol.st_info);
        if (strcmp(label, "_end") == 0) {
          sizes.ram_end = symbol.st_value & 0xFFFF;
        } else if (strcmp(label, "lampwright_show_bytes") == 0) {
          sizes.frame_buffer = symbol.st_size;
        } else if (type == STT_OBJECT && symbol.st_value < 0x800000) {
          sizes.data_in_flash += symbol.st_size;
        } else if (type == STT_FUNC && strncmp(label, "lampwright_", 11) == 0) {
          sizes.functions += symbol.st_size;
        }
      }
    }
  }
  elf_end(elf);
  close(file);
  return sizes;
}

/* The value of `key=` in a comma-separated list, or NULL. */
static const char *find(const char *list, const char *key) {
  size_t length = strlen(key);
  while (list != NULL) {
    if (strncmp(list, key, length) == 0 && list[length] == '=') {
      return list + length + 1;
    }
    list = strchr(list, ',');
    list = list == NULL ? NULL : list + 1;
  }
  return NULL;
}

static double number_in(const char *list, const char *key, double otherwise) {
  const char *text = find(list, key);
  if (text == NULL) {
    return otherwise;
  }
  char *end;
  double value = strtod(text, &end);
  if (end == text || (*end != ',' && *end != '\0')) {
    die("%s: not a number in %s", key, list);
  }
  return value;
}

static double needed(const char *list, const char *key) {
  if (find(list, key) == NULL) {
    die("%s is missing in %s", key, list);
  }
  return number_in(list, key, 0);
}

static struct span limits(const char *list, const char *key) {
  char name[32];
  struct span span = {0, 0, 0, 0, 0};
  double tolerance = number_in(list, strcmp(key, "period") == 0 ? "ptol" : "tol", 0);
  double centre = number_in(list, key, -1);
  snprintf(name, sizeof name, "%s-min", key);
  span.min_ns = number_in(list, name, centre < 0 ? 0 : centre - tolerance);
  snprintf(name, sizeof name, "%s-max", key);
  span.max_ns = number_in(list, name, centre < 0 ? 1e9 : centre + tolerance);
  return span;
}

static void add_chain(const char *list) {
  if (prover.chains == MAX_CHAINS) {
    die("more than %d chains", MAX_CHAINS);
  }
  struct chain *c = &prover.chain[prover.chains++];
  const char *pin = find(list, "pin");
  if (pin == NULL || !isupper((unsigned char)pin[0]) || pin[1] < '0' || pin[1] > '7') {
    die("a chain needs a pin such as pin=B0: %s", list);
  }
  c->port = pin[0];
  c->bit = pin[1] - '0';
  c->at = (uint32_t)needed(list, "at");
  c->bytes = (uint32_t)needed(list, "bytes");
  c->high[0] = limits(list, "t0h");
  c->low[0] = limits(list, "t0l");
  c->high[1] = limits(list, "t1h");
  c->low[1] = limits(list, "t1l");
  c->period = limits(list, "period");
  c->reset_us = needed(list, "reset");
  c->gap_us = number_in(list, "gap", 0);
  c->frame = calloc(c->bytes + 1, 1);
}

/* An address, or an address and a bit: 0x24.1 */
static uint16_t address_in(const char *list, const char *key, int *bit) {
  const char *text = find(list, key);
  if (text == NULL) {
    return 0;
  }
  char *end;
  unsigned long address = strtoul(text, &end, 0);
  if (bit != NULL && *end == '.') {
    *bit = atoi(end + 1);
  }
  return (uint16_t)address;
}

static void add_output(const char *list) {
  if (prover.outputs == MAX_OUTPUTS) {
    die("more than %d outputs", MAX_OUTPUTS);
  }
  struct output *o = &prover.output[prover.outputs++];
  o->at = (uint32_t)needed(list, "at");
  o->ocr = address_in(list, "ocr", NULL);
  o->ddr = address_in(list, "ddr", &o->ddr_bit);
  o->com = address_in(list, "com", &o->com_bit);
  if (o->ocr == 0) {
    die("ocr is missing in %s", list);
  }
}

static void add_setting(const char *text) {
  if (prover.settings == MAX_REGISTERS) {
    die("more than %d registers", MAX_REGISTERS);
  }
  struct setting *setting = &prover.setting[prover.settings++];
  char *end;
  setting->address = (uint16_t)strtoul(text, &end, 0);
  if (*end == '/') {
    setting->mask = (uint8_t)strtoul(end + 1, &end, 0);
  } else {
    setting->mask = 0xFF;
  }
  if (*end != '=') {
    die("a register needs the form 0x81/0xFF=0x03: %s", text);
  }
  setting->value = (uint8_t)strtoul(end + 1, &end, 0);
}

static void print_span(const char *name, const struct span *span) {
  printf("\"%s\":{\"seen\":%" PRIu64, name, span->seen);
  if (span->seen > 0) {
    printf(",\"minNs\":%.1f,\"maxNs\":%.1f,\"minCycles\":%" PRIu64 ",\"maxCycles\":%" PRIu64,
           ns(span->least), ns(span->most), span->least, span->most);
  }
  printf(",\"limitMinNs\":%.1f,\"limitMaxNs\":%.1f}", span->min_ns, span->max_ns);
}

static void print_chain(int number) {
  struct chain *c = &prover.chain[number];
  uint64_t compared = c->frames < prover.skip ? 0 : c->frames - prover.skip;
  printf("%s{\"pin\":\"%c%d\",\"framesCompared\":%" PRIu64 ",\"framesWrong\":%" PRIu64
         ",\"bitsCompared\":%" PRIu64 ",\"bitsWrong\":%" PRIu64 ",\"bitsOutsideLimits\":%" PRIu64
         ",\"gapsStretched\":%" PRIu64 ",\"longestGapUs\":%.3f,\"leastResetUs\":%.3f,",
         number ? "," : "", c->port, c->bit, compared, c->wrong, compared * c->bytes * 8,
         c->wrong_bits, c->outside, c->stretched, ns(c->longest_stretch) / 1000,
         ns(c->least_reset) / 1000);
  print_span("t0h", &c->high[0]);
  putchar(',');
  print_span("t0l", &c->low[0]);
  putchar(',');
  print_span("t1h", &c->high[1]);
  putchar(',');
  print_span("t1l", &c->low[1]);
  putchar(',');
  print_span("period", &c->period);
  putchar('}');
}

static bool done(void) {
  uint64_t wanted = prover.wanted + prover.skip;
  for (int i = 0; i < prover.chains; i++) {
    if (prover.chain[i].frames < wanted) {
      return false;
    }
  }
  return prover.outputs == 0 || prover.sends >= wanted;
}

static uint64_t deepest_stack(const struct sizes *sizes) {
  uint32_t address = (uint32_t)sizes->ram_end;
  while (address <= prover.avr->ramend && prover.avr->data[address] == STACK_PAINT) {
    address++;
  }
  return prover.avr->ramend + 1 - address;
}

static void open_vcd(const char *name) {
  prover.vcd = fopen(name, "w");
  if (prover.vcd == NULL) {
    die("%s: %s", name, strerror(errno));
  }
  fputs("$timescale 1 ns $end\n$scope module chains $end\n", prover.vcd);
  for (int i = 0; i < prover.chains; i++) {
    fprintf(prover.vcd, "$var wire 1 %c %c%d $end\n", '!' + i, prover.chain[i].port,
            prover.chain[i].bit);
  }
  fputs("$upscope $end\n$enddefinitions $end\n#0\n", prover.vcd);
  for (int i = 0; i < prover.chains; i++) {
    fprintf(prover.vcd, "0%c\n", '!' + i);
  }
}

static void close_vcd(void) {
  if (prover.vcd != NULL) {
    /* the last reset, so that readers end the last frame */
    fprintf(prover.vcd, "#%.0f\n", ns(prover.vcd_last - prover.vcd_cut + prover.vcd_idle));
    for (int i = 0; i < prover.chains; i++) {
      fprintf(prover.vcd, "0%c\n", '!' + i);
    }
    fclose(prover.vcd);
  }
}

/* Levels of a port stay as they are set, whatever its pull-ups do. */
static void set_level(char port, int bit, bool level) {
  int number = port - 'A';
  prover.outside_mask[number] |= (uint8_t)(1u << bit);
  prover.outside_value[number] &= (uint8_t) ~(1u << bit);
  prover.outside_value[number] |= (uint8_t)(level << bit);
  avr_ioport_external_t external = {
      .name = port, .mask = prover.outside_mask[number], .value = prover.outside_value[number]};
  if (avr_ioctl(prover.avr, AVR_IOCTL_IOPORT_SET_EXTERNAL(port), &external) < 0) {
    die("there is no pin %c%d", port, bit);
  }
  avr_raise_irq(avr_io_getirq(prover.avr, AVR_IOCTL_IOPORT_GETIRQ(port), bit), level);
}

static void read_drive(const char *name) {
  FILE *file = fopen(name, "r");
  size_t room = 0;
  double at;
  char port;
  int bit, level;
  if (file == NULL) {
    die("%s: %s", name, strerror(errno));
  }
  while (fscanf(file, "%lf %c%d %d", &at, &port, &bit, &level) == 4) {
    if (port < 'A' || port > 'Z' || bit < 0 || bit > 7) {
      die("%s: no pin %c%d", name, port, bit);
    }
    if (prover.edges == room) {
      room = room * 2 + 64;
      prover.edge = realloc(prover.edge, room * sizeof *prover.edge);
      if (prover.edge == NULL) {
        die("%s: too large", name);
      }
    }
    prover.edge[prover.edges++] = (struct edge){at, port, bit, level != 0};
  }
  if (!feof(file)) {
    die("%s: line %zu is none", name, prover.edges + 1);
  }
  fclose(file);
}

static uint64_t edge_cycle(size_t number) {
  double cycle = (double)prover.drive_from + prover.edge[number].ns / prover.ns_per_cycle;
  return cycle < 0 ? 0 : (uint64_t)cycle;
}

static void play_drive(void) {
  avr_t *avr = prover.avr;
  while (prover.next_edge < prover.edges && edge_cycle(prover.next_edge) <= avr->cycle) {
    const struct edge *edge = &prover.edge[prover.next_edge++];
    set_level(edge->port, edge->bit, edge->level);
    prover.last_edge = avr->cycle;
  }
  /* Instruction by instruction near a level that changes, and while a routine reads it. */
  bool near = (prover.next_edge < prover.edges &&
               edge_cycle(prover.next_edge) <= avr->cycle + 2 * IDLE_CYCLES) ||
              avr->cycle < prover.last_edge + 4 * IDLE_CYCLES;
  avr->run_cycle_limit = prover.idle && !prover.slow && !near ? IDLE_CYCLES : 1;
}

/* When the first frame begins, found by another run that ends there. */
static uint64_t first_frame_cycle(uint64_t limit) {
  int ends[2];
  uint64_t found = 0;
  if (pipe(ends) != 0) {
    die("%s", strerror(errno));
  }
  pid_t child = fork();
  if (child < 0) {
    die("%s", strerror(errno));
  }
  if (child == 0) {
    int state = cpu_Running;
    while (prover.begun_at == 0 && prover.avr->cycle < limit && state != cpu_Done &&
           state != cpu_Crashed) {
      state = avr_run(prover.avr);
    }
    ssize_t written = write(ends[1], &prover.begun_at, sizeof prover.begun_at);
    _exit(written == sizeof prover.begun_at ? 0 : 1);
  }
  close(ends[1]);
  if (read(ends[0], &found, sizeof found) != sizeof found || found == 0) {
    die("the firmware begins no frame");
  }
  close(ends[0]);
  return found;
}

static void quiet(avr_t *avr, const int level, const char *format, va_list arguments) {
  (void)avr;
  if (level <= LOG_ERROR) {
    vfprintf(stderr, format, arguments);
  }
}

int main(int count, char **arguments) {
  const char *elf = NULL, *mcu = NULL, *table = NULL, *vcd = NULL, *drive = NULL;
  double hertz = 0, seconds = 0, rate = 0, vcd_idle = 400;
  uint32_t probe = 0;
  bool skip_idle = false;
  const char *level[MAX_LEVELS];
  int levels = 0;
  prover.vcd_limit = 2;
  for (int i = 1; i < count; i++) {
    const char *option = arguments[i];
    if (strcmp(option, "--help") == 0) {
      fputs(USAGE, stdout);
      return 0;
    }
    if (strcmp(option, "--skip-idle") == 0) {
      skip_idle = true;
      continue;
    }
    if (strcmp(option, "--slow") == 0) {
      prover.slow = true;
      continue;
    }
    if (strcmp(option, "--once") == 0) {
      prover.once = true;
      continue;
    }
    if (i + 1 == count) {
      die("%s needs a value, or is not an option\n%s", option, USAGE);
    }
    const char *value = arguments[++i];
    if (strcmp(option, "--elf") == 0) {
      elf = value;
    } else if (strcmp(option, "--mcu") == 0) {
      mcu = value;
    } else if (strcmp(option, "--hz") == 0) {
      hertz = atof(value);
    } else if (strcmp(option, "--table") == 0) {
      table = value;
    } else if (strcmp(option, "--frame-bytes") == 0) {
      prover.frame_bytes = (uint32_t)atol(value);
    } else if (strcmp(option, "--chain") == 0) {
      add_chain(value);
    } else if (strcmp(option, "--output") == 0) {
      add_output(value);
    } else if (strcmp(option, "--register") == 0) {
      add_setting(value);
    } else if (strcmp(option, "--level") == 0) {
      if (strlen(value) != 4 || levels == MAX_LEVELS) {
        die("--level %s: needs a pin and its level, such as B3=1", value);
      }
      level[levels++] = value;
    } else if (strcmp(option, "--frames") == 0) {
      prover.wanted = strtoull(value, NULL, 10);
    } else if (strcmp(option, "--skip") == 0) {
      prover.skip = strtoull(value, NULL, 10);
    } else if (strcmp(option, "--rate") == 0) {
      rate = atof(value);
    } else if (strcmp(option, "--probe") == 0) {
      probe = (uint32_t)strtoul(value, NULL, 0);
    } else if (strcmp(option, "--seconds") == 0) {
      seconds = atof(value);
    } else if (strcmp(option, "--drive") == 0) {
      drive = value;
    } else if (strcmp(option, "--vcd") == 0) {
      vcd = value;
    } else if (strcmp(option, "--vcd-frames") == 0) {
      prover.vcd_limit = strtoull(value, NULL, 10);
    } else if (strcmp(option, "--vcd-idle") == 0) {
      vcd_idle = atof(value);
    } else {
      die("%s is not an option\n%s", option, USAGE);
    }
  }
  if (elf == NULL || mcu == NULL || table == NULL || hertz <= 0 || prover.frame_bytes == 0 ||
      prover.chains + prover.outputs == 0) {
    die("something is missing\n%s", USAGE);
  }

  size_t table_size;
  prover.table = read_file(table, &table_size);
  prover.table_frames = table_size / prover.frame_bytes;
  if (prover.table_frames == 0 || table_size % prover.frame_bytes != 0) {
    die("%s: %zu bytes are no whole number of frames of %" PRIu32 " bytes", table, table_size,
        prover.frame_bytes);
  }
  for (int i = 0; i < prover.chains; i++) {
    if (prover.chain[i].at + prover.chain[i].bytes > prover.frame_bytes) {
      die("chain %d reaches past the frame's end", i);
    }
  }
  for (int i = 0; i < prover.outputs; i++) {
    if (prover.output[i].at >= prover.frame_bytes) {
      die("output %d is past the frame's end", i);
    }
  }
  if (prover.wanted == 0) {
    prover.wanted = 2 * prover.table_frames + 3;
  }
  if (seconds <= 0) {
    seconds = 5 + 1.5 * (double)(prover.wanted + prover.skip) * 1000 / (rate > 0 ? rate : 50000);
  }
  prover.ns_per_cycle = 1e9 / hertz;
  prover.vcd_idle = (uint64_t)(vcd_idle * 1000 / prover.ns_per_cycle);

  avr_global_logger_set(quiet);
  struct sizes sizes = read_sizes(elf);
  elf_firmware_t firmware;
  memset(&firmware, 0, sizeof firmware);
  if (elf_read_firmware(elf, &firmware) != 0) {
    die("%s: not a firmware that the simulator reads", elf);
  }
  avr_t *avr = avr_make_mcu_by_name(mcu);
  if (avr == NULL) {
    die("%s: the simulator knows no such controller", mcu);
  }
  prover.avr = avr;
  avr_init(avr);
  firmware.frequency = (uint32_t)hertz;
  avr_load_firmware(avr, &firmware);
  avr->frequency = (uint32_t)hertz;
  memset(avr->data + sizes.ram_end, STACK_PAINT, avr->ramend + 1 - sizes.ram_end);

  for (int i = 0; i < prover.chains; i++) {
    avr_irq_t *pin =
        avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(prover.chain[i].port), prover.chain[i].bit);
    if (pin == NULL) {
      die("%s has no pin %c%d", mcu, prover.chain[i].port, prover.chain[i].bit);
    }
    avr_irq_register_notify(pin, pin_changed, (void *)(intptr_t)i);
  }
  if (probe == 0) {
    probe = strcmp(mcu, "attiny85") == 0 ? 0x31 : 0x3E;
  }
  avr_register_io_write(avr, (avr_io_addr_t)probe, marked, NULL);
  if (strcmp(mcu, "attiny85") == 0) {
    avr->io[AVR_DATA_TO_IO(0x4F)].r.c = tiny_timer_1; /* TCNT1 */
  }
  /*
   * No firmware of ours uses the external interrupts, which at reset are for a low level: while an
   * output on their pin is low, the simulator would look at it anew in every cycle.
   */
  for (uint8_t i = 0; i < EXTINT_COUNT; i++) {
    avr_extint_set_strict_lvl_trig(avr, i, 0);
  }
  avr_irq_register_notify(avr_get_interrupt_irq(avr, AVR_INT_ANY) + AVR_INT_IRQ_RUNNING,
                          interrupt_changed, NULL);
  if (vcd != NULL) {
    open_vcd(vcd);
  }

  for (int i = 0; i < levels; i++) {
    set_level(level[i][0], level[i][1] - '0', level[i][3] == '1');
  }

  avr->run_cycle_limit = 1;
  uint64_t limit = (uint64_t)(seconds * hertz);
  int state = cpu_Running;
  if (drive != NULL) {
    read_drive(drive);
    prover.drive_from = first_frame_cycle(limit);
    skip_idle = false;
  }
  /*
   * A millisecond at a time, and 1,000 cycles awake after each: the firmware then sees its
   * counter go by, even one of 8 bits.
   */
  uint64_t awake_since = 0;
  uint64_t period_cycles = rate > 0 ? (uint64_t)(hertz * 1000 / rate) : 0;
  uint64_t leap = skip_idle ? (uint64_t)(hertz / 1000) : 0;
  while (!done() && avr->cycle < limit && state != cpu_Done && state != cpu_Crashed) {
    if (drive != NULL) {
      play_drive();
    }
    state = avr_run(avr);
    hasten_interrupts(avr);
    watch_interrupts();
    if (leap > 0 && avr->run_cycle_limit != 1 && avr->cycle > awake_since + 1000 &&
        avr->cycle > prover.mark_at + 1000 &&
        avr->cycle + 2 * leap < prover.begun_at + period_cycles) {
      avr->cycle += leap;
      awake_since = avr->cycle;
      avr_cycle_timer_process(avr); /* the timers' overflows on the way */
    }
  }
  close_vcd();
  if (state == cpu_Crashed) {
    note("the controller crashed at %04" PRIX32, avr->pc);
  } else if (!done()) {
    note("not all frames came in %.3f s of simulated time", (double)avr->cycle / hertz);
  }

  uint64_t frames = UINT64_MAX, wrong = 0, bits = 0, bits_wrong = 0, bits_outside = 0;
  uint64_t wire_cycles = 0, stretched = 0;
  for (int i = 0; i < prover.chains; i++) {
    struct chain *c = &prover.chain[i];
    uint64_t compared = c->frames < prover.skip ? 0 : c->frames - prover.skip;
    frames = compared < frames ? compared : frames;
    wrong += c->wrong;
    bits += compared * c->bytes * 8;
    bits_wrong += c->wrong_bits;
    bits_outside += c->outside;
    stretched += c->stretched;
    wire_cycles += c->bytes * 8 * c->period.least;
  }
  uint64_t outputs_wrong = 0, outputs_compared = 0;
  for (int i = 0; i < prover.outputs; i++) {
    struct output *o = &prover.output[i];
    outputs_wrong += o->wrong;
    outputs_compared += o->compared;
    frames = o->compared < frames ? o->compared : frames;
  }
  double period = prover.periods == 0
                      ? 0
                      : (double)(prover.last_frame - prover.first_frame) / (double)prover.periods;
  double decode = prover.decodes == 0 ? 0 : (double)prover.decode_sum / (double)prover.decodes;
  double send = prover.sends == 0 ? 0 : (double)prover.send_sum / (double)prover.sends;
  /* single frames may come a tick of the firmware's clock late, but the rate must be right */
  double expected_period = rate > 0 ? hertz * 1000 / rate : 0;
  double drift = (period - expected_period) * (double)prover.periods;
  if (rate > 0 && prover.periods > 0 &&
      (drift > 0 ? drift : -drift) * prover.ns_per_cycle > RATE_SLACK_NS) {
    note("the frames come every %.2f us, expected %.2f", period * prover.ns_per_cycle / 1000,
         1e9 / rate);
  }
  bool passed = done() && prover.faults == 0;

  printf("{\"passed\":%s,\"mcu\":\"%s\",\"hertz\":%.0f,\"tableFrames\":%" PRIu64
         ",\"framesCompared\":%" PRIu64 ",\"framesWrong\":%" PRIu64 ",\"bitsCompared\":%" PRIu64
         ",\"bitsWrong\":%" PRIu64 ",\"bitsOutsideLimits\":%" PRIu64 ",\"gapsStretched\":%" PRIu64
         ",\"dutiesCompared\":%" PRIu64 ",\"dutiesWrong\":%" PRIu64 ",\"chains\":[",
         passed ? "true" : "false", mcu, hertz, prover.table_frames, frames, wrong, bits,
         bits_wrong, bits_outside, stretched, outputs_compared, outputs_wrong);
  for (int i = 0; i < prover.chains; i++) {
    print_chain(i);
  }
  printf("],\"decode\":{\"frames\":%" PRIu64 ",\"averageCycles\":%.1f,\"worstCycles\":%" PRIu64
         ",\"averageCyclesPerByte\":%.2f,\"worstShareOfPeriod\":%.5f,\"worstShareOfWire\":%.5f}",
         prover.decodes, decode, prover.decode_worst, decode / prover.frame_bytes,
         period > 0 ? (double)prover.decode_worst / period : 0,
         wire_cycles > 0 ? (double)prover.decode_worst / (double)wire_cycles : 0);
  printf(",\"send\":{\"averageCycles\":%.1f,\"worstCycles\":%" PRIu64 ",\"wireCycles\":%" PRIu64
         ",\"averageShareOfPeriod\":%.5f}",
         send, prover.send_worst, wire_cycles, period > 0 ? send / period : 0);
  printf(",\"framePeriod\":{\"averageUs\":%.4f,\"minUs\":%.3f,\"maxUs\":%.3f,\"expectedUs\":%.4f}",
         period * prover.ns_per_cycle / 1000, ns(prover.period_least) / 1000,
         ns(prover.period_most) / 1000, rate > 0 ? 1e9 / rate : 0);
  printf(",\"interrupts\":{\"served\":%" PRIu64
         ",\"longestOffUs\":%.3f,\"longestOffCycles\":%" PRIu64 ",\"longestRoutineUs\":%.3f}",
         prover.interrupts, ns(prover.off_most) / 1000, prover.off_most,
         ns(prover.isr_most) / 1000);
  printf(",\"memory\":{\"flash\":%" PRIu64 ",\"dataInFlash\":%" PRIu64
         ",\"lampwrightCode\":%" PRIu64 ",\"ram\":%" PRIu64 ",\"frameBuffer\":%" PRIu64
         ",\"deepestStack\":%" PRIu64 ",\"ramOfController\":%d,\"flashOfController\":%" PRIu32 "}",
         sizes.flash, sizes.data_in_flash, sizes.functions, sizes.ram, sizes.frame_buffer,
         deepest_stack(&sizes), avr->ramend + 1 - (int)avr->ioend - 1, avr->flashend + 1);
  printf(",\"faults\":[");
  for (int i = 0; i < prover.faults && i < MAX_FAULTS; i++) {
    printf("%s\"%s\"", i ? "," : "", prover.fault[i]);
  }
  printf("],\"faultCount\":%d,\"simulatedSeconds\":%.6f}\n", prover.faults,
         (double)avr->cycle / hertz);
  return passed ? 0 : 1;
}
