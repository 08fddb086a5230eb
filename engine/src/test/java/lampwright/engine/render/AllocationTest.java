package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Frames are rendered without making objects, once a scene is made ready. Left out are rates such
 * as 29.97: with times in thousandths of a ms their fractions can overflow longs, and are then
 * counted with BigInteger.
 */
class AllocationTest {
  private static final int SCENES = 400;
  private static final long LEAST_OBJECT = 16;
  private static final long SOME = 200;

  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  @Test
  void nothingIsAllocatedForAFrame() {
    List<String> wasteful = new ArrayList<>();
    for (long seed = 0; seed < SCENES; seed++) {
      FrameTable table = RandomScenes.table(seed);
      if (table.scene().framesPerSecond().scale() > 1) {
        continue;
      }
      // Loads classes and makes tables that are made once.
      run(table.cursor());
      FrameCursor cursor = table.cursor();
      byte[] frame = new byte[table.layout().bytes()];
      cursor.next(frame);
      long made = run(cursor);
      // The least object has 16 bytes; a few are the JVM's own, such as when it compiles anew.
      if (made >= LEAST_OBJECT * table.frameCount() / 2 + SOME) {
        wasteful.add("seed " + seed + ": " + made + " bytes in " + table.frameCount() + " frames");
      }
    }
    assertThat(wasteful).isEmpty();
  }

  // Gives the bytes of the objects that were made.
  private long run(FrameCursor cursor) {
    byte[] frame = new byte[1000];
    long before = threads.getCurrentThreadAllocatedBytes();
    while (cursor.hasNext()) {
      cursor.next(frame);
    }
    return threads.getCurrentThreadAllocatedBytes() - before;
  }
}
