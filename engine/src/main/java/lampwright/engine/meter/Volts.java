package lampwright.engine.meter;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The voltage along one chain in the frame that draws most.
 *
 * @param chain the chain's id
 * @param first at the first pixel, V
 * @param lowest at the pixel that has least, V
 * @param lowestPixel that pixel, from 0
 * @param firstBelow the first pixel that has less than it needs; none if all have enough
 * @param neededVolts what a pixel needs, V
 * @param neededMm2 the thinnest wire that would do, mm2; none if no wire would
 * @param feedAmps the most that one feed wire carries, A
 */
public record Volts(
    String chain,
    double first,
    double lowest,
    int lowestPixel,
    OptionalInt firstBelow,
    double neededVolts,
    OptionalDouble neededMm2,
    double feedAmps) {}
