#ifndef LAMPWRIGHT_RP2040_REGISTERS_H
#define LAMPWRIGHT_RP2040_REGISTERS_H

#include <stdint.h>

/*
 * The registers of the RP2040 that the driver uses: addresses and bits from the maker's SVD file,
 * values of the fields from the datasheet. Writing to an address + 0x2000 sets the bits that are 1,
 * + 0x3000 clears them.
 */
#ifndef REGISTER
#define REGISTER(address) (*(volatile uint32_t *)(uintptr_t)(address))
#endif
#define SET_BITS(address) REGISTER((address) + 0x2000UL)
#define CLEAR_BITS(address) REGISTER((address) + 0x3000UL)

#define RESETS_RESET 0x4000C000UL
#define RESETS_RESET_DONE 0x4000C008UL
#define RESET_DMA (1UL << 2)
#define RESET_IO_BANK0 (1UL << 5)
#define RESET_PADS_BANK0 (1UL << 8)
#define RESET_PIO0 (1UL << 10)
#define RESET_PIO1 (1UL << 11)
#define RESET_PLL_SYS (1UL << 12)
#define RESET_PWM (1UL << 14)
#define RESET_TIMER (1UL << 21)
#define RESET_UART(number) (1UL << (22 + (number)))

#define CLK_REF_CTRL 0x40008030UL
#define CLK_REF_SELECTED 0x40008038UL
#define CLK_REF_FROM_ROSC 0UL
#define CLK_REF_FROM_XOSC 2UL
#define CLK_SYS_CTRL 0x4000803CUL
#define CLK_SYS_SELECTED 0x40008044UL
#define CLK_SYS_FROM_REF 0UL
#define CLK_SYS_FROM_AUX 1UL
#define CLK_SYS_AUX_PLL_SYS (0UL << 5)
#define CLK_PERI_CTRL 0x40008048UL
#define CLK_PERI_FROM_SYS (0UL << 5)
#define CLK_PERI_ENABLE (1UL << 11)

#define XOSC_CTRL 0x40024000UL
#define XOSC_STATUS 0x40024004UL
#define XOSC_STARTUP 0x4002400CUL
#define XOSC_1_TO_15_MHZ 0xAA0UL
#define XOSC_ENABLE (0xFABUL << 12)
#define XOSC_STABLE (1UL << 31)

#define PLL_SYS_CS 0x40028000UL
#define PLL_SYS_PWR 0x40028004UL
#define PLL_SYS_FBDIV_INT 0x40028008UL
#define PLL_SYS_PRIM 0x4002800CUL
#define PLL_LOCK (1UL << 31)
#define PLL_PD (1UL << 0)
#define PLL_POSTDIVPD (1UL << 3)
#define PLL_VCOPD (1UL << 5)

#define WATCHDOG_TICK 0x4005802CUL
#define WATCHDOG_TICK_ENABLE (1UL << 9)

#define TIMER_ALARM0 0x40054010UL
#define TIMER_ARMED 0x40054020UL
#define TIMER_TIMERAWL 0x40054028UL
#define TIMER_INTR 0x40054034UL
#define TIMER_INTE 0x40054038UL
#define NVIC_ISER 0xE000E100UL
#define NVIC_ICPR 0xE000E280UL
#define IRQ_TIMER_0 (1UL << 0)
#define IRQ_PIO0_0 (1UL << 7)
#define IRQ_PIO1_0 (1UL << 9)

#define IO_BANK0_CTRL(pin) (0x40014004UL + 8UL * (pin))
#define FUNCTION_UART 2UL
#define FUNCTION_PWM 4UL
#define FUNCTION_PIO0 6UL
#define FUNCTION_NONE 31UL
#define PADS_BANK0_PAD(pin) (0x4001C004UL + 4UL * (pin))
#define PAD_SCHMITT (1UL << 1)
#define PAD_PULL_DOWN (1UL << 2)
#define PAD_PULL_UP (1UL << 3)
#define PAD_4_MILLIAMPS (1UL << 4)
#define PAD_12_MILLIAMPS (3UL << 4)
#define PAD_INPUT (1UL << 6)
#define PAD_NO_OUTPUT (1UL << 7)

#define SIO_GPIO_IN 0xD0000004UL

