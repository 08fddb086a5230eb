package lampwright.app.workshop.model.cue;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Emission;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.MatchedMix;
import lampwright.engine.light.MatchedMixer;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.Mixers;
import lampwright.engine.light.SrgbSpace;
import lampwright.engine.meter.LampLight;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.exporters.picture.Srgb8;

/** What colours look like on the pixels, or the plain LEDs, of one lamp. */
public final class PixelLook {
  private final Mixer mixer;
  private final Emission emission;
  private final Optional<MatchedMixer> matched;

  private PixelLook(Mixer mixer, Emission emission, Optional<MatchedMixer> matched) {
    this.mixer = mixer;
    this.emission = emission;
    this.matched = matched;
  }

  /** The look of a lamp of this rig. */
  public static PixelLook of(Rig rig, Lamp lamp) {
    if (lamp.fitting() instanceof Fitting.Pixels pixels) {
      String id = pixels.runs().get(0).chain();
      Chain chain = rig.chains().stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
      Map<EmitterKind, FittedEmitter> emitters = chain.fittedEmitters();
      return new PixelLook(
          Mixers.forPixel(rig.curve(), rig.colourMatching(), rig.whiteFromRgb(), emitters),
          new Emission(chain.emitters()),
          Optional.of(new MatchedMixer(emitters)));
    }
    String id = ((Fitting.Output) lamp.fitting()).output();
    DriverOutput output =
        rig.outputs().stream().filter(o -> o.id().equals(id)).findFirst().orElseThrow();
    Map<EmitterKind, Emitter> one = new EnumMap<>(EmitterKind.class);
    one.put(EmitterKind.RED, new Emitter(LampLight.chromaticity(output.colour()), 1));
    return new PixelLook(Mixers.forOutput(rig.curve()), new Emission(one), Optional.empty());
  }

  /** What the lamp makes of a colour, as bright as the screen can show its hue; opaque ARGB. */
  public int argb(Colour colour) {
    double[] drives = new double[Mixer.SLOTS];
    mixer.mix(colour).write(1, drives, 0);
    double[] xyz = new double[3];
    emission.xyz(drives, 0, xyz, 0);
    return argb(xyz);
  }

  /** The colour that was requested, by itself; opaque ARGB. */
  public static int requested(Colour colour) {
    if (colour instanceof Colour.Srgb c) {
      return 0xFF000000 | c.red() << 16 | c.green() << 8 | c.blue();
    }
    return MatchedMixer.target(colour).map(point -> argb(point.xyz(1))).orElse(0xFF000000);
  }

  /** Whether it has emitters of several colours to mix. */
  public boolean mixes() {
    return matched.isPresent();
  }

  /** How near the emitters come to a colour; empty for drives, and for plain LEDs. */
  public Optional<MatchedMix> explain(Colour colour) {
    return matched.flatMap(m -> m.explain(colour));
  }

  private static int argb(double[] xyz) {
    double[] rgb = new double[3];
    SrgbSpace.fromXyz(xyz[0], xyz[1], xyz[2], rgb, 0);
    double lift = Math.max(0, -Math.min(rgb[0], Math.min(rgb[1], rgb[2])));
    for (int i = 0; i < rgb.length; i++) {
      rgb[i] += lift;
    }
    double most = Math.max(rgb[0], Math.max(rgb[1], rgb[2]));
    if (!(most > 0)) {
      return 0xFF000000;
    }
    return Srgb8.argb((float) (rgb[0] / most), (float) (rgb[1] / most), (float) (rgb[2] / most));
  }
}
