/*
 * A worked example of each function that lampwright_wire_hook.h asks for, for boards whose SPI sends
 * bytes without a gap. It has been run on no board: look at the data line before you trust it.
 */
#include <SPI.h>
#include <lampwright_wire_hook.h>
@CHAINS@@OUTPUTS@
void driver_begin() { SPI.begin(); }

/* In a hobby IDE micros() is used instead; elsewhere, read a timer here. */
uint32_t lampwright_microseconds(void) { return micros(); }
