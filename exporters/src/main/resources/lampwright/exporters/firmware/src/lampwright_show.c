#include "lampwright_show.h"

#include "lampwright_outputs.h"
#include "lampwright_target.h"
#include "lampwright_wire.h"

uint8_t lampwright_show_bytes[LAMPWRIGHT_FRAME_BYTES];

lampwright_player lampwright_show_player;

static lampwright_ticks due; /* when the next frame is due */
static uint16_t carried;     /* parts of a tick that no frame has been given yet */
static uint32_t left;        /* frames that a scene that plays once has left, and one more */
static uint8_t paused;

#if LAMPWRIGHT_DIMMING
static uint8_t brightness = 255;
static uint8_t dark;
#define BRIGHTNESS (dark ? 1 : brightness + 1U)
#else
#define BRIGHTNESS 256
#endif

#if LAMPWRIGHT_CEILING
static uint16_t ceiling = 256; /* 256ths of the frame that is sent */
#define TIMES (uint16_t)((uint32_t)ceiling * BRIGHTNESS >> 8)
#else
#define TIMES BRIGHTNESS
#endif

#if LAMPWRIGHT_LIVE
static uint8_t rested; /* the lines have been low for long enough */
#define RESTED rested
#else
#define RESTED 0
#endif

#if LAMPWRIGHT_DIMMING || LAMPWRIGHT_CEILING
static uint8_t dimmed_bytes[LAMPWRIGHT_DIMMED_BYTES];

/* The bytes as they are sent: scaled in a copy, as the player goes by what it has left. */
static const uint8_t *dimmed(const uint8_t *bytes, uint16_t count) {
  uint16_t times = TIMES;
  uint16_t i;
  if (times == 256) {
    return bytes;
  }
  for (i = 0; i < count; i++) {
    dimmed_bytes[i] = (uint8_t)((uint16_t)(bytes[i] * times) >> 8);
  }
  return dimmed_bytes;
}
#else
#define dimmed(bytes, count) (bytes)
#endif

#if LAMPWRIGHT_DIMMING
void lampwright_show_brightness(uint8_t level) { brightness = level; }

void lampwright_show_dark(uint8_t on) { dark = on; }
#endif

void lampwright_show_begin(void) {
  lampwright_clock_begin();
#if LAMPWRIGHT_CHAINS > 0
  lampwright_wire_begin();
#endif
#if LAMPWRIGHT_OUTPUTS > 0
  lampwright_outputs_begin();
#endif
}

uint8_t lampwright_show_open(const uint8_t *data, lampwright_place size, uint8_t scene) {
  uint8_t status = lampwright_player_open(&lampwright_show_player, data, size,
                                          lampwright_show_bytes, LAMPWRIGHT_FRAME_BYTES);
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_show_scene(scene);
  }
  return status;
}

void lampwright_show_start(void) {
  due = lampwright_clock_now();
  carried = 0;
}

uint8_t lampwright_show_scene(uint8_t scene) {
  lampwright_scene description;
  uint8_t status = lampwright_player_scene(&lampwright_show_player, scene);
  if (status == LAMPWRIGHT_OK) {
    (void)lampwright_player_describe(&lampwright_show_player, scene, &description);
    left = description.loops ? 0 : description.frames + 1;
    paused = 0;
    lampwright_show_start(); /* looking at the data took time that is not the scene's */
  }
  return status;
}

void lampwright_show_pause(uint8_t on) { paused = on; }

uint8_t lampwright_show_ended(void) { return left == 1; }

void lampwright_show_stop(void) {
  uint8_t lamp;
  for (lamp = 0; lamp < LAMPWRIGHT_LAMPS; lamp++) {
    (void)lampwright_player_lamp(&lampwright_show_player, lamp, LAMPWRIGHT_DARK, 0);
  }
  left = 0;
  paused = 0;
  lampwright_show_frame();
}

void lampwright_show_next(void) {
  LAMPWRIGHT_MARK(1);
  if (!paused) {
    (void)lampwright_player_frame(&lampwright_show_player);
    if (left > 1) {
      left--;
    }
  }
  LAMPWRIGHT_MARK(2);
}

void lampwright_show_send(void) {
  const uint8_t *bytes = lampwright_show_bytes;
#if LAMPWRIGHT_CHAINS > 0
  uint8_t chain;
  if (!RESTED) {
    lampwright_wire_rest();
  }
  for (chain = 0; chain < LAMPWRIGHT_CHAINS; chain++) {
    uint16_t count = lampwright_wire_bytes(chain);
    lampwright_wire_chain(chain, dimmed(bytes, count));
    bytes += count;
  }
#endif
#if LAMPWRIGHT_OUTPUTS > 0
  lampwright_outputs_set(dimmed(bytes, LAMPWRIGHT_OUTPUTS));
#else
  (void)bytes;
#endif
  LAMPWRIGHT_MARK(3);
}

#if LAMPWRIGHT_CEILING
void lampwright_show_send_scaled(uint16_t factor) {
  ceiling = factor;
  lampwright_show_send();
  ceiling = 256;
}
#endif

#if LAMPWRIGHT_LIVE
void lampwright_show_send_rested(void) {
  rested = 1;
  lampwright_show_send();
  rested = 0;
}
#endif

void lampwright_show_frame(void) {
  lampwright_show_next();
  lampwright_show_send();
}

uint8_t lampwright_show_due(lampwright_ticks ticks, uint16_t part, uint16_t missing) {
  lampwright_ticks now = lampwright_clock_now();
  /* A period has at most a second, so what is due lies less than half of the range away. */
  if ((lampwright_ticks)(now - due) >= LAMPWRIGHT_HALF_TICKS) {
    return 0;
  }
  if (carried >= missing) {
    carried -= missing;
    ticks++;
  } else {
    carried += part;
  }
  due += ticks;
  if ((lampwright_ticks)(now - due) < LAMPWRIGHT_HALF_TICKS) {
    due = now;
  }
  return 1;
}

#if LAMPWRIGHT_CLOCK_WAITS
void lampwright_show_wait(void) { lampwright_clock_sleep(due); }
#endif
