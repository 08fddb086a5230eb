package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.rig.InputLevel;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.SupplyNeeds;

/** The supply and data levels of a pixel type. The ranges are those of the record. */
final class NeedsSettings {
  private static final Kind.Amount SUPPLY = Kind.Amount.of("volts", 0.5, 60, 0.1);
  private static final Kind.Amount MAX = Kind.Amount.of("volts", 0.5, 66, 0.1);
  private static final Kind.Amount INPUT = Kind.Amount.of("volts", 0, 60, 0.1);
  private static final Kind.Amount SHARE = Kind.Amount.of("shareOf", 0, 1, 0.05);

  private NeedsSettings() {}

  static List<Setting<PixelType, BigDecimal>> of() {
    return List.of(
        setting(
            "failVolts",
            SUPPLY,
            SupplyNeeds::failVolts,
            (n, v) -> new SupplyNeeds(v, n.minVolts(), n.maxVolts(), n.inputHigh(), n.inputMax())),
        setting(
            "minVolts",
            SUPPLY,
            SupplyNeeds::minVolts,
            (n, v) -> new SupplyNeeds(n.failVolts(), v, n.maxVolts(), n.inputHigh(), n.inputMax())),
        setting(
            "maxVolts",
            MAX,
            SupplyNeeds::maxVolts,
            (n, v) -> new SupplyNeeds(n.failVolts(), n.minVolts(), v, n.inputHigh(), n.inputMax())),
        setting(
            "inputHighShare",
            SHARE,
            n -> n.inputHigh().supplyShare(),
            (n, v) -> withHigh(n, new InputLevel(v, n.inputHigh().volts()))),
        setting(
            "inputHighVolts",
            INPUT,
            n -> n.inputHigh().volts(),
            (n, v) -> withHigh(n, new InputLevel(n.inputHigh().supplyShare(), v))),
        setting(
            "inputMaxShare",
            SHARE,
            n -> n.inputMax().supplyShare(),
            (n, v) -> withMax(n, new InputLevel(v, n.inputMax().volts()))),
        setting(
            "inputMaxVolts",
            INPUT,
            n -> n.inputMax().volts(),
            (n, v) -> withMax(n, new InputLevel(n.inputMax().supplyShare(), v))));
  }

  private static SupplyNeeds withHigh(SupplyNeeds n, InputLevel level) {
    return new SupplyNeeds(n.failVolts(), n.minVolts(), n.maxVolts(), level, n.inputMax());
  }

  private static SupplyNeeds withMax(SupplyNeeds n, InputLevel level) {
    return new SupplyNeeds(n.failVolts(), n.minVolts(), n.maxVolts(), n.inputHigh(), level);
  }

  private static Setting<PixelType, BigDecimal> setting(
      String key,
      Kind.Amount amount,
      Function<SupplyNeeds, Double> get,
      BiFunction<SupplyNeeds, Double, SupplyNeeds> set) {
    return Setting.ofDouble("type." + key, amount, get, set)
        .inside(PixelType::needs, PixelTypeSettings::withNeeds);
  }
}
