package lampwright.engine.second;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.math3.fraction.BigFraction;

/** Light and dark of a light character, in ms from the start of its period. */
final class LightCharacter {
  private static final BigFraction LONG_FLASH = new BigFraction(2000);
  private static final Pattern FORM =
      Pattern.compile("\\s*([A-Za-z]+)(?:\\(([^)]*)\\))?(\\+LFl)?\\s*(?:([0-9.]+)\\s*s\\s*)?");

  /** Ends of the parts, the first of them lit, then in turn; the last is the end of the period. */
  private final List<BigFraction> ends = new ArrayList<>();

  private BigFraction at = BigFraction.ZERO;

  private LightCharacter(String text, BigFraction unitMs) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new IllegalArgumentException(text);
    }
    String kind = form.group(1);
    String inner = form.group(2) == null ? "1" : form.group(2);
    BigFraction period =
        form.group(4) == null
            ? BigFraction.ZERO
            : Exact.of(new BigDecimal(form.group(4))).multiply(1000);
    switch (kind) {
      case "F" -> add(form.group(4) == null ? new BigFraction(1000) : period);
      case "Iso" -> add(period.divide(2));
      case "LFl" -> add(LONG_FLASH);
      case "Fl" -> groups(inner, period);
      case "Oc" -> occulting(inner, period);
      case "Mo" -> morse(inner, unitMs, form.group(4) == null);
      default -> quick(form, period);
    }
    if (Exact.less(at, period)) {
      darkUntil(period);
    }
  }

  static LightCharacter of(String text, BigFraction unitMs) {
    return new LightCharacter(text, unitMs);
  }

  BigFraction period() {
    return at;
  }

  boolean isLit(BigFraction place) {
    int part = 0;
    while (part < ends.size() && ends.get(part).compareTo(place) <= 0) {
      part++;
    }
    return part % 2 == 0;
  }

  private void add(BigFraction length) {
    at = at.add(length);
    ends.add(at);
  }

  private void lengthen(BigFraction length) {
    at = at.add(length);
    ends.set(ends.size() - 1, at);
  }

  private void darkUntil(BigFraction end) {
    if (ends.size() % 2 == 0) {
      lengthen(end.subtract(at));
    } else {
      add(end.subtract(at));
    }
  }

  private void groups(String inner, BigFraction period) {
    int[] groups = Stream.of(inner.split("\\+", -1)).mapToInt(Integer::parseInt).toArray();
    int flashes = 0;
    for (int group : groups) {
      flashes += group;
    }
    int slots = Math.max(2, flashes + groups.length - 1 + (groups.length > 1 ? 2 : 1));
    BigFraction slot = Exact.least(LONG_FLASH, period.divide(slots));
    for (int g = 0; g < groups.length; g++) {
      if (g > 0) {
        lengthen(slot);
      }
      slots(groups[g], slot);
    }
    darkUntil(period);
  }

  private void slots(int count, BigFraction slot) {
    for (int i = 0; i < count; i++) {
      add(slot.divide(2));
      add(slot.divide(2));
    }
  }

  private void occulting(String inner, BigFraction period) {
    groups(inner, period);
    List<BigFraction> flashing = List.copyOf(ends);
    ends.clear();
    at = BigFraction.ZERO;
    int last = flashing.size() - 1;
    BigFraction first = period.subtract(flashing.get(last - 1));
    ends.add(first);
    flashing.subList(0, last).forEach(end -> ends.add(end.add(first)));
    at = period;
  }

  private void quick(Matcher form, BigFraction period) {
    String kind = form.group(1);
    boolean interrupted = kind.startsWith("I");
    BigFraction slot =
        new BigFraction(
            switch (interrupted ? kind.substring(1) : kind) {
              case "Q" -> 1000;
              case "VQ" -> 500;
              case "UQ" -> 250;
              default -> throw new IllegalArgumentException(kind);
            });
    int count = form.group(2) == null ? 1 : Integer.parseInt(form.group(2));
    if (interrupted) {
      BigInteger fit = Exact.floor(period.multiply(2).divide(slot.multiply(3)));
      count = Math.max(1, fit.intValueExact());
    }
    slots(count, slot);
    if (form.group(3) != null) {
      add(LONG_FLASH);
    }
  }

  private void morse(String letters, BigFraction dot, boolean openEnd) {
    for (int i = 0; i < letters.length(); i++) {
      String signals = Morse.signals(letters.charAt(i));
      for (int k = 0; k < signals.length(); k++) {
        add(signals.charAt(k) == '-' ? dot.multiply(3) : dot);
        add(dot);
      }
      lengthen(dot.multiply(2));
    }
    if (openEnd) {
      lengthen(dot.multiply(4));
    }
  }
}
