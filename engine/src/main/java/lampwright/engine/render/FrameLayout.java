package lampwright.engine.render;

import com.google.common.collect.ImmutableList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Mixer;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;

/**
 * The layout of a frame's bytes: every chain in rig order, each pixel's bytes in the chain's order,
 * then every output in rig order.
 *
 * <p>The renderer counts <em>packages</em>: every pixel of every chain in that order, then every
 * output. A package has {@link Mixer#SLOTS} drives.
 */
public final class FrameLayout {
  private final Rig rig;
  private final Map<String, Integer> firstPackage = new HashMap<>();
  private final int[] chainOffset;
  private final int packages;
  private final int bytes;
  private final int[] slotOfByte;

  public FrameLayout(Rig rig) {
    this.rig = rig;
    this.chainOffset = new int[rig.chains().size()];
    int nextPackage = 0;
    int nextByte = 0;
    for (int c = 0; c < chainOffset.length; c++) {
      Chain chain = rig.chains().get(c);
      firstPackage.put(chainKey(chain.id()), nextPackage);
      chainOffset[c] = nextByte;
      nextPackage += chain.pixels();
      nextByte += chain.bytes();
    }
    for (DriverOutput output : rig.outputs()) {
      firstPackage.put(outputKey(output.id()), nextPackage++);
      nextByte++;
    }
    this.packages = nextPackage;
    this.bytes = nextByte;
    this.slotOfByte = slotOfByte();
  }

  /** The rig that this is the layout of. */
  public Rig rig() {
    return rig;
  }

  /** Bytes per frame, at least 1. */
  public int bytes() {
    return bytes;
  }

  /** Pixels and outputs together. */
  public int packages() {
    return packages;
  }

  /** Where the bytes of a chain begin in a frame. */
  public int chainOffset(int chain) {
    return chainOffset[chain];
  }

  /** Where the bytes of the outputs begin in a frame. */
  public int outputsOffset() {
    return bytes - rig.outputs().size();
  }

  /** The packages of a lamp, in the order in which patterns see them. */
  public int[] packagesOf(Lamp lamp) {
    if (lamp.fitting() instanceof Fitting.Output fitted) {
      return new int[] {firstPackage.get(outputKey(fitted.output()))};
    }
    List<PixelRun> runs = ((Fitting.Pixels) lamp.fitting()).runs();
    int[] found = new int[lamp.fitting().lights()];
    int next = 0;
    for (PixelRun run : runs) {
      int first = firstPackage.get(chainKey(run.chain())) + run.from();
      for (int i = 0; i < run.count(); i++) {
        found[next++] = first + i;
      }
    }
    return found;
  }

  /** The place of each byte's drive in an array of {@link Mixer#SLOTS} drives per package. */
  int[] slots() {
    return slotOfByte;
  }

  /** What each byte of a frame is, in order. */
  public ImmutableList<Column> columns() {
    Map<Integer, Column.LampPixel> owners = owners();
    ImmutableList.Builder<Column> columns = ImmutableList.builderWithExpectedSize(bytes);
    int at = 0;
    for (Chain chain : rig.chains()) {
      for (int pixel = 0; pixel < chain.pixels(); pixel++, at++) {
        Optional<Column.LampPixel> owner = Optional.ofNullable(owners.get(at));
        for (EmitterKind emitter : chain.order().emitters()) {
          columns.add(new Column(new Column.PixelEmitter(chain.id(), pixel, emitter), owner));
        }
      }
    }
    for (DriverOutput output : rig.outputs()) {
      columns.add(
          new Column(new Column.OutputDuty(output.id()), Optional.ofNullable(owners.get(at++))));
    }
    return columns.build();
  }

  private Map<Integer, Column.LampPixel> owners() {
    Map<Integer, Column.LampPixel> owners = new HashMap<>();
    for (Lamp lamp : rig.lamps()) {
      int[] own = packagesOf(lamp);
      boolean output = lamp.fitting() instanceof Fitting.Output;
      for (int k = 0; k < own.length; k++) {
        OptionalInt place = output ? OptionalInt.empty() : OptionalInt.of(k);
        owners.put(own[k], new Column.LampPixel(lamp.id(), place));
      }
    }
    return owners;
  }

  private int[] slotOfByte() {
    int[] slots = new int[bytes];
    int at = 0;
    int next = 0;
    for (Chain chain : rig.chains()) {
      for (int pixel = 0; pixel < chain.pixels(); pixel++, at++) {
        for (EmitterKind emitter : chain.order().emitters()) {
          slots[next++] = at * Mixer.SLOTS + emitter.slot();
        }
      }
    }
    while (next < bytes) {
      slots[next++] = at++ * Mixer.SLOTS;
    }
    return slots;
  }

  // Chains and outputs have ids of their own, so the two are told apart.
  private static String chainKey(String id) {
    return "chain " + id;
  }

  private static String outputKey(String id) {
    return "output " + id;
  }
}
