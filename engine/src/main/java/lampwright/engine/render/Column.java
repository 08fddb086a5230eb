package lampwright.engine.render;

import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.light.EmitterKind;

/**
 * One byte of every frame.
 *
 * @param source where the byte goes
 * @param lamp the lamp that owns it, if one does
 */
public record Column(Source source, Optional<LampPixel> lamp) {
  /** Where a byte goes. */
  public sealed interface Source {}

  /**
   * An emitter of a pixel.
   *
   * @param chain the chain's id
   * @param pixel counted from 0 at the data input
   */
  public record PixelEmitter(String chain, int pixel, EmitterKind emitter) implements Source {}

  /**
   * A driver output.
   *
   * @param output the output's id
   */
  public record OutputDuty(String output) implements Source {}

  /**
   * A pixel as its lamp sees it.
   *
   * @param lamp the lamp's id
   * @param pixel place within the lamp, from 0; none for a lamp on a driver output
   */
  public record LampPixel(String lamp, OptionalInt pixel) {}

  /**
   * The column's name: {@code beacon.0.g} for a lamp's pixel and emitter, {@code rear-amber.output}
   * for a lamp on a driver output, and {@code chain:roof.5.g} or {@code output:spare} for what no
   * lamp owns. A lamp whose id begins with a hyphen is {@code lamp:-left}: spreadsheets would take
   * the hyphen for the start of a formula. No two columns of a rig have the same name.
   */
  public String name() {
    if (source instanceof PixelEmitter p) {
      String owner =
          lamp.map(l -> owner(l) + "." + l.pixel().getAsInt())
              .orElseGet(() -> "chain:" + p.chain() + "." + p.pixel());
      return owner + "." + p.emitter().key();
    }
    String output = ((OutputDuty) source).output();
    return lamp.map(l -> owner(l) + ".output").orElse("output:" + output);
  }

  private static String owner(LampPixel pixel) {
    return pixel.lamp().startsWith("-") ? "lamp:" + pixel.lamp() : pixel.lamp();
  }
}
