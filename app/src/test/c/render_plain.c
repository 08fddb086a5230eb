/*
 * The scenes of BenchScenes rendered by a plain C program: the same arithmetic in the same order,
 * one slot at a time, with the C library's pow and cos. RenderBesideC compiles it, compares the
 * bytes and sets its processor time beside the renderer's.
 *
 *     render_plain direct|open|lamps PIXELS FRAMES ROUNDS TINT
 *
 * TINT holds four doubles a frame: the drives of the tint, which are the same for every pixel.
 * Prints the seconds of processor time of each round, then the CRC-32 of the frames.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { SLOTS = 4, FRAME_MS = 20, STEP_MS = 70, WIDTH = 5, TAIL = 20 };

static const double GAMMA = 2.2;
static const double PI = 3.14159265358979323846;

static int pixels;
static int frames;
static const double *tint;
static double *light;
static double *row;
static double amber[SLOTS];

static double least(double a, double b) { return a < b ? a : b; }

static double greatest(double a, double b) { return a > b ? a : b; }

static double curve(double v) { return pow(v, GAMMA); }

static double code(double sixths, double saturation) {
  double away = fabs(fmod(sixths, 6) - 3);
  return 1 - saturation * (1 - least(1, greatest(0, away - 1)));
}

static void put(int pixel, const double *full, double x) {
  for (int i = 0; i < SLOTS; i++) {
    row[pixel * SLOTS + i] = full[i] * x;
  }
}

static void paint_tint(long frame) {
  for (int k = 0; k < pixels; k++) {
    put(k, tint + SLOTS * frame, 1);
  }
}

static void paint_cycle(long t) {
  double share = (double)(t % 4000) / 4000.0;
  for (int k = 0; k < pixels; k++) {
    double turns = share + 3.0 * k / pixels;
    turns -= floor(turns);
    double *to = row + k * SLOTS;
    to[0] = curve(code(turns * 6, 1));
    to[1] = curve(code(turns * 6 + 4, 1));
    to[2] = curve(code(turns * 6 + 2, 1));
    to[3] = 0;
  }
}

static double cosine(double degrees) {
  if (degrees > 90) {
    return -cosine(180 - degrees);
  }
  if (degrees == 90) {
    return 0;
  }
  return degrees == 60 ? 0.5 : cos(degrees / 180.0 * PI);
}

static void paint_beacon(long t) {
  double beam = 360 * ((double)(t * 118 % 60000) / 60000.0);
  for (int k = 0; k < pixels; k++) {
    double apart = fmod(fabs(360.0 * k / pixels - beam), 360);
    apart = apart > 180 ? 360 - apart : apart;
    put(k, amber, apart < 45 ? (1 + cosine(180 * apart / 45)) / 2 : 0);
  }
}

static void paint_chase(long t, const double *behind_light) {
  long s = t % ((2L * pixels - 2) * STEP_MS) / STEP_MS;
  int forwards = s < pixels;
  long head = forwards ? s : 2L * pixels - 2 - s;
  for (int k = 0; k < pixels; k++) {
    long behind = forwards ? head - k : k - head;
    put(k, amber, behind >= 0 && behind < WIDTH + TAIL ? behind_light[behind] : 0);
  }
}

static uint64_t mixed(uint64_t z) {
  z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
  z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
  return z ^ (z >> 31);
}

static double noise(int pixel, long turn) {
  const uint64_t golden = UINT64_C(0x9E3779B97F4A7C15);
  uint64_t z = mixed(mixed(3 + golden * ((uint64_t)pixel + 1)) + golden * ((uint64_t)turn + 1));
  return (double)(z >> 11) * 0x1p-53;
}

static void paint_flicker(long t) {
  static const double white[SLOTS] = {1, 1, 1, 0};
  long whole = t * 8 / 1000;
  double rest = (double)(t * 8 % 1000) / 1000.0;
  double share = rest * rest * (3 - 2 * rest);
  for (int k = 0; k < pixels; k++) {
    double left = noise(k, whole);
    double now = left + (noise(k, whole + 1) - left) * share;
    put(k, white, curve(1 * (1 - 0.3 * now)));
  }
}

enum blend { COVER, ADD, BRIGHTER, SCALE };

static void lay(enum blend blend, double a) {
  for (int i = 0; i < pixels * SLOTS; i++) {
    double under = light[i];
    double over = row[i];
    switch (blend) {
    case COVER:
      light[i] = under * (1 - a) + over * a;
      break;
    case ADD:
      light[i] = least(1, under + over * a);
      break;
    case BRIGHTER:
      light[i] = greatest(under, over * a);
      break;
    default:
      light[i] = under * (1 - a + a * over);
      break;
    }
  }
}

static void shine(long frame, int open, const double *behind_light) {
  long t = frame * FRAME_MS;
  double v = least(1, least((double)t / 1000.0, (double)(FRAME_MS * (long)frames - t) / 1000.0));
  double a = curve(v);
  paint_tint(frame);
  lay(COVER, a);
  paint_cycle(t);
  lay(BRIGHTER, a);
  paint_beacon(t);
  lay(ADD, a);
  paint_chase(t, behind_light);
  lay(open ? BRIGHTER : COVER, a);
  paint_flicker(t);
  lay(SCALE, a);
}

/* Lamp k is on for the first half of each minute's (60 + k / 10)th part. */
static void shine_lamps(long frame) {
  long t = frame * FRAME_MS;
  for (int k = 0; k < pixels; k++) {
    put(k, amber, t * (600 + k) % 600000 < 300000);
  }
  lay(COVER, 1);
}

