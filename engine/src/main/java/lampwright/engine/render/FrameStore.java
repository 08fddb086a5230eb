package lampwright.engine.render;

import java.util.BitSet;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;

/**
 * The rendered frames of one scene, kept as they come. One thread renders them in order; any thread
 * may read.
 */
public final class FrameStore {
  /** Takes one frame after another. */
  @FunctionalInterface
  public interface FrameReader {
    /**
     * Takes a frame.
     *
     * @param index from 0
     * @param bytes those of every chain and output
     */
    void frame(int index, byte[] bytes);
  }

  /** The most bytes of frames that are kept; a longer scene is rendered where it is looked at. */
  public static final long MAX_KEPT_BYTES = 256L << 20;

  private static final int CHUNK_FRAMES = 256;

  /** Frames before an edit: which of them are there, and which of them are others since. */
  private static final class Before {
    private final byte[] @Nullable [] chunks;
    private final int rendered;
    private final BitSet changed;

    Before(FrameStore store, BitSet changed) {
      this.chunks = store.chunks;
      this.rendered = store.rendered;
      this.changed = changed;
    }

    boolean has(int frame) {
      return frame < rendered && !changed.get(frame);
    }

    boolean hasAll(int from, int to) {
      int next = changed.nextSetBit(from);
      return to <= rendered && (next < 0 || next >= to);
    }
  }

  private final FrameTable table;
  private final int frameBytes;
  private final byte[] @Nullable [] chunks;
  private final boolean kept;
  private volatile int rendered;
  // None once all is rendered.
  private Optional<Before> before;
  private int renderedAnew;
  // For frames that are not kept, or not yet; made when first needed.
  private @Nullable FrameCursor loose;

  /** Frames of a scene, all to be rendered. */
  public FrameStore(FrameTable table) {
    this(table, Optional.empty());
  }

  /**
   * Frames of a scene, of which some may be at hand.
   *
   * @param before frames of the scene before an edit: those that the edit can't have changed are
   *     taken over
   */
  public FrameStore(FrameTable table, Optional<FrameStore> before) {
    this.before =
        before
            .filter(b -> b.kept)
            .flatMap(
                b -> ChangedFrames.between(b.table, table).map(changed -> new Before(b, changed)));
    this.table = table;
    this.frameBytes = table.layout().bytes();
    this.kept = table.bytes() <= MAX_KEPT_BYTES;
    this.chunks = new byte[kept ? (table.frameCount() + CHUNK_FRAMES - 1) / CHUNK_FRAMES : 0][];
  }

  /** The frames as they are rendered. */
  public FrameTable table() {
    return table;
  }

  public int frameCount() {
    return table.frameCount();
  }

  /** Frames rendered so far, from the first. */
  public int rendered() {
    return rendered;
  }

  /** Whether all that will be kept is rendered. */
  public boolean complete() {
    return !kept || rendered == frameCount();
  }

  /**
   * Renders what is kept, for the one thread that does.
   *
   * @param after called after every few frames
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public void render(Runnable after) {
    if (!kept) {
      after.run();
      return;
    }
    FrameCursor cursor = table.passingCursor();
    byte[] frame = new byte[frameBytes];
    renderedAnew = 0;
    for (int from = 0; from < frameCount(); from += CHUNK_FRAMES) {
      FrameSource.endIfInterrupted();
      int to = Math.min(frameCount(), from + CHUNK_FRAMES);
      byte[] whole = takenOver(from, to);
      if (whole.length > 0) {
        chunks[from / CHUNK_FRAMES] = whole;
        rendered = to;
      } else {
        byte[] chunk = new byte[(to - from) * frameBytes];
        chunks[from / CHUNK_FRAMES] = chunk;
        for (int at = from; at < to; at++) {
          render(cursor, at, frame);
          System.arraycopy(frame, 0, chunk, (at - from) * frameBytes, frameBytes);
          // Publishes the bytes to readers.
          rendered = at + 1;
        }
      }
      after.run();
    }
    before = Optional.empty();
  }

  /** A piece of frames that an edit left as they were; none if it changed one. */
  private byte[] takenOver(int from, int to) {
    return before
        .filter(b -> b.hasAll(from, to))
        .map(b -> Objects.requireNonNull(b.chunks[from / CHUNK_FRAMES]))
        .filter(chunk -> chunk.length == (to - from) * frameBytes)
        .orElse(new byte[0]);
  }

  private void render(FrameCursor cursor, int at, byte[] into) {
    if (before.isPresent() && before.get().has(at)) {
      byte[] chunk = Objects.requireNonNull(before.get().chunks[at / CHUNK_FRAMES]);
      System.arraycopy(chunk, at % CHUNK_FRAMES * frameBytes, into, 0, frameBytes);
      return;
    }
    if (cursor.position() != at) {
      cursor.seek(at);
    }
    cursor.next(into);
    renderedAnew++;
  }

  /** Frames that {@link #render} had to render; the others were taken over. */
  int renderedAnew() {
    return renderedAnew;
  }

  /** Whether a frame is rendered, or none are kept and each is rendered where it is looked at. */
  public boolean has(int frame) {
    return !kept || frame < rendered;
  }

  /**
   * Reads a frame.
   *
   * @param into room for one frame; untouched if the frame is not there yet
   * @return whether it is there: rendered, or of a scene whose frames can be rendered one by one
   * @throws IndexOutOfBoundsException if the scene has no such frame
   */
  public boolean read(int frame, byte[] into) {
    Objects.checkIndex(frame, frameCount());
    if (frame < rendered) {
      byte[] chunk = Objects.requireNonNull(chunks[frame / CHUNK_FRAMES]);
      System.arraycopy(chunk, frame % CHUNK_FRAMES * frameBytes, into, 0, frameBytes);
      return true;
    }
    return readLoose(frame, into);
  }

  /**
   * Hands all frames over in order, those that are kept or else rendered anew.
   *
   * @param reader must not keep the bytes, which change with the next frame
   * @throws CancellationException if the thread is interrupted
   */
  public void forEach(FrameReader reader) {
    byte[] frame = new byte[frameBytes];
    if (!kept) {
      for (FrameCursor cursor = table.passingCursor(); cursor.hasNext(); ) {
        int at = cursor.position();
        cursor.next(frame);
        reader.frame(at, frame);
      }
      return;
    }
    for (int i = 0; i < frameCount(); i++) {
      if (Thread.currentThread().isInterrupted()) {
        throw new CancellationException("showing the frames was interrupted");
      }
      read(i, frame);
      reader.frame(i, frame);
    }
  }

  private synchronized boolean readLoose(int frame, byte[] into) {
    // The factor of a scene cap is found by rendering everything: too long for a reader.
    if (!table.seeksAtOnce()) {
      return false;
    }
    FrameCursor cursor = loose;
    if (cursor == null) {
      cursor = table.passingCursor();
      loose = cursor;
    }
    if (cursor.position() != frame) {
      cursor.seek(frame);
    }
    cursor.next(into);
    return true;
  }
}
