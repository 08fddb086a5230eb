#include "lampwright_outputs.h"

#include "lampwright_board.h"
#include "lampwright_target.h"

#if LAMPWRIGHT_FITS_BOARD && LAMPWRIGHT_OUTPUTS > 0

#include "lampwright_rp2040_registers.h"

/*
 * A PWM slice has two pins, its channels A and B. It counts 0 to pwm_top, 254: at a duty of 0 the
 * pin is never high, at 255 never low. A new duty counts from the next period on.
 */
#define SLICES 8

static uint32_t slice_of(uint32_t pin) { return pin / 2 % SLICES; }

static uint32_t duties_of[SLICES];

void lampwright_outputs_begin(void) {
  uint8_t number;
  uint32_t used = RESET_PWM | RESET_IO_BANK0 | RESET_PADS_BANK0;
  CLEAR_BITS(RESETS_RESET) = used;
  while ((REGISTER(RESETS_RESET_DONE) & used) != used) {
  }
  for (number = 0; number < lampwright_fitted->outputs; number++) {
    uint32_t pin = lampwright_fitted->output_pin[number];
    uint32_t slice = slice_of(pin);
    duties_of[slice] = 0;
    REGISTER(PWM_CSR(slice)) = 0;
    REGISTER(PWM_DIV(slice)) = lampwright_fitted->pwm_divider;
    REGISTER(PWM_TOP(slice)) = lampwright_fitted->pwm_top;
    REGISTER(PWM_CC(slice)) = 0;
    REGISTER(PWM_CTR(slice)) = 0;
    REGISTER(PWM_CSR(slice)) = PWM_ENABLE;
    REGISTER(PADS_BANK0_PAD(pin)) = PAD_12_MILLIAMPS | PAD_PULL_DOWN | PAD_SCHMITT;
    REGISTER(IO_BANK0_CTRL(pin)) = FUNCTION_PWM;
  }
}

void lampwright_outputs_set(const uint8_t *duties) {
  uint8_t number;
  for (number = 0; number < lampwright_fitted->outputs; number++) {
    uint32_t pin = lampwright_fitted->output_pin[number];
    uint32_t shift = pin % 2 * 16;
    uint32_t *both = &duties_of[slice_of(pin)];
    *both = (*both & ~(0xFFFFUL << shift)) | (uint32_t)duties[number] << shift;
  }
  for (number = 0; number < lampwright_fitted->outputs; number++) {
    uint32_t slice = slice_of(lampwright_fitted->output_pin[number]);
    REGISTER(PWM_CC(slice)) = duties_of[slice];
  }
}

#endif
