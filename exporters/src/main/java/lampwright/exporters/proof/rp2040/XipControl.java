package lampwright.exporters.proof.rp2040;

/** The cache before flash; it answers, and changes nothing. */
final class XipControl extends Block {
  private final BitField enable = field("CTRL", "EN");
  private final BitField off = field("CTRL", "POWER_DOWN");
  private int control;

  XipControl(Rp2040 chip) {
    super(chip, "XIP_CTRL", -1);
    reads("CTRL", () -> control);
    writes(
        "CTRL",
        value -> {
          if (!enable.isSet(value) || off.isSet(value)) {
            throw chip.fault(base(), "XIP_CTRL CTRL: flash without its cache is not modelled");
          }
          control = value;
        });
    reads("FLUSH", () -> 0);
    writes("FLUSH", value -> {});
    reads("STAT", () -> field("STAT", "FLUSH_READY").mask() | field("STAT", "FIFO_EMPTY").mask());
  }

  @Override
  void reset() {
    control = resetValue("CTRL");
  }
}
