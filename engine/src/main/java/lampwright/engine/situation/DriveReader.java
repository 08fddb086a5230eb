package lampwright.engine.situation;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import lampwright.engine.check.Checks;
import lampwright.engine.check.SafeText;
import lampwright.engine.check.Suggestion;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;

/**
 * Reads recorded drives: CSV whose first line is {@code ms,input,value}, with lines ended by LF or
 * CR LF. Finds every problem, up to a limit.
 */
public final class DriveReader {
  /** The largest file that is read: 64 MiB. */
  public static final int MAX_BYTES = 64 << 20;

  public static final String HEAD = "ms,input,value";
  private static final int MAX_LISTED = 100;
  private static final BigDecimal MAX_MS = BigDecimal.valueOf(Drive.MAX_MS);
  // Longer ones are past the limits, however many zeros they begin with.
  private static final Pattern MS =
      Pattern.compile("[0-9]{1,20}(\\.[0-9]{1," + Checks.MAX_DECIMALS + "})?");
  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");
  private static final String MARK = "\ufeff";

  private final Map<String, Integer> places = new HashMap<>();
  private final List<Input> inputs;
  private final List<Problem> problems = new ArrayList<>();
  private final List<Drive.Row> rows = new ArrayList<>();
  private BigDecimal last = BigDecimal.ZERO;

  /**
   * What is wrong with a line.
   *
   * @param line from 1; 0 if it is wrong with the file
   * @param value what came, fit for a message
   * @param allowed what is accepted
   */
  public record Problem(int line, String value, String allowed) {
    /** As people read it: {@code line 4: "5": must be 0 or 1}. */
    public String text() {
      return (line == 0 ? "" : "line " + line + ": ") + value + ": " + allowed;
    }
  }

  /**
   * What came of reading.
   *
   * @param drive empty if there are problems
   * @param problems the first 100
   */
  public record Result(Optional<Drive> drive, List<Problem> problems) {
    public Result {
      problems = List.copyOf(problems);
    }
  }

  private DriveReader(List<Input> inputs) {
    this.inputs = inputs;
    for (int i = 0; i < inputs.size(); i++) {
      places.put(inputs.get(i).id(), i);
    }
  }

  /**
   * Reads the bytes of a file.
   *
   * @param inputs of the rig
   */
  public static Result read(byte[] bytes, List<Input> inputs) {
    DriveReader reader = new DriveReader(inputs);
    if (bytes.length > MAX_BYTES) {
      reader.add(
          0,
          "a file of more than " + Checks.limit(MAX_BYTES) + " bytes",
          "must be at most " + Checks.limit(MAX_BYTES) + " bytes");
    } else {
      reader.lines(bytes);
    }
    return new Result(
        reader.problems.isEmpty() ? Optional.of(new Drive(reader.rows)) : Optional.empty(),
        reader.problems);
  }

  private void lines(byte[] bytes) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException notText) {
      add(0, "a file that is not UTF-8 text", "must be CSV with the first line " + HEAD);
      return;
    }
    int at = text.startsWith(MARK) ? 1 : 0;
    for (int line = 1; (at < text.length() || line == 1) && problems.size() < MAX_LISTED; line++) {
      int end = text.indexOf('\n', at);
      int to = end < 0 ? text.length() : end;
      line(line, text.substring(at, to > at && text.charAt(to - 1) == '\r' ? to - 1 : to));
      at = to + 1;
      if (line == 1 && !problems.isEmpty()) {
        // Of a file of another kind nothing more is worth a line.
        return;
      }
    }
  }

  private void line(int number, String line) {
    if (number == 1) {
      if (!line.equals(HEAD)) {
        add(number, SafeText.quoted(line), "must be " + HEAD);
      }
      return;
    }
    if (rows.size() == Drive.MAX_ROWS) {
      if (problems.isEmpty()) {
        add(number, "one more row", "must be at most " + Checks.limit(Drive.MAX_ROWS) + " rows");
      }
      return;
    }
    String[] cells = line.split(",", 4);
    if (cells.length != 3) {
      add(number, SafeText.quoted(line), "must have three values: " + HEAD);
      return;
    }
    Optional<BigDecimal> ms = ms(number, cells[0]);
    Optional<Integer> input = input(number, cells[1]);
    Optional<Integer> value = value(number, cells[2], input);
    if (ms.isPresent() && input.isPresent() && value.isPresent()) {
      rows.add(new Drive.Row(ms.get(), input.get(), value.get()));
    }
  }

  private Optional<BigDecimal> ms(int number, String cell) {
    Optional<BigDecimal> ms =
        MS.matcher(cell).matches()
            ? Optional.of(new BigDecimal(cell)).filter(v -> v.compareTo(MAX_MS) <= 0)
            : Optional.empty();
    if (ms.isEmpty()) {
      add(
          number,
          SafeText.quoted(cell),
          "ms must be a decimal number between 0 and " + Checks.limit(Drive.MAX_MS));
    } else if (ms.get().compareTo(last) < 0) {
      add(
          number,
          SafeText.quoted(cell),
          "ms must be at least " + last.toPlainString() + ", that of the row before");
    } else {
      last = ms.get();
    }
    return ms;
  }

  private Optional<Integer> input(int number, String cell) {
    Optional<Integer> place = Optional.ofNullable(places.get(cell));
    if (place.isEmpty()) {
      add(
          number,
          SafeText.quoted(cell),
          "input must be the id of an input of the project"
              + Suggestion.of(cell, places.keySet())
                  .map(near -> "; did you mean \"" + near + "\"?")
                  .orElse(""));
    }
    return place;
  }

  private Optional<Integer> value(int number, String cell, Optional<Integer> input) {
    boolean contact = input.filter(i -> inputs.get(i).kind() == InputKind.SWITCH).isPresent();
    int max = contact ? 1 : Drive.MAX_VALUE;
    Optional<Integer> value =
        WHOLE.matcher(cell).matches()
            ? Optional.of(Integer.parseInt(cell)).filter(v -> v <= max)
            : Optional.empty();
    if (value.isEmpty()) {
      add(
          number,
          SafeText.quoted(cell),
          contact
              ? "value of a switch must be 0 or 1"
              : "value must be a whole number between 0 and " + Checks.limit(max));
    }
    return value;
  }

  private void add(int line, String value, String allowed) {
    if (problems.size() < MAX_LISTED) {
      problems.add(new Problem(line, value, allowed));
    }
  }
}
