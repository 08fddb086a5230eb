package lampwright.app.live;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import lampwright.engine.words.TextBundle;
import lampwright.exporters.live.LiveProtocol;

/** A link in words for people. */
public final class LinkWords {
  private static final TextBundle TEXTS =
      TextBundle.of(
          ResourceBundle.getBundle(
              "lampwright.app.live.live", Locale.ROOT, LinkWords.class.getModule()));

  private static final int US_PER_MS = 1000;

  private LinkWords() {}

  /** How it is, in a line. */
  public static String of(LinkState state) {
    if (state instanceof LinkState.Asking asking) {
      return TEXTS.get("state.asking", asking.port());
    } else if (state instanceof LinkState.Live live) {
      return TEXTS.get(
          "state.live",
          live.port(),
          fixed(live.figures().framesPerSecond(), 1),
          Long.toString(live.figures().unanswered()));
    } else if (state instanceof LinkState.Lost lost) {
      return TEXTS.get("state.lost", lost.port());
    } else if (state instanceof LinkState.Failed failed) {
      return of(failed.trouble());
    }
    return TEXTS.get("state.closed");
  }

  /** Why there is none, and what to do. */
  public static String of(LinkTrouble trouble) {
    if (trouble instanceof LinkTrouble.NoSuchPort t) {
      return TEXTS.get("trouble.noSuchPort", t.port(), there(t.there()));
    } else if (trouble instanceof LinkTrouble.NoPermission t) {
      return TEXTS.get("trouble.noPermission", t.port());
    } else if (trouble instanceof LinkTrouble.Busy t) {
      return TEXTS.get("trouble.busy", t.port());
    } else if (trouble instanceof LinkTrouble.NoSerialPort t) {
      return TEXTS.get("trouble.noSerialPort", t.port());
    } else if (trouble instanceof LinkTrouble.NotOpened t) {
      return TEXTS.get("trouble.notOpened", t.port(), Integer.toString(t.code()));
    } else if (trouble instanceof LinkTrouble.PortLost t) {
      return TEXTS.get("trouble.portLost", t.port());
    } else if (trouble instanceof LinkTrouble.NoSerial t) {
      return TEXTS.get("trouble.noSerial", t.why());
    } else if (trouble instanceof LinkTrouble.NoAnswer t) {
      return TEXTS.get("trouble.noAnswer", t.port(), Integer.toString(t.baud().rate()));
    } else if (trouble instanceof LinkTrouble.OtherVersion t) {
      return TEXTS.get(
          "trouble.otherVersion",
          Integer.toString(t.version()),
          Integer.toString(LiveProtocol.VERSION));
    } else if (trouble instanceof LinkTrouble.OtherRig t) {
      int wanted = t.wanted().frameBytes();
      int found = t.found().frameBytes();
      return wanted == found
          ? TEXTS.get("trouble.otherLayout", Integer.toString(wanted))
          : TEXTS.get("trouble.otherRig", Integer.toString(found), Integer.toString(wanted));
    }
    return TEXTS.get(
        "trouble.frameTooLong",
        Integer.toString(((LinkTrouble.FrameTooLong) trouble).bytes()),
        Integer.toString(LiveProtocol.MAX_FRAME_BYTES));
  }

  /** That a controller was found on a port. */
  public static String connected(String port) {
    return TEXTS.get("state.connected", port);
  }

  /** That there is no port. */
  public static String noPorts() {
    return TEXTS.get("ports.none");
  }

  /** A port, with what the system says of it. */
  public static String of(PortInfo port) {
    return port.description().isBlank()
        ? TEXTS.get("port.bare", port.name())
        : TEXTS.get("port", port.name(), port.description());
  }

  private static String there(List<PortInfo> ports) {
    return ports.isEmpty()
        ? noPorts()
        : TEXTS.get(
            "ports.there", ports.stream().map(LinkWords::of).collect(Collectors.joining(", ")));
  }

  /** What a link can carry, in a line. */
  public static String of(LinkRate rate) {
    return TEXTS.get(
        "rate",
        Integer.toString(rate.pixels()),
        Integer.toString(rate.frameBytes()),
        Integer.toString(rate.baud().rate()),
        fixed(rate.times().packetUs() / US_PER_MS, 2),
        fixed(rate.times().linesUs() / US_PER_MS, 2),
        fixed(rate.times().answerUs() / US_PER_MS, 2),
        fixed(rate.framesPerSecond(), 1));
  }

  /** Whether that carries all frames of a scene, in a line. */
  public static String of(LinkRate rate, double framesPerSecond) {
    String scene = fixed(framesPerSecond, 1);
    return rate.framesPerSecond() >= framesPerSecond
        ? TEXTS.get("rate.enough", scene)
        : TEXTS.get("rate.less", scene, fixed(rate.framesPerSecond(), 1));
  }

  /** How it did, in a line. */
  public static String of(LinkFigures figures) {
    return TEXTS.get(
        "figures",
        Long.toString(figures.sent()),
        Long.toString(figures.taken()),
        Long.toString(figures.unanswered()),
        Long.toString(figures.damaged()),
        Integer.toString(figures.losses()));
  }

  private static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
