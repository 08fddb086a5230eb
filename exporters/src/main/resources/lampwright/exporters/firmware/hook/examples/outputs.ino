
/* Pins with PWM, one for each output: set yours. */
static const uint8_t OUTPUT_PINS[LAMPWRIGHT_OUTPUTS] = {@PINS@};

void lampwright_emit_outputs(const uint8_t *duties, uint16_t count) {
  for (uint16_t i = 0; i < count; i++) {
    analogWrite(OUTPUT_PINS[i], duties[i]);
  }
}
