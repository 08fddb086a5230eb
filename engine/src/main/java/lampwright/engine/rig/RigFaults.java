package lampwright.engine.rig;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import lampwright.engine.check.Checks;
import lampwright.engine.check.Fault;

/** What can be wrong between the parts of a rig: ids used twice, parts missing or claimed twice. */
public final class RigFaults {
  private final Checks checks = Checks.of("rig");

  private RigFaults() {}

  /** The faults between these parts, with paths below the rig such as {@code lamps[1].output}. */
  public static List<Fault> find(
      List<Chain> chains, List<DriverOutput> outputs, List<Lamp> lamps, List<Input> inputs) {
    RigFaults found = new RigFaults();
    found
        .checks
        .uniqueIds("chains", chains, Chain::id)
        .uniqueIds("outputs", outputs, DriverOutput::id)
        .uniqueIds("lamps", lamps, Lamp::id)
        .uniqueIds("inputs", inputs, Input::id);
    found.pins(chains, outputs, inputs);
    found.claims(chains, outputs, lamps);
    return found.checks.faults();
  }

  private void pins(List<Chain> chains, List<DriverOutput> outputs, List<Input> inputs) {
    Map<Pin, String> owners = new HashMap<>();
    for (int i = 0; i < chains.size(); i++) {
      pin(owners, chains.get(i).pin(), "chains[" + i + "]", "chain " + chains.get(i).id());
    }
    for (int i = 0; i < outputs.size(); i++) {
      pin(owners, outputs.get(i).pin(), "outputs[" + i + "]", "output " + outputs.get(i).id());
    }
    for (int i = 0; i < inputs.size(); i++) {
      pin(owners, inputs.get(i).pin(), "inputs[" + i + "]", "input " + inputs.get(i).id());
    }
  }

  private void pin(Map<Pin, String> owners, Optional<Pin> pin, String path, String what) {
    pin.map(given -> owners.putIfAbsent(given, what))
        .ifPresent(
            owner ->
                add(
                    path + ".pin",
                    pin.orElseThrow().name(),
                    "belongs to the " + owner + " already"));
  }

  private void claims(List<Chain> chains, List<DriverOutput> outputs, List<Lamp> lamps) {
    Map<String, Chain> chainOf = new HashMap<>();
    chains.forEach(c -> chainOf.putIfAbsent(c.id(), c));
    Set<String> outputIds = new HashSet<>();
    outputs.forEach(o -> outputIds.add(o.id()));
    Map<String, NavigableMap<Integer, Claim>> claimed = new HashMap<>();
    Map<String, String> outputOwner = new HashMap<>();
    for (int i = 0; i < lamps.size(); i++) {
      Lamp lamp = lamps.get(i);
      String path = "lamps[" + i + "]";
      if (lamp.fitting() instanceof Fitting.Output fitted) {
        if (!outputIds.contains(fitted.output())) {
          add(path + ".output", fitted.output(), "must be the id of an output of this rig");
          continue;
        }
        String owner = outputOwner.putIfAbsent(fitted.output(), lamp.id());
        if (owner != null) {
          add(path + ".output", fitted.output(), "belongs to the lamp " + owner + " already");
        }
      } else if (lamp.fitting() instanceof Fitting.Pixels fitted) {
        for (int j = 0; j < fitted.runs().size(); j++) {
          PixelRun run = fitted.runs().get(j);
          String runPath = path + ".pixels[" + j + "]";
          Chain chain = chainOf.get(run.chain());
          if (chain == null) {
            add(runPath + ".chain", run.chain(), "must be the id of a chain of this rig");
          } else if (run.end() > chain.pixels()) {
            add(
                runPath + ".count",
                "pixels " + run.from() + " to " + (run.end() - 1),
                "past the end of chain "
                    + chain.id()
                    + ", whose last pixel is "
                    + (chain.pixels() - 1));
          } else {
            claim(claimed.computeIfAbsent(run.chain(), c -> new TreeMap<>()), run, lamp, runPath);
          }
        }
      }
    }
  }

  // The claims of a chain, by first pixel, never overlap; so only the two neighbours can.
  private void claim(NavigableMap<Integer, Claim> claims, PixelRun run, Lamp lamp, String path) {
    Map.Entry<Integer, Claim> before = claims.lowerEntry(run.end());
    if (before != null && before.getValue().end() > run.from()) {
      int shared = Math.max(run.from(), before.getKey());
      add(
          path + ".from",
          "pixel " + shared + " of chain " + run.chain(),
          "belongs to the lamp " + before.getValue().lamp() + " already");
      return;
    }
    claims.put(run.from(), new Claim(run.end(), lamp.id()));
  }

  private void add(String field, String value, String allowed) {
    checks.add(field, value, allowed);
  }

  private record Claim(int end, String lamp) {}
}
