package lampwright.engine.scene;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;
import lampwright.engine.pattern.Times;

/**
 * A time of a scene that has a name. It changes nothing of the light.
 *
 * @param atMs 0 to a day
 * @param name for people; empty if it has none
 */
public record Marker(BigDecimal atMs, String name) {
  public static final Field<Marker, BigDecimal> AT_MS =
      Field.required("atMs", Times.MS, Marker::atMs, BigDecimal.ZERO);
  public static final Field<Marker, String> NAME =
      Field.usual("name", TextType.NAME, Marker::name, "");

  public static final Shape<Marker> SHAPE = Shape.of("marker", Marker.class, AT_MS, NAME);

  public Marker {
    atMs = canonical(atMs);
    SHAPE.check(atMs, name).done();
  }
}
