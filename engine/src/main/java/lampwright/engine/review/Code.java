package lampwright.engine.review;

import static lampwright.engine.review.Severity.CAUTION;
import static lampwright.engine.review.Severity.DANGER;
import static lampwright.engine.review.Severity.ERROR;
import static lampwright.engine.review.Severity.NOTE;

import com.google.common.collect.Sets;
import java.util.Set;

/**
 * The kinds of findings: severity and words of each, in the order in which findings of the same
 * severity are listed. The words name figures in braces. docs/findings.md lists them.
 */
public enum Code {
  // The project file.
  INVALID_VALUE("invalid-value", ERROR, "{value}", "{allowed}", "{suggestion}"),
  FILE_NAME(
      "file-name",
      ERROR,
      "its exported files can't be named {file}",
      "{reason}",
      "give the scene another id, such as {suggestion}"),
  EXPORT_REFUSED("export-refused", ERROR, "{value}", "{allowed}", ""),

  // Supply and wires.
  SUPPLY_CURRENT(
      "supply-current",
      DANGER,
      "draws {current}",
      "limit {limit}",
      "limit the current (whole scene, or frame by frame), set the master brightness to {cap} or less,"
          + " or use a larger supply; an overloaded supply sags or overheats"),
  IDLE_CURRENT(
      "idle-current",
      DANGER,
      "draws {current}, {idle} of it with all pixels dark",
      "limit {limit}",
      "use a larger supply; an overloaded supply sags or overheats"),
  PIXEL_OVER_VOLTAGE(
      "pixel-over-voltage",
      DANGER,
      "supply is {volts}",
      "its pixels are rated for {limit} maximum",
      "put a regulator of {usual} between"),
  PIXEL_UNDER_VOLTAGE(
      "pixel-under-voltage",
      CAUTION,
      "supply is {volts}",
      "its pixels fail below {limit}",
      "use a supply or regulator of {usual}"),
  PIXEL_DIM_VOLTAGE(
      "pixel-dim-voltage",
      CAUTION,
      "supply is {volts}",
      "its pixels are specified from {limit}: below it blue and green dim and white turns yellow",
      "use a supply or regulator of {usual}"),
  DATA_LEVEL_LOW(
      "data-level-low",
      CAUTION,
      "data level is {volts}",
      "its data input needs at least {limit} at a supply of {supply}",
      "put a level shifter in the data line (a 5 V gate with TTL-level inputs), or feed the first pixel"
          + " through a diode, which lowers its supply and so what its input needs, or lower the supply"
          + " of the pixels"),
  DATA_LEVEL_HIGH(
      "data-level-high",
      CAUTION,
      "data level is {volts}",
      "its data input is rated for {limit} maximum where the first pixel gets {supply}",
      "put a level shifter in the data line, or raise the supply at the first pixel"),
  DATA_LEVEL_STATED(
      "data-level-stated",
      NOTE,
      "the data voltage level is set to {volts}",
      "the controller's pins output {limit}",
      "fit a level shifter for {volts}, or do not set the data voltage level"),
  CHAIN_VOLTAGE_DROP(
      "chain-voltage-drop",
      CAUTION,
      "{pixels} are under-voltage: pixel {pixel} gets {volts}",
      "its pixels fail below {limit}",
      "{remedy}"),
  CHAIN_DIM_VOLTAGE(
      "chain-dim-voltage",
      CAUTION,
      "{pixels} are under-voltage: pixel {pixel} gets {volts}",
      "its pixels are specified from {limit}: below it blue and green dim and white turns yellow",
      "{remedy}"),
  LEAD_HEAT(
      "lead-heat",
      DANGER,
      "a supply lead carries {current}",
      "rated for {limit}; overloaded wire overheats",
      "{remedy}"),
  STRIP_HEAT(
      "strip-heat",
      DANGER,
      "its conductors from pixel to pixel carry {current}",
      "rated for {limit}",
      "{remedy}"),
  LEAD_FUSE_LARGE(
      "lead-fuse-large",
      DANGER,
      "the fuse in its supply lead is {fuse}",
      "lead and strip are rated for {limit}, so the fuse does not protect them",
      "use a fuse of at most {limit}, or thicker wire"),
  LEAD_FUSE_SMALL(
      "lead-fuse-small",
      CAUTION,
      "the fuse in its supply lead is {fuse}, the lead carries {current}",
      "a fuse of less than {limit} can blow in normal use",
      "use a larger fuse if the wires are rated for it, or draw less"),
  LEAD_UNFUSED(
      "lead-unfused",
      NOTE,
      "no fuse is set for its supply lead; the supply can deliver {supply}",
      "lead and strip are rated for {limit}",
      "fuse each lead for at most {limit}; measure lists the standard rating"),

