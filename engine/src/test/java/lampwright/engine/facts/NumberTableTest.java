package lampwright.engine.facts;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.util.List;
import org.junit.jupiter.api.Test;

class NumberTableTest {
  private static final String HEADING = "subject,item,value,unit,source,document\n";

  private static NumberTable table(String text) {
    return NumberTable.read(new ByteArrayInputStream(text.getBytes(UTF_8)));
  }

  @Test
  void documentMayHaveCommas() {
    NumberTable table =
        table("# a table\n" + HEADING + "lamp,range,60 120,per minute,memory,Rules, annex 3\n");

    SourcedNumber range = table.get("lamp", "range");
    assertThat(range.numbers()).containsExactly(60.0, 120.0);
    assertThat(range.unit()).isEqualTo("per minute");
    assertThat(range.document()).isEqualTo("Rules, annex 3");
    assertThat(table.subjects()).containsExactly("lamp");
  }

  @Test
  void tableWithoutUnitsHasNone() {
    NumberTable table =
        table("subject,item,value,source,document\npart,r.mcd,405,published,Datasheet\n");

    assertThat(table.get("part", "r.mcd").number()).isEqualTo(405);
    assertThat(table.get("part", "r.mcd").unit()).isEmpty();
  }

  @Test
  void tableOfOneSubjectNamesNone() {
    NumberTable table = table("item,value,source,document\npins,4,computed,counted\n");

    assertThat(table.of("")).extracting(SourcedNumber::item).containsExactly("pins");
  }

  @Test
  void pointsStandBetweenSemicolons() {
    NumberTable table = table(HEADING + "c,p,0.5 0.4; -1 2,x y,computed,here\n");

    assertThat(table.get("c", "p").points()).containsExactly(List.of(0.5, 0.4), List.of(-1.0, 2.0));
  }

  // What was not looked up is an estimate to people, whoever says it.
  @Test
  void whatIsNotPublishedIsCalledAnEstimate() {
    NumberTable table =
        table(
            HEADING
                + "a,p,1,,published,Rules\na,m,1,,memory,Rules\na,c,1,,computed,from p\n"
                + "a,u,1,,practice,common practice\na,o,1,,ours,round\n");

    assertThat(table.of("a"))
        .extracting(SourcedNumber::origin)
        .containsExactly(
            "published: Rules",
            "estimate after Rules",
            "computed: from p",
            "estimate: common practice",
            "our choice: round");
    assertThat(table.of("a"))
        .extracting(SourcedNumber::citation)
        .containsExactly(
            "Rules",
            "estimate after Rules",
            "computed: from p",
            "estimate: common practice",
            "our choice: round");
  }

  @Test
  void brokenTablesAreRefused() {
    assertThatThrownBy(() -> table("subject,value\na,1\n"))
        .hasMessageContaining("subject,value: must be");
    assertThatThrownBy(() -> table(HEADING + "a,b,1,,published\n"))
        .hasMessageContaining("a,b,1,,published: must be");
    assertThatThrownBy(() -> table(HEADING + "a,b,1,,rumour,D\n"))
        .hasMessageContaining("rumour: must be published, memory, practice, ours or computed");
    assertThatThrownBy(() -> table(HEADING + "a,b,1,,memory,D\na,b,2,,memory,D\n"))
        .hasMessageContaining("a: gives an item twice");
    assertThatThrownBy(() -> table(HEADING).get("a", "b")).hasMessage("a, b: not given");
  }
}
