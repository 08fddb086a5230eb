package lampwright.exporters.target;

/**
 * Levels that a controller's inputs take.
 *
 * @param highVolts a signal is high from this level, V
 * @param mostVolts a signal must not exceed it, V
 * @param source where the figures come from
 */
public record InputLevels(double highVolts, double mostVolts, String source) {}
