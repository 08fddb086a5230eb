package lampwright.exporters.packed.encode;

import com.google.common.primitives.Ints;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import lampwright.engine.check.Checks;
import lampwright.engine.check.Fault;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.Ceiling;
import lampwright.engine.render.Column;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Show;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.play.DecodeCost;

/** Renders scenes of one rig and packs them. */
public final class ScenePacker {
  private static final BigDecimal SECOND_US = BigDecimal.valueOf(1_000_000);
  // Common experience: rendering is the smaller part of the work.
  private static final double RENDERING_SHARE = 0.25;

  private ScenePacker() {}

  /** Why these tables can't be packed; empty if they can. */
  public static List<Fault> faults(List<FrameTable> tables) {
    Rig rig = tables.get(0).layout().rig();
    int frameBytes = tables.get(0).layout().bytes();
    Checks checks =
        Checks.of("packed")
            .that(
                rig.lamps().size() <= PackLayout.MAX_LAMPS,
                "lamps",
                Integer.toString(rig.lamps().size()),
                "must be at most "
                    + PackLayout.MAX_LAMPS
                    + ", which is what packed data can number")
            .that(
                frameBytes <= PackLayout.MAX_FRAME_BYTES,
                "frame",
                frameBytes + " bytes",
                "must be at most "
                    + PackLayout.MAX_FRAME_BYTES
                    + "; divide the chains between controllers")
            .that(
                tables.size() <= Packer.MAX_SCENES,
                "scenes",
                Integer.toString(tables.size()),
                "must be at most " + Packer.MAX_SCENES + "; export fewer scenes");
    for (FrameTable table : tables) {
      checks.that(
          table.bytes() <= Packer.MAX_TABLE_BYTES,
          "scene " + table.scene().id(),
          table.bytes() + " bytes",
          "the frame table must be at most "
              + Packer.MAX_TABLE_BYTES
              + " bytes: a shorter scene or fewer frames/s");
    }
    return checks.faults();
  }

  /**
   * Packs scenes of one rig into one piece of data and proves it by decoding. Holds their frame
   * tables while it works.
   *
   * @param format the exporter's key, for refusals
   * @param tables one for each scene, at least one; {@link #faults} has none
   * @param cost what playing takes on the controller
   * @param progress hears the frames of all tables together
   * @throws ExportRefusedException if the packed data would be too long for any player
   */
  public static Packed pack(
      String format, List<FrameTable> tables, DecodeCost cost, Progress progress)
      throws CancelledException {
    return pack(format, tables, Optional.empty(), cost, progress);
  }

  /**
   * Packs scenes of one rig with what situations do with them.
   *
   * @param show names no scene that is not among those of the tables
   * @see #pack(String, List, DecodeCost, Progress)
   */
  public static Packed pack(
      String format,
      List<FrameTable> tables,
      Optional<Show> show,
      DecodeCost cost,
      Progress progress)
      throws CancelledException {
    int total = Ints.saturatedCast(tables.stream().mapToLong(FrameTable::frameCount).sum());
    Meter meter = new Meter(progress, total);
    progress.frames(0, total);
    List<PackScene> scenes = new ArrayList<>();
    for (FrameTable table : tables) {
      scenes.add(rendered(table, meter));
    }
    try {
      PackLayout layout = layout(tables.get(0));
      return show.isEmpty()
          ? Packer.pack(layout, scenes, cost, meter)
          : Packer.packShow(
              layout,
              scenes,
              cost,
              lamps -> show(show.get(), layout, scenes, lamps),
              ceiling(tables.get(0).layout()),
              meter);
    } catch (CancellationException stopped) {
      throw meter.wanted(stopped);
    } catch (PackRefusedException refused) {
      String scene = tables.size() == 1 ? tables.get(0).scene().id() : "all";
      throw new ExportRefusedException(format, scene, List.of(refused.fault()));
    }
  }

  private static byte[] show(Show show, PackLayout layout, List<PackScene> scenes, int lamps) {
    List<String> ids = scenes.stream().map(PackScene::id).toList();
    return ShowCoder.code(
        show,
        ids,
        lamps,
        scene -> isSteady(scenes.get(ids.indexOf(scene.id())), layout.frameBytes()));
  }

