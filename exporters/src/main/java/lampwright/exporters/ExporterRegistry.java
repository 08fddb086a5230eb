package lampwright.exporters;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The export formats by key. Immutable. */
public final class ExporterRegistry {
  private final Map<String, Exporter> exporters = new LinkedHashMap<>();

  private ExporterRegistry() {}

  /**
   * A registry.
   *
   * @param exporters in the order in which they are listed to people
   * @throws IllegalArgumentException if two have the same key
   */
  public static ExporterRegistry of(Collection<Exporter> exporters) {
    ExporterRegistry registry = new ExporterRegistry();
    for (Exporter exporter : exporters) {
      if (registry.exporters.putIfAbsent(exporter.key(), exporter) != null) {
        throw new IllegalArgumentException(
            "exporters: " + exporter.key() + ": must have a different key each");
      }
    }
    return registry;
  }

  /** Every key, in order. */
  public List<String> keys() {
    return List.copyOf(exporters.keySet());
  }

  /** The format with this key. */
  public Optional<Exporter> find(String key) {
    return Optional.ofNullable(exporters.get(key));
  }
}
