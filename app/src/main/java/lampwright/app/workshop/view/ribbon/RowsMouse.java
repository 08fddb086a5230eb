package lampwright.app.workshop.view.ribbon;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Cursor;
import javafx.scene.Node;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import lampwright.app.workshop.edit.CuePhases;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.ribbon.CueDrag;
import lampwright.app.workshop.model.ribbon.KeyframeDrag;
import lampwright.app.workshop.model.ribbon.PhaseDrag;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonLayout.Grip;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.scene.Cue;
import org.jspecify.annotations.Nullable;

/** What the mouse does on the rows: it chooses cues, drags them, and asks for fresh ones. */
final class RowsMouse {
  /** How near to a mark the pointer means it, in pixels. */
  static final double MARK_REACH = 6;

  /** A hand that moves by less has not moved, in pixels. */
  static final double STILL = 2;

  private final RibbonsModel model;
  private final Bench bench;
  private final Node rows;
  private final RubberBand band;
  private final KindMenu kinds;
  private @Nullable CueDrag drag;
  private @Nullable PhaseDrag phase;
  private @Nullable KeyframeDrag keyframe;
  private double pressX;
  private double pressY;

  RowsMouse(RibbonsModel model, Node rows, RubberBand band, KindMenu kinds) {
    this.model = model;
    this.bench = model.bench();
    this.rows = rows;
    this.band = band;
    this.kinds = kinds;
  }

  void pressed(MouseEvent event) {
    kinds.hide();
    pressX = event.getX();
    pressY = event.getY();
    Optional<RibbonLayout.Hit> hit = model.hit(event.getX(), event.getY());
    Optional<RibbonLayout.Heading> heading = model.heading(event.getY());
    if (heading.isPresent() && event.getButton() == MouseButton.PRIMARY) {
      model.rows().toggleFolded(heading.get().group());
      return;
    }
    if (hit.isPresent() && hit.get().cue().isPresent()) {
      press(hit.get(), event);
      return;
    }
    Selection before = bench.selection();
    boolean more = event.isShiftDown() || event.isShortcutDown();
    if (hit.isPresent() && !more) {
      bench.select(before.withLamps(List.of(hit.get().row().lamp().id())).withCues(List.of()));
    }
    if (event.getButton() == MouseButton.SECONDARY) {
      return;
    }
    boolean asks = event.getClickCount() == 2;
    if (hit.isPresent() && asks) {
      offerKinds(hit.get().row().lamp().id(), event);
      return;
    }
    band.start(event.getX(), event.getY(), more ? before : bench.selection());
  }

  // The dimension line holds the cue, the ribbon under it the light within the cue.
  private void press(RibbonLayout.Hit hit, MouseEvent event) {
    CueRef ref = hit.cue().orElseThrow();
    boolean held = bench.selection().cues().contains(ref);
    if (event.getButton() != MouseButton.PRIMARY) {
      if (!held) {
        choose(hit, event);
      }
      model.keyframes().select(Optional.of(hit.keyframe()));
      return;
    }
    choose(hit, event);
    model.keyframes().select(Optional.of(hit.keyframe()));
    Cue cue = bench.scene().flatMap(ref::in).orElseThrow();
    double ms = model.axis().ms(event.getX());
    if (!hit.strip() || hit.grip() == Grip.FADE_IN || hit.grip() == Grip.FADE_OUT) {
      drag = new CueDrag(model, hit, ms);
    } else if (cue.pattern() instanceof Keyframes && event.getClickCount() == 2) {
      KeyframeDrag.add(model, ref, ms);
    } else if (hit.grip() == Grip.KEYFRAME && held) {
      keyframe = new KeyframeDrag(model, ref, hit.keyframe());
    } else if (CuePhases.moves(cue)) {
      phase = new PhaseDrag(bench);
    }
  }

  private void choose(RibbonLayout.Hit hit, MouseEvent event) {
    CueRef ref = hit.cue().orElseThrow();
    Set<CueRef> cues = new LinkedHashSet<>();
    boolean more = event.isShiftDown() || event.isShortcutDown();
    boolean held = bench.selection().cues().contains(ref);
    if (more || held) {
      cues.addAll(bench.selection().cues());
    }
    cues.remove(ref);
    if (!(event.isShortcutDown() && held)) {
      cues.add(ref);
    }
    bench.select(bench.selection().withLamps(List.of(hit.row().lamp().id())).withCues(cues));
  }

  private void offerKinds(String lamp, MouseEvent event) {
    BigDecimal at = model.snapping().edge(model.axis().ms(event.getX()), event.isAltDown());
    kinds.offer(
        List.of(lamp), at, rows.getLayoutX() + event.getX(), rows.getLayoutY() + event.getY());
  }

  void dragged(MouseEvent event) {
    double ms = model.axis().ms(event.getX());
    if (phase != null) {
      phase.to((event.getX() - pressX) * model.axis().msPerPixel());
    } else if (keyframe != null) {
      keyframe.to(ms, event.isAltDown());
    } else if (drag != null) {
      Optional<String> lamp = model.hit(event.getX(), event.getY()).map(h -> h.row().lamp().id());
      drag.to(ms, lamp, event.isAltDown());
    } else {
      band.to(event.getX(), event.getY());
    }
  }

  /** Lets go where the pointer is now: a fast hand lets go where no drag was told of before. */
  void released(MouseEvent event) {
    if (Math.hypot(event.getX() - pressX, event.getY() - pressY) > STILL) {
      dragged(event);
    }
    if (isDragging()) {
      bench.endGesture();
      forget();
    }
    band.end();
  }

  /** Whether a cue is being dragged. */
  boolean isDragging() {
    return drag != null || phase != null || keyframe != null;
  }

  /** Forgets the cue that is dragged, without putting it down, and the rubber band. */
  void forget() {
    drag = null;
    phase = null;
    keyframe = null;
    band.end();
  }

  /** Tells by its shape what the pointer would hold. */
  Cursor cursor(MouseEvent event) {
    Optional<RibbonLayout.Hit> hit = model.hit(event.getX(), event.getY());
    if (hit.flatMap(RibbonLayout.Hit::cue).isEmpty()) {
      return Cursor.DEFAULT;
    }
    return switch (hit.get().grip()) {
      case BODY -> hit.get().strip() ? Cursor.H_RESIZE : Cursor.OPEN_HAND;
      case KEYFRAME -> Cursor.CROSSHAIR;
      case START -> Cursor.W_RESIZE;
      case END -> Cursor.E_RESIZE;
      case FADE_IN, FADE_OUT -> Cursor.CROSSHAIR;
    };
  }
}
