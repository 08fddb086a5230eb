package lampwright.engine.situation;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.check.Checks;

/** What a condition looks at: an input, or a situation earlier in the list. */
public sealed interface Criterion {
  /** The id of the input that it looks at, if it does. */
  default Optional<String> input() {
    return Optional.empty();
  }

  /** The id of the situation that it looks at, if it does. */
  default Optional<String> situation() {
    return Optional.empty();
  }

  /** The form as project files name it. */
  String form();

  /**
   * The width of a channel's pulses, with two ends at which it goes on and two at which it goes
   * off; between those it stays as it is. Off while the channel is lost.
   */
  sealed interface Width extends Criterion {
    /** How much further than the end at which it goes on the width has to be for it to go off. */
    int hysteresisUs();
  }

  /**
   * On above a width.
   *
   * @param channel id of the input
   * @param aboveUs 0 to 5,000 us; on when wider
   * @param hysteresisUs 0 to 5,000 us; off when less than that below
   */
  record Above(String channel, int aboveUs, int hysteresisUs) implements Width {
    public Above {
      Criteria.checkWidth("aboveUs", aboveUs, hysteresisUs).done();
    }

    @Override
    public Optional<String> input() {
      return Optional.of(channel);
    }

    @Override
    public String form() {
      return "aboveUs";
    }
  }

  /**
   * On below a width.
   *
   * @param channel id of the input
   * @param belowUs 0 to 5,000 us; on when narrower
   * @param hysteresisUs 0 to 5,000 us; off when more than that above
   */
  record Below(String channel, int belowUs, int hysteresisUs) implements Width {
    public Below {
      Criteria.checkWidth("belowUs", belowUs, hysteresisUs).done();
    }

    @Override
    public Optional<String> input() {
      return Optional.of(channel);
    }

    @Override
    public String form() {
      return "belowUs";
    }
  }

  /**
   * On from a width to another, both included.
   *
   * @param channel id of the input
   * @param fromUs 0 to 5,000 us
   * @param toUs 0 to 5,000 us, not less
   * @param hysteresisUs 0 to 5,000 us; off when further outside
   */
  record Between(String channel, int fromUs, int toUs, int hysteresisUs) implements Width {
    public Between {
      Criteria.checkWidth("betweenUs[0]", fromUs, hysteresisUs)
          .addAll(Criteria.checkWidth("betweenUs[1]", toUs, 0).faults())
          .that(
              fromUs <= toUs,
              "betweenUs",
              fromUs + " and " + toUs,
              "must be the lesser width first")
          .done();
    }

    @Override
    public Optional<String> input() {
      return Optional.of(channel);
    }

    @Override
    public String form() {
      return "betweenUs";
    }
  }

  /**
   * On while no valid pulse comes; a switch is never lost.
   *
   * @param channel id of the input
   */
  record Lost(String channel) implements Criterion {
    @Override
    public Optional<String> input() {
      return Optional.of(channel);
    }

    @Override
    public String form() {
      return "lost";
    }
  }

  /**
   * On while a switch is on, or while it is off.
   *
   * @param contact id of the input
   * @param on which of the two
   */
  record SwitchIs(String contact, boolean on) implements Criterion {
    @Override
    public Optional<String> input() {
      return Optional.of(contact);
    }

    @Override
    public String form() {
      return "is";
    }
  }

  /**
   * On while another situation is active, or while it is not.
   *
   * @param other id of a situation earlier in the list
   * @param active which of the two
   */
  record SituationIs(String other, boolean active) implements Criterion {
    @Override
    public Optional<String> situation() {
      return Optional.of(other);
    }

    @Override
    public String form() {
      return "is";
    }
  }

  /**
   * On for a while after another situation has ended.
   *
   * @param other id of a situation earlier in the list
   * @param withinMs for how long, 0 to a day
   */
  record EndedWithin(String other, BigDecimal withinMs) implements Criterion {
    public EndedWithin {
      withinMs = canonical(withinMs);
      Checks checks = Checks.of("condition");
      Criteria.TIME.check("endedWithinMs", withinMs, checks);
      checks.done();
    }

    @Override
    public Optional<String> situation() {
      return Optional.of(other);
    }

    @Override
    public String form() {
      return "endedWithinMs";
    }
  }
}
