/*
 * Prints the frame table of a scene byte by byte, after comparing each frame's copy with it.
 * SCENE_HEADER is the header's name in quotes, SCENE the scene's part of the C names.
 */
#include SCENE_HEADER

#include <stdio.h>

#define JOIN(stem, id, what) stem##id##what
#define NAME(stem, id, what) JOIN(stem, id, what)
#define FRAME_COUNT NAME(LW_, SCENE, _FRAME_COUNT)
#define FRAME_BYTES NAME(LW_, SCENE, _FRAME_BYTES)
#define TABLE_BYTES NAME(LW_, SCENE, _TABLE_BYTES)
#define READ_BYTE NAME(lw_, SCENE, _byte)
#define READ_FRAME NAME(lw_, SCENE, _frame)
#define TABLE NAME(lw_, SCENE, _table)

int main(void)
{
    static uint8_t copy[FRAME_BYTES];
    size_t frame;
    size_t at;

    if (sizeof(TABLE) != TABLE_BYTES || TABLE_BYTES != FRAME_COUNT * FRAME_BYTES) {
        return 2;
    }
    for (frame = 0; frame < FRAME_COUNT; frame++) {
        READ_FRAME(frame, copy);
        for (at = 0; at < FRAME_BYTES; at++) {
            uint8_t byte = READ_BYTE(frame, at);
            if (byte != copy[at]) {
                return 3;
            }
            putchar(byte);
        }
    }
    return fflush(stdout) == 0 ? 0 : 4;
}