  // Driver outputs.
  OUTPUT_CANNOT_LIGHT(
      "output-cannot-light",
      CAUTION,
      "{leds} LEDs in series need {volts}",
      "available: {limit}",
      "put fewer in series"),
  OUTPUT_HEADROOM(
      "output-headroom",
      CAUTION,
      "{leds} LEDs in series need {volts} of {limit}, which leaves {left} for the driver",
      "a constant-current driver needs at least {needed}",
      "put fewer in series or use a higher supply voltage"),
  OUTPUT_HEADROOM_TIGHT(
      "output-headroom-tight",
      NOTE,
      "{leds} LEDs in series need {volts} of {limit}, which leaves {left} for the driver",
      "some constant-current drivers need {needed}",
      "check the dropout voltage of the driver"),
  RESISTOR_MARGIN(
      "resistor-margin",
      CAUTION,
      "its resistor drops {drop}: a supply 5 % high gives {high} in place of {current}",
      "it should drop at least {limit}",
      "put fewer LEDs in series, use a higher supply voltage, or a constant-current driver"),

  // Battery.
  BATTERY_UNFUSED(
      "battery-unfused",
      DANGER,
      "no fuse is set",
      "a pack can deliver far more current than wiring and LEDs survive",
      "fuse it close to the pack {fuse}, and enter its rating; charge it with the right charger, use a"
          + " regulator between a LiPo and the pixels, and power up the first time with the wheels"
          + " off the ground"),
  BATTERY_FUSE_LARGE(
      "battery-fuse-large",
      DANGER,
      "its fuse of {fuse} lets {current} into the supply wires of chain {chain}",
      "rated for {limit}",
      "use a smaller fuse, thicker wire, or a fuse of at most {limit} in the lead of that chain"),
  BATTERY_FUSE_SMALL(
      "battery-fuse-small",
      CAUTION,
      "its fuse is {fuse}, the pack delivers {current}",
      "a fuse of less than {limit} can blow in normal use",
      "use a larger fuse if the wires are rated for it, or draw less"),
  BATTERY_OVER_VOLTAGE(
      "battery-over-voltage",
      DANGER,
      "is {full} when full ({volts} nominal), with no regulator to lower it",
      "pixels of chain {chain} are rated for {limit} maximum",
      "put a buck or linear regulator of {usual} between, and set it in the project"),
  BATTERY_UNDER_VOLTAGE(
      "battery-under-voltage",
      CAUTION,
      "is {volts}, with no boost regulator",
      "pixels of chain {chain} are specified from {limit}",
      "put a boost regulator of {usual} between, and set it in the project"),
  BATTERY_REGULATOR(
      "battery-regulator",
      CAUTION,
      "supplies {volts} to a {kind} regulator",
      "the input of such a regulator must be {than} its output of {limit}",
      "{remedy}"),
  BATTERY_VOLTS_UNSTATED(
      "battery-volts-unstated",
      NOTE,
      "its voltage is not set",
      "run time assumes the {limit} of the supply",
      "set the pack voltage and the regulator"),

