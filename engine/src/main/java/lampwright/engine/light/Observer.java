package lampwright.engine.light;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/**
 * The CIE 1931 2-degree standard observer, 380 to 780 nm every 5 nm (ISO/CIE 11664-1).
 *
 * <p>The table is in a resource file beside this class and is read once.
 */
public final class Observer {
  /** The first wavelength of the table, in nm. */
  public static final int FIRST_NM = 380;

  /** The last wavelength of the table, in nm. */
  public static final int LAST_NM = 780;

  static final int STEP_NM = 5;
  static final int ROWS = (LAST_NM - FIRST_NM) / STEP_NM + 1;

  private static final String TABLE = TradeNumbers.get("CIE 1931 observer", "table").value();
  private static final double[][] ROW = read();

  private Observer() {}

  /** Colour matching function x-bar, y-bar or z-bar (channel 0, 1, 2) at a row of the table. */
  static double at(int row, int channel) {
    return ROW[row][channel];
  }

  /**
   * Writes x-bar, y-bar and z-bar at a wavelength to {@code into[0 .. 2]}; between the rows by
   * cubic (four-point Lagrange) interpolation, as CIE 15 allows for a table at 5 nm.
   *
   * @param nm 380 to 780
   */
  public static void at(double nm, double[] into) {
    Checks.require("wavelength", nm, FIRST_NM, LAST_NM);
    double place = (nm - FIRST_NM) / STEP_NM;
    int first = Math.min(Math.max((int) place - 1, 0), ROWS - 4);
    double p = place - first;
    double a = -(p - 1) * (p - 2) * (p - 3) / 6;
    double b = p * (p - 2) * (p - 3) / 2;
    double c = -p * (p - 1) * (p - 3) / 2;
    double d = p * (p - 1) * (p - 2) / 6;
    for (int i = 0; i < 3; i++) {
      into[i] =
          a * at(first, i) + b * at(first + 1, i) + c * at(first + 2, i) + d * at(first + 3, i);
    }
  }

  private static double[][] read() {
    InputStream resource = Observer.class.getResourceAsStream(TABLE);
    if (resource == null) {
      throw new IllegalStateException("the observer table " + TABLE + " is missing");
    }
    List<double[]> rows = new ArrayList<>();
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(resource, StandardCharsets.US_ASCII))) {
      reader.readLine(); // the names of the columns
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        String[] cell = line.split(",", -1);
        if (Integer.parseInt(cell[0]) != FIRST_NM + rows.size() * STEP_NM) {
          throw new IllegalStateException("the observer table " + TABLE + " breaks off: " + line);
        }
        rows.add(
            new double[] {
              Double.parseDouble(cell[1]), Double.parseDouble(cell[2]), Double.parseDouble(cell[3])
            });
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the observer table " + TABLE + " can't be read", e);
    }
    if (rows.size() != ROWS) {
      throw new IllegalStateException("the observer table " + TABLE + " is not whole");
    }
    return rows.toArray(new double[0][]);
  }
}
