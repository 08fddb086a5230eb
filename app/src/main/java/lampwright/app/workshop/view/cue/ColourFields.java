package lampwright.app.workshop.view.cue;

import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.engine.light.Colour;

/** Adds the control for colours to a form. */
public final class ColourFields {
  private ColourFields() {}

  /** Adds it. */
  public static FormContext addTo(FormContext context, ColourContext colours) {
    return context.<Kind.Colours, Colour>with(
        Kind.Colours.class,
        (kind, slot) -> ColourField.of(slot, colours, context.words().label(slot.key())));
  }
}
