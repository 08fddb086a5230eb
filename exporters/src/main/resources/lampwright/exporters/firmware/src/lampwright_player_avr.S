/*
 * Lampwright player: playing on AVR. Does what the part of lampwright_player.c between "playing"
 * and "opening" does, and starts single lamps, in half the cycles and a third of the program memory. Each write is proved to be
 * in the frame, as in C. Reading program memory anywhere does no harm on an AVR, so what is read is
 * looked at group by group: a row that ran on into the tables is dark in the same frame.
 *
 * Registers through all of it:
 *   r1       0                        r2:3  the tables, where sections end
 *   r4:5     lamp's first byte        r6:7  the frame
 *   r8:9     end of the frame
 *   r15      lamps left              r16:17 the lamp's table
 *   Y        the lamp's voice         Z     program memory      X  the frame
 * Internal routines return with the carry set after a fault. r14 is the kind of the section until a
 * row takes it for its bits.
 *
 * The last byte of a voice: bit 7 is set while frames are made by rows or waves, 0 while holding;
 * bits 4 to 6 tell how many bits are used, less one, of the byte before the place; bits 0 to 3 are the
 * high bits of the frames left of the entry.
 */
#include "lampwright_config.h"

#if defined(__AVR__) && !LAMPWRIGHT_PORTABLE

#if LAMPWRIGHT_COLUMN_BYTES != 1 && LAMPWRIGHT_COLUMN_BYTES != 2
#error "lampwright_config.h: on AVR, LAMPWRIGHT_COLUMN_BYTES needs 1 or 2"
#endif

/* lampwright_voice */
#define ENTRY 0
#define AT 2
#define LEFT 4
#define ROUND 5
#define HIGH 6
#define VOICE_BYTES 7

/* lampwright_player */
#define LAMPS 8
#define VOICES 9

#define ENTRY_BYTES 4
#define SCENE_BYTES 6
#define LAMP_BYTES (LAMPWRIGHT_COLUMN_BYTES + 2)

/* bits of HIGH */
#define MOVES 7
#define NO_BITS 0xF0

/* bits of a section's kind */
#define RAW 0
#define WAVE 1
#define FLAGGED 2
#define LONG 3
#define SWINGS 4
/* instructions */
#define ROWS 0xE0
#define AGAIN 0xE1
/* first byte of the last entry of a program */
#define MOST_FRAMES 0x10
#define REST 0x80
#define BACK 0x81
/* bits of a rule */
#define STEP 4
#define SCALED 5
#define WIDTH_MASK 15

	.section .text.lampwright_player_avr,"ax",@progbits

/* Reads a column into a pair: where its byte is, in the frame or behind it. */
	.macro address low, high, stray
	lpm	\low, Z+
#if LAMPWRIGHT_COLUMN_BYTES == 1
	ldi	\high, 0
#else
	lpm	\high, Z+
#endif
	add	\low, r4
	adc	\high, r5
#if LAMPWRIGHT_COLUMN_BYTES == 2
	brcs	\stray
#endif
	.endm

/* Reads a column whose byte is in the frame, into X. 9 cycles, 21 for wide columns. */
	.macro column stray
#if LAMPWRIGHT_COLUMN_BYTES == 1
	address	r26, r27, \stray
	cp	r26, r8
	cpc	r27, r9
	brsh	\stray
#else
	rcall	wide_column
	brcc	\stray
#endif
	.endm

/* Loads r4:5 for the lamp whose table is at r16:17. 7 cycles, 9 for wide columns. */
	.macro view
	movw	r30, r16
	lpm	r4, Z+
#if LAMPWRIGHT_COLUMN_BYTES == 1
	mov	r5, r1
#else
	lpm	r5, Z
#endif
	add	r4, r6
	adc	r5, r7
	.endm

/* Reads a place: tables less distance, into Z. */
	.macro follow
	lpm	r24, Z+
	lpm	r25, Z
	movw	r30, r2
	sub	r30, r24
	sbc	r31, r25
	.endm

/* Saves what C wants kept, and loads r2:3 and r6:9 from the player in r24:25; X behind them. */
	.global	lampwright_avr_enter
