package lampwright.exporters.proof.rp2040;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Addresses, values after reset and fields: a second transcription of the maker's SVD file. */
class RegisterTableTest {
  @ParameterizedTest
  @CsvSource({
    "RESETS, RESET, 4000C000, 01FFFFFF, TIMER, 00200000",
    "CLOCKS, CLK_SYS_CTRL, 4000803C, 0, AUXSRC, 000000E0",
    "XOSC, STARTUP, 4002400C, 0, DELAY, 00003FFF",
    "PLL_SYS, PRIM, 4002800C, 00077000, POSTDIV1, 00070000",
    "WATCHDOG, TICK, 4005802C, 200, CYCLES, 000001FF",
    "TIMER, TIMERAWL, 40054028, 0, TIMERAWL, FFFFFFFF",
    "IO_BANK0, GPIO0_CTRL, 40014004, 1F, FUNCSEL, 0000001F",
    "PADS_BANK0, GPIO0, 4001C004, 56, OD, 00000080",
    "SIO, GPIO_OUT_XOR, D000001C, 0, GPIO_OUT_XOR, 3FFFFFFF",
    "PIO0, SM0_SHIFTCTRL, 502000D0, 000C0000, FJOIN_TX, 40000000",
    "DMA, CH0_CTRL_TRIG, 5000000C, 0, TREQ_SEL, 001F8000",
    "PWM, CH0_TOP, 40050010, FFFF, CH0_TOP, 0000FFFF",
    "SSI, SPI_CTRLR0, 180000F4, 03000000, XIP_CMD, FF000000",
    "PPB, NVIC_ISER, E000E100, 0, SETENA, FFFFFFFF",
  })
  void registerIsAsTheMakerSays(
      String peripheral, String name, String address, String reset, String field, String mask) {
    Register register = RegisterTable.get(peripheral, name);
    assertEquals(
        Integer.parseUnsignedInt(address, 16), RegisterTable.base(peripheral) + register.offset());
    assertEquals(Integer.parseUnsignedInt(reset, 16), register.reset());
    assertEquals(Integer.parseUnsignedInt(mask, 16), register.field(field).mask());
  }
}
