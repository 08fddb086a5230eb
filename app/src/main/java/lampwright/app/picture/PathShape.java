package lampwright.app.picture;

import java.awt.geom.Path2D;
import lampwright.exporters.picture.PathData;

/** Path data as a shape of the Java library. */
public final class PathShape {
  private PathShape() {}

  /** The shape, in the units of the data. */
  public static Path2D of(PathData data) {
    Path2D.Double shape = new Path2D.Double();
    data.follow(
        new PathData.Trace() {
          @Override
          public void begin(double x, double y) {
            shape.moveTo(x, y);
          }

          @Override
          public void line(double x, double y) {
            shape.lineTo(x, y);
          }

          @Override
          public void close() {
            shape.closePath();
          }
        });
    return shape;
  }
}
