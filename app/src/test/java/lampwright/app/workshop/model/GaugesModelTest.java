package lampwright.app.workshop.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.model.problems.Target;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class GaugesModelTest {
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final Project project = Projects4Tests.sample("recovery-tractor");
  private final Bench bench = new Bench(project);
  private final LightService lights = new LightService(bench, screen::add);
  private final PackService packs = new PackService(bench, screen::add);
  private final Playhead playhead = new Playhead(bench);
  private final GaugesModel gauges = new GaugesModel(bench, lights, packs, playhead);

  @AfterEach
  void close() {
    lights.close();
    packs.close();
  }

  @Test
  void supplyGaugeShowsThePresentFrameAndThePeak() throws InterruptedException {
    run(() -> lights.reportProperty().get().isPresent());
    var draw = lights.reportProperty().get().orElseThrow().measure().supply();
    Gauge before = gauges.supplyProperty().get();
    assertThat(before.mark().getAsDouble())
        .isEqualTo(draw.peakMilliamps() / project.rig().supplyLimitMilliamps());
    assertThat(before.frame()).hasValue(draw.peakFrame());
    run(() -> lights.lightProperty().get().filter(light -> light.frames().complete()).isPresent());
    playhead.go(draw.peakFrame());
    Gauge worst = gauges.supplyProperty().get();
    assertThat(worst.share().getAsDouble()).isEqualTo(worst.mark().getAsDouble());
    assertThat(worst.reading()).endsWith("\u00a0A").contains(" of ");
  }

  @Test
  void supplyPastItsLimitIsOver() throws InterruptedException {
    bench.apply(
        Edit.of(
            "Weak supply",
            p ->
                Project.RIG.with(
                    p,
                    Rig.SUPPLY_LIMIT_MILLIAMPS.with(
                        Rig.CURRENT_CAP.with(p.rig(), lampwright.engine.rig.CurrentCap.OFF),
                        100.0))));
    run(
        () ->
            lights
                .reportProperty()
                .get()
                .filter(r -> r.table().layout().rig().supplyLimitMilliamps() == 100)
                .isPresent());
    assertThat(gauges.supplyProperty().get().state()).isEqualTo(Gauge.State.OVER);
    assertThat(gauges.supplyProperty().get().details()).contains("supply, scene working");
  }

  @Test
  void wireGaugeAgreesWithTheMeter() {
    Gauge wire = gauges.wireProperty().get();
    assertThat(wire.state()).isEqualTo(Gauge.State.FITS);
    assertThat(wire.reading()).endsWith("\u00a0% of 20.0\u00a0ms");
    assertThat(wire.target()).containsInstanceOf(Target.OfChain.class);
  }

  @Test
  void memoryGaugeShowsPackedScenesOfTheController() throws InterruptedException {
    assertThat(gauges.memoryProperty().get().state()).isEqualTo(Gauge.State.OPEN);
    run(() -> packs.packedProperty().get().isPresent());
    Gauge memory = gauges.memoryProperty().get();
    assertThat(memory.state()).isEqualTo(Gauge.State.FITS);
    assertThat(memory.reading()).endsWith("of 31.5\u00a0KiB");
    assertThat(memory.details()).contains("ATmega328P");
  }

  @Test
  void flashGaugeFollowsTheChosenLamp() throws InterruptedException {
    assertThat(gauges.flashProperty().get().reading()).isEqualTo("no lamp selected");
    run(() -> lights.reportProperty().get().isPresent());
    var flashing =
        lights.reportProperty().get().orElseThrow().measure().lights().stream()
            .filter(l -> l.train().isPresent())
            .findFirst()
            .orElseThrow();
    bench.select(bench.selection().withLamps(List.of(flashing.id())));
    Gauge flash = gauges.flashProperty().get();
    assertThat(flash.reading()).endsWith("\u00a0flashes/min");
    assertThat(flash.target()).contains(new Target.OfLamp(flashing.id()));
    assertThat(flash.details()).contains("limit 3, WCAG 2.2 2.3.1").doesNotContain("safe");
  }

  private void run(BooleanSupplier until) throws InterruptedException {
    while (!until.getAsBoolean()) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).as("work for the screen's thread").isNotNull();
      next.run();
    }
  }
}