lampwright_avr_enter:
enter:
	pop	r31
	pop	r30
	push	r2
	push	r3
	push	r4
	push	r5
	push	r6
	push	r7
	push	r8
	push	r9
	push	r10
	push	r11
	push	r12
	push	r13
	push	r14
	push	r15
	push	r16
	push	r17
	push	r28
	push	r29
	movw	r26, r24
	ld	r2, X+
	ld	r3, X+
	ld	r6, X+
	ld	r7, X+
	ld	r8, X+
	ld	r9, X+
	ijmp

/* Gives 1 if all went well, 0 after a fault, and goes back to C. */
leave:
	ldi	r24, 1
	sbc	r24, r1
	.global	lampwright_avr_leave
lampwright_avr_leave:
	pop	r29
	pop	r28
	pop	r17
	pop	r16
	pop	r15
	pop	r14
	pop	r13
	pop	r12
	pop	r11
	pop	r10
	pop	r9
	pop	r8
	pop	r7
	pop	r6
	pop	r5
	pop	r4
	pop	r3
	pop	r2
	ret

/*
 * uint32_t lampwright_avr_checksum(flash from, uint16_t bytes): CRC-32. 111 cycles per byte.
 */
	.global	lampwright_avr_checksum
lampwright_avr_checksum:
	movw	r30, r24
	movw	r26, r22
	ldi	r22, 255
	ldi	r23, 255
	movw	r24, r22
1:	lpm	r0, Z+
	eor	r22, r0
	ldi	r18, 8
2:	lsr	r25
	ror	r24
	ror	r23
	ror	r22
	brcc	3f
	ldi	r19, 0x20		; EDB88320
	eor	r22, r19
	ldi	r19, 0x83
	eor	r23, r19
	ldi	r19, 0xB8
	eor	r24, r19
	ldi	r19, 0xED
	eor	r25, r19
3:	dec	r18
	brne	2b
	sbiw	r26, 1
	brne	1b
	com	r22
	com	r23
	com	r24
	com	r25
	ret

/*
 * uint16_t lampwright_avr_scene(player *, uint8_t scene): address of a scene's table, also in Z; the carry
 * is set. Keeps r19 to r21 and r23.
 */
	.global	lampwright_avr_scene
lampwright_avr_scene:
	movw	r30, r24
	ld	r24, Z
	ldd	r25, Z + 1
	ldd	r18, Z + LAMPS
	mov	r26, r18
	ldi	r27, 0
	lsl	r26
	rol	r27
	adiw	r26, SCENE_BYTES
1:	adiw	r24, LAMP_BYTES
	dec	r18
	brne	1b
2:	subi	r22, 1
	brcs	3f
	add	r24, r26
	adc	r25, r27
	rjmp	2b
3:	movw	r30, r24
	ret

/*
 * Clears the lamp at Y and r16:17 and starts the program whose place is at r18:19, if that isn't 0. Keeps
 * r10 to r19.
 */
open:	std	Y + ENTRY, r1
	std	Y + ENTRY + 1, r1
	std	Y + LEFT, r1
	std	Y + ROUND, r1
	std	Y + HIGH, r1
	view
#if LAMPWRIGHT_COLUMN_BYTES == 2
	brcs	stop
#endif
	cp	r4, r8
	cpc	r5, r9
	brsh	stop
	movw	r30, r16
	adiw	r30, LAMPWRIGHT_COLUMN_BYTES
	movw	r26, r4
	movw	r22, r8
	follow
	cpi	r25, 0xFF
	brne	1f
	add	r24, r26		; clears as many bytes
	adc	r25, r27		; less 256
	adiw	r24, 1
	subi	r25, -1
	movw	r22, r24
	cp	r8, r24
	cpc	r9, r25
	brcs	stop
	rjmp	3f
1:	sbiw	r24, 0			; 0: clears all from there on
	breq	3f
	rcall	patches
	brcs	stop
	rjmp	4f
3:	st	X+, r1
	cp	r26, r22
	cpc	r27, r23
	brlo	3b
4:	movw	r30, r18
	sbiw	r30, 0
	breq	5f
	follow
	sbiw	r24, 0
	breq	5f
	rcall	patches
	brcs	stop
	sbiw	r30, ENTRY_BYTES - 1
	std	Y + ENTRY, r30
	std	Y + ENTRY + 1, r31
5:	clc
	ret
stop:	sec
	ret

/*
 * uint8_t lampwright_avr_advance(player *, voice *, flash lamp, uint8_t count): shows the next
 * frame of lamps that follow one another.
 */
	.global	lampwright_avr_advance
