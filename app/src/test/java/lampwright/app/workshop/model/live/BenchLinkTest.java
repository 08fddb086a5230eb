package lampwright.app.workshop.model.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.live.Baud;
import lampwright.app.live.LinkException;
import lampwright.app.live.LinkIdentity;
import lampwright.app.live.LinkState;
import lampwright.app.live.LinkTrouble;
import lampwright.app.live.PortInfo;
import lampwright.app.live.SerialSystem;
import lampwright.app.live.SimulatedLine;
import lampwright.app.live.Transport;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.edit.ColourOrders.Seen;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.model.situation.Transmitter;
import lampwright.engine.document.Project;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The bench link of the workshop with a simulated controller on its port. */
@Timeout(300)
class BenchLinkTest {
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final ReadyAnswers answers = new ReadyAnswers();
  private final DrawingSheet sheet = new DrawingSheet();
  private final Ports ports = new Ports();
  private Bench bench;
  private LightService lights;
  private Playhead playhead;
  private Player player;
  private Transmitter transmitter;
  private BenchLink link;

  /** A machine with one port, on which a controller is that has the firmware of some rig. */
  private static final class Ports implements SerialSystem {
    volatile SimulatedLine line = new SimulatedLine(new LinkIdentity(1, 0));

    @Override
    public List<PortInfo> ports() {
      return List.of(new PortInfo("bench0", "Bench adapter"));
    }

    @Override
    public Transport open(String port, Baud baud) throws LinkException {
      if (!port.equals("bench0")) {
        throw new LinkException(new LinkTrouble.NoSuchPort(port, ports()));
      }
      return line;
    }
  }

  private void begin(Project project) {
    ports.line = new SimulatedLine(LinkIdentity.of(project.rig()));
    bench = new Bench(project);
    lights = new LightService(bench, screen::add);
    playhead = new Playhead(bench);
    player =
        new Player(
            bench,
            lights,
            playhead,
            answers,
            new ReadOnlyObjectWrapper<>(Optional.of(FlashCaution.NONE)).getReadOnlyProperty());
    transmitter = new Transmitter(bench, sheet, answers);
    link =
        new BenchLink(
            bench,
            new ShownFrame(bench, lights, sheet, player, transmitter),
            ports,
            new AtOnce(),
            screen::add);
  }

  /** Does what it is given at once. */
  private static final class AtOnce implements Background {
    @Override
    public void run(Runnable work) {
      work.run();
    }

    @Override
    public void runAfter(Duration delay, Runnable work) {
      throw new UnsupportedOperationException();
    }

    @Override
    public Duration now() {
      return Duration.ZERO;
    }
  }

  @AfterEach
  void close() {
    link.close();
    lights.close();
  }

  private void run(BooleanSupplier until) throws InterruptedException {
    while (!until.getAsBoolean()) {
      Runnable next = screen.poll(20, TimeUnit.MILLISECONDS);
      if (next != null) {
        next.run();
      }
    }
  }

  private void connect() throws InterruptedException {
    run(() -> lights.reportProperty().get().isPresent());
    link.findPorts();
    run(() -> link.portProperty().get().isPresent());
    link.connect();
    run(() -> link.stateProperty().get() instanceof LinkState.Live);
  }

  private void shows(byte... frame) throws InterruptedException {
    run(() -> Arrays.equals(ports.line.last(), frame));
  }

  @Test
  void lampsFollowThePlayheadEditsAndTheBrightness() throws InterruptedException {
    begin(Projects4Tests.small());
    connect();
    // White at full level of two RGBW pixels, a quarter of it; the output is dark.
    run(() -> ports.line.last()[0] != 0);
    byte[] first = ports.line.last();
    assertThat(first).hasSize(9);
    assertThat(first[0]).isEqualTo((byte) 64);
    link.brightnessProperty().set(50);
    run(() -> ports.line.last()[0] == (byte) 128);
    bench.apply(
        Edit.of(
            "Dark",
            p ->
                lampwright.app.workshop.edit.Projects.inScene(
                    p, "work", s -> lampwright.engine.scene.Scene.TRACKS.with(s, List.of()))));
    shows(new byte[9]);
  }

