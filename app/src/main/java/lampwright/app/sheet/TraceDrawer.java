package lampwright.app.sheet;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.io.File;
import java.util.List;
import java.util.stream.IntStream;
import lampwright.app.picture.PathShape;
import lampwright.exporters.picture.PathData;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Draws the traces of a sheet: SVG that is nothing but filled paths, which is all that sheets have.
 * A library for the whole of SVG would be larger than all else that makes a PDF.
 */
final class TraceDrawer implements SVGDrawer {
  private record Trace(Path2D path, Color ink) {}

  private record Image(List<Trace> traces, double width, double height, double dots)
      implements SVGImage {
    @Override
    public int getIntrinsicWidth() {
      return (int) Math.round(width * dots);
    }

    @Override
    public int getIntrinsicHeight() {
      return (int) Math.round(height * dots);
    }

    @Override
    public void drawSVG(OutputDevice to, RenderingContext context, double x, double y) {
      to.drawWithGraphics(
          (float) x,
          (float) y,
          (float) width,
          (float) height,
          graphics -> {
            for (Trace trace : traces) {
              graphics.setColor(trace.ink());
              graphics.fill(trace.path());
            }
          });
    }
  }

  @Override
  public SVGImage buildSVGImage(
      Element svg, Box box, CssContext context, double wide, double high, double dotsPerPixel) {
    NodeList found = svg.getElementsByTagName("path");
    List<Trace> traces =
        IntStream.range(0, found.getLength())
            .mapToObj(i -> (Element) found.item(i))
            .map(
                e ->
                    new Trace(
                        PathShape.of(new PathData(e.getAttribute("d"))),
                        Color.decode(e.getAttribute("fill"))))
            .toList();
    return new Image(
        traces,
        Double.parseDouble(svg.getAttribute("width")),
        Double.parseDouble(svg.getAttribute("height")),
        dotsPerPixel);
  }

  @Override
  public void importFontFaceRules(List<FontFaceRule> rules, SharedContext shared) {
    // No text in them.
  }

  @Override
  public void addFontFile(File file, String family, Integer weight, FontStyle style) {
    // No text in them.
  }

  @Override
  public void close() {
    // Nothing is open.
  }
}
