package lampwright.app.workshop.edit;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.PixelType;

/** The values of a chain. */
public final class ChainSettings {
  private static final List<EmitterOrder> RGB_ORDERS = orders("RGB");
  private static final List<EmitterOrder> RGBW_ORDERS = orders("RGBW");

  private ChainSettings() {}

  /**
   * All but its id.
   *
   * @param own the pixel types of the project's own
   * @param now the type that the chain has
   */
  public static List<Setting<Chain, ?>> of(List<PixelType> own, PixelType now) {
    List<PixelType> types = Stream.concat(BuiltInPixelTypes.all().stream(), own.stream()).toList();
    List<EmitterOrder> orders = now.order().size() == 4 ? RGBW_ORDERS : RGB_ORDERS;
    return ShapeSettings.of(Chain.SHAPE)
        .without(Chain.ID, Chain.FEED)
        .own(
            Chain.TYPE,
            new Setting<>(
                "pixelType",
                new Kind.Choice<>("pixelType", types, PixelType::title),
                Chain::type,
                ChainSettings::withType))
        .own(
            Chain.ORDER,
            new Setting<>(
                "order",
                new Kind.Choice<>("order", orders, EmitterOrder::letters),
                Chain::order,
                Chain.ORDER::with))
        .list();
  }

  /**
   * A chain of another type: order and white go back to the type's own where they no longer fit.
   */
  static Chain withType(Chain chain, PixelType type) {
    boolean white = type.order().emitters().contains(EmitterKind.WHITE);
    boolean sameOrder = chain.order().size() == type.order().size();
    boolean usual = chain.order().equals(chain.type().order());
    return chain.withType(
        type,
        sameOrder && !usual ? chain.order() : type.order(),
        white ? chain.whiteKelvin() : OptionalDouble.empty());
  }

  private static List<EmitterOrder> orders(String letters) {
    return permutations(letters)
        .flatMap(text -> EmitterOrder.parse(text).stream())
        .collect(Collectors.toList());
  }

  private static Stream<String> permutations(String letters) {
    return letters.isEmpty()
        ? Stream.of("")
        : letters
            .chars()
            .mapToObj(Character::toString)
            .flatMap(first -> permutations(letters.replace(first, "")).map(rest -> first + rest));
  }
}
