package lampwright.engine.project;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.MatchedMix;
import lampwright.engine.light.MatchedMixer;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Tint;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * A matched colour that a lamp's pixels cannot mix.
 *
 * @param place the cue that asks for it
 * @param path of the colour in the project file
 * @param lamp the first lamp on its track that cannot
 * @param pixelType of that lamp's pixels
 * @param mix what they do instead
 */
public record ColourReach(
    ScenePlace place, String path, String lamp, String pixelType, MatchedMix mix) {
  /** A step just noticeable, in CIE 1976 u'v' (CIE TN 001: one step is 0.0011). */
  private static final double STEP = 0.0011;

  /** The place, the colour, the distance and what is shown instead, in one line. */
  public String text() {
    return path + ": " + finding();
  }

  /** The colour, the distance and what is shown instead. */
  public String finding() {
    return String.format(
        java.util.Locale.ROOT,
        "x %.4f y %.4f can't be mixed from the emitters of lamp %s (%s): the nearest,"
            + " x %.4f y %.4f, is %.4f away in u'v', %s",
        mix.target().x(),
        mix.target().y(),
        lamp,
        pixelType,
        mix.reached().x(),
        mix.reached().y(),
        mix.distance(),
        mix.distance() < 4 * STEP ? "hardly to be seen" : "a difference to be seen");
  }

  /** Every matched colour of a project that some lamp cannot mix, in the order of the file. */
  public static List<ColourReach> of(Project project) {
    List<ColourReach> found = new ArrayList<>();
    for (int s = 0; s < project.scenes().size(); s++) {
      Scene scene = project.scenes().get(s);
      for (int t = 0; t < scene.tracks().size(); t++) {
        Track track = scene.tracks().get(t);
        for (int c = 0; c < track.cues().size(); c++) {
          ScenePlace place = ScenePlace.ofCue(s, t, c);
          colours(track.cues().get(c), place.path() + ".pattern")
              .forEach(
                  (at, colour) ->
                      reach(project.rig(), track, place, at, colour).ifPresent(found::add));
        }
      }
    }
    return found;
  }

  private static Map<String, Colour> colours(Cue cue, String path) {
    Map<String, Colour> colours = new LinkedHashMap<>();
    Pattern pattern = cue.pattern();
    if (pattern instanceof Tint tint) {
      colours.put(path + ".kelvin", new Colour.Kelvin(tint.kelvin()));
      tint.toKelvin().ifPresent(k -> colours.put(path + ".toKelvin", new Colour.Kelvin(k)));
      return colours;
    }
    colours.put(path + ".colour", pattern.look().colour());
    if (pattern instanceof Fade fade) {
      fade.from().ifPresent(colour -> colours.put(path + ".from", colour));
      fade.to().ifPresent(colour -> colours.put(path + ".to", colour));
    } else if (pattern instanceof Keyframes keyframes) {
      for (int i = 0; i < keyframes.frames().size(); i++) {
        Keyframe frame = keyframes.frames().get(i);
        String at = path + ".frames[" + i + "].colour";
        frame.colour().ifPresent(colour -> colours.put(at, colour));
      }
    }
    return colours;
  }

  private static Optional<ColourReach> reach(
      Rig rig, Track track, ScenePlace place, String path, Colour colour) {
    boolean named = colour instanceof Colour.Kelvin || colour instanceof Colour.Signal;
    boolean drive = colour instanceof Colour.Drive;
    if (drive || (!named && rig.colourMatching() == ColourMatching.DIRECT)) {
      return Optional.empty();
    }
    for (String id : track.lamps()) {
      for (Chain chain : chains(rig, rig.lamp(id).orElseThrow())) {
        Optional<MatchedMix> mix = new MatchedMixer(chain.emitters()).explain(colour);
        if (mix.isPresent() && !mix.get().reachesTarget()) {
          return Optional.of(new ColourReach(place, path, id, chain.type().id(), mix.get()));
        }
      }
    }
    return Optional.empty();
  }

  private static List<Chain> chains(Rig rig, Lamp lamp) {
    if (!(lamp.fitting() instanceof Fitting.Pixels pixels)) {
      return List.of();
    }
    List<String> ids = pixels.runs().stream().map(PixelRun::chain).distinct().toList();
    return rig.chains().stream().filter(chain -> ids.contains(chain.id())).toList();
  }
}
