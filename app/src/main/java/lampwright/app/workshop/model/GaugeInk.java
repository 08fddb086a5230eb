package lampwright.app.workshop.model;

import lampwright.exporters.picture.Ink;

/** The colours of a gauge's rule. */
public enum GaugeInk implements Ink {
  RULE,
  TICK,
  POINTER,
  PEAK,
  OVER
}
