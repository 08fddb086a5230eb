/*
 * Lampwright player: playing on AVR. Does what the part of lampwright_player.c between "playing"
 * and "opening" does, in half the cycles and a third of the program memory. Reading program memory
 * anywhere does no harm on an AVR; each write is proved to be in the frame, as in C.
 *
 * Registers through all of it:
 *   r1       0                        r2:3  the tables, where sections end
 *   r4:5     lamp's first byte        r6:7  the player
 *   r8:9     bytes of the frame from there on
 *   Y        the lamp's voice         Z     program memory      X  the frame
 * Internal routines return with the carry set after a fault.
 */
#include "lampwright_config.h"

#if defined(__AVR__) && !LAMPWRIGHT_PORTABLE

#if LAMPWRIGHT_COLUMN_BYTES != 1 && LAMPWRIGHT_COLUMN_BYTES != 2
#error "lampwright_config.h: on AVR, LAMPWRIGHT_COLUMN_BYTES needs 1 or 2"
#endif

/* lampwright_player */
#define DATA 0
#define TABLES 2
#define BUFFER 4
#define LAMPS 8
#define VOICES 10
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

/* uint8_t lampwright_avr_frame(player *): shows the next frame of all lamps. */
	.global	lampwright_avr_frame
lampwright_avr_frame:
	rcall	enter
	movw	r28, r6
	ldd	r10, Y + LAMPS
	adiw	r28, VOICES
	movw	r22, r2
1:	tst	r10
	breq	leave			; carry clear
2:	ldd	r24, Y + HELD
	tst	r24
	brne	4f
	ldd	r24, Y + LEFT
	cpi	r24, 2
	brlo	4f
	dec	r24			; holding on
	std	Y + LEFT, r24
3:	adiw	r28, VOICE_BYTES
	subi	r22, -4
	sbci	r23, -1
	dec	r10
	brne	2b
	clc
	rjmp	leave
4:	ldd	r24, Y + ENTRY
	ldd	r25, Y + ENTRY + 1
	or	r24, r25
	breq	3b			; at rest
	push	r10
	push	r22
	push	r23
	rcall	advance
	pop	r23
	pop	r22
	pop	r10
	brcc	3b
	rjmp	leave

/* uint8_t lampwright_avr_advance(player *, voice *, flash lamp): shows the next frame of one. */
	.global	lampwright_avr_advance
lampwright_avr_advance:
	rcall	enter
	movw	r28, r22
	movw	r22, r20
	rcall	advance
	rjmp	leave

/*
 * flash lampwright_avr_patches(player *, flash at, flash lamp): carries out PATCH and FILL; gives
 * the place of the first other byte, or 0.
 */
	.global	lampwright_avr_patches
lampwright_avr_patches:
	rcall	enter
	movw	r28, r22
	movw	r22, r20
	rcall	view
	brcs	1f
	movw	r30, r28
	rcall	patches
	brcs	1f
	movw	r24, r30
	rjmp	leave_value
1:	rjmp	leave

/* Loads r4:5 and r8:9 for the lamp whose table is at r22:23. */
view:
	movw	r30, r22
	lpm	r18, Z+
	lpm	r19, Z
	movw	r26, r6
	adiw	r26, BUFFER
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
 * The entry's section: Z after its head, r17 its kind, r24:25 the bytes from Z to its
 * instructions. Changes X.
 */
section:
	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	adiw	r30, 2
	lpm	r24, Z+
	lpm	r25, Z
	movw	r26, r6
	ld	r30, X+
	ld	r31, X
	add	r30, r24
	adc	r31, r25
	lpm	r17, Z+
	lpm	r24, Z+
	lpm	r25, Z+
	ret

bad:	sec
	ret

/* Shows the next frame of the lamp whose table is at r22:23. */
advance:
	rcall	view
	brcs	bad
	ldd	r24, Y + LEFT
	tst	r24
	breq	1f
	rjmp	running
