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

  private final String words;

  GrowthProjects(String words) {
    this.words = words;
  }

  /** What grows, and what stays. */
  String words() {
    return words;
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
    return text(
        "{\"id\": \"l%d\", \"pixels\": [{\"chain\": \"c\", \"from\": %d, \"count\": %d}]}",
        number, from, pixels);
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
    return text(
        "{\"lampwright\": 1, \"name\": \"growth\", \"rig\": {\"chains\": [{\"id\": \"c\","
            + " \"pixelType\": \"ws2812b\", \"pixels\": %d}], \"lamps\": [%s]}, \"scenes\":"
            + " [{\"id\": \"s\", \"lengthMs\": %d, \"framesPerSecond\": 50, \"loop\": true,"
            + " \"tracks\": [%s]}]}",
        pixels, String.join(",", lamps), lengthMs, String.join(",", tracks));
  }

  private static String text(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
