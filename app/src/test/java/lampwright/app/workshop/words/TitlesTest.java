package lampwright.app.workshop.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TitlesTest {
  @ParameterizedTest
  @CsvSource({"roof, Chain roof", "chain-1, chain-1", "CHAIN, CHAIN", "my-chain, Chain my-chain"})
  void chainIsNotNamedTwice(String id, String shown) {
    assertThat(Titles.ofChain(id, Texts.of("rig"))).isEqualTo(shown);
  }

  /** What a name may hold: Unicode 15, the bidirectional controls of UAX 9, ECMA-48's escape. */
  @ParameterizedTest
  @CsvSource({
    "'Beacon, left', 'Beacon, left'",
    "'Bäcon \uD83D\uDEA8', 'Bäcon \uD83D\uDEA8'",
    "'a\u202Eb', 'a\\u202eb'",
    "'a\u2066b', 'a\\u2066b'",
    "'a\u200Bb', 'a\\u200bb'",
    "'a\nb', 'a\\u000ab'",
    "'a\u001B[2Jb', 'a\\u001b[2Jb'"
  })
  void titleIsOneLineThatTurnsAndHidesNothing(String name, String shown) {
    Lamp lamp =
        new Lamp(
            "l",
            name,
            "",
            LampFunction.OTHER,
            new Fitting.Output("o"),
            Optional.empty(),
            java.util.List.of(),
            Optional.empty());
    assertThat(Titles.of(lamp)).isEqualTo(shown);
  }
}
