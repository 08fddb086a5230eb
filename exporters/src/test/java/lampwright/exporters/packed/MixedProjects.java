package lampwright.exporters.packed;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;

/**
 * Random projects of sixteen lamps, each with a pattern of its own whose period meets neither the
 * frames nor the scene's length, as builders write them.
 */
public final class MixedProjects {
  private static final int LAMPS = 16;
  private static final String[] CHARACTERS = {
    "Fl(2) 7s", "Oc 3.1s", "Iso 2.3s", "Q", "VQ", "VQ(6)+LFl 10s", "Q(3) 5.7s", "Mo(A) 4.9s", "F"
  };
  private static final String[] BLENDS = {"cover", "add", "brighter", "scale"};
  private static final String[] EASINGS = {
    "linear", "hold", "smooth", "cubic-bezier(0.4, 0, 0.2, 1)"
  };
  private static final int[] RATES = {20, 25, 25, 30, 40, 50, 50, 60};

  private final Random random;

  private MixedProjects(Random random) {
    this.random = random;
  }

  /** The only scene of a project. */
  public static ExportJob job(long seed) {
    return read(new MixedProjects(new Random(seed)).project());
  }

  /**
   * The only scene of a small project: one to four lamps, a table of 1 to 4 KB. On these nothing of
   * the packer is tried out.
   */
  public static ExportJob small(long seed) {
    return read(new MixedProjects(new Random(seed)).smallProject());
  }

  /**
   * A show of one lamp: cues of 2 to 5 s, one after another, each with a pattern of its own and
   * fades at both ends.
   *
   * @param cuesAtLeast about so many cues at least, shorter ones where need be
   */
  public static ExportJob show(long seed, int pixels, int lengthMs, int cuesAtLeast) {
    return read(new MixedProjects(new Random(seed)).showProject(pixels, lengthMs, cuesAtLeast));
  }

  /** The first scene of a project file's text. */
  public static ExportJob read(String text) {
    ReadResult result = ProjectReader.read("mixed", text.getBytes(UTF_8));
    Project project =
        result.project().orElseThrow(() -> new AssertionError(result.lines() + "\n" + text));
    return ExportJob.of(project, project.scenes().get(0), ExportOptions.DEFAULT);
  }

  /** A project of one lamp of some pixels whose only cue covers the scene. */
  public static ExportJob oneLamp(int pixels, int lengthMs, int framesPerSecond, String pattern) {
    return read(
        String.format(
            Locale.ROOT,
            """
            {"lampwright": 1, "name": "one lamp",
             "rig": {"chains": [{"id": "c", "pixelType": "ws2812b", "pixels": %1$d}],
                     "lamps": [{"id": "l", "pixels": [{"chain": "c", "from": 0, "count": %1$d}]}]},
             "scenes": [{"id": "s", "lengthMs": %2$d, "framesPerSecond": %3$d, "loop": true,
               "tracks": [{"lamps": ["l"],
                 "cues": [{"startMs": 0, "lengthMs": %2$d, "pattern": {%4$s}}]}]}]}
            """,
            pixels,
            lengthMs,
            framesPerSecond,
            pattern));
  }

  private String project() {
    List<String> chains = new ArrayList<>();
    List<String> outputs = new ArrayList<>();
    List<String> lamps = new ArrayList<>();
    int onChains = LAMPS - random.nextInt(5);
    int lampsPerChain = 4 + random.nextInt(9);
    for (int first = 0; first < onChains; first += lampsPerChain) {
      String chain = "c" + chains.size();
      int pixels = 0;
      for (int lamp = first; lamp < Math.min(onChains, first + lampsPerChain); lamp++) {
        int count = 1 + random.nextInt(random.nextInt(8) == 0 ? 8 : 3);
        lamps.add(
            lamp(
                lamp,
                format(
                    "\"pixels\": [{\"chain\": \"%s\", \"from\": %d, \"count\": %d}]",
                    chain, pixels, count)));
        pixels += count;
      }
      chains.add(
          format(
              "{\"id\": \"%s\", \"pixelType\": \"%s\", \"pixels\": %d}",
              chain, random.nextBoolean() ? "ws2812b" : "sk6812-rgbw", pixels));
    }
    for (int lamp = onChains; lamp < LAMPS; lamp++) {
      outputs.add(format("{\"id\": \"o%d\"}", lamp));
      lamps.add(lamp(lamp, format("\"output\": \"o%d\"", lamp)));
    }
    return format(
        "{\"lampwright\": 1, \"name\": \"mixed\", \"rig\": {\"chains\": [%s], \"outputs\": [%s],"
            + " \"lamps\": [%s]}, \"scenes\": [%s]}",
        String.join(",", chains), String.join(",", outputs), String.join(",", lamps), scene());
  }

