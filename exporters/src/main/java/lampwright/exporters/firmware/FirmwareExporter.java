package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.light.Checks;
import lampwright.engine.light.Fault;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Rig;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectExporter;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.ScenePacker;

/** One folder that plays the scenes on a microcontroller and builds as it is. */
public final class FirmwareExporter implements ProjectExporter {
  /** The file that tells a folder of ours, and the line in it. */
  public static final String MARK_FILE = "library.properties";

  public static final String MARK_LINE = "name=Lampwright Show";

  private static final String KEY = "firmware";
  private static final String README = "README.md";
  private static final String CONFIG = "src/lampwright_config.h";
  private static final String SCENES_HEADER = "src/lampwright_scenes.h";
  private static final String SCENES_SOURCE = "src/lampwright_scenes.c";
  private static final List<String> SOURCES =
      List.of(
          MARK_FILE,
          README,
          "examples/PlayScene/PlayScene.ino",
          "examples/OwnLoop/OwnLoop.ino",
          "src/lampwright_player.h",
          "src/lampwright_player.c",
          "src/lampwright_player_avr.S",
          "src/lampwright_show.h",
          "src/lampwright_show.c",
          "src/lampwright_clock.h",
          "src/lampwright_clock.c",
          "src/lampwright_outputs.h",
          "src/lampwright_outputs.c",
          "src/lampwright_outputs_map.h",
          "src/lampwright_pins.h",
          "src/lampwright_target.h",
          "src/lampwright_wire.h",
          "src/lampwright_wire_avr.c",
          "src/lampwright_wire_hook.h",
          "src/lampwright_wire_hook.c",
          "src/lampwright_wire_routine.h");
  private static final List<String> AVR_SOURCES = List.of("Makefile", "main.c");

  // Measured: player 2,410, driver and loop up to 720, start-up 200; rounded up.
  private static final int CODE_BYTES = 3400;
  private static final int PLAYER_RAM = 9;
  private static final int LAMP_RAM = 7;
  private static final int STACK_RAM = 96;

  /** Keeps nothing, so one serves all. */
  public FirmwareExporter() {}

  @Override
  public String key() {
    return KEY;
  }

  @Override
  public ExportFacts facts(ProjectJob job) {
    Board board = Board.of(job.project().rig().controller());
    List<String> files = new ArrayList<>(SOURCES);
    files.addAll(List.of(CONFIG, SCENES_HEADER, SCENES_SOURCE));
    if (board.driven()) {
      files.addAll(AVR_SOURCES);
    }
    long bytes = job.tables().stream().mapToLong(FrameTable::bytes).sum();
    Rig rig = job.project().rig();
    PinPlan pins = PinPlan.of(rig, board);
    return new ExportFacts(
        KEY, bytes, files, FirmwareCautions.of(rig, board, pins), faults(job, board, pins));
  }

  @Override
  public void export(ProjectJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    ExportFacts facts = facts(job);
    if (!facts.faults().isEmpty()) {
      throw new ExportRefusedException(KEY, facts.faults());
    }
    Rig rig = job.project().rig();
    Board board = Board.of(rig.controller());
    byte[] packed = ScenePacker.pack(KEY, job.tables(), progress);
    List<Fault> tooLarge = size(board, packed.length);
    if (!tooLarge.isEmpty()) {
      throw new ExportRefusedException(KEY, tooLarge);
    }
    Map<String, String> made = new LinkedHashMap<>();
    PinPlan pins = PinPlan.of(rig, board);
    made.put(README, ReadmeFile.of(source(README, board), job, board, pins));
    made.put(CONFIG, ConfigFile.of(job, pins, packed.length));
    made.put(SCENES_HEADER, ScenesFile.header(job, packed.length));
    made.put(SCENES_SOURCE, ScenesFile.source(packed));
    for (String name : facts.files()) {
      String text = made.containsKey(name) ? made.get(name) : source(name, board);
      try (OutputStream out = target.open(name)) {
        out.write(text.getBytes(UTF_8));
      }
    }
  }

  private static String source(String name, Board board) throws IOException {
    try (InputStream in = FirmwareExporter.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new FileNotFoundException(name + ": missing in the program");
      }
      String text = new String(in.readAllBytes(), UTF_8);
      return name.equals("Makefile")
          ? text.replace("MCU ?= atmega328p", "MCU ?= " + board.controller().id())
              .replace("CLOCK ?= 16000000", "CLOCK ?= " + board.hertz())
          : text;
    }
  }

  private static List<Fault> faults(ProjectJob job, Board board, PinPlan pins) {
    Checks checks = Checks.of(KEY);
    if (job.tables().isEmpty()) {
      return checks.add("scenes", "none", "needs at least one scene to play").faults();
    }
    Rig rig = job.project().rig();
    checks.addAll(ScenePacker.faults(job.tables())).addAll(pins.faults());
    double wireUs = WireTime.inTurnUs(rig.chains().stream().map(WireTime::of).toList());
    for (FrameTable table : job.tables()) {
      double frameUs = 1e6 / table.framesPerSecond();
      checks.that(
          rig.chains().isEmpty() || wireUs <= frameUs,
          "scene " + table.scene().id(),
          (long) Math.ceil(wireUs) + " us to send a frame to all chains",
          "needs at most "
              + (long) frameUs
              + " us, the time of a frame: at most "
              + Checks.plain(Math.floor(1e7 / wireUs) / 10)
              + " frames/s, or shorter chains");
    }
    int ram =
        job.tables().get(0).layout().bytes()
            + PLAYER_RAM
            + LAMP_RAM * rig.lamps().size()
            + STACK_RAM;
    int room = board.controller().ramBytes();
    checks.that(
        ram <= room,
        "controller " + board.controller().name(),
        ram + " bytes of working memory for frame, player and stack",
        "needs at most " + room + ": " + (ram - room) + " too many; shorter chains or fewer lamps");
    return checks.faults();
  }

  private static List<Fault> size(Board board, int packed) {
    if (!board.driven()) {
      return List.of();
    }
    int room = board.controller().flashBytes().orElse(Integer.MAX_VALUE) - CODE_BYTES;
    return Checks.of(KEY)
        .that(
            packed <= room,
            "scenes",
            packed + " bytes packed",
            "needs at most "
                + room
                + " beside the program on the "
                + board.controller().name()
                + ": "
                + (packed - room)
                + " too many; fewer frames/s or a shorter length, about "
                + 100L * room / packed
                + " % of it; fewer scenes (--scene); or what packs smaller: no dither, less"
                + " flicker")
        .faults();
  }
}
