package lampwright.app.workshop.edit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.PixelType;

/** The colour order of a chain, from what is seen when one byte after another is lit. */
public final class ColourOrders {
  /** What is seen of the first pixel. */
  public enum Seen {
    RED("R"),
    GREEN("G"),
    BLUE("B"),
    WHITE("W"),
    /** The next pixel lights up: the first takes no more bytes. */
    NEXT_PIXEL(""),
    NOTHING("");

    private final String letter;

    Seen(String letter) {
      this.letter = letter;
    }

    /** Its word in texts. */
    public String key() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** Bytes that are lit one after another, where the chain has as many. */
  public static final int MOST_BYTES = 4;

  private ColourOrders() {}

  /**
   * The order.
   *
   * @param seen of each byte from the first on, three or four
   * @return empty if that is no order
   */
  public static Optional<EmitterOrder> of(List<Seen> seen) {
    boolean three = seen.size() == 3 || (seen.size() == 4 && seen.get(3) == Seen.NEXT_PIXEL);
    List<Seen> own = three ? seen.subList(0, 3) : seen;
    String letters = String.join("", own.stream().map(s -> s.letter).toList());
    return letters.length() == own.size() ? EmitterOrder.parse(letters) : Optional.empty();
  }

  /** The pixel type to propose for an order: the chain's own if it has it, else the first known. */
  public static Optional<PixelType> type(Project project, Chain chain, EmitterOrder order) {
    return Stream.of(
            Stream.of(chain.type()),
            project.pixelTypes().stream(),
            BuiltInPixelTypes.all().stream())
        .flatMap(types -> types)
        .filter(type -> type.order().equals(order))
        .findFirst();
  }

  /** Gives a chain pixels of another type, in that type's order. */
  public static Project withType(Project project, String chain, PixelType type) {
    boolean white = type.order().emitters().contains(EmitterKind.WHITE);
    return ChainEdits.change(
        project,
        chain,
        c -> c.withType(type, type.order(), white ? c.whiteKelvin() : OptionalDouble.empty()));
  }

  /** Gives a chain another order of the same colours. */
  public static Project withOrder(Project project, String chain, EmitterOrder order) {
    return ChainEdits.change(project, chain, c -> Chain.ORDER.with(c, order));
  }
}
