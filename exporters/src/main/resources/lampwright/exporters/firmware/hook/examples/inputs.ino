
#include <lampwright_inputs_hook.h>

/* The pins of the inputs: set yours. */
static const uint8_t INPUT_PINS[] = {@PINS@};
static const uint8_t INPUT_COUNT = sizeof INPUT_PINS;

/* Some boards want routines that interrupts call in RAM. */
#if defined(IRAM_ATTR)
#define IN_RAM IRAM_ATTR
#else
#define IN_RAM
#endif

/* A pulse that lasts longer is none of a receiver, us. */
static const uint32_t LONGEST = 4000;

/* When the pin of a channel rose, and the width of its last pulse until it is asked for, us. */
static volatile uint32_t rose[INPUT_COUNT];
static volatile uint8_t high[INPUT_COUNT];
static volatile uint16_t width[INPUT_COUNT];

static void IN_RAM edge(uint8_t input) {
  uint32_t now = micros();
  if (digitalRead(INPUT_PINS[input]) == HIGH) {
    rose[input] = now;
    high[input] = 1;
  } else if (high[input]) {
    high[input] = 0;
    width[input] = now - rose[input] <= LONGEST ? (uint16_t)(now - rose[input]) : 0;
  }
}

@ROUTINES@

void lampwright_begin_inputs(void) {
@BEGINS@
}

uint16_t lampwright_servo_width(uint8_t input) {
  noInterrupts();
  uint16_t last = width[input];
  width[input] = 0;
  interrupts();
  return last;
}

uint8_t lampwright_switch_level(uint8_t input) { return digitalRead(INPUT_PINS[input]) == HIGH; }
