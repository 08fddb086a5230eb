package lampwright.app.outline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.app.outline.UsualLamp.OneLamp;
import lampwright.app.outline.UsualLamp.UsualFitting;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.LampShape;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UsualLampsReaderTest {
  private static final String HEADING =
      "kind,key,title,single,function,fitting,count,greatest,stagger,source,document,places,pattern\n";
  private static final String GOOD =
      "car,a,A,B,other,pixels:2,1,1,0,practice,x,: side 0.5 0.5 0.1 dot 0,{\"kind\": \"steady\"}";

  private static List<UsualLamp> read(String text) throws IOException {
    return UsualLamps.read(new ByteArrayInputStream(text.getBytes(UTF_8))).get(ModelKind.CAR);
  }

  @Test
  void readsALine() throws IOException {
    UsualLamp lamp = read("# words\n" + HEADING + GOOD + "\n").get(0);
    assertThat(lamp.fitting()).isEqualTo(new UsualFitting.Pixels(2));
    assertThat(lamp.name(0)).isEqualTo("B");
    assertThat(lamp.each())
        .containsExactly(
            new OneLamp(
                "",
                List.of(
                    new Place(
                        View.SIDE,
                        0.5,
                        0.5,
                        0.1,
                        Optional.of(LampShape.DOT),
                        0,
                        OptionalDouble.empty()))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      quoteCharacter = '`',
      value = {
        "car,a,A@boat,a,A@boat, a: boat: no such word",
        "other@others@car, a: others: no such word",
        "pixels:2@pixels:0@car, a: pixels: 0: must be between 1 and 64",
        "pixels:2@pixels@car, a: pixels: needs pixels:N or led:#RRGGBB:VOLTS",
        "pixels:2@led:red:2@car, a: led:red:2: needs pixels:N or led:#RRGGBB:VOLTS",
        ",1,1,0,@,2,1,0,@car, a: a, count: 2: must be between 0 and 1",
        ",1,1,0,@,1,2,0,@car, a: greatest: 2: has 1",
        ",1,1,0,@,1,1,1,@car, a: a, stagger: 1: must be at least 0 and less than 1",
        "practice@hearsay@car, a: hearsay: no such word",
        "side 0.5@left 0.5@car, a: left: no such word",
        "0.1 dot@0 dot@car, a: place: size: 0: must be between 0.001 and 1",
        "side 0.5 0.5@side 1.5 0.5@car, a: place: x: 1.5: must be between 0 and 1",
        "dot 0@dot@car, a: side 0.5 0.5 0.1 dot: needs side x y size shape turn",
        "dot@blob@car, a: blob: no such word",
        ": side@ side@car, a: side 0.5 0.5 0.1 dot 0: needs a label and a colon",
      })
  void refusesWhatIsWrong(String part, String by, String message) {
    assertThat(GOOD).contains(part);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(HEADING + GOOD.replace(part, by)))
        .withMessage(message);
  }

  @Test
  void refusesPatternsThatAreNone() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(HEADING + GOOD.replace("steady", "unsteady")))
        .withMessageContaining("usual lamps: error: ")
        .withMessageContaining("kind");
    // One that would be two cues.
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                read(
                    HEADING
                        + GOOD.replace(
                            "\"steady\"}",
                            "\"steady\"}}, {\"startMs\": 9, \"lengthMs\": 1, \"pattern\":"
                                + " {\"kind\": \"steady\"}")))
        .withMessage("usual lamps: a pattern is more than one");
  }

  @Test
  void refusesOtherTables() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(""))
        .withMessageContaining("heading");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(HEADING + GOOD + "\n" + GOOD))
        .withMessage("car: gives a key twice: [a, a]");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(HEADING + "car,a"))
        .withMessageStartingWith("car,a: needs ");
  }
}
