package lampwright.exporters.packed.encode;

/** Told how far packing has come; may stop it. Called on the packing thread. */
@FunctionalInterface
public interface PackProgress {
  /** Hears nothing and never stops. */
  PackProgress NONE = share -> true;

  /**
   * Reports progress.
   *
   * @param share work done, 0..1, never falling
   * @return whether to go on; false makes the packer throw {@link
   *     java.util.concurrent.CancellationException}
   */
  boolean proceed(double share);
}
