package lampwright.exporters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import lampwright.exporters.table.TableExporters;
import org.junit.jupiter.api.Test;

class ExporterRegistryTest {
  private final ExporterRegistry registry = ExporterRegistry.of(TableExporters.all());

  @Test
  void tableFormatsAreListedInOrder() {
    assertThat(registry.keys()).containsExactly("c", "bin", "hex", "csv");
  }

  @Test
  void formatIsFoundByItsKey() {
    assertThat(registry.find("hex").orElseThrow().key()).isEqualTo("hex");
    assertThat(registry.find("HEX")).isEmpty();
  }

  @Test
  void registryRefusesAKeyTwice() {
    Exporter first = TableExporters.all().get(0);
    assertThatThrownBy(() -> ExporterRegistry.of(List.of(first, first)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("exporters: c: must have a different key each");
  }
}
