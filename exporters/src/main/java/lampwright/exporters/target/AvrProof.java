package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/** What the prover must be told of a rig's firmware on an AVR: its words of the command line. */
final class AvrProof {
  private final AvrTarget target;
  private final Rig rig;
  private final boolean gaps;
  private final ImmutableList.Builder<String> words = ImmutableList.builder();

  /**
   * The words of a rig.
   *
   * @param gaps whether low times between bits may be longer, up to half of the reset
   */
  AvrProof(AvrTarget target, Rig rig, boolean gaps) {
    this.gaps = gaps;
    this.target = target;
    this.rig = rig;
  }

  List<String> words() {
    add("--mcu", target.controller().id());
    add("--hz", Integer.toString(target.hertz().getAsInt()));
    PinPlan plan = target.pins(rig);
    int at = 0;
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      add("--chain", chain(chain, plan.chains().get(c).orElseThrow(), at));
      at += chain.bytes();
    }
    for (Optional<Pin> pin : plan.outputs()) {
      AvrPins.Pwm pwm = target.avrPins().pwm().get(pin.orElseThrow());
      add("--output", "at=" + at++ + "," + pwm.proof());
      target
          .avrPins()
          .timers()
          .getOrDefault(pwm.timer(), new AvrPins.Timer("", "", false, Collections.emptyList()))
          .proof()
          .forEach(register -> add("--register", register));
    }
    add("--frame-bytes", Integer.toString(at));
    return words.build();
  }

  private void add(String option, String value) {
    words.add(option).add(value);
  }

  private String chain(Chain chain, Pin pin, int at) {
    LineLimits limits = LineLimits.of(chain.type().line());
    StringBuilder text = new StringBuilder();
    text.append("pin=").append(pin.name().substring(1));
    text.append(",at=").append(at).append(",bytes=").append(chain.bytes());
    range(text, "t0h", limits.t0h());
    range(text, "t0l", limits.t0l());
    range(text, "t1h", limits.t1h());
    range(text, "t1l", limits.t1l());
    range(text, "period", limits.bit());
    double resetUs = chain.type().line().resetUs();
    if (gaps) {
      text.append(String.format(Locale.ROOT, ",gap=%s", resetUs / 2));
    }
    return text.append(String.format(Locale.ROOT, ",reset=%s", resetUs)).toString();
  }

  private static void range(StringBuilder text, String name, LineLimits.Range range) {
    text.append(',').append(name).append("-min=").append(range.leastNs());
    text.append(',').append(name).append("-max=").append(range.greatestNs());
  }
}