  private static byte[] ceiling(FrameLayout layout) {
    return Ceiling.of(layout)
        .map(ceiling -> CeilingCoder.code(ceiling, layout.bytes()))
        .orElse(new byte[0]);
  }

  private static boolean isSteady(PackScene scene, int frameBytes) {
    byte[] first = new byte[frameBytes];
    byte[] frame = new byte[frameBytes];
    scene.source().read(0, first);
    for (int f = 1; f < scene.frames(); f++) {
      scene.source().read(f, frame);
      if (!Arrays.equals(first, frame)) {
        return false;
      }
    }
    return true;
  }

  /** What packing has to say of its data: for which lamps a plainer coding is used. */
  public static List<Finding> findings(Packed packed) {
    return packed.standIns().stream()
        .map(
            s ->
                Finding.of(Code.PACKED_PLAIN, new Subject.OneScene(s.scene()))
                    .with(
                        "part", Figure.words(s.lamp().map(id -> "lamp " + id).orElse("all lamps")))
                    .make())
        .toList();
  }

  private static PackScene rendered(FrameTable table, Meter meter) throws CancelledException {
    int size = table.layout().bytes();
    byte[] all = new byte[Math.toIntExact(table.bytes())];
    byte[] frame = new byte[size];
    FrameCursor cursor = table.cursor();
    while (cursor.hasNext()) {
      int at = cursor.position() * size;
      cursor.next(frame);
      System.arraycopy(frame, 0, all, at, size);
      meter.rendered();
    }
    return new PackScene(
        table.scene().id(),
        table.frameCount(),
        table.loops(),
        periodMicros(table),
        (number, into) -> System.arraycopy(all, number * size, into, 0, size),
        table.layout().rig().lamps().stream()
            .map(lamp -> CueBorders.of(table.scene(), lamp.id()))
            .toList());
  }

  private static int periodMicros(FrameTable table) {
    return SECOND_US
        .divide(table.scene().framesPerSecond(), 0, RoundingMode.HALF_UP)
        .intValueExact();
  }

  private static PackLayout layout(FrameTable table) {
    Rig rig = table.layout().rig();
    Map<String, List<Integer>> columns = new LinkedHashMap<>();
    rig.lamps().forEach(lamp -> columns.put(lamp.id(), new ArrayList<>()));
    int byteAt = 0;
    for (Column column : table.layout().columns()) {
      int here = byteAt++;
      column.lamp().ifPresent(owner -> columns.get(owner.lamp()).add(here));
    }
    List<PackLayout.LampColumns> lamps = new ArrayList<>();
    columns.forEach((id, own) -> lamps.add(new PackLayout.LampColumns(id, own)));
    if (lamps.isEmpty()) {
      // The format has at least one lamp; in a rig without any, all bytes stay dark.
      lamps.add(new PackLayout.LampColumns("none", List.of(0)));
    }
    double wireMicros = WireTime.inTurnUs(rig.chains().stream().map(WireTime::of).toList());
    return new PackLayout(table.layout().bytes(), wireMicros, lamps);
  }

  /** Makes one count of frames of rendering and packing. */
  private static final class Meter implements PackProgress {
    private final Progress progress;
    private final int total;
    private int frames;
    private int said;
    private boolean stopped;
    private CancelledException reason = new CancelledException();

    Meter(Progress progress, int total) {
      this.progress = progress;
      this.total = total;
    }

    void rendered() throws CancelledException {
      frames++;
      say(RENDERING_SHARE * frames / total);
    }

    @Override
    public boolean proceed(double share) {
      try {
        say(RENDERING_SHARE + (1 - RENDERING_SHARE) * share);
      } catch (CancelledException wanted) {
        stopped = true;
        reason = wanted;
      }
      return !stopped;
    }

    CancelledException wanted(CancellationException packer) {
      if (!stopped) {
        throw packer;
      }
      return reason;
    }

    private void say(double share) throws CancelledException {
      int done = share >= 1 ? total : (int) (share * total);
      if (done > said) {
        said = done;
        progress.frames(done, total);
      }
    }
  }
}