lampwright_avr_advance:
	rcall	enter
	movw	r28, r22
	movw	r16, r20
	mov	r15, r18
	rcall	lamp
	rjmp	leave
/* Shows the next frame of r15 lamps from Y and r16:17 on. A lamp that holds on: 17 cycles. */
lamp:	ldd	r20, Y + LEFT
	ldd	r25, Y + HIGH
	sbrc	r25, MOVES
	rjmp	moves
	subi	r20, 1
	brcs	held
count:	std	Y + LEFT, r20
next:	adiw	r28, VOICE_BYTES
	subi	r16, -LAMP_BYTES
	sbci	r17, -1
	dec	r15
	brne	lamp
	clc
	ret
held:	ldi	r20, 0
	ldd	r18, Y + ENTRY
	ldd	r19, Y + ENTRY + 1
	or	r18, r19
	breq	next			; at rest
/* Shows a row or a frame of a wave, or starts an instruction. */
moves:	view
	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	subi	r20, 1
	brcs	due
	std	Y + LEFT, r20
	adiw	r30, 2
	follow
	lpm	r14, Z+			; kind
	adiw	r30, 1
	sbrc	r14, LONG
	adiw	r30, 1
/* Shows a frame of the section whose head is at Z, of kind r14. */
shown:	sbrs	r14, WAVE
	rjmp	row
	sbrs	r14, RAW
	rjmp	waves
/* The lamp's bytes as they are. 9 cycles per byte. */
	sbiw	r30, 1
	ldi	r25, 0
	sbrs	r14, LONG
	rjmp	1f
	lpm	r25, Z
	sbiw	r30, 1
1:	lpm	r24, Z			; bytes of a row
	movw	r18, r8
	sub	r18, r4
	sbc	r19, r5
	cp	r18, r24
	cpc	r19, r25
	brcs	bad
	ldd	r30, Y + AT
	ldd	r31, Y + AT + 1
	movw	r26, r4
	rjmp	3f
2:	lpm	r0, Z+
	st	X+, r0
3:	sbiw	r24, 1
	brcc	2b
	std	Y + AT, r30
	std	Y + AT + 1, r31
	cp	r2, r30
	cpc	r3, r31
	brcc	next			; else ran on into the tables
bad:	clr	r1			; may be the sign of a stride
	sec
	ret

/* Starts an instruction, and an entry if need be. */
due:	ldd	r18, Y + ROUND
	mov	r19, r25
	andi	r19, 15
	mov	r24, r18
	or	r24, r19
	clt
	brne	3f
	set				; a fresh entry
	adiw	r30, ENTRY_BYTES
	cp	r30, r2
	cpc	r31, r3
	brsh	bad
	lpm	r19, Z
	cpi	r19, MOST_FRAMES + 1
	brlo	2f
	cpi	r19, BACK
	brsh	1f
	std	Y + HIGH, r1		; the program is over
	std	Y + ENTRY, r1
	std	Y + ENTRY + 1, r1
	rjmp	next
1:	adiw	r30, 1
	lpm	r24, Z+			; goes back
	lpm	r25, Z
	sbiw	r30, 2
	sub	r30, r24
	sbc	r31, r25
	lpm	r19, Z
	cpi	r19, MOST_FRAMES + 1
	brsh	bad2
2:	std	Y + ENTRY, r30
	std	Y + ENTRY + 1, r31
	adiw	r30, 1
	lpm	r18, Z+
	rjmp	4f
3:	adiw	r30, 2
4:	follow
	lpm	r14, Z+			; kind
	lpm	r24, Z+
	ldi	r25, 0
	sbrc	r14, LONG
	lpm	r25, Z+
	movw	r10, r30		; the head
	add	r24, r30
	adc	r25, r31
	movw	r12, r24		; the instructions
	ldi	r20, 255
	ldi	r21, NO_BITS
	brts	5f
	sbrc	r14, WAVE
	rjmp	clip			; goes on as it was
	ldd	r24, Y + AT
	ldd	r25, Y + AT + 1
	rjmp	6f
5:	sbrs	r14, WAVE
	rjmp	6f
	sbrc	r14, RAW
	rjmp	8f			; plain rows: no instructions; Z at the head
	rjmp	6f
