package lampwright.app.workshop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.live.SerialPorts;
import lampwright.app.outline.Models;
import lampwright.app.workshop.disk.DiskThread;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.FileChoice;
import lampwright.app.workshop.model.GaugesModel;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PackService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.cue.CueSettingsModel;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.OwnPicture;
import lampwright.app.workshop.model.drawing.PaintingJudge;
import lampwright.app.workshop.model.export.BackgroundFile;
import lampwright.app.workshop.model.export.ExportModel;
import lampwright.app.workshop.model.export.ExportWishes;
import lampwright.app.workshop.model.export.PictureExport;
import lampwright.app.workshop.model.export.SheetExport;
import lampwright.app.workshop.model.files.FilesModel;
import lampwright.app.workshop.model.files.Workplace;
import lampwright.app.workshop.model.live.BenchLink;
import lampwright.app.workshop.model.live.NamingWalk;
import lampwright.app.workshop.model.live.OrderFinder;
import lampwright.app.workshop.model.live.ShownFrame;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.model.problems.ProblemsModel;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.SceneModel;
import lampwright.app.workshop.model.shelf.OwnPresets;
import lampwright.app.workshop.model.shelf.ShelfModel;
import lampwright.app.workshop.model.situation.DriveModel;
import lampwright.app.workshop.model.situation.SituationsModel;
import lampwright.app.workshop.model.situation.Transmitter;
import lampwright.app.workshop.model.sound.Guide;
import lampwright.app.workshop.model.sound.GuideCommands;
import lampwright.app.workshop.model.sound.GuidePlayer;
import lampwright.app.workshop.model.sound.GuideTrack;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.sound.SoundFault;
import lampwright.app.workshop.sound.SpeakerOutput;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.disk.Owner;
import lampwright.engine.work.LatestWorker;

/** All models of one workshop, put together. */
final class WorkshopParts implements AutoCloseable {
  private final Bench bench = new Bench(Projects.fresh());
  private final Playhead playhead = new Playhead(bench);
  private final DrawingSheet sheet = new DrawingSheet();
  private final DiskThread disk = new DiskThread("disk");
  private final DiskThread reader = new DiskThread("reader");
  private final LatestWorker searcher;
  private final LatestWorker exporter;
  private final LatestWorker sheetWriter;
  private final SheetExport buildSheet;
  private final PictureExport picture;
  private final Executor screen;
  private final Path state;
  private final Dialogs dialogs;
  private final LightService lights;
  private final PackService packs;
  private final GaugesModel gauges;
  private final PixelExplainer explainer;
  private final RibbonsModel ribbons;
  private final CueCommands commands;
  private final CueSettingsModel cues;
  private final SceneModel scene;
  private final RigModel rig;
  private final RigCommands rigCommands;
  private final DrawingModel drawing;
  private final PaintingJudge judge;
  private final Player player;
  private final ProblemsModel problems;
  private final Transmitter transmitter;
  private final SituationsModel situations;
  private final DriveModel drive;
  private final BenchLink link;
  private final NamingWalk walk;
  private final OrderFinder order;
  private final FilesModel files;
  private final FileChoice choice;
  private final Guide guide;
  private Optional<ShelfModel> shelf = Optional.empty();
  private ExportWishes exportWishes = ExportWishes.FIRST;

  /**
   * @param screen runs what it is given on the screen's thread
   * @param state the user's state folder
   * @param end ends the program
   */
  WorkshopParts(Dialogs dialogs, Executor screen, Path state, Runnable end) {
    this.dialogs = dialogs;
    this.screen = screen;
    this.state = state;
    searcher = LatestWorker.named("searcher", screen, LatestWorker.Ending.ASK);
    exporter = LatestWorker.named("exporter", screen, LatestWorker.Ending.ASK);
    sheetWriter = LatestWorker.named("sheet writer", screen, LatestWorker.Ending.ASK);
    lights = new LightService(bench, screen);
    packs = new PackService(bench, screen);
    gauges = new GaugesModel(bench, lights, packs, playhead);
    explainer = new PixelExplainer(bench, screen);
    ribbons = new RibbonsModel(bench, lights, playhead, sheet, explainer, screen);
    commands = new CueCommands(ribbons, dialogs);
    cues = new CueSettingsModel(bench, lights);
    scene = new SceneModel(bench, dialogs, lights);
    rig = new RigModel(bench, dialogs);
    rigCommands = new RigCommands(rig, dialogs);
    drawing = new DrawingModel(bench, lights, playhead, sheet, explainer);
    judge = new PaintingJudge(screen);
    player = new Player(bench, lights, playhead, dialogs, judge.cautionProperty());
    problems =
        new ProblemsModel(
            bench,
            playhead,
            lights.reportProperty(),
            lights.measuringProperty(),
            packs.packedProperty(),
            searcher);
    transmitter = new Transmitter(bench, sheet, dialogs);
    // Whichever panels are there: a drive plays without the situations in sight.
    Ticker.run(transmitter.playingProperty(), transmitter::tick);
    situations = new SituationsModel(bench, dialogs, transmitter);
    drive = new DriveModel(bench, transmitter, dialogs, reader, screen);
    link =
        new BenchLink(
            bench,
            new ShownFrame(bench, lights, sheet, player, transmitter),
            new SerialPorts(),
            reader,
            screen);
    player
        .flashNoteProperty()
        .bind(
            Bindings.when(link.connectedProperty())
                .then(Texts.of("live").get("flash.note"))
                .otherwise(""));
    walk = new NamingWalk(bench, link, sheet.picker(), dialogs);
    order = new OrderFinder(bench, link, dialogs);
    rig.findingsProperty().bind(problems.findings());
    files =
        new FilesModel(
            new Workplace(bench, dialogs, disk, reader, screen, state, Owner.self()), end);
    BackgroundFile papers =
        new BackgroundFile(dialogs, sheetWriter, screen, () -> files.document().file());
    buildSheet = new SheetExport(bench, papers);
    picture = new PictureExport(bench, sheet, papers);
    choice = new FileChoice(dialogs, files.document()::file, disk, screen);
    guide = guide(screen);
  }