  private String smallProject() {
    int count = 1 + random.nextInt(4);
    List<String> lamps = new ArrayList<>();
    List<String> tracks = new ArrayList<>();
    int pixels = 0;
    for (int lamp = 0; lamp < count; lamp++) {
      int own = 1 + random.nextInt(4);
      lamps.add(
          format(
              "{\"id\": \"l%d\", \"pixels\": [{\"chain\": \"c\", \"from\": %d, \"count\": %d}]}",
              lamp, pixels, own));
      pixels += own;
    }
    int frames = (1024 + random.nextInt(3073)) / (3 * pixels);
    int rate = RATES[random.nextInt(RATES.length)];
    int lengthMs = Math.max(1, 1000 * frames / rate);
    for (int lamp = 0; lamp < count; lamp++) {
      tracks.add(track(lamp, cue(0, lengthMs)));
    }
    return oneChain(pixels, lamps, lengthMs, rate, tracks);
  }

  private String showProject(int pixels, int lengthMs, int cuesAtLeast) {
    List<String> cues = new ArrayList<>();
    int start = 0;
    while (start < lengthMs) {
      int own = (2000 + random.nextInt(3001));
      own = Math.min(Math.min(own, lengthMs / cuesAtLeast * 3 / 2), lengthMs - start);
      int fade = Math.min(own / 2, 200 + random.nextInt(800));
      cues.add(
          format(
              "{\"startMs\": %d, \"lengthMs\": %d, \"fadeInMs\": %d, \"fadeOutMs\": %d,"
                  + " \"pattern\": {%s}}",
              start, own, fade, fade, pattern()));
      start += own;
    }
    String lamp =
        format("{\"id\": \"l0\", \"pixels\": [{\"chain\": \"c\", \"count\": %d}]}", pixels);
    return oneChain(pixels, List.of(lamp), lengthMs, 50, List.of(track(0, String.join(",", cues))));
  }

  private static String oneChain(
      int pixels, List<String> lamps, int lengthMs, int rate, List<String> tracks) {
    return format(
        "{\"lampwright\": 1, \"name\": \"mixed\", \"rig\": {\"chains\": [{\"id\": \"c\","
            + " \"pixelType\": \"ws2812b\", \"pixels\": %d}], \"lamps\": [%s]}, \"scenes\":"
            + " [{\"id\": \"s\", \"lengthMs\": %d, \"framesPerSecond\": %d, \"loop\": true,"
            + " \"tracks\": [%s]}]}",
        pixels, String.join(",", lamps), lengthMs, rate, String.join(",", tracks));
  }

  private String lamp(int number, String fitting) {
    String feel =
        random.nextInt(10) == 0
            ? format(
                ", \"feel\": {\"riseMs\": %d, \"fallMs\": %d}",
                random.nextInt(200), random.nextInt(200))
            : "";
    return format("{\"id\": \"l%d\", %s%s}", number, fitting, feel);
  }

  private String scene() {
    int rate = RATES[random.nextInt(RATES.length)];
    int lengthMs = 500 + random.nextInt(4500);
    List<String> tracks = new ArrayList<>();
    for (int lamp = 0; lamp < LAMPS; lamp++) {
      tracks.add(track(lamp, cue(0, lengthMs)));
      if (random.nextInt(8) == 0) {
        int start = random.nextInt(lengthMs);
        tracks.add(track(lamp, cue(start, 1 + random.nextInt(lengthMs))));
      }
    }
    return format(
        "{\"id\": \"s\", \"lengthMs\": %d, \"framesPerSecond\": %d, \"loop\": %b,"
            + " \"dither\": \"%s\", \"tracks\": [%s]}",
        lengthMs,
        rate,
        random.nextInt(5) > 0,
        random.nextInt(8) == 0 ? "temporal" : "off",
        String.join(",", tracks));
  }

  private static String track(int lamp, String cue) {
    return format("{\"lamps\": [\"l%d\"], \"cues\": [%s]}", lamp, cue);
  }

