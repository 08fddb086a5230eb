#include "lampwright_wire.h"

#if LAMPWRIGHT_CHAINS > 0

#include "lampwright_wire_hook.h"

static const uint16_t chain_bytes[LAMPWRIGHT_CHAINS] = LAMPWRIGHT_CHAIN_BYTES;

void lampwright_wire_begin(void) {}

void lampwright_wire_rest(void) {}

uint16_t lampwright_wire_bytes(uint8_t chain) { return chain_bytes[chain]; }

void lampwright_wire_chain(uint8_t chain, const uint8_t *bytes) {
  lampwright_emit_bytes(chain, bytes, chain_bytes[chain]);
}

#endif
