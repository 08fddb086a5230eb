package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;

/** What is done to chains; their lamps, and what these do in scenes, follow. */
public final class ChainEdits {
  private ChainEdits() {}

  /** Adds a chain of eight pixels of the type that the last chain has. */
  public static Project add(Project project) {
    Rig rig = project.rig();
    List<Chain> chains = new ArrayList<>(rig.chains());
    String id = Projects.freeId("chain", chains.stream().map(Chain::id).toList());
    chains.add(
        new Chain(
            id,
            chains.isEmpty()
                ? BuiltInPixelTypes.find("ws2812b").orElseThrow()
                : chains.get(chains.size() - 1).type(),
            8));
    return Project.RIG.with(project, Rig.CHAINS.with(rig, chains));
  }

  /** Changes a chain. */
  public static Project change(Project project, String id, UnaryOperator<Chain> change) {
    Rig rig = project.rig();
    return Project.RIG.with(
        project,
        Rig.CHAINS.with(
            rig, rig.chains().stream().map(c -> c.id().equals(id) ? change.apply(c) : c).toList()));
  }

  /** Renames a chain, in the lamps too. */
  public static Project rename(Project project, String from, String to) {
    Rig rig = project.rig();
    List<Chain> chains =
        rig.chains().stream().map(c -> c.id().equals(from) ? Chain.ID.with(c, to) : c).toList();
    List<Lamp> lamps =
        rig.lamps().stream()
            .map(
                l ->
                    RigEdits.runs(
                        l,
                        run ->
                            run.chain().equals(from)
                                ? Optional.of(new PixelRun(to, run.from(), run.count()))
                                : Optional.of(run)))
            .flatMap(Optional::stream)
            .toList();
    return Project.RIG.with(project, rig.with(chains, rig.outputs(), lamps));
  }

  /** Shortens or lengthens a chain; lamps lose the pixels that it no longer has. */
  public static Project setPixels(Project project, String chain, int pixels) {
    Rig rig = project.rig();
    List<Chain> chains =
        rig.chains().stream()
            .map(c -> c.id().equals(chain) ? Chain.PIXELS.with(c, pixels) : c)
            .toList();
    return RigEdits.withRuns(
        project,
        rig,
        chains,
        run ->
            !run.chain().equals(chain)
                ? Optional.of(run)
                : run.from() >= pixels
                    ? Optional.empty()
                    : Optional.of(
                        new PixelRun(
                            chain, run.from(), Math.min(run.count(), pixels - run.from()))));
  }

  /** The lamps that would lose pixels if a chain had this many. */
  public static List<Lamp> cutBy(Rig rig, String chain, int pixels) {
    return rig.lamps().stream()
        .filter(
            l ->
                l.fitting() instanceof Fitting.Pixels f
                    && f.runs().stream().anyMatch(r -> r.chain().equals(chain) && r.end() > pixels))
        .toList();
  }

  /** Removes a chain, and lamps that are left without pixels. */
  public static Project remove(Project project, String chain) {
    List<Chain> chains =
        project.rig().chains().stream().filter(c -> !c.id().equals(chain)).toList();
    return RigEdits.withRuns(
        project,
        project.rig(),
        chains,
        run -> run.chain().equals(chain) ? Optional.empty() : Optional.of(run));
  }

  /** The pixels of a chain that no lamp has. */
  public static Set<Integer> free(Rig rig, Chain chain) {
    BitSet taken = new BitSet();
    for (Lamp lamp : rig.lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels f) {
        f.runs().stream()
            .filter(r -> r.chain().equals(chain.id()))
            .forEach(r -> taken.set(r.from(), r.end()));
      }
    }
    Set<Integer> free = new TreeSet<>();
    for (int i = 0; i < chain.pixels(); i++) {
      if (!taken.get(i)) {
        free.add(i);
      }
    }
    return free;
  }
}
