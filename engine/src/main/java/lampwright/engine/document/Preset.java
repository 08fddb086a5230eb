package lampwright.engine.document;

import java.util.List;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.Steady;

/**
 * A pattern that has a name, to be placed on lamps. It lights nothing by itself.
 *
 * @param name for people; not blank
 * @param uses what it is for, at most one of each
 * @param words other words by which it is found
 * @param pattern what is placed
 */
public record Preset(String name, List<PresetUse> uses, List<String> words, Pattern pattern) {
  /** The most presets that a project or a file of presets has. */
  public static final int MAX = 1000;

  public static final Field<Preset, String> NAME =
      Field.required("name", TextType.NAME, Preset::name, "preset");
  public static final Field<Preset, List<PresetUse>> USES =
      Field.list(
          "uses",
          new ListType<>(PresetUse.TYPE, new ListLimit(0, PresetUse.values().length, "uses")),
          Preset::uses);
  public static final Field<Preset, List<String>> WORDS =
      Field.list(
          "words", new ListType<>(new TextType(60), new ListLimit(0, 20, "words")), Preset::words);
  public static final Field<Preset, Pattern> PATTERN =
      Field.required("pattern", Patterns.ANY, Preset::pattern, new Steady(Look.DEFAULT));

  public static final Shape<Preset> SHAPE =
      Shape.of("preset", Preset.class, NAME, USES, WORDS, PATTERN);

  public Preset {
    uses = List.copyOf(uses);
    words = List.copyOf(words);
    SHAPE
        .check(name, uses, words, pattern)
        .that(!name.isBlank(), "name", "a blank name", "must have a character that shows")
        .done();
  }

  /** One without uses and search words, as the builder saves it. */
  public static Preset of(String name, Pattern pattern) {
    return new Preset(name, List.of(), List.of(), pattern);
  }
}
