package lampwright.exporters.proof.rp2040;

import com.google.common.collect.ImmutableMap;

/**
 * A register as the table has it.
 *
 * @param name of the first, where it is repeated
 * @param offset of the first, from its peripheral's base, bytes
 * @param count how often it comes
 * @param stride bytes from one to the next
 * @param reset its value after a reset
 * @param fields what its bits are called
 */
record Register(
    String name,
    int offset,
    int count,
    int stride,
    int reset,
    ImmutableMap<String, BitField> fields) {

  BitField field(String wanted) {
    BitField field = fields.get(wanted);
    if (field == null) {
      throw new IllegalArgumentException(name + ": no field " + wanted);
    }
    return field;
  }

  /** The bits that are in some field. */
  int known() {
    int known = 0;
    for (BitField field : fields.values()) {
      known |= field.mask();
    }
    return known;
  }
}
