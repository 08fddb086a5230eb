package lampwright.exporters.live;

/**
 * Numbers of the serial protocol, version {@link #VERSION}; all of more than one byte go low byte
 * first.
 *
 * <pre>
 *   packet      0xA7 | length (2): 0 or a frame's | sequence (1) | frame | CRC (2) of all after 0xA7
 *   here I am   0x7A | 1 | sequence (1) | version (1) | flags (1) | frame bytes (2) | layout (2) | CRC (2)
 *   taken       0x7A | 2 | sequence (1) | CRC (2) of all after 0x7A
 * </pre>
 */
public final class LiveProtocol {
  /** Of the protocol. */
  public static final int VERSION = 1;

  /** The byte that begins a packet of the host. */
  public static final int PACKET_START = 0xA7;

  /** The byte that begins an answer of the controller. */
  public static final int ANSWER_START = 0x7A;

  /** The kind of the answer to a question, a packet of length 0. */
  public static final int HERE = 1;

  /** The kind of the answer to a frame. */
  public static final int TAKEN = 2;

  /** Bytes of a packet before its frame: start, length, sequence number. */
  public static final int HEAD_BYTES = 4;

  /** Bytes of a CRC. */
  public static final int CRC_BYTES = 2;

  /** Bytes of an answer to a question, its start included. */
  public static final int HERE_BYTES = 11;

  /** Bytes of an answer to a frame, its start included. */
  public static final int TAKEN_BYTES = 5;

  /** The longest frame that a packet's length can name, in bytes. */
  public static final int MAX_FRAME_BYTES = 0xFFFF;

  /** Baud rates, the usual one first. */
  public static final int BAUD = 500_000;

  /** The rate for lines that don't take {@link #BAUD}. */
  public static final int SLOW_BAUD = 115_200;

  /** What a byte takes on the line, in bits: start bit, eight data bits, stop bit. */
  public static final int BITS_PER_BYTE = 10;

  private LiveProtocol() {}

  /** The bytes of a packet with a frame of so many. */
  public static int packetBytes(int frameBytes) {
    return HEAD_BYTES + frameBytes + CRC_BYTES;
  }
}
