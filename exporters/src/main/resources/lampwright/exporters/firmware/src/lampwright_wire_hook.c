#include "lampwright_wire_hook.h"

#include "lampwright_target.h"
#include "lampwright_wire.h"

#if !LAMPWRIGHT_ON_AVR

#if LAMPWRIGHT_CHAINS > 64
#error "a rig has up to 64 chains; this configuration has more"
#endif

void lampwright_wire_begin(void) {}

#if LAMPWRIGHT_CHAINS > 0
static const uint16_t chain_bytes[LAMPWRIGHT_CHAINS] = LAMPWRIGHT_CHAIN_BYTES;
#endif

void lampwright_wire_send(const uint8_t *frame) {
#if LAMPWRIGHT_CHAINS > 0
  uint8_t chain;
  for (chain = 0; chain < LAMPWRIGHT_CHAINS; chain++) {
    lampwright_emit_bytes(chain, frame, chain_bytes[chain]);
    frame += chain_bytes[chain];
  }
#else
  (void)frame;
#endif
}

#endif