bad2:	rjmp	bad
6:	movw	r30, r24
	rcall	patches
	brcs	bad2
	cpi	r21, AGAIN
	brne	7f
	movw	r30, r12
	rcall	patches
	brcs	bad2
7:	adiw	r30, 1
	ldi	r20, 255
	sbrc	r14, WAVE
	rjmp	9f
	cpi	r21, ROWS
	breq	10f
	sbrc	r21, 7
	rjmp	bad2
	mov	r20, r21
	inc	r20
	ldi	r21, 0
	rjmp	11f
9:	ldi	r30, 0			; phase 0
	ldi	r31, 0
	rjmp	8f
10:	lpm	r20, Z+
8:	ldi	r21, NO_BITS
11:	std	Y + AT, r30
	std	Y + AT + 1, r31
clip:	cp	r18, r20
	cpc	r19, r1
	brsh	1f
	mov	r20, r18
1:	sub	r18, r20
	sbc	r19, r1
	or	r19, r21
	std	Y + ROUND, r18
	std	Y + HIGH, r19
	subi	r20, 1
	brcs	bad2
	sbrs	r19, MOVES
	rjmp	count
	std	Y + LEFT, r20
	movw	r30, r10
	rjmp	shown

/*
 * Carries out PATCH and FILL from Z on; Z at the first other byte, r21 that byte. Keeps r10 to
 * r19. 10 cycles per byte.
 */
patches:
	cp	r30, r2
	cpc	r31, r3
	brsh	fault
	lpm	r21, Z
	cpi	r21, 0x80
	brlo	5f
	cpi	r21, ROWS
	brsh	5f
	adiw	r30, 1
	mov	r22, r21
	andi	r22, 0x3F		; bytes of the pattern - 1
	mov	r23, r22		; bytes in all - 1
	address	r26, r27, fault
	sbrc	r21, 6
	lpm	r23, Z+
	movw	r24, r26
	add	r24, r23
	adc	r25, r1
#if LAMPWRIGHT_COLUMN_BYTES == 2
	brcs	fault
#endif
	cp	r24, r8
	cpc	r25, r9
	brsh	fault
	movw	r24, r30
1:	mov	r20, r22
	movw	r30, r24
2:	lpm	r0, Z+
	st	X+, r0
	subi	r23, 1
	brcs	4f
	subi	r20, 1
	brcc	2b
	rjmp	1b
4:	movw	r30, r24
	add	r30, r22
	adc	r31, r1
	adiw	r30, 1
	rjmp	patches
5:	clc
	ret
fault:	sec
	ret

#if LAMPWRIGHT_COLUMN_BYTES == 2
/* Sets the carry if the column's byte is in the frame. */
wide_column:
	address	r26, r27, 1f
	cp	r26, r8
	cpc	r27, r9
	ret
1:	clc
	ret
#endif

/*
 * Reads the stride (r11) of a run of r10 slots, not 1, whose first byte is at X, and looks at its
 * last. Changes r0, r20, r21, r24.
 */
span:
	lpm	r11, Z+
	mov	r21, r10
	subi	r21, 1
	brcs	4f			; no slots
	mov	r20, r11
#ifdef __AVR_HAVE_MUL__
	mulsu	r20, r21
#else
	clr	r0
	ldi	r24, 0
	sbrc	r20, 7
	ldi	r24, 255
1:	add	r0, r20
	adc	r1, r24
	dec	r21
	brne	1b
#endif
	add	r0, r26
	adc	r1, r27
	cp	r0, r8
	cpc	r1, r9
	brsh	3f
	cp	r0, r6			; carry if before the frame
	cpc	r1, r7
	clr	r1			; keeps the carry
	ret
3:	clr	r1
	sec
4:	ret

waves:	push	r15
	push	r16
	push	r17
	lpm	r22, Z+			; size
	lpm	r23, Z+
	lpm	r24, Z+			; pace
	lpm	r25, Z+
	push	r24
	push	r25
	clt
	sbrs	r14, SWINGS
	rjmp	1f
	lpm	r18, Z+			; phase from which it swings back
	lpm	r19, Z+
	ldd	r20, Y + AT
	ldd	r21, Y + AT + 1
	cp	r20, r18
	cpc	r21, r19
	brlo	1f
	set