  // Data line and controller.
  LINE_TIME(
      "line-time",
      CAUTION,
      "data transfer takes {time} per frame",
      "a frame lasts {limit}",
      "play at {rate} or less, or cut the chain to {pixels} and drive the rest from another line"),
  LINE_TIME_IN_TURN(
      "line-time-in-turn",
      CAUTION,
      "data transfer takes {time} per frame, all chains sent one after another ({share})",
      "a frame lasts {limit}",
      "play at {rate} or less, or use lines that send at the same time"),
  CLOCK_UNSUPPORTED(
      "clock-unsupported",
      ERROR,
      "clock is {clock}",
      "its driver is made for {clocks}",
      "set the controller clock to one of these, or leave it out"),
  PIN_UNKNOWN(
      "pin-unknown", ERROR, "is on pin {pin}", "the {name} has no such pin", "use one of {pins}"),
  PIN_WITHOUT_PWM(
      "pin-without-pwm",
      ERROR,
      "is on pin {pin}",
      "that pin of the {name} has no PWM",
      "use one of {pins}"),
  OUTPUT_PIN_CURRENT(
      "output-pin-current",
      DANGER,
      "its LEDs draw {current} from a pin of the {name}",
      "a pin is rated for {limit} maximum",
      "put a transistor or LED driver between, or use fewer LEDs or a larger resistor"),
  OUTPUT_PIN_UNSTATED(
      "output-pin-unstated",
      DANGER,
      "its LEDs draw {current}, and no driver is set",
      "a pin of the {name} is rated for {limit} maximum",
      "put a transistor or LED driver between the pin and its LEDs, and select that as the driver of the output"),
  OUTPUT_PIN_HIGH(
      "output-pin-high",
      CAUTION,
      "its LEDs draw {current} from a pin of the {name}",
      "the datasheet specifies the level of a pin up to {limit}",
      "use a larger resistor, or put a transistor or LED driver between"),
  PINS_CURRENT(
      "pins-current",
      DANGER,
      "the outputs on its pins draw {current} together",
      "all pins of the {name} together are rated for {limit} maximum",
      "put transistors or LED drivers between"),
  PWM_CHANNEL_SHARED(
      "pwm-channel-shared",
      ERROR,
      "is on pin {pin}, which has the PWM channel of {other}",
      "on the {name} both would get the same duty cycle",
      "use a pin whose number is not 16 more or less than that of another output"),
  TOO_MANY_PWM_OUTPUTS(
      "too-many-pwm-outputs",
      ERROR,
      "{outputs} outputs",
      "it has {limit} PWM channels",
      "drive the others as pixels of a chain"),
  PINS_USED_UP(
      "pins-used-up",
      ERROR,
      "no pin is left",
      "the {name} has {limit}",
      "join chains, or divide them between controllers"),
  PWM_PINS_USED_UP(
      "pwm-pins-used-up",
      ERROR,
      "{missing} outputs have no pin with PWM left",
      "",
      "use fewer outputs, or put the chains on pins other than {pins}"),
  TOO_MANY_CHAINS(
      "too-many-chains",
      ERROR,
      "{chains} chains",
      "its driver sends at most {limit}",
      "join chains, or divide them between controllers"),
  TOO_MANY_OUTPUTS(
      "too-many-outputs",
      ERROR,
      "{outputs} outputs",
      "at most {limit}, as one of its {timers} timers must count the frames",
      "drive the others as pixels of a chain"),
  TIMERS_USED_UP(
      "timers-used-up",
      ERROR,
      "the outputs on {pins} use every timer",
      "one of its {timers} timers must count the frames",
      "use pins that share a timer: {sharing}"),
  INPUT_WITHOUT_PIN(
      "input-without-pin",
      ERROR,
      "has no pin",
      "the firmware for the {name} needs one for every input of a project with situations",
      "set its pin"),
  INPUT_PIN_UNSERVED(
      "input-pin-unserved",
      ERROR,
      "is on pin {pin}",
      "on that pin of the {name} servo pulses can't be measured",
      "{remedy}"),
  TOO_MANY_CHANNELS(
      "too-many-channels",
      ERROR,
      "{count} servo inputs",
      "at most {limit}, so that each pulse is measured in time",
      "use fewer receiver channels"),
  STATE_MACHINES_USED_UP(
      "state-machines-used-up",
      ERROR,
      "{chains} and {channels}",
      "each uses one of the {limit} state machines of the {name}",
      "use fewer chains or receiver channels"),
  OUTPUT_ON_SERVO_TIMER(
      "output-on-servo-timer",
      ERROR,
      "is on pin {pin}",
      "that pin's PWM uses timer {timer}, which measures the servo pulses",
      "use a pin of another timer"),
  RECEIVER_WIRING(
      "receiver-wiring",
      NOTE,
      "has receiver signals on {pins}",
      "a signal is high from {level} and must not exceed the controller's {supply}",
      "put {resistors}; supply the receiver as its maker says, and connect the grounds"),
  LINE_IMPOSSIBLE(
      "line-impossible",
      ERROR,
      "the {name} sends in steps of {step} and cannot keep the times of {type}",
      "{limits}",
      "{remedy}"),
  FRAME_TIME(
      "frame-time",
      ERROR,
      "sending a frame takes {time} ({share} of the frame time), {bit} per bit",
      "a frame lasts {limit}",
      "play at {rate} or less, or shorten the chains to {pixels} in all"),
  CHAIN_TIME(
      "chain-time",
      ERROR,
      "sending a frame takes {time} ({share} of the frame time), {bit} per bit",
      "a frame lasts {limit}",
      "play at {rate} or less, or cut the chain to {pixels} and put the rest on another line"),
  UF2_CONTROLLER(
      "uf2-controller",
      ERROR,
      "the project is for the {name}",
      "such files are for boards with an RP2040",
      "select the RP2040 as the controller, or export firmware"),
  WORKING_MEMORY(
      "working-memory",
      ERROR,
      "frame, player and stack need {size} of working memory",
      "limit {limit}",
      "shorten the chains or use fewer lamps: {over} too many"),
  PROGRAM_MEMORY(
      "program-memory",
      ERROR,
      "the scenes need {packed} packed, player and driver {code}",
      "limit {limit}",
      "play fewer frames/s or shorter scenes, about {share} of them; export fewer scenes; or use what"
          + " packs smaller: no dither, less flicker"),

