/*
 * Situations of Lampwright on AVR: what lampwright_situations.c does, in half the program memory. The tables
 * are told in docs/packed.md of Lampwright, the contract in lampwright_situations.h.
 *
 * Each write is proved to be in the room that there is: a number of a slot that there isn't, and a
 * condition more than memory has bits, make all dark. Reading anywhere does no harm on an AVR, so other
 * numbers are not looked at.
 *
 * Registers of lampwright_situations_frame:
 *   r1       0                        r6:7  scenes and clocks of situations
 *   r8:9     the player               r25   situations
 *   r12      number of a situation    r14   its flags           r10   whether its conditions hold
 *   r15      its conditions left      r5    kind of one         r4    its bit of memory, 0 if it has none
 *   r13, X   the bit of memory that is next, and its byte
 *   r16      not 0: one begins or ends; bit 7: damaged
 *   r17, r24 whether a situation, a condition is on (bit 0)
 *   Y        a counter or an input    Z     the tables
 *   r18...   a time, as many bytes as it has
 */
#include "lampwright_config.h"

#if defined(__AVR__) && !LAMPWRIGHT_PORTABLE && defined(LAMPWRIGHT_SITUATIONS)

#ifndef LAMPWRIGHT_USES
#define LAMPWRIGHT_USES 0xFFFF
#endif
/* What no situation of a project asks for takes no program memory. */
#define USES_TOGGLES (LAMPWRIGHT_USES & 2)
#define USES_AFTER (LAMPWRIGHT_USES & 4)
#define USES_LINGERS (LAMPWRIGHT_USES & 8)
#define USES_CLOCK (LAMPWRIGHT_USES & 16)
#define USES_ASKED (LAMPWRIGHT_USES & 64)
#define USES_SWITCHES (LAMPWRIGHT_USES & 0x100)
#define USES_CENTRES (LAMPWRIGHT_USES & 0x200)
#define USES_TAPS (LAMPWRIGHT_USES & 0x400)
#define USES_OTHERS (LAMPWRIGHT_USES & 0x800)
#define USES_ENDED (LAMPWRIGHT_USES & 0x1000)
#define USES_SLOTS (LAMPWRIGHT_USES & 0x145C)

#if defined(__AVR_HAVE_JMP_CALL__)
#define CALL call
#define JUMP jmp
#else
#define CALL rcall
#define JUMP rjmp
#endif

/* lampwright_player */
#define DATA 6
#define LAMPS 8
/* Packed data: of its flags, bit 2 is that of a show. */
#define FLAGS_AT 7
#define SCENES_AT 11
#define SCENE_BYTES 6
#define HEAD_BYTES 6
/* What calls return. */
#define NOT_PACKED 1
#define LIMIT 5
#define FAULT 6

#define TIME_BYTES LAMPWRIGHT_TIME_BYTES
#define LEFT 2
#define INPUT_BYTES (LEFT + TIME_BYTES)
#define NONE 255
/* bits of an input's kind */
#define LEARNS 0
#define ACTIVE_LOW 0
#define SWITCH 1
/* bits of a switch */
#define SAMPLE 0
#define BEFORE 1
#define ON 2
/* widths in microseconds */
#define LEAST 800
#define MOST 2200
#define LEARNT_FROM 16
/* A centre is kept as 16 for 1,400 to 216 for 1,600; less: widths learnt from so far. */
#define MIDDLE 116
#define MOST_CENTRE 216
/* bits of a situation's flags */
#define ANY 0
#define TOGGLES 1
#define AFTER 2
#define LINGERS 3
#define CLOCK 4
#define LOOPS 5
#define ASKED 6
/* kinds of a condition, and bits beside */
#define KINDS 0x3F
#define WIDTH 1
#define CONTACT 3
#define OTHER 4
#define ENDED 5
#define NOT 6
#define TAPS 7
/* bits of a situation's state */
#define IS 0
#define WAS 1
#define HELD 2
/* bit of r16 */
#define DAMAGED 7

	.section .bss.lampwright_situations,"aw",@nobits
	.global	lampwright_situations_room, lampwright_situations_room_end
lampwright_situations_room:
remembered:
	.space	LAMPWRIGHT_CONDITION_BYTES
remembered_end:
inputs:	.space	LAMPWRIGHT_INPUTS * INPUT_BYTES
#if USES_CENTRES
centres:
	.space	LAMPWRIGHT_CENTRES
