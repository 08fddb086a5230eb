package lampwright.engine.second;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.StreamSupport;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/** The cues of a scene, laid over each other from bottom to top. */
final class Blending {
  private final Rig rig;
  private final List<Cue> cues = new ArrayList<>();

  Blending(Rig rig, JsonNode scene) {
    this.rig = rig;
    for (JsonNode track : scene.path("tracks")) {
      List<List<Integer>> rows = rows(track);
      StreamSupport.stream(track.path("cues").spliterator(), false)
          .sorted(Comparator.comparing((JsonNode cue) -> Exact.field(cue, "startMs", "0")))
          .forEach(cue -> cues.add(new Cue(cue, rows)));
    }
  }

  private List<List<Integer>> rows(JsonNode track) {
    List<List<Integer>> rows = new ArrayList<>();
    List<Integer> all = new ArrayList<>();
    for (JsonNode id : track.get("lamps")) {
      List<Integer> row = rig.lamps.get(id.stringValue()).packages();
      rows.add(row);
      all.addAll(row);
    }
    return Fields.text(track, "span", "each").equals("joined") ? List.of(all) : rows;
  }

  /** Four drives of every package at a time of the scene, ms. */
  double[][] at(BigFraction time) {
    double[][] drives = new double[rig.packages.size()][4];
    cues.forEach(cue -> cue.cover(drives, time.subtract(cue.start)));
    return drives;
  }

  private final class Cue {
    private final BigFraction start;
    private final BigFraction length;
    private final BigFraction fadeIn;
    private final BigFraction fadeOut;
    private final String blend;
    private final List<List<Integer>> rows;
    private final List<Playing> patterns = new ArrayList<>();

    Cue(JsonNode cue, List<List<Integer>> rows) {
      this.rows = rows;
      start = Exact.field(cue, "startMs", "0");
      length = Exact.field(cue, "lengthMs", "0");
      fadeIn = Exact.field(cue, "fadeInMs", "0");
      fadeOut = Exact.field(cue, "fadeOutMs", "0");
      blend = Fields.text(cue, "blend", "cover");
      for (List<Integer> row : rows) {
        List<LightPackage> packages = row.stream().map(rig.packages::get).toList();
        patterns.add(Patterns.of(new Row(cue.get("pattern"), length, packages, rig.colours)));
      }
    }

    private void cover(double[][] drives, BigFraction t) {
      if (Exact.less(t, BigFraction.ZERO) || !Exact.less(t, length)) {
        return;
      }
      double a = rig.colours.curve(faded(t));
      for (int r = 0; r < rows.size(); r++) {
        double[][] over = patterns.get(r).at(t);
        for (int k = 0; k < over.length; k++) {
          double[] under = drives[rows.get(r).get(k)];
          for (int i = 0; i < 4; i++) {
            under[i] = blend(under[i], over[k][i], a);
          }
        }
      }
    }

    private double faded(BigFraction t) {
      double v = 1;
      if (Exact.less(t, fadeIn)) {
        v = Exact.near(t.divide(fadeIn));
      }
      BigFraction left = length.subtract(t);
      if (Exact.less(left, fadeOut)) {
        v = Math.min(v, Exact.near(left.divide(fadeOut)));
      }
      return v;
    }

    private double blend(double under, double over, double a) {
      return switch (blend) {
        case "cover" -> under * (1 - a) + over * a;
        case "add" -> Math.min(1, under + over * a);
        case "brighter" -> Math.max(under, over * a);
        case "scale" -> under * (1 - a + a * over);
        default -> throw new IllegalArgumentException(blend);
      };
    }
  }
}
