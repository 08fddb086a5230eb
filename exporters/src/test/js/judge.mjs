/*
 * Runs a UF2 file on rp2040js and writes what its pins do.
 *
 *   node judge.mjs FILE.uf2 MILLISECONDS [DRIVE]
 *   node judge.mjs
 *
 * DRIVE has levels that come to pins from outside: lines of "nanoseconds pin level" in order of time,
 * counted from the instant at which the program reads its inputs first, which another run finds.
 * Prints a line for each change of a pin, "nanoseconds pin level", and at last "end nanoseconds
 * asleep share stack" with the share of the cycles that the core slept and the bytes of
 * its deepest stack. Exit code 1 and a message where
 * the boot ROM would refuse the file, 2 where the program does what the simulator can't.
 *
 * Without a file it runs one after the other that is named on a line of its input, ["FILE",
 * MILLISECONDS, "DRIVE"], and ends each answer with a line "exit code message". What node has compiled
 * for the first is there for the others: that is most of the time of a short run.
 */
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { Ended, power, refuse, run } from './board.mjs';

const GPIO_IN = 4;

/** When the program reads its inputs first, ns, with their pins at rest. */
function firstLook(file, end, edges) {
  const board = power(file);
  let at;
  const read = board.mcu.sio.readUint32.bind(board.mcu.sio);
  board.mcu.sio.readUint32 = (offset) => {
    at ??= offset === GPIO_IN ? board.clock.nanos : undefined;
    return read(offset);
  };
  run(board, end, edges.filter((edge) => edge.ns < -1e9).map((edge) => ({ ...edge, ns: 0 })), () => at !== undefined);
  if (at === undefined) {
    refuse('the inputs are never read');
  }
  return at;
}

function readDrive(name) {
  return readFileSync(name, 'ascii')
    .split('\n')
    .filter((line) => line)
    .map((line) => line.split(' ').map(Number))
    .map(([ns, pin, level]) => ({ ns, pin, high: level === 1 }));
}

/** Runs a file for a time, to a drive if one is named; gives the lines. */
function judge(path, milliseconds, drive) {
  const file = readFileSync(path);
  const end = milliseconds * 1e6;
  let edges = drive ? readDrive(drive) : [];
  if (drive) {
    const from = firstLook(file, end, edges);
    edges = edges.map((edge) => ({ ...edge, ns: Math.max(0, from + edge.ns) }));
  }
  const board = power(file);
  const lines = [];
  board.mcu.gpio.forEach((pin, number) => {
    let high = false;
    pin.addListener(() => {
      const now = pin.outputEnable && pin.outputValue;
      if (now !== high) {
        high = now;
        lines.push(`${Math.round(board.clock.nanos)} ${number} ${now ? 1 : 0}`);
      }
    });
  });
  const { asleep, stack } = run(board, end, edges);
  lines.push(`end ${Math.round(board.clock.nanos)} ${asleep.toFixed(4)} ${stack}`);
  return lines;
}

/** The answer to a line of the input. */
function answer(line) {
  try {
    return [...judge(...JSON.parse(line)), 'exit 0 '];
  } catch (ended) {
    if (!(ended instanceof Ended)) {
      throw ended;
    }
    return [`exit ${ended.code} ${ended.message.replaceAll('\n', ' ')}`];
  }
}

const [path, milliseconds, drive] = process.argv.slice(2);
if (path === undefined) {
  for await (const line of createInterface({ input: process.stdin })) {
    process.stdout.write(answer(line).join('\n') + '\n');
  }
} else {
  try {
    process.stdout.write(judge(path, Number(milliseconds), drive).join('\n') + '\n');
  } catch (ended) {
    if (!(ended instanceof Ended)) {
      throw ended;
    }
    console.error(ended.message);
    process.exitCode = ended.code;
  }
}
