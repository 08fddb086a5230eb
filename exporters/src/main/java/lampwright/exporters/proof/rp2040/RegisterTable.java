package lampwright.exporters.proof.rp2040;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableListMultimap;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableTable;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The registers of the controller, from the table that comes with the program. Immutable. */
final class RegisterTable {
  private static final String FILE = "rp2040-registers.csv";
  private static final String HEADING = "peripheral,base,register,offset,count,stride,reset,fields";
  private static final RegisterTable ALL = read();

  private final ImmutableTable<String, String, Register> registers;
  private final ImmutableMap<String, Integer> bases;
  private final ImmutableListMultimap<String, Register> byPeripheral;

  private RegisterTable(
      ImmutableListMultimap<String, Register> byPeripheral, ImmutableMap<String, Integer> bases) {
    ImmutableTable.Builder<String, String, Register> table = ImmutableTable.builder();
    byPeripheral.forEach(
        (peripheral, register) -> table.put(peripheral, register.name(), register));
    this.registers = table.buildOrThrow();
    this.byPeripheral = byPeripheral;
    this.bases = bases;
  }

  /** A register of a peripheral. */
  static Register get(String peripheral, String name) {
    Register register = ALL.registers.get(peripheral, name);
    if (register == null) {
      throw new IllegalArgumentException(FILE + ": no " + peripheral + " " + name);
    }
    return register;
  }

  /** All registers of a peripheral. */
  static List<Register> of(String peripheral) {
    return ALL.byPeripheral.get(peripheral);
  }

  /** Where a peripheral's registers begin. */
  static int base(String peripheral) {
    return Objects.requireNonNull(ALL.bases.get(peripheral), peripheral);
  }

  private static RegisterTable read() {
    InputStream file = Objects.requireNonNull(RegisterTable.class.getResourceAsStream(FILE), FILE);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(file, StandardCharsets.UTF_8))) {
      List<String> lines = reader.lines().filter(line -> !line.startsWith("#")).toList();
      if (!lines.get(0).equals(HEADING)) {
        throw new IllegalStateException(FILE + ": must begin with " + HEADING);
      }
      ImmutableListMultimap.Builder<String, Register> registers = ImmutableListMultimap.builder();
      ImmutableMap.Builder<String, Integer> bases = ImmutableMap.builder();
      for (String line : lines.subList(1, lines.size())) {
        List<String> cell = Splitter.on(',').splitToList(line);
        registers.put(cell.get(0), register(cell));
        bases.put(cell.get(0), Integer.parseUnsignedInt(cell.get(1).substring(2), 16));
      }
      return new RegisterTable(registers.build(), bases.buildKeepingLast());
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Register register(List<String> cell) {
    ImmutableMap.Builder<String, BitField> fields = ImmutableMap.builder();
    for (String word : Splitter.on(' ').split(cell.get(7))) {
      int bracket = word.indexOf('[');
      int colon = word.indexOf(':');
      fields.put(
          word.substring(0, bracket),
          new BitField(
              Integer.parseInt(word.substring(bracket + 1, colon)),
              Integer.parseInt(word.substring(colon + 1, word.length() - 1))));
    }
    return new Register(
        cell.get(2),
        Integer.parseInt(cell.get(3).substring(2), 16),
        Integer.parseInt(cell.get(4)),
        Integer.parseInt(cell.get(5)),
        Integer.parseUnsignedInt(cell.get(6).substring(2), 16),
        fields.buildOrThrow());
  }
}
