package lampwright.app.command;

import com.google.common.base.Strings;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.rig.Rig;

/** What situations ask together, for people. */
final class ShowText {
  private final PrintWriter out;

  ShowText(PrintWriter out) {
    this.out = out;
  }

  void write(Rig rig, ShowMeasure show) {
    double limit = rig.supplyLimitMilliamps();
    out.println();
    say("Situations, in every combination that is not ruled out");
    say(
        "  Supply     %s of %.0f mA (%.0f %%)%s",
        milliamps(show.supply()),
        limit,
        100 * show.supply().milliamps() / limit,
        names(show.supply().situations()));
    show.ceilingShare(rig)
        .ifPresent(
            share ->
                say(
                    "  Ceiling    frames over %.0f mA are dimmed, at worst to about %.0f %%",
                    limit, 100 * share));
    for (ShowMeasure.Bound chain : show.chains()) {
      say(
          "  Chain      %s  %s%s",
          Strings.padEnd(chain.id(), 16, ' '), milliamps(chain), names(chain.situations()));
    }
    Optional<ShowMeasure.Flashes> flashes = show.flashes();
    say(
        "  Flashes    %s",
        flashes.isEmpty()
            ? "not measured: too many combinations, or scenes too long"
            : String.format(
                Locale.ROOT,
                "at most %d per second of all lamps together (limit %d)%s",
                flashes.get().perSecond(),
                FlashCaution.MOST_FLASHES,
                names(flashes.get().situations())));
  }

  private static String milliamps(ShowMeasure.Bound bound) {
    return String.format(
        Locale.ROOT, "%s%.0f mA", bound.exact() ? "" : "at most ", bound.milliamps());
  }

  private static String names(List<String> situations) {
    return situations.isEmpty() ? "" : ": " + String.join(", ", situations);
  }

  private void say(String form, Object... values) {
    out.println(String.format(Locale.ROOT, form, values));
  }
}
