/*
 * The second boot stage. The boot ROM has put these 252 bytes into RAM and found the CRC-32 behind
 * them right. They set the flash interface to plain reads (command 03h, one data line, an address of
 * 24 bits, a quarter of the system clock: 31.25 MHz at 125 MHz, which every flash chip can do), copy
 * the program from flash to the beginning of RAM, and start it there if its CRC-32 (IEEE 802.3, as
 * in zip files) is right. If not, the controller sleeps, and no pin is touched.
 *
 *   0x10000000   second boot stage, 252 bytes, CRC-32
 *   0x10000100   words of the program
 *   0x10000104   CRC-32 of the program
 *   0x10000108   the program: its first words are the stack's top and where it starts
 */
#define SSI 0x18000000
#define SSI_CTRLR0 0x00
#define SSI_CTRLR1 0x04
#define SSI_SSIENR 0x08
#define SSI_SER 0x10
#define SSI_BAUDR 0x14
#define SSI_SPI_CTRLR0 0xF4

#define DIVIDER 4
#define FRAMES_OF_32_BITS_EEPROM_READ (31 << 16 | 3 << 8)
#define READ_03H_24_BITS (0x03 << 24 | 2 << 8 | 6 << 2)

#define PROGRAM 0x10000100
#define MOST_WORDS ((0x8000 - 0x108) / 4)
#define RAM 0x20000000
#define VTOR 0xE000ED08
#define POLYNOMIAL 0xEDB88320

	.syntax unified
	.cpu cortex-m0plus
	.thumb
	.section .boot, "ax", %progbits
	.global lampwright_boot
	.thumb_func
lampwright_boot:
	ldr r0, =SSI
	movs r1, #0
	str r1, [r0, #SSI_SSIENR]
	str r1, [r0, #SSI_CTRLR1]
	movs r1, #DIVIDER
	str r1, [r0, #SSI_BAUDR]
	ldr r1, =FRAMES_OF_32_BITS_EEPROM_READ
	str r1, [r0, #SSI_CTRLR0]
	ldr r1, =READ_03H_24_BITS
	movs r2, #SSI_SPI_CTRLR0
	str r1, [r0, r2]
	movs r1, #1
	str r1, [r0, #SSI_SER]
	str r1, [r0, #SSI_SSIENR]

	ldr r0, =PROGRAM
	ldmia r0!, {r1, r2}
	ldr r3, =RAM
	movs r4, #0
	mvns r4, r4
	ldr r5, =POLYNOMIAL
	cmp r1, #0
	beq dark
	ldr r7, =MOST_WORDS
	cmp r1, r7
	bhi dark
next_word:
	ldmia r0!, {r6}
	stmia r3!, {r6}
	eors r4, r6
	movs r7, #32
next_bit:
	lsrs r4, r4, #1
	bcc 1f
	eors r4, r5
1:	subs r7, #1
	bne next_bit
	subs r1, #1
	bne next_word

	mvns r4, r4
	cmp r4, r2
	bne dark
	ldr r0, =RAM
	ldr r1, =VTOR
	str r0, [r1]
	ldmia r0!, {r1, r2}
	msr msp, r1
	bx r2

dark:
	wfi
	b dark

	.pool
