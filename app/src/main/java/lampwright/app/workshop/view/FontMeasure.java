package lampwright.app.workshop.view;

import java.util.HashMap;
import java.util.Map;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import lampwright.exporters.picture.TypeMeasure;

/** Measures text as it is drawn. Keeps what it measured, as the same names come again and again. */
public final class FontMeasure implements TypeMeasure {
  private static final int MOST_KEPT = 5000;

  private record Line(String text, double size) {}

  private final Map<Line, Double> known = new HashMap<>();
  private final Text measured = new Text();
  private String family = Font.getDefault().getFamily();

  /** Takes the family of the type. */
  public void family(String now) {
    family = now;
    known.clear();
  }

  @Override
  public double width(String text, double size) {
    if (known.size() > MOST_KEPT) {
      known.clear();
    }
    return known.computeIfAbsent(
        new Line(text, size),
        line -> {
          measured.setFont(Font.font(family, size));
          measured.setText(text);
          return measured.getLayoutBounds().getWidth();
        });
  }
}
