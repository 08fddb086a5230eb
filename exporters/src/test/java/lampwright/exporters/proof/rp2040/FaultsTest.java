package lampwright.exporters.proof.rp2040;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What the model does not know, or the controller does not allow, is a fault with its place. */
class FaultsTest {
  private static void faults(String reason, Executable action) {
    Rp2040Fault fault = assertThrows(Rp2040Fault.class, action);
    assertTrue(fault.reason().contains(reason), fault.getMessage());
  }

  private static void codeFaults(String reason, Thumb code) {
    Rp2040 chip = new Rp2040(TestImages.flash(code.bytes()), (pin, level, cycle) -> {});
    faults(reason, () -> chip.run(1000, () -> false));
  }

  private static Thumb code() {
    return new Thumb(TestImages.STAGE);
  }

  @Test
  void faultTellsAddressAndInstruction() {
    Rp2040 chip =
        new Rp2040(TestImages.flash(code().poke(0x40054010, 1).bytes()), (pin, level, cycle) -> {});
    Rp2040Fault fault = assertThrows(Rp2040Fault.class, () -> chip.run(1000, () -> false));
    assertEquals(0x40054010, fault.address());
    assertEquals(TestImages.STAGE + 16, fault.pc());
    assertEquals("the peripheral is held in reset", fault.reason());
  }

  @Test
  void peripheralsInResetFault() {
    Bench bench = new Bench();
    for (int address : new int[] {0x40014004, 0x4001C004, 0x50200000, 0x50000000, 0x40050000}) {
      faults("held in reset", () -> bench.read(address));
      faults("held in reset", () -> bench.write(address, 0));
    }
  }

  @Test
  void peripheralThatIsResetAgainFaultsAndForgets() {
    Bench bench = Bench.released();
    bench.write(0x40014004, 6);
    bench.write(Bench.RESETS + Bench.SET, 1 << 5);
    faults("held in reset", () -> bench.read(0x40014004));
    bench.write(Bench.RESETS + Bench.CLEAR, 1 << 5);
    assertEquals(31, bench.read(0x40014004));
  }

  @Test
  void unknownPlacesFault() {
    Bench bench = Bench.released();
    faults("nothing is known", () -> bench.read(0x60000000));
    faults("nothing is known", () -> bench.read(0x40034000));
    faults("nothing is known", () -> bench.read(0x00000000));
    faults("nothing is known", () -> bench.write(0x20042000, 1));
    faults("no register", () -> bench.read(0x4000C00C));
    faults("not modelled", () -> bench.write(0x40058000, 1));
  }

  @Test
  void reservedBitsFault() {
    faults("reserved bits", () -> new Bench().write(Bench.RESETS, 1 << 25));
  }

  @Test
  void aliasOfRegisterThatClearsByOnesFaults() {
    faults("alias", () -> Bench.released().write(0x40054034 + Bench.CLEAR, 1));
  }

  @Test
  void narrowWritesFaultWhereTheyAreNotKnown() {
    faults("less than a word", () -> new Bench().chip.bus().write8(0xD0000010, 1));
  }

  @Test
  void timerWithoutTickFaults() {
    Bench bench = Bench.released();
    faults("tick was never started", () -> bench.read(0x40054028));
    faults("tick was never started", () -> bench.write(0x40054010, 1));
  }

  @Test
  void flashFaultsUntilItIsSetUp() {
    codeFaults("before its interface", code().load(0, 0x10000000).ldr(1, 0, 0));
    codeFaults("write to flash", code().poke(0x10000000, 1));
    codeFaults(
        "nothing was written to flash",
        TestImages.setUpFlash(code()).load(0, 0x1000F001).op(0x4700));
  }

  @Test
  void flashThatIsSetUpInWaysNotKnownFaults() {
    codeFaults("written while the interface is enabled", code().poke(0x18000014, 4));
    codeFaults(
        "reading flash so is not known",
        code().poke(0x18000008, 0).poke(0x18000014, 3).poke(0x18000008, 1));
  }

  @Test
  void wrongCodeFaults() {
    codeFaults("undefined instruction", code().op(0xDE00));
    codeFaults("undefined instruction", code().op(0xB100));
    codeFaults("undefined instruction", code().op(0xF7F0, 0xA000));
    codeFaults("breakpoint", code().op(0xBE01));
    codeFaults("unaligned", code().load(0, 0x20000002).ldr(1, 0, 0));
    codeFaults("out of Thumb", code().load(0, 0x20000000).op(0x4700));
    codeFaults("nothing to run", code().load(0, 0x40000001).op(0x4700));
  }

  @Test
  void bootRomWantsItsChecksum() {
    byte[] page = new byte[256];
    Flash flash = new Flash();
    flash.write(0, page);
    faults("checksum is wrong", () -> new Rp2040(flash, (pin, level, cycle) -> {}));
    faults("flash is empty", () -> new Rp2040(new Flash(), (pin, level, cycle) -> {}));
  }

  /** CRC-32/MPEG-2 of "123456789": the catalogue of parametrised CRC algorithms; from memory. */
  @Test
  void bootRomsChecksumIsThatOfTheCatalogue() {
    byte[] check = "123456789".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    assertEquals(0x0376E6E7, BootRom.checksum(check, check.length));
  }

  @Test
  void clocksFaultUntilTheyRun() {
    Bench bench = Bench.released();
    faults("before it is stable", () -> bench.write(0x40008030, 2));
    Bench early = Bench.released();
    early.crystal();
    faults("before the crystal is stable", early::pll);
    Bench unlocked = Bench.released();
    unlocked.crystal();
    unlocked.run(20_000);
    unlocked.pll();
    faults("before it has locked", () -> unlocked.write(0x4000803C, 1));
    faults("without a start-up delay", () -> Bench.released().write(0x40024000, 0xFABAA0));
  }

  @Test
  void clockThatIsTooFastFaults() {
    Bench bench = Bench.released();
    bench.crystal();
    bench.run(20_000);
    bench.pll();
    bench.write(0x4002800C, 3 << 16 | 2 << 12);
    bench.run(20_000);
    faults("250.000 MHz", () -> bench.write(0x4000803C, 1));
  }

  @Test
  void clockInUseKeepsItsSource() {
    Bench bench = Bench.released();
    bench.clocks();
    faults("while a clock uses it", () -> bench.write(0x40024000, 0xD1EAA0));
    faults("while a clock uses it", () -> bench.write(0x40028004, 1));
    faults("while a clock uses it", () -> bench.write(Bench.RESETS + Bench.SET, 1 << 12));
  }

  @Test
  void stateMachineHasToBeRestartedBeforeItIsEnabled() {
    Bench bench = Bench.released();
    faults("without having been restarted", () -> bench.write(Bench.PIO0, 1));
    bench.write(Bench.PIO0, 1 << 4);
    bench.write(Bench.PIO0, 1);
  }

  @Test
  void stateMachineFaultsWhereNoInstructionWasWritten() {
    Bench bench = Bench.released();
    bench.write(Bench.PIO0, 1 << 4 | 1);
    faults("where no instruction was written", () -> bench.run(10));
  }

  @Test
  void emptyQueueCannotBeRead() {
    faults("while it is empty", () -> Bench.released().read(Bench.PIO0 + 0x20));
  }

  @Test
  void deepSleepAndResetFault() {
    faults("deep sleep", () -> new Bench().write(0xE000ED10, 4));
    faults("resets the controller", () -> new Bench().write(0xE000ED0C, 0x05FA0004));
  }

  @Test
  void functionsThatAreNotModelledFault() {
    faults("function 2", () -> Bench.released().pin(0, 2));
  }
}
