package lampwright.engine.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The program's numbers against the words of their sources, in a table of its own. */
class TradeNumbersTest {
  private static final Pattern NUMBER = Pattern.compile("[0-9]+(?:\\.[0-9]+)?");

  /** One line of the table. */
  record Fact(String subject, String item, String words, String source) {}

  static Stream<Fact> facts() throws IOException {
    try (InputStream in = TradeNumbersTest.class.getResourceAsStream("trade-facts.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(" \\| ", -1))
          .map(cell -> new Fact(cell[0], cell[1], cell[2], cell[3]));
    }
  }

  @ParameterizedTest
  @MethodSource("facts")
  void numberIsThatOfItsSource(Fact fact) {
    SourcedNumber number = TradeNumbers.get(fact.subject(), fact.item());

    assertThat(number.source().key()).isEqualTo(fact.source());
    // Words state some numbers beside the one asked for.
    assertThat(numbers(fact.words())).containsAll(numbers(number.value()));
    if (fact.subject().equals("colour boundary") || numbers(number.value()).size() > 2) {
      assertThat(numbers(number.value()))
          .containsExactlyInAnyOrderElementsOf(numbers(fact.words()));
    }
  }

  @Test
  void everyPublishedNumberHasItsFact() throws IOException {
    List<String> facts = facts().map(f -> f.subject() + " | " + f.item()).toList();
    List<String> unfounded = new ArrayList<>();
    for (String subject : TradeNumbers.table().subjects()) {
      for (SourcedNumber number : TradeNumbers.table().of(subject)) {
        String name = subject + " | " + number.item();
        boolean firm = number.source() == Source.PUBLISHED || number.source() == Source.MEMORY;
        if (firm && !facts.contains(name)) {
          unfounded.add(name);
        }
      }
    }
    assertThat(unfounded).isEmpty();
  }

  private static List<Double> numbers(String words) {
    return NUMBER.matcher(words).results().map(found -> Double.valueOf(found.group())).toList();
  }
}
