package lampwright.engine.json;

import java.util.List;

/**
 * What makes a text no JSON.
 *
 * @param line from 1
 * @param column from 1, in characters
 * @param value what came
 * @param allowed how it is mended
 * @param word a word that may be a misspelt one; empty if there is none
 */
record SyntaxFault(int line, int column, String value, String allowed, String word) {
  private static final List<String> WORDS = List.of("true", "false", "null");

  /** Reports it. */
  void report(Problems problems) {
    problems.error(Where.ROOT, line, column, value, allowed, word, WORDS);
  }
}
