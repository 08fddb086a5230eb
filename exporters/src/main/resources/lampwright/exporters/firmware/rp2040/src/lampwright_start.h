#ifndef LAMPWRIGHT_START_H
#define LAMPWRIGHT_START_H

/* Without an IDE's core: from reset to main. Nothing else needs to call it. */

/* Sets the clocks: crystal of 12 MHz, 125 MHz for the system, microseconds for the timer. */
void lampwright_start_clocks(void);

#endif
