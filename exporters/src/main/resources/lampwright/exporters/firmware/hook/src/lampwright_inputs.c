#include "lampwright_inputs.h"

#include "lampwright_situations.h"

#if LAMPWRIGHT_INPUT_COUNT > 0

#include "lampwright_inputs_hook.h"

static const uint8_t is_channel[LAMPWRIGHT_INPUT_COUNT] = LAMPWRIGHT_INPUT_CHANNELS;

void lampwright_inputs_begin(void) { lampwright_begin_inputs(); }

void lampwright_inputs_read(const lampwright_player *player) {
  uint8_t input;
  for (input = 0; input < LAMPWRIGHT_INPUT_COUNT; input++) {
    if (!is_channel[input]) {
      lampwright_situations_input(player, input, lampwright_switch_level(input));
    } else {
      uint16_t width = lampwright_servo_width(input);
      if (width != 0) {
        lampwright_situations_input(player, input, width);
      }
    }
  }
}

#else

/* Situations that look at no input. */
void lampwright_inputs_begin(void) {}

void lampwright_inputs_read(const lampwright_player *player) { (void)player; }

#endif
