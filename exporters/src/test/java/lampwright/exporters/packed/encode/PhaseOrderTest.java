package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The order of samples by phase against sorting them. */
class PhaseOrderTest {
  @Test
  void orderIsThatOfThePhases() {
    Random random = new Random(20261130);
    for (int i = 0; i < 3000; i++) {
      int size = 2 + random.nextInt(i % 2 == 0 ? 30 : 3000);
      int pace = 1 + random.nextInt(size - 1);
      if (BigInteger.valueOf(size).gcd(BigInteger.valueOf(pace)).intValue() != 1) {
        continue;
      }
      int samples = 1 + random.nextInt(size);
      List<Integer> sorted =
          IntStream.range(0, samples)
              .boxed()
              .sorted(Comparator.comparingLong(k -> (long) k * pace % size))
              .toList();
      PhaseOrder order = PhaseOrder.of(samples, new FineGrid.Speed(pace, size));
      List<Integer> found = new ArrayList<>();
      for (int sample = 0; found.size() < samples; sample = order.next(sample)) {
        found.add(sample);
      }
      assertThat(found).as("%d of pace %d, size %d", samples, pace, size).isEqualTo(sorted);
      assertThat(order.next(found.get(samples - 1))).isZero();
    }
  }

  /** By hand: phases of samples 0 to 4 are 0, 3, 1, 4, 2 fifths, so the order is 0, 2, 4, 1, 3. */
  @Test
  void variationIsTheSumOfStepsInThatOrder() {
    PhaseOrder order = PhaseOrder.of(5, new FineGrid.Speed(3, 5));
    int[] v = {1, 11, 10, 8, 14};
    assertThat(order.variation(v, Long.MAX_VALUE)).isEqualTo(9 + 4 + 3 + 3 + 7);
    assertThat(order.variation(v, 10)).isGreaterThan(10);
  }
}
