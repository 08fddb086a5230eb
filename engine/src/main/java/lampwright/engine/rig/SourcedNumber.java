package lampwright.engine.rig;

/**
 * One number of a built-in pixel type and where it comes from.
 *
 * @param item what it is, such as {@code r.mcd}
 * @param value as it stands in the table
 * @param source published, memory, practice or computed
 * @param document the document, or how it was found
 */
public record SourcedNumber(String item, String value, String source, String document) {}