  @Test
  void onlyTheSelectedLampsAreLitWhereThatIsAskedFor() throws InterruptedException {
    begin(Projects4Tests.sample("recovery-tractor"));
    connect();
    run(() -> lit(ports.line.last()) > 20);
    link.selectedOnlyProperty().set(true);
    shows(new byte[ports.line.last().length]);
    // The front work lamps are the pixels 6 and 7 of the first chain, of four bytes each.
    bench.select(bench.selection().withLamps(List.of("work-front")));
    run(() -> lit(ports.line.last()) > 0);
    byte[] front = ports.line.last();
    assertThat(lit(Arrays.copyOfRange(front, 24, 32))).isEqualTo(lit(front));
    link.selectedOnlyProperty().set(false);
    run(() -> lit(ports.line.last()) > 20);
  }

  private static int lit(byte[] frame) {
    int lit = 0;
    for (byte b : frame) {
      lit += b == 0 ? 0 : 1;
    }
    return lit;
  }

  /** Blue double flashes: the builder has not agreed, so what moves is not sent. */
  @Test
  void whatFailsTheFlashCheckIsSentAtRestAlone() throws InterruptedException {
    begin(Projects4Tests.sample("mountain-rescue"));
    connect();
    run(() -> lights.reportProperty().get().isPresent() && !player.lampsClearedProperty().get());
    run(() -> ports.line.count() > 2);
    byte[] before = ports.line.last();
    answers.answers.add("Play dimmed");
    player.play();
    List<byte[]> seen = new ArrayList<>();
    for (int frame = 1; frame < 60; frame++) {
      playhead.go(frame);
      seen.add(ports.line.last());
      assertThat(link.heldProperty().get()).isTrue();
    }
    assertThat(seen).allSatisfy(frame -> assertThat(frame).isEqualTo(before));
    player.pause();
    run(() -> !link.heldProperty().get());
    // Agreed to, they follow.
    answers.answers.add("Play at full brightness");
    player.flashNoteProperty().set("The lamps flash too.");
    player.play();
    assertThat(answers.asked.get(1)).endsWith("The lamps flash too.");
    assertThat(player.lampsClearedProperty().get()).isTrue();
    playhead.go(7);
    assertThat(link.heldProperty().get()).isFalse();
  }

  @Test
  void anotherRigMeansOtherFirmware() throws InterruptedException {
    begin(Projects4Tests.small());
    connect();
    bench.apply(
        Edit.of("Longer", p -> lampwright.app.workshop.edit.ChainEdits.setPixels(p, "c", 3)));
    run(() -> link.stateProperty().get() instanceof LinkState.Failed);
    assertThat(link.connectedProperty().get()).isFalse();
    assertThat(link.gaugeProperty().get().state()).isEqualTo(Gauge.State.OVER);
    assertThat(link.gaugeProperty().get().details()).contains("firmware of another rig");
  }

  @Test
  void portThatIsNotThereFails() throws InterruptedException {
    begin(Projects4Tests.small());
    link.portProperty().set(Optional.of("other"));
    link.connect();
    run(() -> link.stateProperty().get() instanceof LinkState.Failed);
    assertThat(link.gaugeProperty().get().details())
        .startsWith("other: no such port. Ports: bench0 (Bench adapter).");
    link.disconnect();
    assertThat(link.stateProperty().get()).isEqualTo(new LinkState.Closed());
  }