1:	lpm	r17, Z+			; groups
wave:	tst	r17
	brne	1f
	pop	r25
	pop	r24
	pop	r17
	pop	r16
	pop	r15
	ldd	r20, Y + AT
	ldd	r21, Y + AT + 1
	add	r24, r20
	adc	r25, r21
	cp	r24, r22
	cpc	r25, r23
	brlo	5f
	sub	r24, r22
	sbc	r25, r23
5:	std	Y + AT, r24
	std	Y + AT + 1, r25
	rjmp	echo
8:	ldi	r24, 5
unwind:	pop	r0			; gives the stack its bytes back
	dec	r24
	brne	unwind
	rjmp	bad
1:	cp	r30, r2
	cpc	r31, r3
	brsh	8b
	movw	r18, r2
	lpm	r0, Z+			; place of the wave
	sub	r18, r0
	lpm	r0, Z+
	sbc	r19, r0
	column	8b
	lpm	r10, Z+
	ldi	r20, 1
	cp	r10, r20
	breq	2f
	rcall	span
	brcs	8b
2:	lpm	r24, Z+			; phase
	lpm	r25, Z+
	ldd	r0, Y + AT
	add	r24, r0
	ldd	r0, Y + AT + 1
	adc	r25, r0
	cp	r24, r22
	cpc	r25, r23
	brlo	2f
	sub	r24, r22
	sbc	r25, r23
2:	ldi	r20, 1
	cp	r10, r20
	breq	2f
	lpm	r20, Z+			; step
	lpm	r21, Z+
	brtc	2f
	com	r21			; size - step
	neg	r20
	sbci	r21, 255
	add	r20, r22
	adc	r21, r23
2:	push	r17
	push	r30
	push	r31
	movw	r30, r18
	lpm	r16, Z+			; kind
	lpm	r14, Z+			; first
	lpm	r15, Z+
	lpm	r12, Z+			; last
	lpm	r13, Z+
	ldi	r18, 255		; never the nearer way round
	ldi	r19, 255
	tst	r16
	breq	3f
	movw	r18, r22		; size + 1 - kind
	dec	r16
	sub	r18, r16
	sbc	r19, r1
3:	movw	r16, r30
	add	r30, r12
	adc	r31, r13
	brcs	7f
	cp	r30, r2
	cpc	r31, r3
	brsh	7f
	sbrc	r11, 7
	com	r1			; sign of the stride
/* 33 cycles a slot: phase r24:25, step r20:21, size r22:23, turn r18:19, samples r16:17 */
4:	movw	r30, r18
	sub	r30, r24
	sbc	r31, r25
	cp	r30, r24
	cpc	r31, r25
	brlo	5f
	movw	r30, r24
5:	sub	r30, r14
	sbc	r31, r15
	brsh	6f
	ldi	r30, 0
	ldi	r31, 0
6:	cp	r12, r30
	cpc	r13, r31
	brsh	9f
	movw	r30, r12
9:	add	r30, r16
	adc	r31, r17
	lpm	r0, Z
	st	X, r0
	add	r26, r11
	adc	r27, r1
	add	r24, r20
	adc	r25, r21
	cp	r24, r22
	cpc	r25, r23
	brlo	10f
	sub	r24, r22
	sbc	r25, r23
10:	dec	r10
	brne	4b
	clr	r1
	pop	r31
	pop	r30
	pop	r17
	dec	r17
	rjmp	wave
7:	ldi	r24, 8
	rjmp	unwind

/* A row of bytes or packed bits: next byte at r12:13, bits in hand r14, groups r23. */
row:	lpm	r23, Z+
	ldd	r12, Y + AT
	ldd	r13, Y + AT + 1
	bst	r14, RAW
	brts	2f
	movw	r18, r30		; takes the bits in hand from the byte before
	movw	r30, r12
	sbiw	r30, 1
	lpm	r20, Z
	movw	r30, r18
	ldd	r21, Y + HIGH
	sec
	rol	r20
	sbrs	r21, 6
	rjmp	1f
	swap	r20
	andi	r20, 0xF0
1:	sbrs	r21, 5
	rjmp	1f
	lsl	r20
	lsl	r20
1:	sbrc	r21, 4
	lsl	r20
	mov	r21, r14
	mov	r14, r20		; next bit on top, a 1 below the last
	sbrs	r21, FLAGGED
	rjmp	2f
	lsl	r14
	brne	1f
	rcall	refill
