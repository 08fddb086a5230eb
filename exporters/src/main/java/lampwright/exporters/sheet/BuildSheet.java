package lampwright.exporters.sheet;

import java.util.List;
import java.util.Optional;
import lampwright.exporters.picture.LightTraces;

/**
 * What is on a build sheet, all texts fit to be shown: names of the project are harmless, and
 * nothing is marked up. Immutable.
 *
 * @param name of the project
 * @param facts of the whole rig, such as supply and controller
 * @param source parts from battery or supply to the rig
 * @param currents what each scene draws, and situations together
 * @param chains in rig order
 * @param outputs in rig order
 * @param pins of the controller, in the order chains, outputs, inputs
 * @param situations those of highest priority first
 * @param findings gravest first
 * @param scenes in the order of the project
 * @param checklist what to do before and at the first power-up, in order
 * @param cautions that go for every model of this kind
 */
public record BuildSheet(
    String name,
    List<String> facts,
    List<Part> source,
    List<Current> currents,
    List<ChainPlan> chains,
    List<OutputPlan> outputs,
    List<PinUse> pins,
    List<SituationRow> situations,
    List<FindingRow> findings,
    List<SceneChart> scenes,
    List<String> checklist,
    List<String> cautions) {
  public BuildSheet {
    facts = List.copyOf(facts);
    source = List.copyOf(source);
    currents = List.copyOf(currents);
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    pins = List.copyOf(pins);
    situations = List.copyOf(situations);
    findings = List.copyOf(findings);
    scenes = List.copyOf(scenes);
    checklist = List.copyOf(checklist);
    cautions = List.copyOf(cautions);
  }

  /** How a part is marked, by a sign and not by a colour. */
  public enum Mark {
    /** Nothing to say about it. */
    NONE,
    /** It has to be added. */
    ADD,
    /** A finding is about it. */
    TROUBLE
  }

  /** A part in a line of wiring. */
  public record Part(String words, Mark mark) {}

  /**
   * What one scene asks.
   *
   * @param what the scene, or situations together
   * @param peak greatest current, with its time
   * @param mean over the scene; empty if there is none
   * @param limit of the supply
   * @param data time of a frame on the data lines, of how much; empty if there are no chains
   */
  public record Current(String what, String peak, String mean, String limit, String data) {}

  /**
   * One chain.
   *
   * @param title id, pixel type and how many
   * @param supply parts to the first pixel
   * @param data parts to the data input
   * @param farSupply parts to the last pixel; empty where the chain is fed at one end
   * @param loads currents and voltages of its leads with their limits
   * @param segments its pixels in data order, all of them
   */
  public record ChainPlan(
      String id,
      String title,
      List<Part> supply,
      List<Part> data,
      List<Part> farSupply,
      List<String> loads,
      List<Segment> segments) {
    public ChainPlan {
      supply = List.copyOf(supply);
      data = List.copyOf(data);
      farSupply = List.copyOf(farSupply);
      loads = List.copyOf(loads);
      segments = List.copyOf(segments);
    }
  }

  /**
   * Neighbouring pixels of a chain that belong to the same lamp, or to none.
   *
   * @param pixels their numbers from the data input, 0 the first
   * @param lamp its name; none if no lamp has them
   * @param within which pixels of the lamp these are; empty if all
   */
  public record Segment(String pixels, Optional<String> lamp, String within) {}

  /**
   * One driver output.
   *
   * @param lamp its name; none if no lamp has it
   * @param parts from the pin to the LEDs
   * @param peak greatest current, mA
   */
  public record OutputPlan(String id, Optional<String> lamp, List<Part> parts, String peak) {
    public OutputPlan {
      parts = List.copyOf(parts);
    }
  }

  /**
   * What a pin is for.
   *
   * @param pin as its makers name it; none if it is not set
   * @param sketch what sketches for a hobby IDE write; empty if that is not known
   */
  public record PinUse(Optional<String> pin, String sketch, String use) {}

  /** One situation in words. */
  public record SituationRow(int priority, String id, String when, String shows) {}

  /**
   * One finding.
   *
   * @param severity in a word
   * @param where the part concerned and the time
   * @param what is the case, with limit and source
   * @param remedy what can be done; may be empty
   */
  public record FindingRow(String severity, String where, String what, String remedy) {}

  /**
   * The strip chart of a scene.
   *
   * @param title id, length and rate
   * @param seconds its length
   * @param lamps those that are lit, in rig order
   * @param dark names of the lamps that it leaves dark
   */
  public record SceneChart(String title, double seconds, List<Strip> lamps, List<String> dark) {
    public SceneChart {
      lamps = List.copyOf(lamps);
      dark = List.copyOf(dark);
    }
  }

  /**
   * One lamp of a chart.
   *
   * @param cues what it does, in words
   * @param trace its light
   */
  public record Strip(String lamp, String cues, LightTraces.OfLamp trace) {}
}
