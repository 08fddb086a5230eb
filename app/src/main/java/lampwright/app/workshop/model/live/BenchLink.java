package lampwright.app.workshop.model.live;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.live.Baud;
import lampwright.app.live.BenchBrightness;
import lampwright.app.live.LatestFrame;
import lampwright.app.live.LinkException;
import lampwright.app.live.LinkIdentity;
import lampwright.app.live.LinkRate;
import lampwright.app.live.LinkState;
import lampwright.app.live.LinkWords;
import lampwright.app.live.LiveLink;
import lampwright.app.live.PortInfo;
import lampwright.app.live.SerialSystem;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Gauge;
import lampwright.engine.work.LatestWorker;

/**
 * The link to the controller on the bench: its port, and what goes over it, which {@link
 * ShownFrame} gives. For the screen's thread; the link has a thread of its own.
 */
public final class BenchLink implements AutoCloseable {
  /** The key of its gauge. */
  public static final String GAUGE = "link";

  /** After this time without another frame a frame is at rest. */
  private static final Duration REST = Duration.ofMillis(600);

  /** A link that is up. */
  private record Running(LiveLink link, LatestFrame frame, LinkIdentity identity) {}

  private final Bench bench;
  private final ShownFrame shown;
  private final SerialSystem system;
  private final Background disk;
  private final Executor screen;
  private final LatestWorker rest;
  private final ObjectProperty<Optional<String>> port =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Baud> baud = new SimpleObjectProperty<>(Baud.FAST);
  private final IntegerProperty brightness =
      new SimpleIntegerProperty(BenchBrightness.USUAL.percent());
  private final BooleanProperty selectedOnly = new SimpleBooleanProperty();
  private final ReadOnlyObjectWrapper<List<PortInfo>> ports =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<LinkState> state =
      new ReadOnlyObjectWrapper<>(new LinkState.Closed());
  private final ReadOnlyObjectWrapper<Gauge> gauge;
  private final ReadOnlyBooleanWrapper connected = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper held = new ReadOnlyBooleanWrapper();
  private Optional<Running> running = Optional.empty();
  private Optional<byte[]> test = Optional.empty();
  private boolean moving;

  /**
   * @param disk asks the system for its ports
   * @param screen runs what it is given on the screen's thread
   */
  public BenchLink(
      Bench bench, ShownFrame shown, SerialSystem system, Background disk, Executor screen) {
    this.bench = bench;
    this.shown = shown;
    this.system = system;
    this.disk = disk;
    this.screen = screen;
    this.rest = LatestWorker.named("bench link rest", screen, LatestWorker.Ending.ASK);
    this.gauge = new ReadOnlyObjectWrapper<>(gaugeNow());
    shown.watch(this::refresh, this::moved);
    brightness.addListener((of, before, now) -> refresh());
    selectedOnly.addListener((of, before, now) -> refresh());
    baud.addListener((of, before, now) -> showGauge());
    bench.watch(state -> state.project().rig(), (before, now) -> rigChanged(LinkIdentity.of(now)));
    bench.watch(BenchState::scene, (before, now) -> showGauge());
  }

  /** The port to connect to; none where none is selected. */
  public ObjectProperty<Optional<String>> portProperty() {
    return port;
  }

  /** The ports that there were when they were last asked for. */
  public ReadOnlyObjectProperty<List<PortInfo>> portsProperty() {
    return ports.getReadOnlyProperty();
  }

  /** The rate of the link; counts from the next connection on. */
  public ObjectProperty<Baud> baudProperty() {
    return baud;
  }

  /** The bench brightness in percent. */
  public IntegerProperty brightnessProperty() {
    return brightness;
  }

  /** Whether all lamps but the selected ones stay dark. */
  public BooleanProperty selectedOnlyProperty() {
    return selectedOnly;
  }

  /** How the link is. */
  public ReadOnlyObjectProperty<LinkState> stateProperty() {
    return state.getReadOnlyProperty();
  }

  /** Whether it is up, or tries to be. */
  public ReadOnlyBooleanProperty connectedProperty() {
    return connected.getReadOnlyProperty();
  }

  /** Whether lamps hold a frame, since what moves was not cleared of flashes. */
  public ReadOnlyBooleanProperty heldProperty() {
    return held.getReadOnlyProperty();
  }

  /** The gauge of the link. */
  public ReadOnlyObjectProperty<Gauge> gaugeProperty() {
    return gauge.getReadOnlyProperty();
  }

