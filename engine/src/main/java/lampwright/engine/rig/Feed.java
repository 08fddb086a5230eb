package lampwright.engine.rig;

import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * The supply wires of a chain: a lead of two conductors from the supply to its first pixel, and two
 * conductors on from pixel to pixel.
 *
 * @param lead each conductor of the lead
 * @param supplyMm length of the lead, 0 to 100,000 mm
 * @param ends where the chain is fed
 * @param farSupplyMm length of the second lead, to the last pixel, where it is fed at both ends, 0
 *     to 100,000 mm; none if not stated
 * @param strip each conductor from one pixel to the next: the copper of a strip by its area, or a
 *     wire by its gauge where pixels are soldered one by one
 * @param pitchMm length from one pixel to the next, 0 to 10,000 mm
 * @param fuseAmps rating of the fuse in each lead, 0.01 to 100 A; none if there is none
 */
public record Feed(
    Conductor lead,
    double supplyMm,
    Ends ends,
    OptionalDouble farSupplyMm,
    Conductor strip,
    double pitchMm,
    OptionalDouble fuseAmps) {
  /** The copper of a strip, a conductor. */
  public static final Conductor DEFAULT_STRIP =
      new Conductor.Area(TradeNumbers.number("strip copper", "cross-section"));

  public static final double MAX_SUPPLY_MM = 100_000;

  private static final NumberType LEAD_MM = new NumberType(Unit.MILLIMETRES, 0, MAX_SUPPLY_MM);

  public static final Group<Feed, Conductor> LEAD =
      Group.of("lead", Feed::lead, Conductor.shape("awg", "mm2", Optional.empty()), DEFAULT_STRIP);
  public static final Field<Feed, Double> SUPPLY_MM =
      Field.usual("supplyMm", LEAD_MM, Feed::supplyMm, 300.0);

  /** Of a strip with 60 pixels a metre where it is not given. */
  public static final Field<Feed, Double> PITCH_MM =
      Field.usual("pitchMm", new NumberType(Unit.MILLIMETRES, 0, 10_000), Feed::pitchMm, 17.0);

  public static final Field<Feed, Ends> ENDS =
      Field.usual("ends", ChoiceType.of("ends", Ends.class, Ends::key), Feed::ends, Ends.ONE);
  public static final Field<Feed, OptionalDouble> FAR_SUPPLY_MM =
      Field.optional("farSupplyMm", OptionalType.ofNumber(LEAD_MM), Feed::farSupplyMm);
  public static final Group<Feed, Conductor> STRIP =
      Group.derived(
          "strip",
          Feed::strip,
          Conductor.shape("stripAwg", "stripMm2", Optional.of(DEFAULT_STRIP)),
          feed -> DEFAULT_STRIP,
          (usual, given) -> given.make());
  public static final Field<Feed, OptionalDouble> FUSE_AMPS =
      Field.optional(
          "fuseAmps", OptionalType.ofNumber(new NumberType(Unit.AMPS, 0.01, 100)), Feed::fuseAmps);

  public static final Shape<Feed> SHAPE =
      Shape.of(
          "feed", Feed.class, LEAD, SUPPLY_MM, PITCH_MM, ENDS, FAR_SUPPLY_MM, STRIP, FUSE_AMPS);

  public Feed {
    SHAPE.check(lead, supplyMm, ends, farSupplyMm, strip, pitchMm, fuseAmps).done();
  }

  /** A feed with this lead and defaults for all else. */
  public static Feed of(Conductor lead) {
    return SHAPE.draft().set(LEAD, lead).make();
  }

  /**
   * Length of the second lead of a chain. Where it is not stated it is taken to begin at the supply
   * as the first one does and to run along the chain, so that a length forgotten is not an
   * optimistic one.
   *
   * @param pixels of the chain, at least 1
   */
  public double farMm(int pixels) {
    return farSupplyMm.orElse(supplyMm + pitchMm * (pixels - 1));
  }
}
