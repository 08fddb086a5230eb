/*
 * A board on rp2040js.
 *
 * As it comes, the simulator runs its state machines without regard to their clock dividers and
 * delays, and apart from the core. Here they are stepped with the core, to the cycle: an
 * instruction is done, then the machine waits for its delay. Time begins with the second boot stage
 * and is that of 125 MHz throughout, also before the clocks are set.
 */
import { ConsoleLogger, LogLevel, Simulator } from 'rp2040js';

const CYCLE_NS = 8;
const RAM = 0x20000000;
const FLASH = 0x10000000;
const BOOT_RAM = 0x20041f00;
const RAM_END = 0x20042000;
const FAMILY = 0xe48bff56;
/* The simulator's number for it, which it doesn't export. */
const WAIT_FOR_PIN = 1;

/** What ends a run, with its exit code. */
export class Ended extends Error {
  constructor(code, message) {
    super(message);
    this.code = code;
  }
}

export function refuse(why) {
  throw new Ended(1, why);
}

/** Puts the file into flash as the boot ROM does: it takes blocks of its family, and all of them. */
function load(mcu, file) {
  const blocks = new Set();
  let count;
  for (let at = 0; at + 512 <= file.length; at += 512) {
    const word = (n) => file.readUInt32LE(at + 4 * n);
    const whole = word(0) === 0x0a324655 && word(1) === 0x9e5d5157 && file.readUInt32LE(at + 508) === 0x0ab16f30;
    if (!whole || !(word(2) & 0x2000) || word(7) !== FAMILY || word(4) !== 256) {
      continue;
    }
    if (word(3) < FLASH || word(3) + 256 > FLASH + mcu.flash.length || word(3) % 256) {
      refuse(`block for ${word(3).toString(16)}`);
    }
    if (count !== undefined && count !== word(6)) {
      refuse('blocks of different files');
    }
    count = word(6);
    blocks.add(word(5));
    mcu.flash.set(file.subarray(at + 32, at + 32 + 256), word(3) - FLASH);
  }
  if (count === undefined || blocks.size < count) {
    refuse(`${blocks.size} of ${count} blocks`);
  }
}

/** CRC-32 as the boot ROM has it: not reflected, not inverted. */
function bootCrc(bytes) {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte << 24;
    for (let bit = 0; bit < 8; bit++) {
      crc = crc & 0x80000000 ? (crc << 1) ^ 0x04c11db7 : crc << 1;
    }
  }
  return crc >>> 0;
}

function boot(mcu) {
  const stage = mcu.flash.subarray(0, 256);
  if (bootCrc(stage.subarray(0, 252)) !== Buffer.from(stage).readUInt32LE(252)) {
    refuse('second boot stage with a wrong checksum');
  }
  mcu.sram.set(stage, BOOT_RAM - RAM);
  mcu.core.registers[13] = BOOT_RAM;
  mcu.core.registers[14] = 0;
  mcu.core.PC = BOOT_RAM;
}

/** Makes a PIO's state machines keep their dividers and delays. */
function lockStep(pio) {
  pio.run = () => {};
  for (const machine of pio.machines) {
    machine.phase = 0;
    machine.delay = 0;
    machine.clkDivRestart = () => {
      machine.phase = 0;
    };
    const restart = machine.restart.bind(machine);
    machine.restart = () => {
      machine.delay = 0;
      restart();
    };
    /* A wait ends where the machine is stepped, not when data comes. */
    const checkWait = machine.checkWait.bind(machine);
    machine.checkWait = () => {};
    machine.tick = () => {
      if (machine.delay > 0) {
        machine.delay--;
        return;
      }
      const opcode = pio.instructions[machine.pc];
      if (machine.waiting) {
        checkWait();
        if (machine.waiting) {
          return;
        }
      } else {
        machine.updatePC = true;
        machine.executeInstruction(opcode);
        if (machine.updatePC && !machine.waiting) {
          machine.nextPC();
        }
      }
      if (!machine.waiting) {
        machine.delay = (opcode >>> 8) & (0x1f >> machine.sidesetCount);
      }
    };
  }
  /* Cycles until the next in which a machine does something but wait for its delay. */
  pio.ahead = () => {
    let least = Infinity;
    for (const machine of pio.machines) {
      if (machine.enabled) {
        least = Math.min(least, machine.clockDivInt * (1 + machine.delay) - machine.phase);
      }
    }
    return Math.max(1, least);
  };
  /* No more cycles than are ahead. */
  pio.pass = (cycles) => {
    let stepped = false;
    for (const machine of pio.machines) {
      if (machine.enabled) {
        machine.phase += cycles;
        while (machine.phase >= machine.clockDivInt) {
          machine.phase = Math.max(0, machine.phase - machine.clockDivInt);
          machine.tick();
          stepped = true;
        }
      }
    }
    if (stepped) {
      pio.checkChangedPins();
    }
  };
  const sees = (m) => m.waitType === WAIT_FOR_PIN && pio.rp2040.gpio[m.waitIndex].inputValue === m.waitPolarity;
  pio.resting = () =>
    pio.machines.every((m) => !m.enabled || (m.waiting && !sees(m) && m.delay === 0 && m.txFIFO.empty));
}

