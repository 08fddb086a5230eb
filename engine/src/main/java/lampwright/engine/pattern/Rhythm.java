package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * A light character in time: light and dark in turn.
 *
 * <p>Written as on the international chart (INT 1, section P): {@code F}, {@code Oc 6s}, {@code
 * Oc(2) 8s}, {@code Iso 4s}, {@code Fl 5s}, {@code Fl(2) 10s}, {@code Fl(2+1) 15s}, {@code LFl
 * 10s}, {@code Q}, {@code VQ}, {@code UQ}, {@code Q(3) 10s}, {@code VQ(6)+LFl 10s}, {@code IQ 12s},
 * {@code Mo(A) 8s}. The chart gives the groups and the period; how long each flash is within them
 * is ours, inside the bounds of the IALA rhythmic characters (not read again): a flash is shorter
 * than the dark after it, the dark between groups is at least three times that between flashes. The
 * long flash of {@code Q(6)+LFl} follows after the usual dark of its quick flashes.
 */
public final class Rhythm {
  private static final Pattern QUICK =
      Pattern.compile("(I?)(Q|VQ|UQ)(?:\\((\\d{1,2})\\))?(\\+LFl)?");
  private static final Pattern GROUPED =
      Pattern.compile("(Fl|Oc)(?:\\((\\d{1,2}(?:\\+\\d{1,2}){0,4})\\))?");
  private static final Pattern MORSE = Pattern.compile("Mo\\(([A-Z0-9]{1,10})\\)");
  private static final Pattern PERIOD =
      Pattern.compile("(.*?)(?:\\s*(\\d{1,4}(?:\\.\\d{1,3})?)\\s*s)?");

  private static final int MAX_LENGTH = 60;
  private static final Ratio SECOND_MS = Ratio.of(1000);
  private static final Ratio MINUTE_MS = Ratio.of(Times.MINUTE_MS);
  private static final Ratio LONG_FLASH_MS = given("light character", "long flash", SECOND_MS);
  private static final Ratio LONGEST_SLOT_MS =
      given("light character", "longest flash and dark of a group", SECOND_MS);
  private static final Ratio DASH = given("Morse code", "dash", Ratio.ONE);
  private static final Ratio LETTER_SPACE = given("Morse code", "space between letters", Ratio.ONE);
  private static final Ratio WORD_SPACE = given("Morse code", "space between words", Ratio.ONE);
  private static final Ratio HALF = Ratio.of(new BigDecimal("0.5"));

  /** The ends of light, dark, light, dark, … in ms from the start of the period. */
  private final List<Ratio> ends = new ArrayList<>();

  private boolean lightFirst = true;
  private Ratio now = Ratio.ZERO;

  private Rhythm() {}

  /**
   * The rhythm of a character.
   *
   * @param unitMs length of a Morse dot, above 0
   * @throws IllegalArgumentException whose message says what is allowed, if it is no character or
   *     its period is too short for it
   */
  public static Rhythm of(String character, BigDecimal unitMs) {
    Matcher split = PERIOD.matcher(character.strip());
    if (character.length() > MAX_LENGTH || !split.matches()) {
      throw unknown();
    }
    String body = split.group(1);
    Ratio period =
        split.group(2) == null ? null : Ratio.of(new BigDecimal(split.group(2))).times(1000);
    if (period != null && period.signum() == 0) {
      throw new IllegalArgumentException("must have a period greater than 0 s");
    }
    Rhythm rhythm = new Rhythm();
    Matcher quick = QUICK.matcher(body);
    Matcher grouped = GROUPED.matcher(body);
    Matcher morse = MORSE.matcher(body);
    if (body.equals("F")) {
      rhythm.light(period == null ? Ratio.of(1000) : period);
    } else if (body.equals("Iso")) {
      Ratio half = needed(period).times(HALF);
      rhythm.light(half);
      rhythm.dark(half);
    } else if (body.equals("LFl")) {
      rhythm.light(LONG_FLASH_MS);
      rhythm.darkUntil(needed(period), LONG_FLASH_MS);
    } else if (grouped.matches()) {
      rhythm.groups(grouped.group(2), needed(period));
      rhythm.lightFirst = grouped.group(1).equals("Fl");
      if (!rhythm.lightFirst) {
        rhythm.turnRound();
      }
    } else if (quick.matches()) {
      rhythm.quick(quick, period);
    } else if (morse.matches()) {
      rhythm.morse(morse.group(1), Ratio.of(unitMs), period);
    } else {
      throw unknown();
    }
    return rhythm;
  }

  /** The length of the period, above 0. */
  public Ratio periodMs() {
    return now;
  }

  /** Whether it shines at a place within the period. */
  public boolean lit(Moment placeMs) {
    return (part(placeMs) % 2 == 0) == lightFirst;
  }

  /** Where the light or dark at a place within the period ends: later than the place. */
  Ratio end(Moment placeMs) {
    return ends.get(part(placeMs));
  }

  private int part(Moment placeMs) {
    int part = 0;
    while (part < ends.size() - 1 && placeMs.compareTo(ends.get(part)) >= 0) {
      part++;
    }
    return part;
  }

