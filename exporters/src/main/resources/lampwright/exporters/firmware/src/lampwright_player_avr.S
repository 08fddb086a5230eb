/*
 * Lampwright player: playing on AVR. Does what the part of lampwright_player.c between "playing"
 * and "opening" does, in half the cycles and a third of the program memory. Each write is proved to be
 * in the frame, as in C. Reading program memory anywhere does no harm on an AVR, so what is read is
 * looked at group by group: a row that ran on into the tables is dark in the same frame. Samples of
 * a wave are not looked at.
 *
 * Registers through all of it:
 *   r1       0                        r2:3  the tables, where sections end
 *   r4:5     lamp's first byte        r6:7  the player
 *   r8:9     bytes of the frame from there on
 *   r15      lamps left              r16:17 the lamp's table
 *   Y        the lamp's voice         Z     program memory      X  the frame
 * Internal routines return with the carry set after a fault. r14 is the kind of the section until a
 * row takes it for its bits.
 */
#include "lampwright_config.h"

#if defined(__AVR__) && !LAMPWRIGHT_PORTABLE

#if LAMPWRIGHT_COLUMN_BYTES != 1 && LAMPWRIGHT_COLUMN_BYTES != 2
#error "lampwright_config.h: on AVR, LAMPWRIGHT_COLUMN_BYTES needs 1 or 2"
#endif

/* lampwright_player */
#define DATA 0
#define TABLES 6
/* lampwright_voice */
#define ENTRY 0
#define AT 2
#define ROUND 4
#define LEFT 6
#define HELD 7
#define VOICE_BYTES 8

/* bits of a section's kind */
#define RAW 0
#define WAVE 1
#define FLAGGED 2
/* instructions */
#define ROWS 0xE0
#define AGAIN 0xE1
/* bits of a rule */
#define STEP 4
#define SCALED 5
#define WIDTH_MASK 15
#define EMPTY 128

	.section .text.lampwright_player_avr,"ax",@progbits

/* Reads a column number into r24:25. */
	.macro column
	lpm	r24, Z+
#if LAMPWRIGHT_COLUMN_BYTES == 1
	ldi	r25, 0
#else
	lpm	r25, Z+
#endif
	.endm

/* Saves what C wants kept, and loads r6:7 and r2:3 from the player in r24:25. */
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
	movw	r6, r24
	movw	r26, r24
	adiw	r26, TABLES
	ld	r2, X+
	ld	r3, X
	ijmp

/* Gives 1 if all went well, 0 after a fault, and goes back to C. */
leave:
	ldi	r24, 1
	sbc	r24, r1
	ldi	r25, 0
leave_value:
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
 * flash lampwright_avr_patches(player *, flash at, flash lamp): carries out PATCH and FILL; gives
 * the place of the first other byte, or 0.
 */
	.global	lampwright_avr_patches
lampwright_avr_patches:
	rcall	enter
	movw	r16, r20
	rcall	view
	movw	r30, r22
	rcall	patches
	brcs	leave
	movw	r24, r30
	rjmp	leave_value

/*
 * Loads r4:5 and r8:9 for the lamp whose table is at r16:17, and r12:13, where the data starts. 31
 * cycles with the call.
 */
view:
	movw	r30, r16
	lpm	r18, Z+
	lpm	r19, Z
	movw	r26, r6
	ld	r12, X+
	ld	r13, X+
	ld	r4, X+
	ld	r5, X+
	ld	r8, X+
	ld	r9, X
	add	r4, r18
	adc	r5, r19
	sub	r8, r18
	sbc	r9, r19
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
/* A lamp that holds on: 18 cycles. */
lamp:	ldd	r24, Y + HELD
	ldd	r20, Y + LEFT
	tst	r24
	brne	busy
hold:	cpi	r20, 2
	brlo	still
	dec	r20
	std	Y + LEFT, r20
next:	adiw	r28, VOICE_BYTES
	subi	r16, -4
	sbci	r17, -1
	dec	r15
	brne	lamp
	clc
	rjmp	leave
still:	tst	r20
	breq	1f
	std	Y + LEFT, r1		; the last frame of a hold
	rcall	ended
	rjmp	next
1:	ldd	r24, Y + ENTRY
	ldd	r25, Y + ENTRY + 1
	or	r24, r25
	breq	next			; at rest
/* Shows a row or a frame of a wave, or starts an instruction. */
busy:	rcall	view
	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	tst	r20
	breq	due
	adiw	r30, 2
	lpm	r18, Z+
	lpm	r19, Z
	add	r12, r18
	adc	r13, r19
	movw	r30, r12
	lpm	r14, Z+			; kind
	adiw	r30, 2
	rjmp	shown

