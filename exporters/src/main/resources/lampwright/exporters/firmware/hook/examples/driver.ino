/*
 * Worked examples of the functions that lampwright_wire_hook.h asks for, for three kinds of boards.
 * Select one. They have been run on no board: look at the data line before you trust them.
 */
#define BY_SPI 1     /* an SPI that sends bytes without a gap */
#define BY_ROUTINE 2 /* a routine of your board's, or of a library, that sends bytes to pixels */
#define BY_PINS 3    /* plain pins, timed by counting the core's cycles */
#if !defined(LAMPWRIGHT_DRIVER)
#define LAMPWRIGHT_DRIVER BY_SPI
#endif

#include <lampwright_wire_hook.h>
@CHAINS@@OUTPUTS@@INPUTS@
/* In a hobby IDE micros() is used instead; elsewhere, read a timer here. */
uint32_t lampwright_microseconds(void) { return micros(); }
