package lampwright.app.workshop.model.situation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.rig.Lamp;
import lampwright.engine.situation.Change;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.ShowMachine;
import lampwright.engine.situation.Situation;
import lampwright.exporters.picture.ScreenLight;

/** A show that goes on frame by frame, and what is known of it for people. */
final class ShowRun {
  private final Show show;
  private final ShowFrames frames;
  private final ScreenLight screen;
  private final double rate;
  private final Map<String, Change> last = new HashMap<>();

  ShowRun(Show show) {
    this.show = show;
    this.frames = new ShowFrames(show);
    this.screen = ScreenLight.of(new FrameLayout(show.rig()));
    this.rate = show.clock().framesPerSecond().doubleValue();
  }

  Show show() {
    return show;
  }

  ScreenLight screen() {
    return screen;
  }

  /** Frames per second. */
  double rate() {
    return rate;
  }

  /** What takes the readings for the next frame. */
  ShowMachine machine() {
    return frames.machine();
  }

  /** Begins anew before frame 0. */
  void restart() {
    frames.restart();
    last.clear();
  }

  /** Works out the next frame. */
  void step() {
    frames.machine().next().forEach(change -> last.put(change.situation().id(), change));
  }

  /** The bytes of the frame worked out last. */
  byte[] bytes() {
    byte[] bytes = new byte[frames.frameBytes()];
    frames.compose(bytes);
    return bytes;
  }

  /** The situations in the frame worked out last. */
  ShowState state() {
    ShowMachine machine = frames.machine();
    List<Situation> situations = show.situations();
    List<List<String>> lamps = new ArrayList<>();
    int[] wanted = new int[situations.size()];
    situations.forEach(s -> lamps.add(new ArrayList<>()));
    Map<String, String> owners = new HashMap<>();
    List<Lamp> all = show.rig().lamps();
    for (int i = 0; i < all.size(); i++) {
      show.wanting(i).forEach(s -> wanted[s]++);
      OptionalInt having = machine.having(i);
      if (having.isPresent()) {
        lamps.get(having.getAsInt()).add(all.get(i).id());
        owners.put(all.get(i).id(), situations.get(having.getAsInt()).id());
      }
    }
    Map<String, ShowState.RungState> rungs = new HashMap<>();
    for (int i = 0; i < situations.size(); i++) {
      Optional<Change> change = Optional.ofNullable(last.get(situations.get(i).id()));
      double since = change.map(c -> (machine.frame() - c.frame()) / rate).orElse(0.0);
      rungs.put(
          situations.get(i).id(),
          new ShowState.RungState(machine.active(i), since, change, lamps.get(i), wanted[i]));
    }
    return new ShowState(machine.frame(), machine.frame() / rate, rungs, owners);
  }
}
