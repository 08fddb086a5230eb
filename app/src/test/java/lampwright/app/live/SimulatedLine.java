package lampwright.app.live;

import java.util.ArrayDeque;
import java.util.Deque;

/** A line with a simulated controller at its other end, which answers at once. */
public final class SimulatedLine implements Transport {
  private final SimulatedController controller;
  private final Deque<Byte> answers = new ArrayDeque<>();
  private final int frameBytes;

  public SimulatedLine(LinkIdentity firmware) {
    this.controller = new SimulatedController(firmware.frameBytes(), firmware.layout(), 1);
    this.frameBytes = firmware.frameBytes();
  }

  /** The frame that it showed last; dark before the first. */
  public synchronized byte[] last() {
    int count = controller.shown().size();
    return count == 0 ? new byte[frameBytes] : controller.shown().get(count - 1);
  }

  /** How many frames it showed. */
  public synchronized int count() {
    return controller.shown().size();
  }

  @Override
  public synchronized int read(byte[] into) {
    int read = 0;
    while (read < into.length && !answers.isEmpty()) {
      into[read++] = answers.remove();
    }
    return read;
  }

  @Override
  public synchronized void write(byte[] bytes) {
    for (byte b : bytes) {
      controller
          .take(b)
          .ifPresent(
              answer -> {
                for (byte a : answer) {
                  answers.add(a);
                }
              });
    }
  }

  @Override
  public void close() {}
}
