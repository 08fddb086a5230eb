package lampwright.app.docs;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.PixelType;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

/** docs/numbers.md lists every number of the trade that the data files hold. */
class NumbersDocTest {
  /** A heading and the numbers below it. */
  private record Section(String title, List<SourcedNumber> numbers) {}

  @Test
  void everyNumberIsListedWithItsSource() throws IOException {
    StringBuilder text = new StringBuilder();
    part(text, "Trade", trade());
    part(text, "Controllers", controllers());
    part(text, "Pixel types", pixelTypes());
    WrittenDoc.check("numbers.md", text.append('\n').toString());
  }

  private static List<Section> trade() {
    return TradeNumbers.table().subjects().stream()
        .map(subject -> new Section(subject, TradeNumbers.table().of(subject)))
        .toList();
  }

  private static List<Section> controllers() {
    List<Section> sections = new ArrayList<>();
    for (Controller controller : Controller.all()) {
      List<SourcedNumber> numbers = new ArrayList<>(Controller.numbers(controller.id()));
      numbers.addAll(Target.of(controller).numbers());
      sections.add(new Section("`" + controller.id() + "`", numbers));
    }
    return sections;
  }

  private static List<Section> pixelTypes() {
    return BuiltInPixelTypes.all().stream()
        .map(PixelType::id)
        .map(id -> new Section("`" + id + "`", BuiltInPixelTypes.numbers(id)))
        .toList();
  }

  private static void part(StringBuilder text, String title, List<Section> sections) {
    text.append("\n## ").append(title).append('\n');
    for (Section section : sections) {
      text.append("\n### ").append(section.title()).append("\n\n");
      text.append("| number | value | unit | source |\n| --- | --- | --- | --- |\n");
      for (SourcedNumber number : section.numbers()) {
        text.append("| ").append(cell(number.item()));
        text.append(" | ").append(cell(number.value()));
        text.append(" | ").append(cell(number.unit()));
        text.append(" | ").append(cell(number.origin())).append(" |\n");
      }
    }
  }

  private static String cell(String words) {
    return words.replace("|", "\\|").replace("<", "&lt;").replace(">", "&gt;").replace("*", "\\*");
  }
}
