package lampwright.engine.second;

/**
 * One emitter of a pixel.
 *
 * @param at its CIE 1931 chromaticity
 * @param mcd luminous intensity at full drive
 * @param milliamps current at full drive
 */
record Emitter(Chromaticity at, double mcd, double milliamps) {}
