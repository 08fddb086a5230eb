#include "lampwright_outputs.h"

#if LAMPWRIGHT_OUTPUTS > 0

#include "lampwright_wire_hook.h"

void lampwright_outputs_begin(void) {}

void lampwright_outputs_set(const uint8_t *duties) {
  lampwright_emit_outputs(duties, LAMPWRIGHT_OUTPUTS);
}

#endif