1:	brcs	2f
	ldi	r24, 0			; nothing changes
	rjmp	keep
8:	rjmp	bad
10:	rcall	refill
	rjmp	9f
6:	movw	r18, r30
	movw	r30, r12
7:	lpm	r0, Z+			; 10 cycles per byte
	st	X, r0
	add	r26, r11
	adc	r27, r1
	dec	r10
	brne	7b
	movw	r12, r30
	movw	r30, r18
	rjmp	run_end
2:	tst	r23
	breq	11f
group:	cp	r30, r2
	cpc	r31, r3
	brsh	8b
	column	8b
	lpm	r10, Z+
	ldi	r20, 1
	cp	r10, r20
	breq	2f
	rcall	span
	brcs	8b
	sbrc	r11, 7
	com	r1			; sign of the stride
2:	brts	6b
/* 23 cycles a slot, 6 a bit, 19 more for each byte */
3:	lpm	r21, Z+			; rule
	ldi	r22, 0
	mov	r20, r21
	andi	r20, WIDTH_MASK
	breq	5f
4:	lsl	r14
	breq	10b
9:	rol	r22
	dec	r20
	brne	4b
5:	lpm	r0, Z+			; bias
	add	r22, r0
	sbrs	r21, STEP
	rjmp	scaled
	ld	r0, X
	add	r22, r0
put:	st	X, r22
	add	r26, r11
	adc	r27, r1
	dec	r10
	brne	3b
run_end:
	clr	r1
	cp	r2, r12
	cpc	r3, r13
	brlo	8b			; ran on into the tables
	dec	r23
	brne	group
11:	ldi	r24, 1
/* Keeps where the row ended; then echoes if r24 is 1. */
keep:	std	Y + AT, r12
	std	Y + AT + 1, r13
	brts	echo
	ldi	r20, 1 << MOVES		; place of the lowest 1 of r14, in bits 4 to 6
	mov	r21, r14
	andi	r21, 15
	brne	1f
	ori	r20, 0x40
	swap	r14
1:	mov	r21, r14
	andi	r21, 3
	brne	1f
	ori	r20, 0x20
	lsr	r14
	lsr	r14
1:	sbrs	r14, 0
	ori	r20, 0x10
	ldd	r21, Y + HIGH
	andi	r21, 15
	or	r20, r21
	std	Y + HIGH, r20
	sbrs	r24, 0
	rjmp	next
/* Gives columns the value of others. 11 cycles per byte. */
echo:	lpm	r23, Z+
1:	subi	r23, 1
	brcs	4f
	cp	r30, r2
	cpc	r31, r3
	brsh	8f
	column	8f
	movw	r12, r26
	column	8f
	movw	r18, r26
	lpm	r10, Z+
	ldi	r20, 1
	cp	r10, r20
	breq	2f
	rcall	span
	brcs	8f
	sbiw	r30, 1
	movw	r26, r12
	rcall	span
	brcs	8f
	sbrc	r11, 7
	com	r1			; sign of the stride
2:	movw	r24, r30
	movw	r26, r12
	movw	r30, r18
3:	ld	r20, Z
	st	X, r20
	add	r26, r11
	adc	r27, r1
	add	r30, r11
	adc	r31, r1
	dec	r10
	brne	3b
	clr	r1
	movw	r30, r24
	rjmp	1b
4:	rjmp	next
8:	rjmp	bad

/* The first of the next byte's bits in the carry, the others in r14. */
refill:	movw	r18, r30
	movw	r30, r12
	lpm	r14, Z+
	movw	r12, r30
	movw	r30, r18
	sec
	rol	r14
	ret
scaled:	sbrs	r21, SCALED
	rjmp	put
	address	r24, r25, 8b
	cp	r24, r8
	cpc	r25, r9
	brsh	8b
	movw	r18, r26
	movw	r26, r24
	ld	r24, X
	movw	r26, r18
	lpm	r25, Z+
#ifdef __AVR_HAVE_MUL__
	mul	r24, r25
	add	r22, r1
	clr	r1
	sbrc	r11, 7
	com	r1
#else
	ldi	r19, 8			; high byte of r24 * r25, bit by bit
	ldi	r18, 0
1:	sbrc	r25, 0
	add	r18, r24
	ror	r18			; takes the carry in; clear where nothing was added
	lsr	r25
	dec	r19
	brne	1b
	add	r22, r18
