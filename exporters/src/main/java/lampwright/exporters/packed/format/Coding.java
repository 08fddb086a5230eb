package lampwright.exporters.packed.format;

/**
 * Widths of the numbers in one piece of packed data.
 *
 * @param columnBytes bytes of a column number, 1 or 2
 * @param placeBytes bytes of a place, 2 or 3
 */
public record Coding(int columnBytes, int placeBytes) {}