1:
	ldd	r18, Y + ROUND
	ldd	r19, Y + ROUND + 1
	clt
	cp	r18, r1
	cpc	r19, r1
	brne	2f
	set				; the entry is fresh
	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	cp	r30, r2
	cpc	r31, r3
	brsh	bad
	lpm	r18, Z+
	lpm	r19, Z+
	cp	r18, r1
	cpc	r19, r1
	brne	2f
	lpm	r24, Z+			; the program is over: bytes back
	lpm	r25, Z
	ldd	r30, Y + ENTRY
	ldd	r31, Y + ENTRY + 1
	sbiw	r24, 0
	brne	1f
	std	Y + ENTRY, r1
	std	Y + ENTRY + 1, r1
	ret				; carry clear
1:	sub	r30, r24
	sbc	r31, r25
	std	Y + ENTRY, r30
	std	Y + ENTRY + 1, r31
	lpm	r18, Z+
	lpm	r19, Z
2:	rcall	section
	movw	r14, r30
	add	r24, r30
	adc	r25, r31
	movw	r12, r24		; the instructions
	ldi	r20, 255
	ldi	r21, EMPTY
	brts	3f
	sbrc	r17, WAVE
	rjmp	clip			; goes on as it was
	ldd	r24, Y + AT
	ldd	r25, Y + AT + 1
3:	sbrs	r17, WAVE
	rjmp	8f
	movw	r30, r14
	sbrc	r17, RAW
	rjmp	7f			; plain rows: no instructions
8:	movw	r30, r24
	rcall	patches
	brcs	3f
	cpi	r16, AGAIN
	brne	4f
	movw	r30, r12
	rcall	patches
	brcs	3f
4:	adiw	r30, 1
	ldi	r20, 255
	ldi	r21, EMPTY
	sbrc	r17, WAVE
	rjmp	6f
	cpi	r16, ROWS
	brne	5f
	lpm	r20, Z+
	rjmp	7f
5:	sbrc	r16, 7
3:	rjmp	fault
	mov	r20, r16
	inc	r20
	ldi	r21, 0
	rjmp	7f
6:	movw	r30, r0			; phase 0; only r1 is sure to be 0
	mov	r30, r1
7:	std	Y + AT, r30
	std	Y + AT + 1, r31
clip:	std	Y + HELD, r21
	cp	r18, r20
	cpc	r19, r1
	brsh	1f
	mov	r20, r18
1:	tst	r20
	breq	fault
	sub	r18, r20
	sbc	r19, r1
	std	Y + ROUND, r18
	std	Y + ROUND + 1, r19
	std	Y + LEFT, r20
	tst	r21
	breq	2f
	movw	r30, r14
	rjmp	1f
running:
	ldd	r24, Y + HELD
	tst	r24
	breq	2f
	rcall	section
1:	rcall	show
	brcs	fault
2:	ldd	r24, Y + LEFT
	dec	r24
	std	Y + LEFT, r24
	brne	3f
	ldd	r24, Y + ROUND
	ldd	r25, Y + ROUND + 1
	or	r24, r25
	brne	3f
	ldd	r24, Y + ENTRY
	ldd	r25, Y + ENTRY + 1
	adiw	r24, 4
	std	Y + ENTRY, r24
	std	Y + ENTRY + 1, r25
3:	clc
	ret
fault:	sec
	ret

/*
 * Carries out PATCH and FILL from Z on; Z at the first other byte, r16 that byte. Keeps r12:13 and
 * r17 to r19. 10 cycles a byte.
 */
patches:
	cp	r30, r2
	cpc	r31, r3
	brsh	fault
	lpm	r16, Z
	cpi	r16, 0x80
	brlo	3b
	cpi	r16, 0xE0
	brsh	3b
	adiw	r30, 1
	mov	r22, r16
	andi	r22, 0x3F		; bytes of the pattern - 1
	mov	r23, r22		; bytes in all - 1
	column
	sbrc	r16, 6
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

/*
 * Reads slots (r10) and stride (r11) of the run that starts in column r24:25; X its first byte.
 * Changes r0, r20, r21.
 */
