package lampwright.exporters.proof.rp2040;

/** What happens by itself at certain cycles of the system clock. */
interface Clocked {
  /** Nothing is due. */
  long NEVER = Long.MAX_VALUE;

  /** The cycle of the next thing to happen; {@link #NEVER} if there is none. */
  long due();

  /** Does what is due at a cycle. */
  void run(long cycle);
}
