package lampwright.engine.second;

import org.apache.commons.math3.fraction.BigFraction;

/** A pattern of one cue on one row of packages. */
@FunctionalInterface
interface Playing {
  /** Four drives of each package at a time of the cue, ms. */
  double[][] at(BigFraction t);
}
