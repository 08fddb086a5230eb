package lampwright.app.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Project files that grow in one way: in pixels, in lamps or in cues. */
enum GrowthProjects {
  /** One lamp of so many pixels and one cue, 10 s. */
  PIXELS("pixels of one lamp, 10 s") {
    @Override
    String project(int count) {
      String beacon = "\"kind\": \"rotating-beacon\", \"perMinute\": 118, \"beamDegrees\": 90";
      return file(
          count,
          List.of(lamp(0, 0, count)),
          10_000,
          List.of(track(0, List.of(cue(0, 10_000, 0, beacon)))));
    }
  },
  /** So many lamps of one pixel, each with a track and a rate of its own, 10 s. */
  LAMPS("lamps of one pixel, 10 s") {
    @Override
    int most() {
      return 4096;
    }

    @Override
    String project(int count) {
      List<String> lamps = new ArrayList<>();
      List<String> tracks = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        String blink = text("\"kind\": \"indicator\", \"perMinute\": %.2f", 60 + k * 0.01);
        lamps.add(lamp(k, k, 1));
        tracks.add(track(k, List.of(cue(0, 10_000, 0, blink))));
      }
      return file(count, lamps, 10_000, tracks);
    }
  },
  /** So many cues one after another on a lamp of three pixels, 600 ms each, with fades. */
  CUES("cues of 600 ms, 3 pixels") {
    @Override
    String project(int count) {
      List<String> cues = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        cues.add(cue(600L * k, 600, 100, pattern(k)));
      }
      return file(3, List.of(lamp(0, 0, 3)), 600L * count, List.of(track(0, cues)));
    }
  };

  /** Pixels of a chain: more are on the next. */
  private static final int CHAIN = 1000;

  private final String words;

  GrowthProjects(String words) {
    this.words = words;
  }

  /** What grows, and what stays. */
  String words() {
    return words;
  }

  /** The most that a project can have. */
  int most() {
    return Integer.MAX_VALUE;
  }

  /** The text of a project file with so many of them. */
  abstract String project(int count);

  private static String pattern(int k) {
    String own =
        switch (k % 5) {
          case 0 -> text("\"kind\": \"rotating-beacon\", \"perMinute\": %d", 40 + k % 100);
          case 1 -> text("\"kind\": \"colour-cycle\", \"periodMs\": %d", 500 + k % 777);
          case 2 -> text("\"kind\": \"breathe\", \"periodMs\": %d", 300 + k % 501);
          case 3 -> text("\"kind\": \"flash\", \"onMs\": %d, \"offMs\": 70", 30 + k % 97);
          default -> text("\"kind\": \"flicker\", \"seed\": %d", k);
        };
    return text("%s, \"level\": %.2f", own, 0.3 + k % 70 / 100.0);
  }

  private static String lamp(int number, int from, int pixels) {
    List<String> runs = new ArrayList<>();
    for (int at = from; at < from + pixels; ) {
      int count = Math.min(CHAIN - at % CHAIN, from + pixels - at);
      runs.add(
          text("{\"chain\": \"c%d\", \"from\": %d, \"count\": %d}", at / CHAIN, at % CHAIN, count));
      at += count;
    }
    return text("{\"id\": \"l%d\", \"pixels\": [%s]}", number, String.join(",", runs));
  }

  private static String track(int lamp, List<String> cues) {
    return text("{\"lamps\": [\"l%d\"], \"cues\": [%s]}", lamp, String.join(",", cues));
  }

  private static String cue(long startMs, int lengthMs, int fadeMs, String pattern) {
    return text(
        "{\"startMs\": %d, \"lengthMs\": %d, \"fadeInMs\": %d, \"fadeOutMs\": %3$d,"
            + " \"pattern\": {%s}}",
        startMs, lengthMs, fadeMs, pattern);
  }

  private static String file(int pixels, List<String> lamps, long lengthMs, List<String> tracks) {
    List<String> chains = new ArrayList<>();
    for (int from = 0; from < pixels; from += CHAIN) {
      chains.add(
          text(
              "{\"id\": \"c%d\", \"pixelType\": \"ws2812b\", \"pixels\": %d}",
              from / CHAIN, Math.min(CHAIN, pixels - from)));
    }
    return text(
        "{\"lampwright\": 1, \"name\": \"growth\", \"rig\": {\"chains\": [%s], \"lamps\": [%s]},"
            + " \"scenes\": [{\"id\": \"s\", \"lengthMs\": %d, \"framesPerSecond\": 50, \"loop\":"
            + " true, \"tracks\": [%s]}]}",
        String.join(",", chains), String.join(",", lamps), lengthMs, String.join(",", tracks));
  }

  private static String text(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
