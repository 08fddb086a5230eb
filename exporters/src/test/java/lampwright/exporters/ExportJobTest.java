package lampwright.exporters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.Test;

class ExportJobTest {
  @Test
  void jobRefusesASceneOfAnotherProject() {
    Scene strange = TestJobs.scene("strange", 1000, 50, true, List.of());
    assertThatThrownBy(
            () -> ExportJob.of(TestJobs.onePixel().project(), strange, ExportOptions.DEFAULT))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("scene: strange: must be a scene of the project One pixel");
  }

  @Test
  void fileIsNamedAfterTheScene() {
    assertThat(TestJobs.mixed().fileName("hex")).isEqualTo("night-watch.hex");
  }

  @Test
  void optionsTakeTheLastAddress() {
    assertThat(new ExportOptions(0xFFFF_FFFFL).hexAddress()).isEqualTo(4_294_967_295L);
  }

  @Test
  void optionsRefuseAnAddressPast4GiB() {
    assertThatThrownBy(() -> new ExportOptions(0x1_0000_0000L))
        .isInstanceOf(InvalidModelException.class)
        .hasMessage("export options: at: 0x100000000: must be between 0 and 0xFFFFFFFF");
  }

  @Test
  void optionsRefuseANegativeAddress() {
    assertThatThrownBy(() -> new ExportOptions(-1))
        .isInstanceOf(InvalidModelException.class)
        .hasMessage("export options: at: -1: must be between 0 and 0xFFFFFFFF");
  }
}