  // Light.
  FLASH_GENERAL(
      "flash-general",
      DANGER,
      "{flashes} flashes per second ({part})",
      "limit {limit}",
      "flash more slowly or in smaller groups; flashing light can trigger seizures in people with"
          + " photosensitive epilepsy: warn before you show it"),
  FLASH_RED(
      "flash-red",
      DANGER,
      "{flashes} flashes per second to or from saturated red ({part})",
      "limit {limit}",
      "flash more slowly or in smaller groups; flashing light can trigger seizures in people with"
          + " photosensitive epilepsy: warn before you show it"),
  FLASH_MODEL(
      "flash-model",
      DANGER,
      "{flashes} flashes per second of all lamps together",
      "limit {limit}",
      "let the lamps flash at the same time, or fewer of them; flashing light can trigger seizures"
          + " in people with photosensitive epilepsy: warn before you show it"),
  FLASH_MODEL_RED(
      "flash-model-red",
      DANGER,
      "{flashes} flashes per second to or from saturated red, of all lamps together",
      "limit {limit}",
      "let the lamps flash at the same time, or fewer of them; flashing light can trigger seizures"
          + " in people with photosensitive epilepsy: warn before you show it"),
  RESERVED_COLOUR(
      "reserved-colour",
      NOTE,
      "is a {colour} warning lamp",
      "on a real vehicle on a road such light is reserved by law in most places",
      "for models only; local law and licensed practice decide"),
  FLASH_RATE("flash-rate", CAUTION, "{rate}", "{verdict}", "change its rate or period"),
  WARNING_ON_TIME(
      "warning-on-time",
      CAUTION,
      "on time {on}, {share} of its period",
      "a real special warning lamp is on for at most {limit} of it",
      "make its flash shorter or its beam narrower"),
  WARNING_OFF_TIME(
      "warning-off-time",
      CAUTION,
      "off time {off} between flashes",
      "a real special warning lamp is off for at least {limit}",
      "make the gap longer"),
  COLOUR_OTHER(
      "colour-other",
      NOTE,
      "is {colour} (x {x} y {y})",
      "expected {expected}",
      "ignore this if the lamp has another function here; otherwise use its signal colour"),
  COLOUR_OUTSIDE(
      "colour-outside",
      CAUTION,
      "x {x} y {y} is {distance} outside {nearest} towards {towards}",
      "expected {expected}",
      "use its signal colour; the nearest that these emitters can mix may still be outside"),
  COLOUR_NEAR_BOUNDARY(
      "colour-near-boundary",
      NOTE,
      "x {x} y {y} is {distance} outside {nearest} towards {towards}",
      "expected {expected}",
      "use its signal colour; the nearest that these emitters can mix may still be outside"),
  DITHER_FLICKER(
      "dither-flicker",
      NOTE,
      "dithering alternates pixel {pixel} between bytes {low} and {high} at up to {rate}, {share} of"
          + " full brightness",
      "steps of {limit} of the light and more can be visible",
      "where it is visible, to the eye or a camera: turn dithering off, or use a higher frame rate"
          + " or level"),
  COLOUR_OUT_OF_REACH(
      "colour-out-of-reach",
      NOTE,
      "x {x} y {y} can't be mixed by lamp {lamp} ({type}): the nearest, x {reachedX} y {reachedY},"
          + " is {distance} away in u'v'",
      "differences above {limit} are visible",
      ""),

