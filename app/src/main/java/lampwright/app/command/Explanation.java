package lampwright.app.command;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.render.PixelAccount;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Change;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.ShowClock;
import lampwright.engine.situation.Situation;

/**
 * Why a pixel shows what it shows.
 *
 * @param frame of the scene that was asked for, or of the show
 * @param framesPerSecond of that
 * @param playing what situations have to do with it; none where a scene alone was asked for
 * @param scene what the lamp shows; none if no situation has it
 * @param account of the renderer; none likewise
 * @param sent the bytes as sent: after the ceiling of the show
 */
record Explanation(
    Lamp lamp,
    int pixel,
    int frame,
    BigDecimal framesPerSecond,
    Optional<Playing> playing,
    Optional<Scene> scene,
    Optional<PixelAccount> account,
    List<Integer> sent) {
  Explanation {
    sent = List.copyOf(sent);
  }

  /**
   * The situations of a frame.
   *
   * @param having the one that has the lamp, if any
   * @param began when it began and why
   * @param below others that are active and want the lamp
   */
  record Playing(Optional<Situation> having, Optional<Change> began, List<Situation> below) {
    Playing {
      below = List.copyOf(below);
    }
  }

  double seconds() {
    return frame / framesPerSecond.doubleValue();
  }

  /** What counts its frames. */
  ShowClock clock() {
    return new ShowClock(framesPerSecond);
  }

  /** Of a frame of a scene. */
  static Explanation ofScene(Project project, Scene scene, int frame, Lamp lamp, int pixel) {
    FrameTable table = FrameTable.of(project.rig(), scene);
    PixelAccount account = table.account(frame, lamp.id(), pixel);
    return new Explanation(
        lamp,
        pixel,
        frame,
        scene.framesPerSecond(),
        Optional.empty(),
        Optional.of(scene),
        Optional.of(account),
        account.bytes().stream().map(PixelAccount.ByteStep::duty).toList());
  }

  /** Of a frame of the show to a recorded drive. */
  static Explanation ofDrive(
      Project project, Show show, Drive drive, int frame, Lamp lamp, int pixel) {
    ShowFrames player = new ShowFrames(show);
    Drive.Player readings = new Drive.Player(drive, show.clock());
    byte[] bytes = new byte[player.frameBytes()];
    List<Change> changes = new ArrayList<>();
    for (int i = 0; i <= frame; i++) {
      readings.feed(player.machine());
      changes.addAll(player.next(bytes));
    }
    BigDecimal rate = show.clock().framesPerSecond();
    int place = project.rig().lamps().indexOf(lamp);
    OptionalInt having = player.machine().having(place);
    if (having.isEmpty()) {
      Playing nobody = new Playing(Optional.empty(), Optional.empty(), List.of());
      return new Explanation(
          lamp,
          pixel,
          frame,
          rate,
          Optional.of(nobody),
          Optional.empty(),
          Optional.empty(),
          List.of());
    }
    int has = having.getAsInt();
    Situation situation = show.situations().get(has);
    List<Situation> below =
        show.wanting(place).stream()
            .filter(other -> other != has && player.machine().active(other))
            .map(show.situations()::get)
            .toList();
    Optional<Change> began =
        changes.stream()
            .filter(change -> change.begins() && change.situation().id().equals(situation.id()))
            .reduce((earlier, later) -> later);
    Scene scene = show.scene(has).orElseThrow();
    PixelAccount account =
        FrameTable.of(project.rig(), scene)
            .account(player.machine().sceneFrame(has), lamp.id(), pixel);
    return new Explanation(
        lamp,
        pixel,
        frame,
        rate,
        Optional.of(new Playing(Optional.of(situation), began, below)),
        Optional.of(scene),
        Optional.of(account),
        account.bytes().stream().map(step -> bytes[step.at()] & 0xFF).toList());
  }
}
