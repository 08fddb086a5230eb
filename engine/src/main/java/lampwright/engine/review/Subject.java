package lampwright.engine.review;

import lampwright.engine.rig.Lamp;

/** The part that a finding is about. */
public sealed interface Subject {
  /** The part in words, by the name that the builder gave it: {@code lamp Roof beacon}. */
  String words();

  /** The project file as a whole. */
  record WholeProject() implements Subject {
    @Override
    public String words() {
      return "project";
    }
  }

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
   * @param title the builder's name for it, or its id
   */
  record OneLamp(String id, String title) implements Subject {
    /** The subject of a lamp. */
    public static OneLamp of(Lamp lamp) {
      return new OneLamp(lamp.id(), lamp.title());
    }

    @Override
    public String words() {
      return "lamp " + title;
    }
  }

  /** All lamps, seen together. */
  record WholeModel() implements Subject {
    @Override
    public String words() {
      return "whole model";
    }
  }

  /**
   * A scene.
   *
   * @param id of the scene
   */
  record OneScene(String id) implements Subject {
    @Override
    public String words() {
      return "scene " + id;
    }
  }

  /**
   * A situation.
   *
   * @param id of the situation
   */
  record OneSituation(String id) implements Subject {
    @Override
    public String words() {
      return "situation " + id;
    }
  }

  /**
   * An input.
   *
   * @param id of the input
   */
  record OneInput(String id) implements Subject {
    @Override
    public String words() {
      return "input " + id;
    }
  }

  /**
   * A cue. Tracks have no names: what they drive tells them apart.
   *
   * @param scene id of its scene
   * @param track index of its track
   * @param cue index in the track's list
   * @param lamps titles of the lamps that it drives, as one text
   */
  record OneCue(String scene, int track, int cue, String lamps) implements Subject {
    @Override
    public String words() {
      return "cue " + (cue + 1) + " of " + lamps;
    }
  }

  /**
   * A file that an export writes.
   *
   * @param format key of the export
   */
  record OneExport(String format) implements Subject {
    @Override
    public String words() {
      return format + " export";
    }
  }
}