  // Valid, but probably unintended.
  PARTIAL_FRAME(
      "partial-frame",
      CAUTION,
      "its duration of {length} is not a whole number of frames at {rate}",
      "the scene has {frames}",
      "use a length that is a whole number of frames"),
  SITUATION_RATE(
      "situation-rate",
      ERROR,
      "its scene {scene} has {rate}",
      "all scenes of situations must have the same rate; {first} has {limit}",
      "set the same frame rate in both scenes"),
  SITUATION_PRIORITY(
      "situation-priority",
      ERROR,
      "has priority {priority}, like situation {other}, and both light {lamp}",
      "situations with a lamp in common must differ in priority",
      "give the more important one a higher priority"),
  SITUATION_IMPOSSIBLE(
      "situation-impossible",
      CAUTION,
      "never becomes active: its conditions can't hold",
      "",
      "correct the conditions"),
  SITUATION_COVERED(
      "situation-covered",
      CAUTION,
      "never visible: whenever it is active, situations of higher priority have all its lamps",
      "",
      "raise its priority or change the conditions"),
  SITUATION_WITHOUT_LAMP(
      "situation-without-lamp",
      CAUTION,
      "its scene lights no lamp",
      "",
      "add a track to the scene, or remove the scene from the situation"),
  INPUT_WITHOUT_LOST(
      "input-without-lost",
      CAUTION,
      "no situation responds to a lost signal",
      "while the signal is lost, all its other conditions are off",
      "add a situation with a lost condition, such as hazard warning lights"),
  LAMP_IN_NO_SITUATION(
      "lamp-in-no-situation",
      CAUTION,
      "stays dark: it is in no scene that a situation uses",
      "",
      "add it to one of these scenes"),
  LAMP_DARK_IN_SITUATIONS(
      "lamp-dark-in-situations",
      CAUTION,
      "stays dark: no situation that can have it lights it",
      "",
      "light it in one of their scenes, or correct priorities and conditions"),
  SITUATIONS_CURRENT(
      "situations-current",
      DANGER,
      "situations {situations} together draw {bound} {current}",
      "{what} {limit}",
      "lower the levels in these scenes, let fewer of their lamps be on together, or use a larger"
          + " supply and thicker wire; the current limit of the project applies to each scene alone;"
          + " an overloaded supply or wire overheats"),
  SITUATIONS_CEILING(
      "situations-ceiling",
      NOTE,
      "situations {situations} together would draw {bound} {current}: such frames are dimmed to"
          + " {bottom} {share} as they are sent",
      "limit {limit}",
      "lower the levels in these scenes, or use a larger supply, to see them undimmed; only the"
          + " exported firmware and the rehearsed frames have this limit"),
  SITUATIONS_FUSE(
      "situations-fuse",
      CAUTION,
      "its fuse is {fuse}, situations {situations} together draw {bound} {current}",
      "a fuse of less than {limit} can blow in normal use",
      "use a larger fuse if the wires are rated for it, or draw less"),
  SITUATIONS_FLASHES(
      "situations-flashes",
      CAUTION,
      "at most {flashes} flashes per second of all lamps together in situations {situations}",
      "limit {limit}",
      "let these scenes flash in step (start shared, same period), or let fewer lamps flash; flashing"
          + " light can trigger seizures in people with photosensitive epilepsy: warn before you show"
          + " it"),
  FIELD_WITHOUT_EFFECT(
      "field-without-effect", CAUTION, "{setting} has no effect", "{reason}", "remove the setting"),
  CUE_NEVER_SEEN(
      "cue-never-seen",
      CAUTION,
      "starts at {start}, after the end of the scene",
      "the scene ends at {limit}",
      "move the cue or lengthen the scene"),
  CUE_CUT(
      "cue-cut",
      CAUTION,
      "ends at {end} and is cut at the end of the scene",
      "the scene ends at {limit}",
      "shorten the cue or lengthen the scene"),
  FADES_TOO_LONG(
      "fades-too-long",
      CAUTION,
      "fades of {fades} are longer than the cue, which never shows in full",
      "the cue lasts {limit}",
      "shorten the fades"),

