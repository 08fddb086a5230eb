package lampwright.exporters.target;

import java.util.Optional;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.review.Unit;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.exporters.packed.play.ShowRoom;

/**
 * What a rig's firmware takes of a controller beside the packed scenes. The constants are measured
 * (avr-size and the stack's greatest depth on the simulator); a test holds them against that.
 */
public final class FirmwareSize {
  static final int PLAYER_RAM = 9;
  static final int LAMP_RAM = 7;
  static final int SHOW_RAM = 14;
  static final int STACK_RAM = 96;

  private final Target target;
  private final Rig rig;
  private final int frameBytes;
  private final int longestChain;
  private final Optional<ShowRoom> situations;

  FirmwareSize(Target target, Rig rig, Optional<ShowRoom> situations) {
    this.target = target;
    this.rig = rig;
    this.situations = situations;
    this.longestChain = rig.chains().stream().mapToInt(Chain::bytes).max().orElse(0);
    this.frameBytes = rig.chains().stream().mapToInt(Chain::bytes).sum() + rig.outputs().size();
  }

  /** Working memory of frame, player, situations and stack. */
  public int ramBytes() {
    return leastRam() + (dims() && !limits() ? dimmingRam() : 0);
  }

  /** Whether there is working memory for a dimmed copy of the longest chain. */
  public boolean dims() {
    int room = target.memory().ramBytes().orElse(Integer.MAX_VALUE);
    return leastRam() + (limits() ? 0 : dimmingRam()) <= room;
  }

  /** Whether frames are limited as they are sent, for which there is such a copy too. */
  private boolean limits() {
    return situations.isPresent() && rig.ceiling();
  }

  /** Program memory of player, driver and loop; 0 where these are the builder's affair. */
  public int programBytes() {
    return target.codeBytes(rig) + (situations.isPresent() ? target.situationsBytes(rig) : 0);
  }

  private int leastRam() {
    return target.ramBytes(frameBytes, Math.max(1, rig.lamps().size()))
        + target.driverRamBytes(longestChain)
        + situations.map(room -> target.situationsRam(rig, room)).orElse(0)
        + (limits() ? dimmingRam() : 0);
  }

  private int dimmingRam() {
    return Math.max(longestChain, rig.outputs().size());
  }

  /** Why frame and player don't fit the working memory; none if they do. */
  public Optional<Finding> ramRefusal() {
    int ram = target.memory().ramBytes().orElse(Integer.MAX_VALUE);
    int over = leastRam() - ram;
    if (over <= 0) {
      return Optional.empty();
    }
    return Optional.of(
        Finding.of(Code.WORKING_MEMORY, new Subject.Chip(target.name()))
            .with("size", Figure.count(leastRam(), Unit.BYTES))
            .with("limit", Figure.count(ram, Unit.BYTES))
            .with("over", Figure.count(over, Unit.BYTES))
            .source(target.memory().ramSource())
            .make());
  }
}
