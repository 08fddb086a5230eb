#ifndef LAMPWRIGHT_CONFIG_H
#define LAMPWRIGHT_CONFIG_H

/*
 * The program of the UF2 files: what is fitted comes with the data, so here are the limits, of
 * which exports that pass them are refused. The frame is in memory twice: as the player keeps it,
 * and as it is on its way.
 */
#define LAMPWRIGHT_CHAINS 8
#define LAMPWRIGHT_OUTPUTS 16
#define LAMPWRIGHT_FRAME_BYTES 65535
#define LAMPWRIGHT_DIMMING 0
#define LAMPWRIGHT_CEILING 1
#define LAMPWRIGHT_DIMMED_BYTES LAMPWRIGHT_FRAME_BYTES
#define LAMPWRIGHT_LAMPS 255
#define LAMPWRIGHT_MAX_LAMPS LAMPWRIGHT_LAMPS
#define LAMPWRIGHT_MAX_FRAME_BYTES LAMPWRIGHT_FRAME_BYTES
#define LAMPWRIGHT_LONG_DATA 1
#define LAMPWRIGHT_COLUMN_BYTES 0
#define LAMPWRIGHT_PORTABLE 0

/* As much of everything as the format has room for. */
#define LAMPWRIGHT_INPUTS 32
#define LAMPWRIGHT_CENTRES 8
#define LAMPWRIGHT_SITUATIONS 254
#define LAMPWRIGHT_SLOTS 254
#define LAMPWRIGHT_CONDITION_BYTES 255
#define LAMPWRIGHT_TIME_BYTES 4

#define LAMPWRIGHT_DATA
#define LAMPWRIGHT_READ(address) (*(address))

#endif
