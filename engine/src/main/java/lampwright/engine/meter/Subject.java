package lampwright.engine.meter;

/** The part that an advice is about. */
public sealed interface Subject {
  /** The part in words: {@code chain roof}. */
  String words();

  /** The supply of the whole rig. */
  record Supply() implements Subject {
    @Override
    public String words() {
      return "supply";
    }
  }

  /** The battery that feeds the rig. */
  record Pack() implements Subject {
    @Override
    public String words() {
      return "battery";
    }
  }

  /**
   * The rig's controller.
   *
   * @param name for people
   */
  record Chip(String name) implements Subject {
    @Override
    public String words() {
      return "controller " + name;
    }
  }

  /**
   * A chain.
   *
   * @param id of the chain
   */
  record OneChain(String id) implements Subject {
    @Override
    public String words() {
      return "chain " + id;
    }
  }

  /** All chains together. */
  record AllChains() implements Subject {
    @Override
    public String words() {
      return "chains";
    }
  }

  /**
   * A driver output.
   *
   * @param id of the output
   */
  record OneOutput(String id) implements Subject {
    @Override
    public String words() {
      return "output " + id;
    }
  }

  /**
   * A lamp.
   *
   * @param id of the lamp
   */
  record OneLamp(String id) implements Subject {
    @Override
    public String words() {
      return "lamp " + id;
    }
  }

  /** All lamps, seen together. */
  record WholeModel() implements Subject {
    @Override
    public String words() {
      return "whole model";
    }
  }
}
