package lampwright.app.workshop.view.cue;

import java.util.Optional;
import java.util.function.Supplier;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.engine.light.Colour;

/** Adds the control for colours to a form. */
public final class ColourFields {
  private ColourFields() {}

  /**
   * Adds it.
   *
   * @param look of the lamp that colours are shown for, if there is one
   */
  public static FormContext addTo(FormContext context, Supplier<Optional<PixelLook>> look) {
    return context.<Kind.Colours, Colour>with(
        Kind.Colours.class,
        (kind, slot) -> ColourField.of(slot, look, context.words().label(slot.key())));
  }
}
