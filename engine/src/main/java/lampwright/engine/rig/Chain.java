package lampwright.engine.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Field;
import lampwright.engine.field.IdType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Planck;

/**
 * One data line of daisy-chained pixels.
 *
 * @param id unique among the chains
 * @param type what its pixels are
 * @param pixels how many, 1 to 4,096
 * @param order the byte order of this chain, with the emitters of its type
 * @param whiteKelvin the colour temperature of the white emitter as bought, if stated
 * @param pin the controller's pin that it is connected to, if set
 * @param feed its own supply wires, if they differ from those that the rig states for all chains
 */
public record Chain(
    String id,
    PixelType type,
    int pixels,
    EmitterOrder order,
    OptionalDouble whiteKelvin,
    Optional<Pin> pin,
    Optional<Feed> feed) {
  public static final int MAX_PIXELS = 4096;

  public static final Field<Chain, String> ID = Field.required("id", new IdType(), Chain::id, "");
  public static final Field<Chain, PixelType> TYPE =
      Field.required(
              "pixelType",
              new ReferenceType<>("pixelTypes", PixelType::id),
              Chain::type,
              BuiltInPixelTypes.standIn())
          .as("type");
  public static final Field<Chain, Integer> PIXELS =
      Field.required(
          "pixels", WholeType.ofInt(Unit.NONE, 1, MAX_PIXELS), Chain::pixels, MAX_PIXELS);
  public static final Field<Chain, EmitterOrder> ORDER =
      Field.derived(
          "order", EmitterOrder.TYPE, Chain::order, chain -> chain.get(Chain.TYPE).order());
  public static final Field<Chain, OptionalDouble> WHITE_KELVIN =
      Field.optional("whiteKelvin", OptionalType.ofNumber(Colour.Kelvin.RANGE), Chain::whiteKelvin);
  public static final Field<Chain, Optional<Pin>> PIN =
      Field.optional("pin", OptionalType.of(Pin.TYPE), Chain::pin);
  public static final Field<Chain, Optional<Feed>> FEED =
      Field.optional("feed", OptionalType.of(RecordType.of(Feed.SHAPE)), Chain::feed);

  public static final Shape<Chain> SHAPE =
      Shape.of("chain", Chain.class, ID, TYPE, PIXELS, ORDER, WHITE_KELVIN, PIN, FEED);

  public Chain {
    boolean fits = order.size() == type.order().size();
    boolean white = type.order().emitters().contains(EmitterKind.WHITE);
    Checks checks =
        SHAPE
            .check(id, type, pixels, order, whiteKelvin, pin, feed)
            .that(
                fits,
                "order",
                order.letters(),
                "must have the letters of the pixel type's order,  " + type.order().letters());
    checks.that(
        white || whiteKelvin.isEmpty(),
        "whiteKelvin",
        Checks.plain(whiteKelvin.orElse(0)),
        "must be used with a pixel type that has a white emitter; " + type.id() + " has none");
    checks.done();
  }

  /** A chain without supply wires of its own. */
  public Chain(
      String id,
      PixelType type,
      int pixels,
      EmitterOrder order,
      OptionalDouble whiteKelvin,
      Optional<Pin> pin) {
    this(id, type, pixels, order, whiteKelvin, pin, Optional.empty());
  }

  /** A chain of which no pin is stated. */
  public Chain(
      String id, PixelType type, int pixels, EmitterOrder order, OptionalDouble whiteKelvin) {
    this(id, type, pixels, order, whiteKelvin, Optional.empty());
  }

  /** A chain in its type's own byte order. */
  public Chain(String id, PixelType type, int pixels) {
    this(id, type, pixels, type.order(), OptionalDouble.empty());
  }

  /** The light of each emitter of its pixels at full drive. */
  public Map<EmitterKind, Emitter> emitters() {
    return FittedEmitter.light(fittedEmitters());
  }

  /** The emitters of its pixels, the white one of the temperature that the chain states. */
  public Map<EmitterKind, FittedEmitter> fittedEmitters() {
    if (whiteKelvin.isEmpty()) {
      return type.emitters();
    }
    Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(type.emitters());
    FittedEmitter white = type.emitters().get(EmitterKind.WHITE);
    Emitter light =
        new Emitter(Planck.chromaticity(whiteKelvin.getAsDouble()), white.light().millicandela());
    emitters.put(EmitterKind.WHITE, new FittedEmitter(light, white.milliamps()));
    return emitters;
  }

  /** Bytes that the chain takes off the line in one frame. */
  public int bytes() {
    return pixels * order.size();
  }

  /** With pixels of another type, in their byte order and with their white. */
  public Chain withType(PixelType newType, EmitterOrder newOrder, OptionalDouble newWhiteKelvin) {
    return new Chain(id, newType, pixels, newOrder, newWhiteKelvin, pin, feed);
  }
}
