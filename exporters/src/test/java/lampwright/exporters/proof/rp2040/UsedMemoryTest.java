package lampwright.exporters.proof.rp2040;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What is told of a program's working memory. */
class UsedMemoryTest {
  private static final int RAM_END = 0x20042000;

  private static Rp2040 run(Thumb code) {
    Rp2040 chip = new Rp2040(TestImages.flash(code.b(code.here()).bytes()), (pin, level, at) -> {});
    chip.run(1000, () -> false);
    return chip;
  }

  private static Thumb code() {
    return new Thumb(TestImages.STAGE);
  }

  /** The boot ROM leaves 256 bytes at the end of memory; a stack that is shallower keeps some. */
  @Test
  void variablesAndTheDeepestStackAreCounted() {
    // mov sp, r0; push {r0-r3}; pop {r0-r3}; push {r0}; sub sp, #8; add sp, #8
    Rp2040 chip =
        run(
            code()
                .load(0, RAM_END)
                .mov(13, 0)
                .op(0xB40F, 0xBC0F, 0xB401, 0xB082, 0xB002)
                .poke(0x20000100, 7));
    assertEquals(16, chip.deepestStackBytes());
    assertEquals(0x104, chip.staticRamBytes());
  }

  @Test
  void spaceThatIsTakenFromTheStackCountsWithoutBeingWritten() {
    assertEquals(40, run(code().load(0, RAM_END).mov(13, 0).op(0xB08A)).deepestStackBytes());
  }

  @Test
  void programThatTouchesNothingHasNone() {
    Rp2040 chip = run(code());
    assertEquals(0, chip.deepestStackBytes());
    assertEquals(0, chip.staticRamBytes());
  }
}
