package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/** What is asked of the pins of a rig's inputs on every controller that reads them itself. */
final class InputPins {
  private InputPins() {}

  static List<Input> channels(Rig rig) {
    return rig.inputs().stream().filter(Input::isChannel).toList();
  }

  static String path(int number) {
    return "rig.inputs[" + number + "]";
  }

  /** That an input has no pin: one that we took would be wired wrongly without a word. */
  static Finding missing(Input input, int number, String name) {
    return Finding.of(Code.INPUT_WITHOUT_PIN, new Subject.OneInput(input.id()))
        .with("name", Figure.words(name))
        .at(path(number))
        .make();
  }

  /**
   * The pins that there are not.
   *
   * @param known whether there is one
   * @param list those that there are, for people
   */
  static List<Finding> unknown(Rig rig, Predicate<Pin> known, String name, String list) {
    List<Finding> found = new ArrayList<>();
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      Subject subject = new Subject.OneInput(input.id());
      String path = path(i);
      input
          .pin()
          .filter(known.negate())
          .ifPresent(pin -> found.add(AvrPinPlanner.unknown(pin, subject, path, name, list)));
    }
    return found;
  }

  static List<Finding> missing(Rig rig, String name) {
    List<Finding> found = new ArrayList<>();
    for (int i = 0; i < rig.inputs().size(); i++) {
      if (rig.inputs().get(i).pin().isEmpty()) {
        found.add(missing(rig.inputs().get(i), i, name));
      }
    }
    return found;
  }
}
