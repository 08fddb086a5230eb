package lampwright.exporters.packed;

import java.util.List;
import java.util.Objects;

/**
 * Where the bytes of a frame belong: to which chain or driver output, and to which lamp.
 *
 * @param frameBytes bytes of one frame, 1 to {@value #MAX_FRAME_BYTES}
 * @param chains the chains' bytes, in rig order, back to back from offset 0
 * @param outputs driver outputs, one byte each after the chains
 * @param lamps the lamps, each with the frame offsets of its bytes; no byte belongs to two lamps
 */
public record PackLayout(
    int frameBytes, List<ChainSpan> chains, int outputs, List<LampColumns> lamps) {

  /** Most bytes of a frame. */
  public static final int MAX_FRAME_BYTES = 65535;

  /** Most lamps. */
  public static final int MAX_LAMPS = 255;

  /** Most chains. */
  public static final int MAX_CHAINS = 64;

  /** Most driver outputs. */
  public static final int MAX_OUTPUTS = 256;

  /**
   * Checks that chains and outputs tile the frame and that lamps share no byte.
   *
   * @throws IllegalArgumentException if they don't, or a limit is passed
   */
  public PackLayout {
    chains = List.copyOf(chains);
    lamps = List.copyOf(lamps);
    Limits.check("frameBytes", frameBytes, 1, MAX_FRAME_BYTES);
    Limits.check("outputs", outputs, 0, MAX_OUTPUTS);
    Limits.check("chains", chains.size(), 0, MAX_CHAINS);
    Limits.check("lamps", lamps.size(), 1, MAX_LAMPS);
    int at = 0;
    for (ChainSpan chain : chains) {
      if (chain.offset() != at) {
        throw new IllegalArgumentException(
            "chain at offset " + chain.offset() + ": needs to start at " + at);
      }
      at += chain.length();
    }
    if (at + outputs != frameBytes) {
      throw new IllegalArgumentException(
          "frameBytes: " + frameBytes + ": chains and outputs hold " + (at + outputs));
    }
    boolean[] taken = new boolean[frameBytes];
    for (LampColumns lamp : lamps) {
      for (int column : lamp.columns()) {
        Objects.checkIndex(column, frameBytes);
        if (taken[column]) {
          throw new IllegalArgumentException(
              "lamp " + lamp.id() + ": byte " + column + " belongs to another lamp too");
        }
        taken[column] = true;
      }
    }
  }

  /**
   * One chain's part of a frame.
   *
   * @param offset first byte in the frame
   * @param length bytes, 1 or more
   */
  public record ChainSpan(int offset, int length) {
    /** Checks the length. */
    public ChainSpan {
      Limits.check("length", length, 1, MAX_FRAME_BYTES);
    }
  }

  /**
   * One lamp's bytes.
   *
   * @param id the lamp's id
   * @param columns frame offsets, 1 or more, in the lamp's own order
   */
  public record LampColumns(String id, List<Integer> columns) {
    /** Checks that the lamp has a byte. */
    public LampColumns {
      columns = List.copyOf(columns);
      Limits.check("columns", columns.size(), 1, MAX_FRAME_BYTES);
    }
  }
}