  private Guide guide(Executor onScreen) {
    GuideTrack track = new GuideTrack(bench, files.document().fileProperty(), onScreen);
    ReadOnlyObjectWrapper<Optional<SoundFault.Reason>> trouble =
        new ReadOnlyObjectWrapper<>(Optional.empty());
    SpeakerOutput speaker = SpeakerOutput.ofMachine(trouble::set, onScreen);
    GuidePlayer sounding =
        new GuidePlayer(
            bench, track, player, speaker, trouble.getReadOnlyProperty(), System::nanoTime);
    return new Guide(track, sounding, new GuideCommands(bench, track, choice), player);
  }

  Bench bench() {
    return bench;
  }

  Dialogs dialogs() {
    return dialogs;
  }

  Playhead playhead() {
    return playhead;
  }

  DrawingSheet sheet() {
    return sheet;
  }

  LightService lights() {
    return lights;
  }

  PackService packs() {
    return packs;
  }

  GaugesModel gauges() {
    return gauges;
  }

  RibbonsModel ribbons() {
    return ribbons;
  }

  CueCommands cueCommands() {
    return commands;
  }

  /** The patterns shelf, made when it is first asked for: it reads all presets. */
  ShelfModel shelf() {
    if (shelf.isEmpty()) {
      shelf =
          Optional.of(new ShelfModel(bench, commands, new OwnPresets(state, disk, screen), screen));
    }
    return shelf.get();
  }

  CueSettingsModel cues() {
    return cues;
  }

  SceneModel scene() {
    return scene;
  }

  RigModel rig() {
    return rig;
  }

  RigCommands rigCommands() {
    return rigCommands;
  }

  SituationsModel situations() {
    return situations;
  }

  DriveModel drive() {
    return drive;
  }

  Transmitter transmitter() {
    return transmitter;
  }

  DrawingModel drawing() {
    return drawing;
  }

  PaintingJudge judge() {
    return judge;
  }

  Player player() {
    return player;
  }

  ProblemsModel problems() {
    return problems;
  }

  BenchLink link() {
    return link;
  }

  NamingWalk walk() {
    return walk;
  }

  OrderFinder order() {
    return order;
  }

  FilesModel files() {
    return files;
  }

  DiskThread disk() {
    return disk;
  }

  /** The guide sound of the scene on the bench. */
  Guide guide() {
    return guide;
  }

  /** Lets the builder choose a picture for the view that is shown. */
  void choosePicture() {
    choice.choose(picture());
  }

  private FileChoice.Kind picture() {
    return new FileChoice.Kind(
        Texts.of("drawing"),
        "picture",
        List.of("*.png", "*.jpg", "*.jpeg"),
        file -> PictureFile.size(file).isPresent(),
        file -> drawing.picture(Optional.of(file)));
  }

  private OwnPicture ownPicture() {
    return new OwnPicture() {
      @Override
      public void ask(Consumer<Path> then) {
        choice.ask(picture(), then);
      }

      @Override
      public void use(Path file) {
        // In place of the drawing that was seen on the start sheet.
        bench.project().model().map(Models::mainView).ifPresent(sheet.viewProperty()::set);
        choice.use(picture(), file);
      }
    };
  }

  SheetExport buildSheet() {
    return buildSheet;
  }

  PictureExport modelPicture() {
    return picture;
  }

  /** A new export, begun with the folder and the formats of the last one. */
  ExportModel export() {
    ExportModel model =
        new ExportModel(
            bench.project(), bench.selection().scene(), exportWishes, dialogs, exporter, screen);
    model.previewProperty().addListener((of, before, now) -> exportWishes = model.wishes());
    return model;
  }

  /**
   * A new start sheet.
   *
   * @param done called once it is left
   */
  StartModel start(Runnable done) {
    return new StartModel(files, ownPicture(), screen, done);
  }

  @Override
  public void close() {
    link.close();
    guide.close();
    lights.close();
    judge.close();
    packs.close();
    ribbons.close();
    explainer.close();
    shelf.ifPresent(ShelfModel::close);
    searcher.close();
    exporter.close();
    sheetWriter.close();
    reader.close();
    disk.close();
  }
}