#endif
states:	.space	LAMPWRIGHT_SITUATIONS
slots:	.space	LAMPWRIGHT_SLOTS * TIME_BYTES
now:	.space	4
lampwright_situations_room_end:

	.section .text.lampwright_situations_avr,"ax",@progbits

	.macro address low, high, what
	ldi	\low, lo8(\what)
	ldi	\high, hi8(\what)
	.endm

/* Compares the counter at Y with the time in r18... */
	.macro compare
	ldd	r0, Y + 0
	cp	r0, r18
#if TIME_BYTES > 1
	ldd	r0, Y + 1
	cpc	r0, r19
#endif
#if TIME_BYTES > 2
	ldd	r0, Y + 2
	cpc	r0, r20
	ldd	r0, Y + 3
	cpc	r0, r21
#endif
	.endm

	.macro load
	ldd	r18, Y + 0
#if TIME_BYTES > 1
	ldd	r19, Y + 1
#endif
#if TIME_BYTES > 2
	ldd	r20, Y + 2
	ldd	r21, Y + 3
#endif
	.endm

	.macro store
	std	Y + 0, r18
#if TIME_BYTES > 1
	std	Y + 1, r19
#endif
#if TIME_BYTES > 2
	std	Y + 2, r20
	std	Y + 3, r21
#endif
	.endm

	.macro clear
	std	Y + 0, r1
#if TIME_BYTES > 1
	std	Y + 1, r1
#endif
#if TIME_BYTES > 2
	std	Y + 2, r1
	std	Y + 3, r1
#endif
	.endm

/* Subtracts one or, where less is 255, adds one and clears the carry if that was one too many. */
	.macro step less, more
	subi	r18, \less
#if TIME_BYTES > 1
	sbci	r19, \more
#endif
#if TIME_BYTES > 2
	sbci	r20, \more
	sbci	r21, \more
#endif
	.endm

	.macro next_time
	lpm	r18, Z+
#if TIME_BYTES > 1
	lpm	r19, Z+
#endif
#if TIME_BYTES > 2
	lpm	r20, Z+
	lpm	r21, Z+
#endif
	.endm

/*
 * Gives the show of the player in r24:25 in Z and sets the carry; clears it if there is none or all is
 * dark. Keeps r19 to r21 and r23.
 */
begin:	movw	r26, r24
	adiw	r26, DATA
	ld	r30, X+
	ld	r31, X+
	ld	r18, X			; lamps
	adiw	r30, FLAGS_AT
	lpm	r22, Z
	lsr	r22
	lsr	r22
	lsr	r22
	brcc	1f
	adiw	r30, SCENES_AT - FLAGS_AT
	lpm	r22, Z
	cp	r1, r18
	brcc	1f
	JUMP	lampwright_avr_scene
1:	ret

/* The state of situation r18: its place in Y, itself in r22. */
state:	address	r28, r29, states
	add	r28, r18
	adc	r29, r1
	ld	r22, Y
	ret

/* The counter that is named next in Y, and the time behind it in r18... */
slot:	lpm	r18, Z+
	cpi	r18, LAMPWRIGHT_SLOTS
	brlo	1f
	ori	r16, 1 << DAMAGED
	ldi	r18, 0
1:	rcall	counter
	next_time
	ret

/* Counter r18 in Y. */
counter:
	address	r28, r29, slots
	.rept	TIME_BYTES
	add	r28, r18
	adc	r29, r1
	.endr
	ret

/* Counts Y down to 0; the zero flag is set if it is 0 then. */
down:	load
	step	1, 0
	brcs	1f
	store
#if TIME_BYTES > 1
	or	r18, r19
#endif
#if TIME_BYTES > 2
	or	r18, r20
	or	r18, r21
#endif
	tst	r18
	ret
1:	clr	r18
	ret

/* Counts Y up; the carry is cleared if it is at its most and stays. */
up:	load
	step	255, 255
	brcc	1f
	store
1:	ret

/*
 * uint8_t lampwright_situations_open(player *)
 */
	.global	lampwright_situations_open
lampwright_situations_open:
	movw	r20, r24
	address	r30, r31, lampwright_situations_room
	ldi	r18, hi8(lampwright_situations_room_end)
1:	st	Z+, r1
	cpi	r30, lo8(lampwright_situations_room_end)
	cpc	r31, r18
	brne	1b
	rcall	begin
	ldi	r24, NOT_PACKED
	brcc	2f
	ldi	r24, LIMIT
	lpm	r18, Z+
	cpi	r18, TIME_BYTES
	brne	2f
	.irp	most, LAMPWRIGHT_INPUTS, LAMPWRIGHT_CENTRES, LAMPWRIGHT_SITUATIONS, LAMPWRIGHT_SLOTS, LAMPWRIGHT_CONDITION_BYTES
	lpm	r18, Z+
	.if	\most < 255
	cpi	r18, \most + 1
	brsh	2f
	.endif
	.endr
	ldi	r24, 0
	ret