  // Exports.
  PACKED_PLAIN(
      "packed-plain",
      NOTE,
      "the best packing of {part} failed its check; a simpler, verified packing is used instead",
      "it takes more memory or time",
      "the exported data is correct; please report this scene, it is a bug"),
  RAW_TABLE_SIZE(
      "raw-table-size",
      CAUTION,
      "the unpacked frame table has {size}",
      "the {name} has {limit} free beside a usual boot loader",
      "export packed or firmware, or use fewer frames/s or a shorter scene: {frames} would fill it"),
  AVR_ARRAY(
      "avr-array",
      CAUTION,
      "{file}: a table of {size} is too large for AVR",
      "one array has at most {limit} there",
      "{remedy}"),
  HEADER_NAME(
      "header-name",
      CAUTION,
      "{file} has the same name as a compiler header and may shadow it",
      "",
      "give the scene another id, such as {suggestion}"),
  EDITED_FILE_DIFFERS(
      "edited-file-differs",
      CAUTION,
      "{file} has been edited and is kept",
      "the exported version is {beside}",
      "merge your changes into {beside}, then replace {file} with it"),
  EDITED_FILE_KEPT(
      "edited-file-kept",
      NOTE,
      "{file} has been edited and is kept",
      "the exported version is unchanged",
      ""),
  FACTORY_CLOCK(
      "factory-clock",
      NOTE,
      "runs at 1 MHz as shipped, too slow for pixels",
      "",
      "set its fuses to 8 MHz and calibrate it, or use a crystal; README.md, Build"),
  IDE_TIMER(
      "ide-timer",
      CAUTION,
      "PWM on {pins} uses timer 0, which a hobby IDE uses for its clock",
      "",
      "build without an IDE, or use other pins"),
  CONTROLLER_UNFIT(
      "controller-unfit",
      NOTE,
      "no controller is set, and the project does not fit the default, {name}",
      "{why}",
      "set the controller"),
  CONTROLLER_ASSUMED(
      "controller-assumed",
      NOTE,
      "no controller is set",
      "",
      "the firmware is for the default, {name}, with its default pins"),
  OUTPUT_IS_SIGNAL(
      "output-is-signal",
      NOTE,
      "a driver output is a signal and cannot power a lamp or motor",
      "",
      "put a transistor or LED driver on it, or one small LED with its resistor (20 mA)"),
  FLASHING_LIGHT(
      "flashing-light",
      NOTE,
      "flashing light can trigger seizures in people with photosensitive epilepsy",
      "",
      "warn people before you show a model that flashes faster than three times per second"),
  FIRST_POWER_UP(
      "first-power-up",
      NOTE,
      "wrong wiring can burn pixels, controller or battery",
      "",
      "the first time, use a supply with a current limit or a fuse, motor unplugged; common ground"
          + " first, then polarity and shorts with a meter; local codes come first");

  private final String key;
  private final Severity severity;
  private final Template what;
  private final Template limit;
  private final Template remedy;

  Code(String key, Severity severity, String what, String limit, String remedy) {
    this.key = key;
    this.severity = severity;
    this.what = new Template(what);
    this.limit = new Template(limit);
    this.remedy = new Template(remedy);
  }

  /** The word for this in messages, JSON and docs/findings.md. */
  public String key() {
    return key;
  }

  public Severity severity() {
    return severity;
  }

  /** What is the case. */
  public Template what() {
    return what;
  }

  /** What it is compared with; may be empty. */
  public Template limit() {
    return limit;
  }

  /** What a builder can do; may be empty. */
  public Template remedy() {
    return remedy;
  }

  void requireFigures(Set<String> given) {
    Set<String> named = Sets.newHashSet(what.names());
    named.addAll(limit.names());
    named.addAll(remedy.names());
    if (!given.containsAll(named)) {
      throw new IllegalStateException(
          "finding " + key + ": figures missing: " + Sets.difference(named, given));
    }
  }
}