static uint32_t crc_table[256];

static void make_crc_table(void) {
  for (uint32_t i = 0; i < 256; i++) {
    uint32_t c = i;
    for (int bit = 0; bit < 8; bit++) {
      c = c & 1 ? UINT32_C(0xEDB88320) ^ (c >> 1) : c >> 1;
    }
    crc_table[i] = c;
  }
}

/* GRBW, as the chain has it. */
static void quantise(uint8_t *bytes) {
  static const int order[SLOTS] = {1, 0, 2, 3};
  for (int i = 0; i < pixels * SLOTS; i++) {
    double exact = 255 * (light[i - i % SLOTS + order[i % SLOTS]] * 0.8);
    bytes[i] = (uint8_t)least(255, greatest(0, floor(exact + 0.5)));
  }
}

static uint32_t crc_of(const uint8_t *bytes, uint32_t crc) {
  for (int i = 0; i < pixels * SLOTS; i++) {
    crc = crc_table[(crc ^ bytes[i]) & 0xFF] ^ (crc >> 8);
  }
  return crc;
}

static double *room(size_t count) {
  double *made = calloc(count, sizeof *made);
  if (made == NULL) {
    exit(3);
  }
  return made;
}

static const double *read_tint(const char *name) {
  size_t count = (size_t)frames * SLOTS;
  double *drives = room(count);
  FILE *file = fopen(name, "rb");
  if (file == NULL || fread(drives, sizeof *drives, count, file) != count) {
    exit(3);
  }
  fclose(file);
  return drives;
}

int main(int argc, char **argv) {
  if (argc != 6) {
    return 2;
  }
  int lamps = strcmp(argv[1], "lamps") == 0;
  int open = strcmp(argv[1], "open") == 0;
  pixels = atoi(argv[2]);
  frames = atoi(argv[3]);
  tint = read_tint(argv[5]);
  light = room((size_t)pixels * SLOTS);
  row = room((size_t)pixels * SLOTS);
  uint8_t *bytes = malloc((size_t)pixels * SLOTS);
  if (bytes == NULL) {
    return 3;
  }
  make_crc_table();
  double level = curve(0.9);
  amber[0] = curve(255 / 255.0) * level;
  amber[1] = curve(160 / 255.0) * level;
  double behind_light[WIDTH + TAIL];
  for (int behind = 0; behind < WIDTH + TAIL; behind++) {
    int j = behind - WIDTH + 1;
    /* Of the tail the light is the level's, over that of the head which amber has already. */
    behind_light[behind] = j <= 0 ? 1 : curve(0.9 * (TAIL + 1 - j) / (TAIL + 1)) / level;
  }
  uint32_t crc = 0;
  for (int round = 0; round < atoi(argv[4]); round++) {
    crc = UINT32_C(0xFFFFFFFF);
    clock_t spent = 0;
    for (long frame = 0; frame < frames; frame++) {
      clock_t start = clock();
      memset(light, 0, sizeof *light * (size_t)pixels * SLOTS);
      if (lamps) {
        shine_lamps(frame);
      } else {
        shine(frame, open, behind_light);
      }
      quantise(bytes);
      spent += clock() - start;
      crc = crc_of(bytes, crc);
    }
    printf("%.6f\n", (double)spent / CLOCKS_PER_SEC);
  }
  printf("%08x\n", crc ^ UINT32_C(0xFFFFFFFF));
  return 0;
}