2:	push	r24
	movw	r24, r20
	CALL	lampwright_player_dark
	pop	r24
	ret

/*
 * void lampwright_situations_input(const player *, uint8_t input, uint16_t reading)
 */
	.global	lampwright_situations_input
lampwright_situations_input:
	mov	r23, r22
	rcall	begin
	brcc	1f
	cpi	r23, LAMPWRIGHT_INPUTS
	brlo	2f
1:	ret
2:	adiw	r30, HEAD_BYTES
	address	r26, r27, inputs
3:	subi	r23, 1
	brcs	4f
	adiw	r30, 1 + TIME_BYTES
	adiw	r26, INPUT_BYTES
	rjmp	3b
4:	lpm	r18, Z+			; kind
#if USES_SWITCHES
	sbrs	r18, SWITCH
	rjmp	5f
	cp	r1, r20			; a high level turns ACTIVE_LOW, bit 0, over
	adc	r18, r1
	bst	r18, ACTIVE_LOW
	ld	r19, X
	bld	r19, SAMPLE
	st	X, r19
	ret
5:
#endif
	movw	r24, r20
	subi	r24, lo8(LEAST)
	sbci	r25, hi8(LEAST)
	ldi	r19, hi8(MOST - LEAST + 1)
	cpi	r24, lo8(MOST - LEAST + 1)
	cpc	r25, r19
	brsh	1b
	ldi	r19, MIDDLE
#if USES_CENTRES
	sbrs	r18, LEARNS
	rjmp	8f
	lsr	r18
	lsr	r18
	cpi	r18, LAMPWRIGHT_CENTRES
	brsh	1b
	movw	r24, r30
	address	r30, r31, centres
	add	r30, r18
	adc	r31, r1
	ld	r19, Z
	cpi	r19, LEARNT_FROM
	brsh	7f
	ld	r18, X+			; their sum
	ld	r22, X
	add	r18, r20
	adc	r22, r21
	st	X, r22
	st	-X, r18
	inc	r19
	cpi	r19, LEARNT_FROM
	brlo	6f
	ldi	r19, MIDDLE
	subi	r18, lo8(LEARNT_FROM * (1500 - MIDDLE))
	sbci	r22, hi8(LEARNT_FROM * (1500 - MIDDLE))
	cpi	r22, 16			; a 16th of it in a byte
	brsh	6f
	swap	r18
	andi	r18, 15
	swap	r22
	or	r18, r22
	cpi	r18, LEARNT_FROM
	brlo	6f
	cpi	r18, MOST_CENTRE + 1
	brsh	6f
	mov	r19, r18
6:	st	Z, r19
	cpi	r19, LEARNT_FROM
	brlo	9f
7:	movw	r30, r24
8:
#endif
	subi	r20, lo8(-MIDDLE)
	sbci	r21, hi8(-MIDDLE)
	sub	r20, r19
	sbc	r21, r1
	st	X+, r20
	st	X+, r21
	next_time
	step	255, 255
	st	X+, r18
#if TIME_BYTES > 1
	st	X+, r19
#endif
#if TIME_BYTES > 2
	st	X+, r20
	st	X+, r21
#endif
9:	ret

/* Whether a condition is on in this frame. */
condition:
	lpm	r5, Z+
	lpm	r18, Z+			; subject
	mov	r19, r5
	andi	r19, KINDS
	clr	r4
	cpi	r19, WIDTH
#if USES_TAPS
	breq	1f
	sbrs	r5, TAPS
	rjmp	2f
1:
#else
	brne	2f
#endif
	mov	r4, r13
	cpi	r26, lo8(remembered_end)
	brne	2f
	clr	r4
	ori	r16, 1 << DAMAGED
2:	clt				; whether it was on
	ld	r22, X
	and	r22, r4
	breq	3f
	set
3:	ldi	r24, 0
#if USES_OTHERS
	cpi	r19, OTHER
	brsh	other
#endif
	address	r28, r29, inputs
4:	subi	r18, 1
	brcs	5f
	adiw	r28, INPUT_BYTES
	rjmp	4b
5:	ldd	r22, Y + 0
#if USES_SWITCHES
	cpi	r19, CONTACT
	brne	6f
	sbrc	r22, ON
	ldi	r24, 1
	rjmp	known
6:
#endif
	ldd	r20, Y + LEFT
