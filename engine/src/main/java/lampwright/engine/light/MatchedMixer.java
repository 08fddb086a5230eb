package lampwright.engine.light;

import java.util.Map;

/** Matched colour: chromaticities mixed from the emitters' own. */
final class MatchedMixer implements Mixer {
  private final Map<EmitterKind, Emitter> emitters;

  MatchedMixer(Map<EmitterKind, Emitter> emitters) {
    this.emitters = Map.copyOf(emitters);
  }

  @Override
  public void mix(Colour colour, double[] into, int at) {
    if (colour instanceof Colour.Drive d) {
      into[at] = d.r();
      into[at + 1] = d.g();
      into[at + 2] = d.b();
      into[at + 3] = has(EmitterKind.WHITE) ? d.w() : 0;
      return;
    }
    throw new IllegalArgumentException("matched colour is not yet mixed: " + colour);
  }

  @Override
  public void mixHue(double turns, double saturation, double[] into, int at) {
    mix(new Colour.Hue(turns * 360, saturation), into, at);
  }

  @Override
  public void mixKelvin(double kelvin, double[] into, int at) {
    mix(new Colour.Kelvin(kelvin), into, at);
  }

  @Override
  public boolean has(EmitterKind kind) {
    return emitters.containsKey(kind);
  }
}
