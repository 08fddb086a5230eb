#ifndef LAMPWRIGHT_SCENES_H
#define LAMPWRIGHT_SCENES_H

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Every scene of the project, packed. In program memory on AVR. */
extern const uint8_t lampwright_packed[];
#define LAMPWRIGHT_PACKED_SIZE 1024UL

/* Scene `walk`: 32 frames at 50 frames a second, looping. */
#define LAMPWRIGHT_SCENE_WALK 0
#define LAMPWRIGHT_SCENE_WALK_MILLIHERTZ 50000UL

/* The scene that the examples play. */
#define LAMPWRIGHT_FIRST_SCENE LAMPWRIGHT_SCENE_WALK
#define LAMPWRIGHT_FIRST_MILLIHERTZ LAMPWRIGHT_SCENE_WALK_MILLIHERTZ

#ifdef __cplusplus
}
#endif

#endif