#if TIME_BYTES > 1
	ldd	r18, Y + LEFT + 1
	or	r20, r18
#endif
#if TIME_BYTES > 2
	ldd	r18, Y + LEFT + 2
	or	r20, r18
	ldd	r18, Y + LEFT + 3
	or	r20, r18
#endif
	cpi	r19, WIDTH
	breq	7f
	brlo	known			; never
	cpi	r20, 1			; lost
	adc	r24, r1
	rjmp	known
7:	ldd	r23, Y + 1
	lpm	r18, Z+			; by how much it is too narrow
	lpm	r19, Z+
	sub	r18, r22
	sbc	r19, r23
	lpm	r21, Z+			; too wide
	sub	r22, r21
	lpm	r21, Z+
	sbc	r23, r21
	lpm	r28, Z+			; and by how much it may be
	lpm	r29, Z+
	brts	8f
	ldi	r28, 0
	ldi	r29, 0
8:	cp	r28, r18
	cpc	r29, r19
	brlt	known
	cp	r28, r22
	cpc	r29, r23
	brlt	known
	cpse	r20, r1
	ldi	r24, 1
#if USES_OTHERS
	rjmp	known
other:	rcall	state
	mov	r24, r22
#if USES_ENDED
	cpi	r19, ENDED
	brlo	known
	com	r24
	rcall	slot
	compare				; still more than that
	breq	9f
	brsh	known
9:	ldi	r24, 0
#endif
#endif
known:	sbrc	r5, NOT
	com	r24
	tst	r4
	breq	1f
	ld	r22, X
	or	r22, r4
	sbrs	r24, 0
	eor	r22, r4
	st	X, r22
	lsl	r13
	brne	1f
	rol	r13
	adiw	r26, 1
1:
#if USES_TAPS
	sbrs	r5, TAPS
	ret
/* Counts short spells: on in the frame after the last in which there were so many. */
	rcall	slot			; frames of the spell; the longest
	movw	r2, r28
	clr	r4
	sbrc	r24, 0
	rjmp	2f
	brtc	3f
	compare				; goes off
	breq	9f
	brlo	9f
	inc	r4			; too long
9:	clear
	rjmp	4f
2:	brts	3f
	clear				; goes on
3:	rcall	up
4:	rcall	slot			; spells; frames of the pause
	lpm	r23, Z+			; asked for
	sbrc	r24, 0
	rjmp	7f
	ld	r22, Y
	brtc	6f
	inc	r22
	brne	5f
	dec	r22
5:	sbrc	r4, 0
	ldi	r22, 0
	st	Y, r22
6:	tst	r22
	breq	8f
	movw	r4, r28
	movw	r28, r2
	compare
	brlo	7f
	movw	r28, r4
	st	Y, r1
	ldi	r24, 1
	cpse	r22, r23
7:	ldi	r24, 0
8:
#endif
	ret

/*
 * uint8_t lampwright_situations_frame(player *)
 */
	.global	lampwright_situations_frame
lampwright_situations_frame:
	CALL	lampwright_avr_enter
	movw	r8, r24
	rcall	begin
	ldi	r24, FAULT
	brcs	1f
	JUMP	lampwright_avr_leave
1:	adiw	r30, 1
	lpm	r17, Z+			; inputs
	adiw	r30, 1
	lpm	r25, Z
	adiw	r30, HEAD_BYTES - 3
	address	r28, r29, inputs
	rjmp	4f
2:
#if USES_SWITCHES
	lpm	r18, Z
	sbrs	r18, SWITCH
	rjmp	3f
	ld	r18, Y			; on or off as the sample says, if it is as the one before
	mov	r19, r18
	lsr	r19
	eor	r19, r18
	bst	r18, SAMPLE
	sbrs	r19, 0
	bld	r18, ON
	bld	r18, BEFORE
	st	Y, r18
3:
#endif
	adiw	r30, 1 + TIME_BYTES
	adiw	r28, LEFT
	rcall	down
	adiw	r28, TIME_BYTES
4:	subi	r17, 1
	brcc	2b
	movw	r6, r30
	add	r30, r25
	adc	r31, r1
	add	r30, r25
	adc	r31, r1
	address	r26, r27, remembered
	clr	r13
	inc	r13
	clr	r12
	ldi	r16, 0
situation:
	lpm	r14, Z+
	lpm	r15, Z+
	clr	r10
	inc	r15
	rjmp	2f
1:	rcall	condition		; each at every frame: one that isn't looked at would miss taps
	sbrs	r14, ANY
	com	r24
	or	r10, r24
