package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is not JSON is named in our own words, at the place where it is mended. The forms that are
 * wrong are those that RFC 8259 leaves out; every place is counted by hand, with a line end for
 * each "~".
 */
class SyntaxFaultTest {
  private static final String NUMBER = ": must be written as in 12, -0.5 or 2e3";
  private static final String VALUE =
      ": must be a string in double quotes, a number, true, false or null";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // commas
        "{`a`: 1,~  `b`: [1, 2],~}| a comma after the last entry at line 2, column 14: must be removed",
        "[1, 2, ]| a comma after the last entry at line 1, column 6: must be removed",
        "[,1]| a comma without an entry before it at line 1, column 2: must be removed",
        "[1,,2]| a comma without an entry before it at line 1, column 4: must be removed",
        "{`a`: 1,, `b`: 2}| a comma without an entry before it at line 1, column 9: must be removed",
        "{`a`: 1~ `b`: 2}| no comma before this entry at line 2, column 2: entries must be separated"
            + " by commas",
        "[1 2]| no comma before this entry at line 1, column 4: entries must be separated by commas",
        "[{} {}]| no comma before this entry at line 1, column 5: entries must be separated by commas",
        "{`a`: 1; `b`: 2}| ';' at line 1, column 8: must be a comma or the closing }",
        "{`a`: 1,5}| a comma within a number at line 1, column 8: must be a decimal point",
        // colons and values
        "{`a` 1}| no colon at line 1, column 6: a name and its value must be separated by a colon",
        "{`a`}| no colon at line 1, column 5: a name and its value must be separated by a colon",
        "{`a`: }| no value at line 1, column 7: the name before it must have a value",
        "{`a`: ,`b`: 1}| no value at line 1, column 7: the name before it must have a value",
        "[1: 2]| ':' at line 1, column 3: must be a comma or the closing ]",
        "{: 1}| ':' at line 1, column 2: must be the name of a field in double quotes",
        "[%]| '%' at line 1, column 2: must be a value",
        // ends
        "[| the file ends inside a list at line 1, column 2: must close the list from line 1, column"
            + " 1 with ]",
        "{`a`: [1,~2~| the file ends inside a list at line 3, column 1: must close the list from line"
            + " 1, column 7 with ]",
        "{`a`: 1| the file ends inside an object at line 1, column 8: must close the object from line"
            + " 1, column 1 with }",
        "{`a`:| the file ends inside an object at line 1, column 6: must close the object from line"
            + " 1, column 1 with }",
        "[1}| '}' at line 1, column 3: must be ], for the list from line 1, column 1",
        "{`a`: 1]| ']' at line 1, column 8: must be }, for the object from line 1, column 1",
        "{]| ']' at line 1, column 2: must be }, for the object from line 1, column 1",
        "]| ']' at line 1, column 1: must be a value",
        "{} {}| more after the end of the project at line 1, column 4: must be removed",
        "{}}| more after the end of the project at line 1, column 3: must be removed",
        // strings
        "{`a`: `b| a string that is not closed at line 1, column 7: must end with a double quote on"
            + " its line",
        "{`a`: `b,~ `c`: 1}| a string that is not closed at line 1, column 7: must end with a double"
            + " quote on its line",
        "{`a: 1}| a string that is not closed at line 1, column 2: must end with a double quote on"
            + " its line",
        "{'a': 1}| single quotes at line 1, column 2: must be double quotes",
        "{`a`: 'b'}| single quotes at line 1, column 7: must be double quotes",
        "{\u201ca\u201d: 1}| a curly quote at line 1, column 2: must be a straight double quote",
        "[\u2018a\u2019]| a curly quote at line 1, column 2: must be a straight double quote",
        "{a: 1}| 'a' without quotes at line 1, column 2: names must be in double quotes",
        "{`a`: b c}| 'b' at line 1, column 7" + VALUE,
        "[`a\tb`]| a tab in a string at line 1, column 4: must be written as \\t",
        "[`a\u0007b`]| a control character in a string at line 1, column 4: must be written as \\u0007",
        "[`a\\qb`]| the escape \\q at line 1, column 4: must be \\\", \\\\, \\/, \\b, \\f, \\n, \\r, \\t or"
            + " \\u with four hexadecimal digits",
        "[`C:\\Users`]| the escape \\U at line 1, column 5: must be \\\", \\\\, \\/, \\b, \\f, \\n, \\r,"
            + " \\t or \\u with four hexadecimal digits",
        "[`\\u12G4`]| the escape \\u12G at line 1, column 3: must have four hexadecimal digits",
        "[`\\u12`]| the escape \\u12\" at line 1, column 3: must have four hexadecimal digits",
        // comments
        "{~ // cab~ `a`: 1}| a comment at line 2, column 2: must be removed: JSON has no comments",
        "{`a`: 1 /* cab */}| a comment at line 1, column 9: must be removed: JSON has no comments",
        "# cab~{}| a comment at line 1, column 1: must be removed: JSON has no comments",
        // numbers
        "[1.2.3]| '1.2.3' is not a number at line 1, column 2" + NUMBER,
        "[12 , 5V]| '5V' is not a number at line 1, column 7" + NUMBER,
        "[007]| '007' is not a number at line 1, column 2: must have no leading zeros",
        "[-01]| '-01' is not a number at line 1, column 2: must have no leading zeros",
        "[+5]| '+5' is not a number at line 1, column 2: must have no plus sign",
        "[.5]| '.5' is not a number at line 1, column 2: must have a digit before the decimal point",
        "[-.5]| '-.5' is not a number at line 1, column 2: must have a digit before the decimal point",
        "[5.]| '5.' is not a number at line 1, column 2: must have a digit after the decimal point",
        "[5.e3]| '5.e3' is not a number at line 1, column 2: must have a digit after the decimal point",
        "[1e]| '1e' is not a number at line 1, column 2" + NUMBER,
        "[-]| '-' is not a number at line 1, column 2" + NUMBER,
        "[0x1F]| '0x1F' is not a number at line 1, column 2: must be decimal",
        "[1_000]| '1_000' is not a number at line 1, column 2" + NUMBER,
        // words
        "[True]| 'True' at line 1, column 2: must be true, in lower case",
        "[NULL]| 'NULL' at line 1, column 2: must be null, in lower case",
        "nul| 'nul' at line 1, column 1" + VALUE + "; did you mean `null`?",
        "[flase]| 'flase' at line 1, column 2" + VALUE + "; did you mean `false`?",
        "[yes]| 'yes' at line 1, column 2" + VALUE,
        "[undefined]| 'undefined' at line 1, column 2" + VALUE,
        "[\u001b\u202e]| '\\u001b' at line 1, column 2: must be a value",
      })
  void faultOfSyntaxIsNamedAtItsPlace(String json, String problem) {
    assertThat(texts(quotes(json).replace('~', '\n'))).containsExactly(quotes(problem));
  }

  // The back quotes in the tables above are double quotes.
  private static String quotes(String text) {
    return text.replace('`', '"');
  }

  @Test
  void linesMayEndInEachOfThreeWays() {
    for (String end : List.of("\n", "\r", "\r\n")) {
      assertThat(texts("{" + end + end + "\"a\": 1," + end + "}"))
          .containsExactly("a comma after the last entry at line 3, column 7: must be removed");
    }
  }

  @Test
  void longWordsAreCut() {
    assertThat(texts("[" + "x".repeat(5000) + "]"))
        .containsExactly("'" + "x".repeat(40) + "...' at line 1, column 2" + VALUE);
  }

  /** A number of many digits is one: what is wrong comes after it. */
  @Test
  void longNumberIsNotTheFault() {
    assertThat(texts("[0." + "3".repeat(60) + ",]"))
        .containsExactly("a comma after the last entry at line 1, column 64: must be removed");
  }

  @Test
  void byteOrderMarkOfUtf8IsAccepted() {
    assertThat(texts("\uFEFF{\"lampwright\": 1, \"rig\": 2}"))
        .containsExactly("rig: 2 (number) at line 1, column 26: must be an object");
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE", "x-UTF-16LE-BOM"})
  void utf16IsRefusedByName(String charset) {
    assertThat(texts("{\"lampwright\": 1}".getBytes(Charset.forName(charset))))
        .containsExactly("text in UTF-16 at line 1, column 1: must be saved as UTF-8");
  }

  @Test
  void otherEncodingsAreRefusedAtTheirFirstStrangeByte() {
    assertThat(texts("{\"name\": \"T\u00fcr\"}".getBytes(StandardCharsets.ISO_8859_1)))
        .containsExactly(
            "byte 0xFC, which is not UTF-8, at line 1, column 12: the file must be saved as UTF-8");
  }

  /** Whatever is refused as JSON is refused in our words, never in those of a library. */
  @Property(tries = 3000, seed = "4")
  void everyFaultHasWordsOfOurs(@ForAll Random random) {
    String[] bits = {
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      "\"a\"",
      "\"",
      "1",
      "-",
      "0",
      ".5",
      "e",
      "true",
      "nul",
      "'",
      "\\",
      "/",
      "#",
      " ",
      "\n",
      "\t",
      "NaN",
      "-Infinity",
      "\u00e9",
      "\u2028",
      "\u0000",
      "x",
      "+",
      "\"b\": 2",
    };
    StringBuilder json = new StringBuilder();
    for (int i = 1 + random.nextInt(9); i > 0; i--) {
      json.append(bits[random.nextInt(bits.length)]);
    }
    assertThat(texts(json.toString())).as(json.toString()).noneMatch(t -> t.contains("not JSON"));
  }

  @Example
  void notANumberIsLeftToItsField() {
    assertThat(texts("{\"lampwright\": 1, \"rig\": NaN}"))
        .containsExactly("rig: NaN (number) at line 1, column 26: must be an object");
  }

  private static List<String> texts(String json) {
    return texts(json.getBytes(UTF_8));
  }

  private static List<String> texts(byte[] bytes) {
    return ProjectReader.read("p", bytes).problems().stream().map(Problem::text).toList();
  }
}
