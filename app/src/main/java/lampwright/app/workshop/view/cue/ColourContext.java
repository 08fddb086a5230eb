package lampwright.app.workshop.view.cue;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.beans.value.ObservableValue;
import lampwright.app.workshop.model.ColourDropper;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.engine.light.Colour;

/**
 * What controls for colours are told.
 *
 * @param look of the lamp that colours are shown for, if there is one
 * @param used the colours of the project
 * @param dropper takes a colour from what is clicked next
 */
public record ColourContext(
    Supplier<Optional<PixelLook>> look,
    ObservableValue<List<Colour>> used,
    ColourDropper dropper) {}