#define UART(number) (0x40034000UL + 0x4000UL * (number))
#define UART_DR(number) (UART(number) + 0x00UL)
#define UART_FR(number) (UART(number) + 0x18UL)
#define UART_IBRD(number) (UART(number) + 0x24UL)
#define UART_FBRD(number) (UART(number) + 0x28UL)
#define UART_LCR_H(number) (UART(number) + 0x2CUL)
#define UART_CR(number) (UART(number) + 0x30UL)
#define UART_DAMAGED (15UL << 8) /* frame, parity, break, overrun */
#define UART_RX_EMPTY (1UL << 4)
#define UART_TX_FULL (1UL << 5)
#define UART_FIFOS (1UL << 4)
#define UART_8_BITS (3UL << 5)
#define UART_ENABLE (1UL << 0)
#define UART_TX_ENABLE (1UL << 8)
#define UART_RX_ENABLE (1UL << 9)

#define PWM_SLICE(slice) (0x40050000UL + 0x14UL * (slice))
#define PWM_CSR(slice) (PWM_SLICE(slice) + 0x00UL)
#define PWM_DIV(slice) (PWM_SLICE(slice) + 0x04UL)
#define PWM_CTR(slice) (PWM_SLICE(slice) + 0x08UL)
#define PWM_CC(slice) (PWM_SLICE(slice) + 0x0CUL)
#define PWM_TOP(slice) (PWM_SLICE(slice) + 0x10UL)
#define PWM_ENABLE (1UL << 0)

#define DMA_CHANNEL(channel) (0x50000000UL + 0x40UL * (channel))
#define DMA_READ_ADDR(channel) (DMA_CHANNEL(channel) + 0x00UL)
#define DMA_WRITE_ADDR(channel) (DMA_CHANNEL(channel) + 0x04UL)
#define DMA_TRANS_COUNT(channel) (DMA_CHANNEL(channel) + 0x08UL)
#define DMA_CTRL_TRIG(channel) (DMA_CHANNEL(channel) + 0x0CUL)
#define DMA_ENABLE (1UL << 0)
#define DMA_SIZE_BYTE (0UL << 2)
#define DMA_INCR_READ (1UL << 4)
#define DMA_CHAIN_TO(channel) ((channel) << 11)
#define DMA_REQUEST(number) ((number) << 15)
#define DMA_IRQ_QUIET (1UL << 21)
#define DMA_BUSY (1UL << 24)

#define PIO(number) (0x50200000UL + 0x100000UL * (number))
#define PIO_CTRL(pio) (PIO(pio) + 0x000UL)
#define PIO_FSTAT(pio) (PIO(pio) + 0x004UL)
#define PIO_TXF(pio, machine) (PIO(pio) + 0x010UL + 4UL * (machine))
#define PIO_RXF(pio, machine) (PIO(pio) + 0x020UL + 4UL * (machine))
#define PIO_INSTR_MEM(pio, place) (PIO(pio) + 0x048UL + 4UL * (place))
#define PIO_IRQ0_INTE(pio) (PIO(pio) + 0x12CUL)
#define PIO_MACHINE(pio, machine) (PIO(pio) + 0x18UL * (machine))
#define PIO_CLKDIV(pio, machine) (PIO_MACHINE(pio, machine) + 0x0C8UL)
#define PIO_EXECCTRL(pio, machine) (PIO_MACHINE(pio, machine) + 0x0CCUL)
#define PIO_SHIFTCTRL(pio, machine) (PIO_MACHINE(pio, machine) + 0x0D0UL)
#define PIO_INSTR(pio, machine) (PIO_MACHINE(pio, machine) + 0x0D8UL)
#define PIO_PINCTRL(pio, machine) (PIO_MACHINE(pio, machine) + 0x0DCUL)
#define PIO_ENABLE(machine) (1UL << (machine))
#define PIO_RESTART(machine) (1UL << (4 + (machine)))
#define PIO_CLKDIV_RESTART(machine) (1UL << (8 + (machine)))
#define PIO_RX_EMPTY(machine) (1UL << (8 + (machine)))
#define PIO_RX_WAITS(machine) (1UL << (machine))
#define PIO_REQUEST_TX(pio, machine) (8UL * (pio) + (machine))

#endif
