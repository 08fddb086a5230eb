package lampwright.app.outline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.ByteArrayInputStream;
import lampwright.exporters.picture.PathData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutlineReaderTest {
  private static final String HEAD =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 20\">";
  private static final String PATH = "<path class=\"body\" d=\"M1,2 L3,4\"/>";

  private static Outline read(String text) {
    return OutlineReader.read(new ByteArrayInputStream(text.getBytes(UTF_8)));
  }

  @Test
  void readsPiecesInTheirOrder() {
    Outline outline =
        read(
            "<?xml version=\"1.0\"?>\n"
                + HEAD
                + "\n"
                + PATH
                + "<path d=\"M0,0 Z\" class=\"hair\"/></svg>\n");
    assertThat(outline.width()).isEqualTo(40);
    assertThat(outline.height()).isEqualTo(20);
    assertThat(outline.pieces())
        .containsExactly(
            new Outline.Piece(Tone.BODY, new PathData("M1,2 L3,4")),
            new Outline.Piece(Tone.HAIR, new PathData("M0,0 Z")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "<svg/>",
        "<svg viewBox=\"0 0 40 20\"><path class=\"body\" d=\"M1,2 L3,4\"/></svg>",
        "<svg xmlns=\"http://www.w3.org/2000/svg\">" + PATH + "</svg>",
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"1 0 40 20\">" + PATH + "</svg>",
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 0 20\">" + PATH + "</svg>",
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 20\" width=\"4\">"
            + PATH
            + "</svg>",
        HEAD + "</svg>",
        HEAD + PATH,
        HEAD + PATH + "</svg><svg/>",
        HEAD + PATH + "words</svg>",
        HEAD + PATH + "<!-- words --></svg>",
        HEAD + PATH + "<?words?></svg>",
        HEAD + PATH + "<g/></svg>",
        HEAD + "<g>" + PATH + "</g></svg>",
        HEAD + PATH + "<circle cx=\"1\" cy=\"1\" r=\"1\"/></svg>",
        HEAD + PATH + "<path xmlns=\"urn:x\" class=\"body\" d=\"M1,2 L3,4\"/></svg>",
        HEAD + "<path class=\"body\" d=\"M1,2 L3,4\"><title>x</title></path></svg>",
        HEAD + "<path class=\"body\" d=\"M1,2 L3,4\" style=\"x\"/></svg>",
        HEAD + "<path class=\"body\"/></svg>",
        HEAD + "<path class=\"bodies\" d=\"M1,2 L3,4\"/></svg>",
        HEAD + "<path class=\"body\" d=\"1,2\"/></svg>",
        "<!DOCTYPE svg>" + HEAD + PATH + "</svg>",
        "<!DOCTYPE svg [<!ENTITY e \"M1,2\">]>" + HEAD + "<path class=\"body\" d=\"&e;\"/></svg>",
        "<!DOCTYPE svg [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>" + HEAD + "&e;</svg>",
      })
  void refusesAllElse(String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(text))
        .withMessageStartingWith("not a drawing");
  }

  @Test
  void saysWhereItIsWrong() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(HEAD + "\n" + PATH + "\n<path class=\"x\" d=\"M0,0 Z\"/></svg>"))
        .withMessage("not a drawing, line 3: class x: no such tone");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> read(HEAD + "\n<path class=\"body\" d=\"M0\"/></svg>"))
        .withMessage("not a drawing, line 2: path data, character 2: needs a number");
  }
}