/* Counts the entry as played if it is. Keeps Z. */
ended:	ldd	r24, Y + ROUND
	ldd	r25, Y + ROUND + 1
	or	r24, r25
	brne	1f
	ldd	r24, Y + ENTRY
	ldd	r25, Y + ENTRY + 1
	adiw	r24, 4
	std	Y + ENTRY, r24
	std	Y + ENTRY + 1, r25
1:	ret

due:	ldd	r18, Y + ROUND
	ldd	r19, Y + ROUND + 1
	clt
	cp	r18, r1
	cpc	r19, r1
	brne	3f
	set				; the entry is fresh
	cp	r30, r2
	cpc	r31, r3
	brsh	bad
	lpm	r18, Z+
	lpm	r19, Z+
	cp	r18, r1
	cpc	r19, r1
	brne	4f
	lpm	r24, Z+			; the program is over: bytes back
	lpm	r25, Z
	sbiw	r24, 0
	brne	2f
	std	Y + HELD, r1
	std	Y + ENTRY, r1
	std	Y + ENTRY + 1, r1
	rjmp	next
bad:	sec
	rjmp	leave
2:	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	sub	r30, r24
	sbc	r31, r25
	std	Y + ENTRY, r30
	std	Y + ENTRY + 1, r31
	lpm	r18, Z+
	lpm	r19, Z+
	rjmp	4f
3:	adiw	r30, 2
4:	lpm	r24, Z+
	lpm	r25, Z
	add	r12, r24
	adc	r13, r25
	cp	r12, r2
	cpc	r13, r3
	brsh	bad
	movw	r30, r12
	lpm	r14, Z+			; kind
	lpm	r24, Z+
	lpm	r25, Z+
	movw	r10, r30		; the head
	add	r24, r30
	adc	r25, r31
	movw	r12, r24		; the instructions
	ldi	r20, 255
	ldi	r21, EMPTY
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
6:	movw	r30, r24
	rcall	patches
	brcs	bad
	cpi	r21, AGAIN
	brne	7f
	movw	r30, r12
	rcall	patches
	brcs	bad
7:	adiw	r30, 1
	ldi	r20, 255
	sbrc	r14, WAVE
	rjmp	9f
	cpi	r21, ROWS
	breq	10f
	sbrc	r21, 7
	rjmp	bad
	mov	r20, r21
	inc	r20
	ldi	r21, 0
	rjmp	11f
9:	ldi	r30, 0			; phase 0
	ldi	r31, 0
	rjmp	8f
10:	lpm	r20, Z+
8:	ldi	r21, EMPTY
11:	std	Y + AT, r30
	std	Y + AT + 1, r31
clip:	std	Y + HELD, r21
	cp	r18, r20
	cpc	r19, r1
	brsh	1f
	mov	r20, r18
1:	tst	r20
	breq	bad2
	sub	r18, r20
	sbc	r19, r1
	std	Y + ROUND, r18
	std	Y + ROUND + 1, r19
	movw	r30, r10
	tst	r21
	brne	shown
	rjmp	hold

/* Shows a frame of the section whose head is at Z, of kind r14; r20 frames are left with it. */
shown:	dec	r20
	std	Y + LEFT, r20
	brne	1f
	rcall	ended
1:	sbrs	r14, WAVE
	rjmp	row
	sbrs	r14, RAW
	rjmp	waves
/* The lamp's bytes as they are. 9 cycles a byte. */
	sbiw	r30, 2
	lpm	r24, Z+			; bytes of a row
	lpm	r25, Z
	cp	r8, r24
	cpc	r9, r25
	brcs	bad2
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
	brcs	bad2			; ran on into the tables
	rjmp	next
bad2:	rjmp	bad

/*
 * Carries out PATCH and FILL from Z on; Z at the first other byte, r21 that byte. Keeps r10 to
 * r19. 10 cycles a byte.
 */
patches:
	cp	r30, r2
	cpc	r31, r3
	brsh	fault
	lpm	r21, Z
	cpi	r21, 0x80
	brlo	5f
	cpi	r21, 0xE0
	brsh	5f
	adiw	r30, 1
	mov	r22, r21
	andi	r22, 0x3F		; bytes of the pattern - 1
	mov	r23, r22		; bytes in all - 1
	column
	sbrc	r21, 6
	lpm	r23, Z+
	movw	r26, r24
	add	r26, r23
	adc	r27, r1
	brcs	fault
	cp	r26, r8
	cpc	r27, r9
	brsh	fault
	movw	r26, r4
	add	r26, r24
	adc	r27, r25
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

/*
 * Reads slots (r10) and stride (r11) of the run that starts in column r24:25; X its first byte.
 * Changes r0, r20, r21.
 */