  private String cue(int startMs, int lengthMs) {
    int fade = random.nextInt(8) == 0 ? random.nextInt(lengthMs) : 0;
    return format(
        "{\"startMs\": %d, \"lengthMs\": %d, \"fadeInMs\": %d, \"fadeOutMs\": %d,"
            + " \"blend\": \"%s\", \"pattern\": {%s}}",
        startMs,
        lengthMs,
        fade,
        fade / 2,
        random.nextInt(8) == 0 ? pick(BLENDS) : "cover",
        pattern());
  }

  private String pattern() {
    int kind = random.nextInt(13);
    String own =
        switch (kind) {
          case 0 -> "\"kind\": \"steady\"";
          case 1 ->
              format(
                  "\"kind\": \"flash\", \"onMs\": %d, \"offMs\": %d, \"flashes\": %d, \"gapMs\": %d",
                  10 + random.nextInt(200),
                  10 + random.nextInt(200),
                  1 + random.nextInt(4),
                  random.nextInt(900));
          case 2 ->
              format(
                  "\"kind\": \"indicator\", \"perMinute\": %d, \"onShare\": 0.%02d",
                  60 + random.nextInt(90), 20 + random.nextInt(60));
          case 3 ->
              format(
                  "\"kind\": \"rotating-beacon\", \"perMinute\": %d, \"beamDegrees\": %d,"
                      + " \"clockwise\": %b",
                  40 + random.nextInt(200), 30 + random.nextInt(300), random.nextBoolean());
          case 4 ->
              format(
                  "\"kind\": \"chase\", \"stepMs\": %d, \"width\": %d, \"tail\": %d, \"bounce\": %b",
                  15 + random.nextInt(120),
                  1 + random.nextInt(3),
                  random.nextInt(4),
                  random.nextBoolean());
          case 5 ->
              format(
                  "\"kind\": \"fill\", \"overMs\": %d, \"holdMs\": %d, \"offMs\": %d",
                  random.nextInt(400), 1 + random.nextInt(400), random.nextInt(600));
          case 6 ->
              format(
                  "\"kind\": \"colour-cycle\", \"periodMs\": %d, \"spread\": %s, \"backwards\": %b",
                  150 + random.nextInt(3000), random.nextInt(5) / 4.0, random.nextBoolean());
          case 7 ->
              format(
                  "\"kind\": \"tint\", \"kelvin\": %d, \"toKelvin\": %d",
                  2000 + random.nextInt(8000), 2000 + random.nextInt(8000));
          case 8 ->
              format(
                  "\"kind\": \"fade\", \"from\": \"%s\", \"to\": \"%s\", \"easing\": \"%s\"",
                  colour(), colour(), pick(EASINGS));
          case 9 -> keyframes();
          case 10 ->
              format(
                  "\"kind\": \"flicker\", \"seed\": %d, \"depth\": 0.7, \"rateHz\": %d",
                  random.nextInt(100), 1 + random.nextInt(12));
          case 11 -> format("\"kind\": \"test-walk\", \"stepMs\": %d", 20 + random.nextInt(300));
          default ->
              format("\"kind\": \"light-character\", \"character\": \"%s\"", pick(CHARACTERS));
        };
    return format(
        "%s, \"colour\": \"%s\", \"level\": 0.%d%s",
        own,
        colour(),
        1 + random.nextInt(9),
        kind > 0 && kind < 7 ? format(", \"phase\": 0.%02d", random.nextInt(100)) : "");
  }

  private String keyframes() {
    List<String> frames = new ArrayList<>();
    int at = random.nextInt(100);
    for (int i = 2 + random.nextInt(4); i > 0; i--) {
      frames.add(
          format(
              "{\"atMs\": %d, \"colour\": \"%s\", \"level\": 0.%d, \"easing\": \"%s\"}",
              at, colour(), random.nextInt(10), pick(EASINGS)));
      at += 7 + random.nextInt(700);
    }
    return format(
        "\"kind\": \"keyframes\", \"repeat\": %b, \"frames\": [%s]",
        random.nextBoolean(), String.join(",", frames));
  }

  private String colour() {
    return format("#%06X", random.nextInt(1 << 24));
  }

  private String pick(String[] from) {
    return from[random.nextInt(from.length)];
  }

  private static String format(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
