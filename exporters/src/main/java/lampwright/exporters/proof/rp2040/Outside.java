package lampwright.exporters.proof.rp2040;

import java.util.Comparator;
import java.util.PriorityQueue;

/** Levels that come to pins from outside, each at its cycle. */
final class Outside implements Clocked {
  private record Edge(long cycle, long order, int pin, boolean high) {}

  private static final Comparator<Edge> IN_TIME =
      Comparator.comparingLong(Edge::cycle).thenComparingLong(Edge::order);

  private final Gpio gpio;
  private final PriorityQueue<Edge> edges = new PriorityQueue<>(IN_TIME);
  private long order;

  Outside(Gpio gpio) {
    this.gpio = gpio;
  }

  void add(int pin, boolean high, long cycle) {
    edges.add(new Edge(cycle, order++, pin, high));
  }

  @Override
  public long due() {
    Edge next = edges.peek();
    return next == null ? NEVER : next.cycle;
  }

  @Override
  public void run(long cycle) {
    while (due() <= cycle) {
      Edge edge = edges.remove();
      gpio.drive(edge.pin, edge.high);
    }
  }
}
