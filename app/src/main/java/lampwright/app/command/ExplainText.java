package lampwright.app.command;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import lampwright.engine.check.SafeText;
import lampwright.engine.render.PixelAccount;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.ShowClock;
import lampwright.engine.situation.Situation;
import lampwright.engine.words.AccountWords;

/** An explanation for people, a line for each step. */
final class ExplainText {
  private ExplainText() {}

  static void print(Explanation why, Rig rig, PrintWriter out) {
    out.println(
        String.format(
            Locale.ROOT,
            "Lamp %s, pixel %d of %d, frame %d (%.3f s): %s",
            title(why),
            why.pixel(),
            why.lamp().fitting().lights(),
            why.frame(),
            why.seconds(),
            why.account().isPresent() ? sent(why) : "dark"));
    why.playing().ifPresent(playing -> situations(why, playing, out));
    if (why.scene().isPresent() && why.account().isPresent()) {
      Scene scene = why.scene().get();
      PixelAccount account = why.account().get();
      out.println(
          String.format(
              Locale.ROOT,
              "  Scene %s, frame %d of %d (%.3f s)",
              scene.id(),
              account.frame(),
              scene.frameCount(),
              account.timeMs() / 1000));
      AccountWords.lines(rig, scene, why.lamp(), account).forEach(line -> out.println("  " + line));
      if (!why.sent().equals(account.bytes().stream().map(PixelAccount.ByteStep::duty).toList())) {
        out.println(
            "  Current limit of the situations: "
                + AccountWords.bytes(account)
                + " is sent as "
                + sent(why));
      }
    }
  }

  private static String title(Explanation why) {
    String id = why.lamp().id();
    return why.lamp().name().isEmpty() ? id : SafeText.text(why.lamp().name()) + " (" + id + ")";
  }

  private static String sent(Explanation why) {
    List<PixelAccount.ByteStep> steps = why.account().orElseThrow().bytes();
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < steps.size(); i++) {
      words.append(i == 0 ? "" : ", ");
      steps.get(i).emitter().ifPresent(emitter -> words.append(emitter.letter()).append(' '));
      words.append(why.sent().get(i));
    }
    return words.toString();
  }

  private static void situations(Explanation why, Explanation.Playing playing, PrintWriter out) {
    if (playing.having().isEmpty()) {
      out.println("  No active situation has a track for the lamp");
      return;
    }
    ShowClock clock = why.clock();
    out.println("  Situation " + named(playing.having().get()) + " has the lamp");
    playing.began().ifPresent(change -> out.println("    " + ChangeText.line(change, clock)));
    if (!playing.below().isEmpty()) {
      out.println(
          "    also active, with lower priority: "
              + playing.below().stream().map(ExplainText::named).collect(Collectors.joining(", ")));
    }
  }

  private static String named(Situation situation) {
    return situation.id() + " (priority " + situation.priority() + ")";
  }
}