read_run:
	lpm	r10, Z+
	lpm	r11, Z+
	mov	r21, r10
	subi	r21, 1
	brcs	4f			; no slots
	mov	r20, r11
#ifdef __AVR_HAVE_MUL__
	mulsu	r20, r21
#else
	clr	r0
	ldi	r26, 0
	sbrc	r20, 7
	ldi	r26, 255
	tst	r21
	breq	2f
1:	add	r0, r20
	adc	r1, r26
	dec	r21
	brne	1b
2:
#endif
	add	r0, r24
	adc	r1, r25
	cp	r0, r8
	cpc	r1, r9
	clr	r1			; keeps the carry
	brsh	3f
	cp	r24, r8
	cpc	r25, r9
	brsh	3f
	movw	r26, r4
	add	r26, r24
	adc	r27, r25		; clears the carry
	ret
3:	sec
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
	lpm	r17, Z+			; groups
	rjmp	wave
8:	ldi	r24, 5			; gives the stack its bytes back
9:	pop	r0
	dec	r24
	brne	9b
	rjmp	bad
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
	brlo	7f
	sub	r24, r22
	sbc	r25, r23
7:	std	Y + AT, r24
	std	Y + AT + 1, r25
	rjmp	echo
1:	cp	r30, r2
	cpc	r31, r3
	brsh	8b
	lpm	r18, Z+			; place of the wave
	lpm	r19, Z+
	movw	r26, r6
	ld	r0, X+
	add	r18, r0
	ld	r0, X
	adc	r19, r0
	column
	rcall	read_run
	brcs	8b
	lpm	r24, Z+			; phase
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
2:	lpm	r20, Z+			; step
	lpm	r21, Z+
	push	r17
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

/* A row of bytes or packed bits: next byte at r12:13, bits in hand r14, groups r23. */
row:
	lpm	r23, Z+
	ldd	r12, Y + AT
	ldd	r13, Y + AT + 1
	bst	r14, RAW
	mov	r21, r14
	ldd	r14, Y + HELD
	sbrs	r21, FLAGGED
	rjmp	2f
	lsl	r14
	brne	1f
	rcall	refill
1:	brcs	2f
	rcall	keep			; nothing changes
	rjmp	next
2:	tst	r23
	breq	11f
group:	cp	r30, r2
	cpc	r31, r3
	brsh	8f
	column
	rcall	read_run
	brcs	8f
	sbrc	r11, 7
	com	r1			; sign of the stride
	brts	6f
/* 23 cycles a slot, 6 a bit, 19 more for each byte */
3:	lpm	r21, Z+			; rule
	ldi	r22, 0
	mov	r20, r21
	andi	r20, WIDTH_MASK
	breq	5f
4:	lsl	r14
	breq	10f
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
	brlo	8f			; ran on into the tables
	dec	r23
	brne	group
11:	rcall	keep
	rjmp	echo
10:	rcall	refill
	rjmp	9b
8:	rjmp	bad
6:	movw	r18, r30
	movw	r30, r12
7:	lpm	r0, Z+			; 10 cycles a byte
	st	X, r0
	add	r26, r11
	adc	r27, r1
	dec	r10
	brne	7b
	movw	r12, r30
	movw	r30, r18
	rjmp	run_end
scaled:	sbrs	r21, SCALED
	rjmp	put
	column
	cp	r24, r8
	cpc	r25, r9
	brsh	8b
	movw	r18, r26
	movw	r26, r4
	add	r26, r24
	adc	r27, r25
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

8:	rjmp	bad
keep:	std	Y + AT, r12
	std	Y + AT + 1, r13
	std	Y + HELD, r14
	ret

/* The first of the next byte's bits in the carry, the others in r14. */
refill:	movw	r18, r30
	movw	r30, r12
	lpm	r14, Z+
	movw	r12, r30
	movw	r30, r18
	sec
	rol	r14
	ret

/* Gives columns the value of others. 11 cycles a byte. */
echo:
	lpm	r23, Z+
1:	subi	r23, 1
	brcs	4f
	cp	r30, r2
	cpc	r31, r3
	brsh	8b
	column
	movw	r18, r24
	column
	rcall	read_run
	brcs	8b
	movw	r12, r26
	sbiw	r30, 2
	movw	r24, r18
	rcall	read_run
	brcs	8b
	movw	r18, r30
	movw	r30, r12
	sbrc	r11, 7
	com	r1			; sign of the stride
2:	ld	r20, Z
	st	X, r20
	add	r26, r11
	adc	r27, r1
	add	r30, r11
	adc	r31, r1
	dec	r10
	brne	2b
	clr	r1
	movw	r30, r18
	rjmp	1b
4:	rjmp	next

#endif