  @Test
  void walkLightsPixelsAndNamesLampsInOneStep() throws InterruptedException {
    Rig rig = Projects4Tests.small().rig();
    begin(Projects4Tests.small());
    NamingWalk walk = new NamingWalk(bench, link, sheet.picker(), answers);
    connect();
    Chain chain = rig.chains().get(0);
    walk.start(chain);
    shows(new byte[] {16, 16, 16, 16, 0, 0, 0, 0, 0});
    assertThat(walk.candidates("")).extracting(NamingWalk.Candidate::id).containsExactly("roof");
    assertThat(walk.candidates("oof")).hasSize(1);
    assertThat(walk.candidates("x")).isEmpty();
    // A lamp on an output has no pixels.
    sheet.picker().give("amber");
    assertThat(answers.told).hasSize(1);
    assertThat(walk.stepProperty().get().orElseThrow().pixel()).isZero();
    walk.nameNew();
    shows(new byte[] {0, 0, 0, 0, 16, 16, 16, 16, 0});
    walk.back();
    shows(new byte[] {16, 16, 16, 16, 0, 0, 0, 0, 0});
    walk.nameNew();
    sheet.picker().give("roof");
    assertThat(walk.stepProperty().get().orElseThrow().atEnd()).isTrue();
    shows(new byte[9]);
    walk.done();
    assertThat(sheet.picker().isActive()).isFalse();
    assertThat(walk.stepProperty().get()).isEmpty();
    assertThat(bench.project().rig().lamp("roof").orElseThrow().fitting())
        .isEqualTo(new Fitting.Pixels(List.of(new PixelRun("c", 1, 1))));
    assertThat(bench.project().rig().lamp("lamp-1").orElseThrow().fitting())
        .isEqualTo(new Fitting.Pixels(List.of(new PixelRun("c", 0, 1))));
    assertThat(link.stateProperty().get()).isInstanceOf(LinkState.Live.class);
    bench.undo();
    assertThat(bench.project().rig()).isEqualTo(rig);
  }

  @Test
  void walkThatLeavesALampWithoutPixelsIsNotDone() {
    begin(Projects4Tests.small());
    NamingWalk walk = new NamingWalk(bench, link, sheet.picker(), answers);
    walk.start(bench.project().rig().chains().get(0));
    walk.skip();
    walk.skip();
    walk.done();
    assertThat(answers.told.get(0)).contains("These lamps would have no pixel: roof.");
    assertThat(walk.stepProperty().get()).isPresent();
    walk.back();
    walk.name("roof");
    walk.sameAgain();
    walk.done();
    assertThat(walk.stepProperty().get()).isEmpty();
    assertThat(bench.undoNameProperty().get()).contains("Name pixels");
  }

  @Test
  void answersGiveTheOrderAndATypeIsProposed() throws InterruptedException {
    begin(Projects4Tests.small());
    OrderFinder order = new OrderFinder(bench, link, answers);
    connect();
    order.start(bench.project().rig().chains().get(0));
    shows(new byte[] {48, 0, 0, 0, 0, 0, 0, 0, 0});
    order.answer(Seen.RED);
    shows(new byte[] {0, 48, 0, 0, 0, 0, 0, 0, 0});
    order.answer(Seen.GREEN);
    order.answer(Seen.BLUE);
    shows(new byte[] {0, 0, 0, 48, 0, 0, 0, 0, 0});
    answers.answers.add("Keep sk6812-rgbw, set order RGBW");
    order.answer(Seen.WHITE);
    assertThat(answers.asked.get(0))
        .contains("The colour order of c is RGBW; the project has GRBW");
    assertThat(bench.project().rig().chains().get(0).order().letters()).isEqualTo("RGBW");
    bench.undo();
    assertThat(bench.project().rig().chains().get(0).order().letters()).isEqualTo("GRBW");
  }

  @Test
  void pixelsOfThreeBytesAreFoundAmongFour() {
    begin(Projects4Tests.small());
    OrderFinder order = new OrderFinder(bench, link, answers);
    order.start(bench.project().rig().chains().get(0));
    order.answer(Seen.GREEN);
    order.answer(Seen.RED);
    order.answer(Seen.BLUE);
    answers.answers.add("Set LED type ws2812b");
    order.answer(Seen.NEXT_PIXEL);
    assertThat(bench.project().rig().chains().get(0).type().id()).isEqualTo("ws2812b");
  }

  @Test
  void answersWithoutAnOrderAreSaid() {
    begin(Projects4Tests.small());
    OrderFinder order = new OrderFinder(bench, link, answers);
    order.start(bench.project().rig().chains().get(0));
    for (int i = 0; i < 4; i++) {
      order.answer(Seen.NOTHING);
    }
    assertThat(answers.told.get(0)).contains("These answers do not make a colour order");
    assertThat(order.questionProperty().get()).isEmpty();
  }
}
