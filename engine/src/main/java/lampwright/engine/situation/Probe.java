package lampwright.engine.situation;

/** Looks at one thing, once per frame. */
interface Probe {
  /** Whether what it looks at is so in this frame. */
  boolean frame();
}
