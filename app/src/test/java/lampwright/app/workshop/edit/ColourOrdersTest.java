package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.ColourOrders.Seen;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.PixelType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColourOrdersTest {
  private static List<Seen> seen(String letters) {
    List<Seen> all = new ArrayList<>();
    for (int i = 0; i < letters.length(); i++) {
      all.add(
          switch (letters.charAt(i)) {
            case 'R' -> Seen.RED;
            case 'G' -> Seen.GREEN;
            case 'B' -> Seen.BLUE;
            case 'W' -> Seen.WHITE;
            case 'n' -> Seen.NEXT_PIXEL;
            default -> Seen.NOTHING;
          });
    }
    return all;
  }

  @ParameterizedTest
  @CsvSource({
    "GRB, GRB",
    "GRBn, GRB",
    "RGBn, RGB",
    "GRBW, GRBW",
    "WRGB, WRGB",
    "GRG, ''",
    "GRBG, ''",
    "GRB-, ''",
    "GnB, ''",
    "WRG, ''",
    "---, ''"
  })
  void answersMakeAnOrderOrNone(String letters, String order) {
    assertThat(ColourOrders.of(seen(letters)).map(EmitterOrder::letters).orElse(""))
        .isEqualTo(order);
  }

  @Test
  void typeOfTheChainIsProposedBeforeBuiltInOnes() {
    Project project = Projects4Tests.small();
    Chain chain = project.rig().chains().get(0);
    assertThat(ColourOrders.type(project, chain, chain.type().order())).contains(chain.type());
    EmitterOrder rgb = EmitterOrder.parse("GRB").orElseThrow();
    assertThat(ColourOrders.type(project, chain, rgb).map(PixelType::order)).contains(rgb);
    assertThat(ColourOrders.type(project, chain, EmitterOrder.parse("BWRG").orElseThrow()))
        .isEqualTo(Optional.empty());
  }

  @Test
  void chainTakesTypeOrOrder() {
    Project project = Projects4Tests.small();
    Chain chain = project.rig().chains().get(0);
    PixelType rgb =
        ColourOrders.type(project, chain, EmitterOrder.parse("GRB").orElseThrow()).orElseThrow();
    Chain typed = ColourOrders.withType(project, "c", rgb).rig().chains().get(0);
    assertThat(typed.type()).isEqualTo(rgb);
    assertThat(typed.bytes()).isEqualTo(6);
    EmitterOrder order = EmitterOrder.parse("WRGB").orElseThrow();
    Chain ordered = ColourOrders.withOrder(project, "c", order).rig().chains().get(0);
    assertThat(ordered.order()).isEqualTo(order);
    assertThat(ordered.type()).isEqualTo(chain.type());
  }
}
