package lampwright.engine.review;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.MatchedMix;
import lampwright.engine.light.MatchedMixer;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/** Matched colours that a lamp's pixels can't mix, where the difference is to be seen. */
final class ColourFindings implements Reviewer {
  @Override
  public void project(Project project, Consumer<Finding> found) {
    for (int s = 0; s < project.scenes().size(); s++) {
      Scene scene = project.scenes().get(s);
      for (int t = 0; t < scene.tracks().size(); t++) {
        for (int c = 0; c < scene.tracks().get(t).cues().size(); c++) {
          CuePlace place = new CuePlace(s, t, c);
          String path = place.path() + ".pattern.";
          place
              .cue(project)
              .pattern()
              .colours()
              .forEach((field, colour) -> reach(project, place, path + field, colour, found));
        }
      }
    }
  }

  private static void reach(
      Project project, CuePlace place, String path, Colour colour, Consumer<Finding> found) {
    Rig rig = project.rig();
    boolean named = colour instanceof Colour.Kelvin || colour instanceof Colour.Signal;
    boolean drive = colour instanceof Colour.Drive;
    if (drive || (!named && rig.colourMatching() == ColourMatching.DIRECT)) {
      return;
    }
    for (String id : place.track(project).lamps()) {
      Lamp lamp = rig.lamp(id).orElseThrow();
      for (Chain chain : chains(rig, lamp)) {
        Optional<MatchedMix> mix = new MatchedMixer(chain.fittedEmitters()).explain(colour);
        if (mix.isPresent() && mix.get().distance() > MatchedMix.VISIBLE) {
          found.accept(finding(project, place, path, lamp, chain, mix.get()));
          return;
        }
      }
    }
  }

  private static Finding finding(
      Project project, CuePlace place, String path, Lamp lamp, Chain chain, MatchedMix mix) {
    return Finding.of(Code.COLOUR_OUT_OF_REACH, place.subject(project))
        .with("x", coordinate(mix.target().x()))
        .with("y", coordinate(mix.target().y()))
        .with("lamp", Figure.words(lamp.title()))
        .with("type", Figure.words(chain.type().id()))
        .with("reachedX", coordinate(mix.reached().x()))
        .with("reachedY", coordinate(mix.reached().y()))
        .with("distance", coordinate(mix.distance()))
        .with("limit", Figure.of(MatchedMix.VISIBLE, 3, Unit.NONE))
        .at(path)
        .in(place.scene(project))
        .source("CIE 1976 u'v'")
        .make();
  }

  private static Figure coordinate(double value) {
    return Figure.of(value, 4, Unit.NONE);
  }

  private static List<Chain> chains(Rig rig, Lamp lamp) {
    if (!(lamp.fitting() instanceof Fitting.Pixels pixels)) {
      return List.of();
    }
    List<String> ids = pixels.runs().stream().map(PixelRun::chain).distinct().toList();
    return rig.chains().stream().filter(chain -> ids.contains(chain.id())).toList();
  }
}