  // A flash fills the first half of a slot. Between groups one slot is left out, and after the last
  // one at least one more, so that the end is seen.
  private void groups(String counts, Ratio period) {
    String[] sizes = counts == null ? new String[] {"1"} : counts.split("\\+");
    int flashes = 0;
    for (String size : sizes) {
      if (Integer.parseInt(size) == 0) {
        throw new IllegalArgumentException("must have at least 1 flash in a group");
      }
      flashes += Integer.parseInt(size);
    }
    int slots = flashes + sizes.length - 1 + (sizes.length > 1 ? 2 : 1);
    Ratio share = period.over(Ratio.of(Math.max(slots, 2))).reduced();
    Ratio slot = share.compareTo(LONGEST_SLOT_MS) < 0 ? share : LONGEST_SLOT_MS;
    Ratio flash = slot.times(HALF);
    for (int g = 0; g < sizes.length; g++) {
      if (g > 0) {
        stretchDark(slot);
      }
      for (int i = 0; i < Integer.parseInt(sizes[g]); i++) {
        light(flash);
        dark(flash);
      }
    }
    stretchDark(period.minus(now));
  }

  private void quick(Matcher character, Ratio period) {
    String rate =
        switch (character.group(2)) {
          case "Q" -> "quick";
          case "VQ" -> "very quick";
          default -> "ultra quick";
        };
    Ratio slotMs = MINUTE_MS.over(given("light character", rate, Ratio.ONE)).reduced();
    boolean interrupted = !character.group(1).isEmpty();
    boolean counted = character.group(3) != null;
    boolean longFlash = character.group(4) != null;
    if ((interrupted && counted) || (longFlash && !counted)) {
      throw unknown();
    }
    if (!interrupted && !counted) {
      if (period != null) {
        throw new IllegalArgumentException(
            "must have no period: a continuous quick light has a fixed one");
      }
      slots(1, slotMs);
      return;
    }
    Ratio whole = needed(period);
    // An interrupted light flashes for two thirds of its period.
    long count =
        counted
            ? Integer.parseInt(character.group(3))
            : whole.times(2).over(slotMs.times(3)).floor();
    if (count == 0) {
      throw new IllegalArgumentException("must have room for at least 1 flash");
    }
    slots((int) count, slotMs);
    if (longFlash) {
      light(LONG_FLASH_MS);
    }
    darkUntil(whole, slotMs.times(HALF));
  }

  private void morse(String letters, Ratio unit, Ratio period) {
    for (int i = 0; i < letters.length(); i++) {
      if (i > 0) {
        stretchDark(unit.times(LETTER_SPACE.minus(Ratio.ONE)));
      }
      for (char sign : MorseCode.of(letters.charAt(i)).toCharArray()) {
        light(sign == '-' ? unit.times(DASH) : unit);
        dark(unit);
      }
    }
    Ratio wordGap = unit.times(WORD_SPACE.minus(Ratio.ONE));
    if (period == null) {
      stretchDark(wordGap);
    } else {
      darkUntil(period, unit.times(LETTER_SPACE.minus(Ratio.ONE)));
    }
  }

  private void slots(int count, Ratio slotMs) {
    Ratio half = slotMs.times(HALF);
    for (int i = 0; i < count; i++) {
      light(half);
      dark(half);
    }
  }

  private void light(Ratio lengthMs) {
    now = now.plus(lengthMs).reduced();
    ends.add(now);
  }

  private void dark(Ratio lengthMs) {
    light(lengthMs);
  }

  private void stretchDark(Ratio lengthMs) {
    now = now.plus(lengthMs).reduced();
    ends.set(ends.size() - 1, now);
  }

  // Dark to the end of the period, which must leave more than a least time for it.
  private void darkUntil(Ratio period, Ratio leastMs) {
    Ratio left = period.minus(now);
    if (left.compareTo(leastMs) <= 0) {
      double shortest = now.plus(leastMs).doubleValue() / 1000;
      throw new IllegalArgumentException("must have a period longer than " + shortest + " s");
    }
    if (ends.size() % 2 == 0) {
      stretchDark(left);
    } else {
      dark(left);
    }
  }

  // An occulting light is the flashing one with light and dark exchanged, long light first.
  private void turnRound() {
    List<Ratio> turned = new ArrayList<>();
    Ratio longLight = now.minus(ends.get(ends.size() - 2));
    for (int i = 0; i < ends.size() - 1; i++) {
      if (i == 0) {
        turned.add(longLight);
      }
      turned.add(ends.get(i).plus(longLight).reduced());
    }
    ends.clear();
    ends.addAll(turned);
    lightFirst = true;
  }

  private static Ratio given(String subject, String item, Ratio unit) {
    return Ratio.of(new BigDecimal(TradeNumbers.get(subject, item).value())).times(unit);
  }

  private static Ratio needed(Ratio period) {
    if (period == null) {
      throw new IllegalArgumentException("must end with its period in seconds, such as 10s");
    }
    return period;
  }

  private static IllegalArgumentException unknown() {
    return new IllegalArgumentException(
        "must be a light character in chart notation, such as  F, Oc 6s, Iso 4s, Fl 5s, Fl(2) 10s, Fl(2+1) 15s, LFl 10s,"
            + " Q, Q(3) 10s, VQ, VQ(6)+LFl 10s, UQ, IQ 12s, Mo(A) 8s");
  }
}
