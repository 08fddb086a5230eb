/*
 * Runs a UF2 file on rp2040js and writes what its pins do.
 *
 *   node judge.mjs FILE.uf2 MILLISECONDS [MOST_EDGES]
 *
 * Prints a line for each change of a pin, "nanoseconds pin level", and at last "end nanoseconds
 * asleep share stack" with the share of the cycles that the core slept and the bytes of
 * its deepest stack. Exit code 1 and a message where
 * the boot ROM would refuse the file, 2 where the program does what the simulator can't.
 *
 * As it comes, the simulator runs its state machines without regard to their clock dividers and
 * delays, and apart from the core. Here they are stepped with the core, to the cycle: an
 * instruction is done, then the machine waits for its delay. Time begins with the second boot stage
 * and is that of 125 MHz throughout, also before the clocks are set.
 */
import { readFileSync } from 'node:fs';
import { ConsoleLogger, LogLevel, Simulator } from 'rp2040js';

const CYCLE_NS = 8;
const RAM = 0x20000000;
const FLASH = 0x10000000;
const BOOT_RAM = 0x20041f00;
const RAM_END = 0x20042000;
const FAMILY = 0xe48bff56;

function refuse(why) {
  console.error(why);
  process.exit(1);
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
  pio.cycle = () => {
    for (const machine of pio.machines) {
      if (machine.enabled && ++machine.phase >= machine.clockDivInt) {
        machine.phase = 0;
        machine.tick();
      }
    }
    pio.checkChangedPins();
  };
  pio.resting = () =>
    pio.machines.every((m) => !m.enabled || (m.waiting && m.delay === 0 && m.txFIFO.empty));
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

const [path, milliseconds, most = '1e9'] = process.argv.slice(2);
const { clock, rp2040: mcu } = new Simulator();
mcu.logger = new ConsoleLogger(LogLevel.Error, false);
mcu.logger.error = mcu.logger.warn = (name, message) => {
  /* Its flash interface has no slave select; there is one slave. */
  if (`${name}: ${message}` !== 'SSI: Unimplemented peripheral write to 0x10: 0x1') {
    console.error(`${name}: ${message}`);
    process.exit(2);
  }
};
load(mcu, readFileSync(path));
boot(mcu);
mcu.pio.forEach(lockStep);
keepMasked(mcu.core);

const lines = [];
let edges = 0;
mcu.gpio.forEach((pin, number) => {
  let high = false;
  pin.addListener(() => {
    const now = pin.outputEnable && pin.outputValue;
    if (now !== high) {
      high = now;
      edges++;
      lines.push(`${Math.round(clock.nanos)} ${number} ${now ? 1 : 0}`);
    }
  });
});

const end = Number(milliseconds) * 1e6;
let asleep = 0;
let all = 0;
let stack = Infinity;
while (clock.nanos < end && edges < Number(most)) {
  let cycles = 1;
  if (mcu.core.waiting) {
    if (mcu.pio.every((pio) => pio.resting()) && !mcu.dma.channels.some((c) => c.active)) {
      const alarm = clock.nextAlarm ? clock.nanosToNextAlarm : Infinity;
      cycles = Math.max(1, Math.floor(Math.min(alarm, end - clock.nanos) / CYCLE_NS));
      clock.tick(cycles * CYCLE_NS);
      asleep += cycles;
      all += cycles;
      continue;
    }
    asleep++;
  } else {
    cycles = mcu.core.executeInstruction();
    /* The second boot stage has none; the program's begins at the end of memory. */
    if (mcu.core.SP !== BOOT_RAM) {
      stack = Math.min(stack, mcu.core.SP);
    }
  }
  all += cycles;
  for (let i = 0; i < cycles; i++) {
    clock.tick(CYCLE_NS);
    mcu.pio[0].cycle();
    mcu.pio[1].cycle();
  }
}
process.stdout.write(lines.join('\n') + (lines.length ? '\n' : ''));
process.stdout.write(`end ${Math.round(clock.nanos)} ${(asleep / all).toFixed(4)} ${RAM_END - stack}\n`);