2:	dec	r15
	brne	1b
	mov	r17, r10		; with ANY whether one is on; else whether one is off
	sbrs	r14, ANY
	com	r17
	andi	r17, 1
#if USES_AFTER
	sbrs	r14, AFTER
	rjmp	3f
	rcall	slot
	sbrs	r17, 0
	rjmp	2f
	compare
	brsh	3f
	ldi	r17, 0
	rcall	up
	rjmp	3f
2:	clear
3:
#endif
#if USES_LINGERS
	sbrs	r14, LINGERS
	rjmp	4f
	rcall	slot
	sbrs	r17, 0
	rjmp	3f
	store
	rjmp	4f
3:	rcall	down
	breq	4f
	ldi	r17, 1
4:
#endif
	mov	r18, r12
	rcall	state
#if USES_TOGGLES
	sbrs	r14, TOGGLES
	rjmp	5f
	bst	r17, 0
	sbrc	r22, HELD
	ldi	r17, 0
	eor	r17, r22
	andi	r17, 1 << IS
	bld	r17, HELD
5:
#endif
	bst	r22, IS
	bld	r17, WAS
	st	Y, r17
	eor	r22, r17
	or	r16, r22
#if USES_CLOCK
	sbrs	r14, CLOCK
	rjmp	8f
	rcall	slot
	sbrs	r17, IS
	rjmp	8f
	brtc	6f			; begins
	compare
	brlo	7f
	sbrs	r14, LOOPS
	rjmp	8f
6:	clear
	rjmp	8f
7:	rcall	up
8:
#endif
#if USES_ASKED
	sbrs	r14, ASKED
	rjmp	2f
	rcall	slot
	sbrc	r17, IS
	rjmp	2f
	brtc	1f
	store				; ends
	rjmp	2f
1:	rcall	down
2:
#endif
	inc	r12
	cp	r12, r25
	brsh	1f
	rjmp	situation
1:	sbrc	r16, DAMAGED
	rjmp	dark
	tst	r16
	brne	2f
	rjmp	6f
/* Starts the lamps that another situation has now: lamp r14, of which r15 are left. */
2:	movw	r26, r8
	adiw	r26, LAMPS
	ld	r15, X
	clr	r14
1:	ldi	r20, NONE		; has it
	ldi	r21, NONE		; had it
	lpm	r19, Z+
	rjmp	3f
2:	lpm	r18, Z+
	rcall	state
	sbrc	r22, IS
	mov	r20, r18
	sbrc	r22, WAS
	mov	r21, r18
3:	subi	r19, 1
	brcc	2b
	cp	r20, r21
	breq	5f
	movw	r10, r30
	ldi	r22, 0			; no program
	ldi	r23, 0
	cpi	r20, NONE
	breq	4f
	rcall	due
	movw	r22, r30
4:	movw	r20, r22
	mov	r22, r14
	movw	r24, r8
	CALL	lampwright_avr_lamp
	tst	r24
	breq	dark
	movw	r30, r10
5:	inc	r14
	dec	r15
	brne	1b
6:	address	r28, r29, now
	ldi	r18, 4
	sec
7:	ld	r19, Y
	adc	r19, r1
	st	Y+, r19
	dec	r18
	brne	7b
	movw	r24, r8
	CALL	lampwright_player_frame
	JUMP	lampwright_avr_leave
dark:	movw	r24, r8
	CALL	lampwright_player_dark
	JUMP	lampwright_avr_leave

/* What situation r20 shows: the place of lamp r14's program in Z, its frame in r16 to r19. */
due:	movw	r30, r6
	add	r30, r20
	adc	r31, r1
	add	r30, r20
	adc	r31, r1
	lpm	r22, Z+			; scene
	lpm	r23, Z			; clock
	movw	r24, r8
	CALL	lampwright_avr_scene
	adiw	r30, SCENE_BYTES
	add	r30, r14
	adc	r31, r1
	add	r30, r14
	adc	r31, r1
#if USES_CLOCK
	cpi	r23, NONE
	breq	1f
	mov	r18, r23
	rcall	counter
	ldd	r16, Y + 0
	ldi	r17, 0
	ldi	r18, 0
	ldi	r19, 0
#if TIME_BYTES > 1
	ldd	r17, Y + 1
#endif
#if TIME_BYTES > 2
	ldd	r18, Y + 2
	ldd	r19, Y + 3
#endif
	ret
1:
#endif
	address	r28, r29, now		; the player goes on by itself in one that loops
	ldd	r16, Y + 0
	ldd	r17, Y + 1
	ldd	r18, Y + 2
	ldd	r19, Y + 3
	ret

#endif
