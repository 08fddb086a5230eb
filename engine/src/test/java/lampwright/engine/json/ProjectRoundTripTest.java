package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.PixelType;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class ProjectRoundTripTest {
  @Provide
  Arbitrary<Project> projects() {
    return ProjectArbitraries.projects();
  }

  @Property(tries = 300, seed = "2026")
  void whatIsWrittenIsReadAsTheSameProject(@ForAll("projects") Project project) {
    ReadResult read = ProjectReader.read("p", ProjectWriter.write(project).getBytes(UTF_8));

    assertThat(read.problems()).isEmpty();
    assertThat(read.project()).contains(project);
  }

  // Such as the workshop makes: levels and line times of the original must not be lost.
  @Test
  void aCopyOfABuiltInPixelTypeIsReadAsItWas() throws IOException {
    Project base =
        ProjectReader.read("p", ReadRejectionTest.resource("base.lampwright.json").getBytes(UTF_8))
            .project()
            .orElseThrow();
    List<PixelType> copies =
        BuiltInPixelTypes.all().stream()
            .map(
                t ->
                    new PixelType(
                        "own-" + t.id(),
                        t.order(),
                        t.idleMilliamps(),
                        t.volts(),
                        t.emitters(),
                        t.line(),
                        t.needs()))
            .toList();
    Project project = Project.PIXEL_TYPES.with(base, copies);

    ReadResult read = ProjectReader.read("p", ProjectWriter.write(project).getBytes(UTF_8));

    assertThat(read.problems()).isEmpty();
    assertThat(read.project().orElseThrow().pixelTypes()).isEqualTo(copies);
  }

  @Property(tries = 100, seed = "2027")
  void aFormattedFileIsReadAndWrittenUnchanged(@ForAll("projects") Project project) {
    String text = ProjectWriter.write(project);

    Project read = ProjectReader.read("p", text.getBytes(UTF_8)).project().orElseThrow();

    assertThat(ProjectWriter.write(read)).isEqualTo(text);
  }

  @Property(tries = 100, seed = "2028")
  void linesStayWithin100ColumnsUnlessOneValueIsLonger(@ForAll("projects") Project project) {
    String text = ProjectWriter.write(project);

    assertThat(text).endsWith("}\n").doesNotContain("\r").doesNotContain("\t");
    assertThat(text.lines())
        .allSatisfy(
            line ->
                assertThat(line.length() <= 100 || line.strip().matches("\"[a-zA-Z]+\": [^{\\[].*"))
                    .as(line)
                    .isTrue());
  }
}
