package lampwright.app.outline;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableListMultimap;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import lampwright.app.outline.UsualLamp.OneLamp;
import lampwright.app.outline.UsualLamp.UsualFitting;
import lampwright.engine.document.ModelKind;
import lampwright.engine.facts.Source;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.LampShape;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Cue;

/**
 * The usual lamps of every kind, from the table usual-lamps.csv, which describes its columns in
 * comments. Patterns are read by the reader of project files.
 */
public final class UsualLamps {
  private static final String HEADING =
      "kind,key,title,single,function,fitting,count,greatest,stagger,source,document,places,"
          + "pattern";
  private static final int COLUMNS = 13;

  private static final class Table {
    static final ImmutableListMultimap<ModelKind, UsualLamp> ALL = load();

    private static ImmutableListMultimap<ModelKind, UsualLamp> load() {
      try (InputStream file =
          Objects.requireNonNull(UsualLamps.class.getResourceAsStream("usual-lamps.csv"))) {
        return read(file);
      } catch (IOException unreadable) {
        throw new UncheckedIOException(unreadable);
      }
    }
  }

  private UsualLamps() {}

  /** The lamps that a model usually has, in the order in which they are offered. */
  public static List<UsualLamp> of(ModelKind kind) {
    return Table.ALL.get(kind);
  }

  /**
   * Reads a table of the program.
   *
   * @throws IllegalArgumentException if it is no such table; its message begins with the line
   */
  static ImmutableListMultimap<ModelKind, UsualLamp> read(InputStream file) throws IOException {
    BufferedReader reader = new BufferedReader(new InputStreamReader(file, StandardCharsets.UTF_8));
    List<String> lines = reader.lines().filter(line -> !line.startsWith("#")).toList();
    if (lines.isEmpty() || !lines.get(0).equals(HEADING)) {
      throw new IllegalArgumentException("usual lamps: needs the heading " + HEADING);
    }
    List<List<String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = Splitter.on(',').limit(COLUMNS).splitToList(line);
      if (cells.size() < COLUMNS) {
        throw new IllegalArgumentException(line + ": needs " + HEADING);
      }
      rows.add(cells);
    }
    List<Pattern> patterns = patterns(rows.stream().map(row -> row.get(COLUMNS - 1)).toList());
    ImmutableListMultimap.Builder<ModelKind, UsualLamp> lamps = ImmutableListMultimap.builder();
    for (int k = 0; k < rows.size(); k++) {
      List<String> row = rows.get(k);
      try {
        ModelKind kind = oneOf(ModelKind.values(), ModelKind::key, row.get(0));
        lamps.put(kind, lamp(row, patterns.get(k)));
      } catch (IllegalArgumentException wrong) {
        throw new IllegalArgumentException(
            row.get(0) + ", " + row.get(1) + ": " + wrong.getMessage(), wrong);
      }
    }
    return once(lamps.build());
  }

  private static ImmutableListMultimap<ModelKind, UsualLamp> once(
      ImmutableListMultimap<ModelKind, UsualLamp> lamps) {
    for (ModelKind kind : lamps.keySet()) {
      List<String> keys = lamps.get(kind).stream().map(UsualLamp::key).toList();
      if (keys.stream().distinct().count() < keys.size()) {
        throw new IllegalArgumentException(kind.key() + ": gives a key twice: " + keys);
      }
    }
    return lamps;
  }

  private static UsualLamp lamp(List<String> row, Pattern pattern) {
    List<OneLamp> each =
        Splitter.on(" | ").splitToStream(row.get(11)).map(UsualLamps::one).toList();
    if (Integer.parseInt(row.get(7)) != each.size()) {
      throw new IllegalArgumentException("greatest: " + row.get(7) + ": has " + each.size());
    }
    return new UsualLamp(
        row.get(1),
        row.get(2),
        row.get(3),
        oneOf(LampFunction.values(), LampFunction::key, row.get(4)),
        fitting(row.get(5)),
        Integer.parseInt(row.get(6)),
        new BigDecimal(row.get(8)),
        pattern,
        oneOf(Source.values(), Source::key, row.get(9)),
        row.get(10),
        each);
  }

  private static UsualFitting fitting(String cell) {
    List<String> words = Splitter.on(':').splitToList(cell);
    if (words.get(0).equals("pixels") && words.size() == 2) {
      return new UsualFitting.Pixels(Integer.parseInt(words.get(1)));
    }
    if (words.get(0).equals("led") && words.size() == 3 && words.get(1).matches("#[0-9A-F]{6}")) {
      int rgb = Integer.parseInt(words.get(1).substring(1), 16);
      Colour.Srgb colour = new Colour.Srgb(rgb >> 16, rgb >> 8 & 0xFF, rgb & 0xFF);
      return new UsualFitting.Led(colour, Double.parseDouble(words.get(2)));
    }
    throw new IllegalArgumentException(cell + ": needs pixels:N or led:#RRGGBB:VOLTS");
  }

  private static OneLamp one(String cell) {
    int colon = cell.indexOf(": ");
    if (colon < 0) {
      throw new IllegalArgumentException(cell + ": needs a label and a colon");
    }
    return new OneLamp(
        cell.substring(0, colon),
        Splitter.on("; ").splitToStream(cell.substring(colon + 2)).map(UsualLamps::place).toList());
  }

  private static Place place(String cell) {
    List<String> words = Splitter.on(' ').splitToList(cell);
    if (words.size() != 6) {
      throw new IllegalArgumentException(cell + ": needs side x y size shape turn");
    }
    return new Place(
        oneOf(View.values(), View::key, words.get(0)),
        Double.parseDouble(words.get(1)),
        Double.parseDouble(words.get(2)),
        Double.parseDouble(words.get(3)),
        Optional.of(oneOf(LampShape.values(), LampShape::key, words.get(4))),
        Double.parseDouble(words.get(5)),
        OptionalDouble.empty());
  }

  private static <E> E oneOf(E[] values, Function<E, String> key, String word) {
    return Arrays.stream(values)
        .filter(value -> key.apply(value).equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(word + ": no such word"));
  }

  /** All patterns as the cues of one small project, so that there is one reader of patterns. */
  private static List<Pattern> patterns(List<String> texts) {
    StringBuilder cues = new StringBuilder();
    for (int k = 0; k < texts.size(); k++) {
      cues.append(k == 0 ? "\n" : ",\n")
          .append("{\"startMs\": ")
          .append(k)
          .append(", \"lengthMs\": 1, \"pattern\": ")
          .append(texts.get(k))
          .append('}');
    }
    String project =
        """
        {"lampwright": 1,
         "rig": {"chains": [{"id": "c", "pixelType": "sk6812-rgbw", "pixels": 1}],
                 "lamps": [{"id": "l", "pixels": [{"chain": "c"}]}]},
         "scenes": [{"id": "s", "lengthMs": 1000000, "tracks": [{"lamps": ["l"], "cues": [%s]}]}]}
        """
            .formatted(cues);
    ReadResult result = ProjectReader.read("usual lamps", project.getBytes(StandardCharsets.UTF_8));
    List<Pattern> patterns =
        result
            .project()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        result.lines().stream().collect(Collectors.joining("\n"))))
            .scenes()
            .get(0)
            .tracks()
            .get(0)
            .cues()
            .stream()
            .map(Cue::pattern)
            .toList();
    if (patterns.size() != texts.size()) {
      throw new IllegalArgumentException("usual lamps: a pattern is more than one");
    }
    return patterns;
  }
}