/**
 * A masked interrupt ends a sleep, or keeps it from beginning, but its routine is not called (ARMv6-M
 * Architecture Reference Manual, WFI); the simulator calls it, and sleeps where one is pending.
 */
function keepMasked(core) {
  const checkForInterrupts = core.checkForInterrupts.bind(core);
  const pending = () => (core.pendingInterrupts & core.enabledInterrupts) !== 0;
  core.checkForInterrupts = () => {
    if (core.PM) {
      core.interruptsUpdated = false;
      return core.waiting && pending();
    }
    return checkForInterrupts();
  };
  const executeInstruction = core.executeInstruction.bind(core);
  core.executeInstruction = () => {
    const cycles = executeInstruction();
    if (core.waiting && pending()) {
      core.waiting = false;
    }
    return cycles;
  };
}

/** A board with a file in its flash, about to run the second boot stage. */
export function power(file) {
  const { clock, rp2040: mcu } = new Simulator();
  mcu.logger = new ConsoleLogger(LogLevel.Error, false);
  mcu.logger.error = mcu.logger.warn = (name, message) => {
    /* Its flash interface has no slave select; there is one slave. */
    if (`${name}: ${message}` !== 'SSI: Unimplemented peripheral write to 0x10: 0x1') {
      throw new Ended(2, `${name}: ${message}`);
    }
  };
  load(mcu, file);
  boot(mcu);
  mcu.pio.forEach(lockStep);
  keepMasked(mcu.core);
  return { clock, mcu };
}

/**
 * Runs a board until a time, in ns, or until something is so.
 *
 * @param edges levels from outside, or acts, in order of their times; more may be put in while it runs
 */
export function run({ clock, mcu }, end, edges, done = () => false) {
  let asleep = 0;
  let all = 0;
  let stack = Infinity;
  let next = 0;
  const ahead = () => Math.min(mcu.pio[0].ahead(), mcu.pio[1].ahead());
  const untilEvent = () => {
    const alarm = clock.nextAlarm ? clock.nanosToNextAlarm : Infinity;
    const edge = next < edges.length ? edges[next].ns - clock.nanos : Infinity;
    return Math.max(1, Math.floor(Math.min(alarm, edge, end - clock.nanos) / CYCLE_NS));
  };
  while (clock.nanos < end && !done()) {
    while (next < edges.length && edges[next].ns <= clock.nanos) {
      const edge = edges[next++];
      if (edge.act) {
        edge.act(edge.ns);
      } else {
        mcu.gpio[edge.pin].setInputValue(edge.high);
      }
    }
    let cycles = 1;
    if (mcu.core.waiting) {
      if (mcu.pio.every((pio) => pio.resting()) && !mcu.dma.channels.some((c) => c.active)) {
        cycles = untilEvent();
        clock.tick(cycles * CYCLE_NS);
        asleep += cycles;
        all += cycles;
        continue;
      }
      cycles = Math.min(untilEvent(), ahead());
      asleep += cycles;
    } else {
      cycles = mcu.core.executeInstruction();
      /* The second boot stage has none; the program's begins at the end of memory. */
      if (mcu.core.SP !== BOOT_RAM) {
        stack = Math.min(stack, mcu.core.SP);
      }
    }
    all += cycles;
    while (cycles > 0) {
      const step = Math.min(cycles, ahead());
      clock.tick(step * CYCLE_NS);
      mcu.pio[0].pass(step);
      mcu.pio[1].pass(step);
      cycles -= step;
    }
  }
  return { asleep: asleep / all, stack: RAM_END - stack };
}