read_run:
	lpm	r10, Z+
	lpm	r11, Z+
	mov	r20, r11
	mov	r21, r10
	subi	r21, 1
	brcs	4f			; no slots
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
	adc	r27, r25
	clc
	ret
3:	sec
4:	ret

/* Shows a frame of the section at Z of kind r17. */
show:
	sbrs	r17, WAVE
	rjmp	row
	sbrc	r17, RAW
	rjmp	plain
	lpm	r22, Z+			; size
	lpm	r23, Z+
	lpm	r24, Z+			; pace
	lpm	r25, Z+
	push	r24
	push	r25
	lpm	r17, Z+			; groups
	rjmp	wave
8:	pop	r25
	pop	r24
	sec
	ret
wave:	tst	r17
	brne	1f
	pop	r25
	pop	r24
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

/* The lamp's bytes as they are. 9 cycles a byte. */
plain:	sbiw	r30, 2
	lpm	r24, Z+			; bytes of a row
	lpm	r25, Z
	cp	r8, r24
	cpc	r9, r25
	brcs	3f
	ldd	r30, Y + AT
	ldd	r31, Y + AT + 1
	movw	r26, r4
	rjmp	2f
1:	lpm	r0, Z+
	st	X+, r0
2:	sbiw	r24, 1
	brcc	1b
	std	Y + AT, r30
	std	Y + AT + 1, r31
	clc
3:	ret

/* A row of bytes or packed bits: next byte at r12:13, bits in hand r14, groups r23. */
row:
	lpm	r23, Z+
	ldd	r12, Y + AT
	ldd	r13, Y + AT + 1
	ldd	r14, Y + HELD
	sbrs	r17, FLAGGED
	rjmp	1f
	ldi	r20, 1
	ldi	r22, 0
	rcall	bits
	tst	r22
	brne	1f
	rcall	9f
	clc
	ret
1:	tst	r23
	brne	2f
	rcall	9f
	rjmp	echo
9:	std	Y + AT, r12
	std	Y + AT + 1, r13
	std	Y + HELD, r14
	ret
2:	cp	r30, r2
	cpc	r31, r3
	brsh	8f
	cp	r12, r2
	cpc	r13, r3
	brsh	8f
	column
	rcall	read_run
	brcs	8f
	clr	r15
	sbrc	r11, 7
	com	r15
	sbrc	r17, RAW
	rjmp	6f
3:	lpm	r21, Z+			; rule
	ldi	r22, 0
	mov	r20, r21
	andi	r20, WIDTH_MASK
	breq	4f
	rcall	bits
4:	lpm	r0, Z+			; bias
	add	r22, r0
	sbrc	r21, STEP
	rjmp	5f
	sbrc	r21, SCALED
	rjmp	scaled
put:	st	X, r22
	add	r26, r11
	adc	r27, r15
	dec	r10
	brne	3b
	dec	r23
	rjmp	1b
5:	ld	r0, X
	add	r22, r0
	rjmp	put
6:	movw	r18, r30
	movw	r30, r12
7:	lpm	r0, Z+			; 10 cycles a byte
	st	X, r0
	add	r26, r11
	adc	r27, r15
	dec	r10
	brne	7b
	movw	r12, r30
	movw	r30, r18
	dec	r23
	rjmp	1b
8:	sec
	ret
scaled:	column
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

/* r22: r20 more bits, the first on top. 6 cycles a bit, 10 more for each byte. */
bits:
	lsl	r14
	breq	2f
1:	rol	r22
	dec	r20
	brne	bits
	ret
2:	movw	r18, r30
	movw	r30, r12
	lpm	r14, Z+
	movw	r12, r30
	movw	r30, r18
	sec
	rol	r14
	rjmp	1b

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
	brcs	3f
	movw	r18, r30
	movw	r30, r12
	clr	r0
	sbrc	r11, 7
	com	r0
2:	ld	r20, Z
	st	X, r20
	add	r26, r11
	adc	r27, r0
	add	r30, r11
	adc	r31, r0
	dec	r10
	brne	2b
	movw	r30, r18
	rjmp	1b
4:	clc
3:	ret

#endif