#endif
	rjmp	put

/*
 * uint8_t lampwright_avr_start(player *, voice *, flash lamp, flash program, uint8_t count): clears
 * lamps that follow one another and starts the programs whose places are in the data.
 */
	.section .text.lampwright_avr_start,"ax",@progbits
	.global	lampwright_avr_start
lampwright_avr_start:
	rcall	enter
	movw	r28, r22
	mov	r15, r16
	movw	r16, r20
1:	rcall	open
	brcs	2f
	adiw	r28, VOICE_BYTES
	subi	r16, -LAMP_BYTES
	sbci	r17, -1
	subi	r18, -2
	sbci	r19, -1
	dec	r15
	brne	1b
	clc
2:	rjmp	leave

/*
 * uint8_t lampwright_avr_lamp(player *, uint8_t lamp, flash program, uint32_t frame): clears a lamp and
 * starts the program whose place is at an address in the data, if that isn't 0, such that its next frame
 * is the given one; the last if the program ends before. Steps over each entry twice at most.
 */
	.section .text.lampwright_avr_lamp,"ax",@progbits
	.global	lampwright_avr_lamp
lampwright_avr_lamp:
	rcall	enter
	adiw	r26, VOICES - 6
	movw	r28, r26
	movw	r10, r16		; frames to step over
	movw	r12, r18
	movw	r18, r20
	movw	r16, r2
1:	subi	r22, 1
	brcs	2f
	adiw	r28, VOICE_BYTES
	subi	r16, -LAMP_BYTES
	sbci	r17, -1
	rjmp	1b
2:	rcall	open
	brcc	4f
3:	rjmp	leave
4:	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	sbiw	r30, 0
	breq	3b			; at rest: no frames to step over
	adiw	r30, ENTRY_BYTES
	movw	r22, r30		; the first entry
	ldi	r18, 0			; frames of all entries stepped over
	ldi	r19, 0
	movw	r20, r18
5:	cp	r30, r2
	cpc	r31, r3
	brsh	12f
	lpm	r25, Z+
	lpm	r24, Z
	cpi	r25, MOST_FRAMES + 1
	brsh	6f
	sbiw	r24, 0
	breq	12f
	cp	r10, r24
	cpc	r11, r25
	cpc	r12, r1
	cpc	r13, r1
	brlo	10f
	sub	r10, r24
	sbc	r11, r25
	sbc	r12, r1
	sbc	r13, r1
	add	r18, r24
	adc	r19, r25
	adc	r20, r1
	adc	r21, r1
	adiw	r30, ENTRY_BYTES - 1
	rjmp	5b
12:	sec
	rjmp	leave
6:	sbiw	r30, 1
	cp	r30, r22
	cpc	r31, r23
	breq	3b			; no entry at all
	cpi	r25, REST
	brne	7f
	sbiw	r30, ENTRY_BYTES	; the last entry's last frame
	lpm	r11, Z+
	lpm	r10, Z
	ldi	r24, 1
	sub	r10, r24
	sbc	r11, r1
	rjmp	10f
7:	ldi	r24, 0			; goes back: less all whole rounds
	ldi	r25, 0
	movw	r26, r24
	ldi	r30, 32
8:	lsl	r10
	rol	r11
	rol	r12
	rol	r13
	rol	r24
	rol	r25
	rol	r26
	rol	r27
	cp	r24, r18
	cpc	r25, r19
	cpc	r26, r20
	cpc	r27, r21
	brlo	9f
	sub	r24, r18
	sbc	r25, r19
	sbc	r26, r20
	sbc	r27, r21
9:	dec	r30
	brne	8b
	movw	r10, r24
	movw	r12, r26
	movw	r30, r22
	rjmp	5b
10:	sbiw	r30, ENTRY_BYTES + 1
	std	Y + ENTRY, r30
	std	Y + ENTRY + 1, r31
	movw	r24, r10
11:	sbiw	r24, 1
	brcs	13f
	push	r24
	push	r25
	clr	r15
	inc	r15
	rcall	lamp
	pop	r25
	pop	r24
	brcs	14f
	sbiw	r28, VOICE_BYTES
	subi	r16, LAMP_BYTES
	sbci	r17, 0
	rjmp	11b
13:	clc
14:	rjmp	leave

#endif
