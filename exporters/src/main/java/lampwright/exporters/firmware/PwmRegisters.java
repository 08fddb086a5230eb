package lampwright.exporters.firmware;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import lampwright.engine.rig.Pin;

/**
 * Where the simulator finds a PWM pin's duty, and what its timer must be set to: addresses in data
 * space of the duty register, direction bit and compare output bit, from the datasheets' register
 * summaries. The timers run 8-bit phase-correct PWM at a 64th of the clock; the ATtiny85's timer 1
 * has channel B in PWM mode with 255 on top.
 */
final class PwmRegisters {
  private static final ImmutableMap<String, String> DUTY =
      ImmutableMap.<String, String>builder()
          .put("atmega328p:PD6", "ocr=0x47,ddr=0x2A.6,com=0x44.7")
          .put("atmega328p:PD5", "ocr=0x48,ddr=0x2A.5,com=0x44.5")
          .put("atmega328p:PB1", "ocr=0x88,ddr=0x24.1,com=0x80.7")
          .put("atmega328p:PB2", "ocr=0x8A,ddr=0x24.2,com=0x80.5")
          .put("atmega328p:PB3", "ocr=0xB3,ddr=0x24.3,com=0xB0.7")
          .put("atmega328p:PD3", "ocr=0xB4,ddr=0x2A.3,com=0xB0.5")
          .put("atmega32u4:PB7", "ocr=0x47,ddr=0x24.7,com=0x44.7")
          .put("atmega32u4:PD0", "ocr=0x48,ddr=0x2A.0,com=0x44.5")
          .put("atmega32u4:PB5", "ocr=0x88,ddr=0x24.5,com=0x80.7")
          .put("atmega32u4:PB6", "ocr=0x8A,ddr=0x24.6,com=0x80.5")
          .put("atmega32u4:PC6", "ocr=0x98,ddr=0x27.6,com=0x90.7")
          .put("attiny85:PB0", "ocr=0x49,ddr=0x37.0,com=0x4A.7")
          .put("attiny85:PB1", "ocr=0x48,ddr=0x37.1,com=0x4A.5")
          .put("attiny85:PB4", "ocr=0x4B,ddr=0x37.4,com=0x4C.5")
          .buildOrThrow();

  private PwmRegisters() {}

  /** The duty register, direction bit and compare output bit of a pin with PWM. */
  static String duty(Board board, Pin pin) {
    String known = DUTY.get(board.controller().id() + ":" + pin.name());
    if (known == null) {
      throw new IllegalArgumentException("pin: " + pin.name() + ": needs a pin with PWM");
    }
    return known;
  }

  /** The registers that the timer of a pin with PWM must hold. */
  static List<String> timer(Board board, Pin pin) {
    int timer = board.pwmTimers().get(pin);
    if (board.controller().id().equals("attiny85")) {
      return timer == 1
          ? List.of("0x4C/0x40=0x40", "0x50=0x07", "0x4D=0xFF")
          : List.of("0x4A/0x03=0x01", "0x53=0x03");
    }
    return switch (timer) {
      case 0 -> List.of("0x44/0x03=0x01", "0x45=0x03");
      case 2 -> List.of("0xB0/0x03=0x01", "0xB1=0x04");
      case 3 -> List.of("0x90/0x03=0x01", "0x91=0x03");
      default -> List.of("0x80/0x03=0x01", "0x81=0x03");
    };
  }
}