  /** What the link can carry of this rig, and of the scene on the bench. */
  public String rateWords() {
    LinkRate rate = LinkRate.of(bench.project().rig(), baud.get());
    return LinkWords.of(rate)
        + bench
            .scene()
            .map(scene -> "\n" + LinkWords.of(rate, scene.framesPerSecond().doubleValue()))
            .orElse("");
  }

  /** Asks the system for its ports; selects the only one, where none is selected. */
  public void findPorts() {
    disk.run(
        () -> {
          try {
            List<PortInfo> found = system.ports();
            screen.execute(() -> found(found));
          } catch (LinkException unusable) {
            screen.execute(() -> show(new LinkState.Failed(unusable.trouble())));
          }
        });
  }

  private void found(List<PortInfo> now) {
    ports.set(List.copyOf(now));
    if (port.get().isEmpty() && now.size() == 1) {
      port.set(Optional.of(now.get(0).name()));
    }
  }

  /** Connects, or disconnects. */
  public void toggle() {
    if (connected.get()) {
      disconnect();
    } else {
      connect();
    }
  }

  /** Connects to the selected port. */
  public void connect() {
    port.get().ifPresent(name -> start(name, LinkIdentity.of(bench.project().rig())));
  }

  private void start(String name, LinkIdentity identity) {
    end();
    LatestFrame frame = new LatestFrame(identity.frameBytes());
    LiveLink[] own = new LiveLink[1];
    LiveLink link =
        new LiveLink(
            new LiveLink.Settings(name, baud.get(), identity),
            system,
            frame,
            now -> screen.execute(() -> heard(own[0], now)),
            System::nanoTime);
    own[0] = link;
    running = Optional.of(new Running(link, frame, identity));
    connected.set(true);
    refresh();
    Thread thread = new Thread(link, "bench link");
    thread.setDaemon(true);
    thread.start();
  }

  // Of a link that was ended nobody wants to hear.
  private void heard(LiveLink from, LinkState now) {
    if (running.filter(r -> r.link() == from).isEmpty()) {
      return;
    }
    if (now instanceof LinkState.Failed) {
      running = Optional.empty();
      connected.set(false);
    }
    show(now);
  }

  private void show(LinkState now) {
    state.set(now);
    showGauge();
  }

  /** Disconnects; the controller goes back to its own scene. */
  public void disconnect() {
    end();
    show(new LinkState.Closed());
  }

  private void end() {
    running.ifPresent(r -> r.link().end());
    running = Optional.empty();
    connected.set(false);
    held.set(false);
  }

  // The controller is asked anew whether it has the firmware of this rig.
  private void rigChanged(LinkIdentity now) {
    if (running.isPresent() && !running.get().identity().equals(now)) {
      connect();
    }
    showGauge();
  }

  /**
   * Shows a frame as it is, in place of all else, until there is none.
   *
   * @param frame already as dim as it is to be
   */
  void test(Optional<byte[]> frame) {
    test = frame.map(byte[]::clone);
    refresh();
  }

  private void moved() {
    moving = true;
    refresh();
    rest.request(REST, turn -> turn.show(this::rested));
  }

  private void rested() {
    moving = shown.plays();
    refresh();
    if (moving) {
      rest.request(REST, turn -> turn.show(this::rested));
    }
  }

  // What moves and may flash is shown at rest alone: fewer than two changes in a second.
  private void refresh() {
    if (running.isEmpty()) {
      return;
    }
    LatestFrame to = running.get().frame();
    int bytes = running.get().identity().frameBytes();
    Optional<byte[]> wanted = test.filter(frame -> frame.length == bytes);
    if (wanted.isEmpty()) {
      boolean holds = moving && !shown.cleared();
      held.set(holds);
      wanted =
          holds
              ? Optional.empty()
              : shown
                  .now(selectedOnly.get())
                  .filter(frame -> frame.length == bytes)
                  .map(new BenchBrightness(brightness.get())::of);
    }
    wanted.ifPresent(to::put);
  }

  private void showGauge() {
    gauge.set(gaugeNow());
  }

  private Gauge gaugeNow() {
    double most = LinkRate.of(bench.project().rig(), baud.get()).framesPerSecond();
    boolean carriesAll =
        bench.scene().map(scene -> scene.framesPerSecond().doubleValue() <= most).orElse(true);
    return LinkGauge.of(state.get(), carriesAll, rateWords());
  }

  @Override
  public void close() {
    end();
    rest.close();
  }
}
