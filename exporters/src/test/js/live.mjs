/*
 * The computer's side of the bench link for an RP2040 on rp2040js: what live_host.c is for an AVR.
 *
 *   node live.mjs FILE.uf2 '{"uart": 0, "pin": 2, "bytes": 48, "layout": 13486, "baud": 500000,
 *                            "resetUs": 280, "frames": 50, "own": "FILE", "ownFirst": 2, "ownAfter": 2, "faulty": true}'
 *
 * One chain of RGB pixels on a pin; own has the frames of the firmware's own show, which must come before
 * the first question and after the silence, from its beginning. faulty: two of three frames come after a
 * packet that must change nothing. A byte takes ten bits and is there in the
 * middle of its stop bit; one that finds 32 in the receiver is lost, which is a fault. Prints one JSON
 * object; exit code 1 if anything is wrong.
 */
import { readFileSync } from 'node:fs';
import { power, run } from './board.mjs';

const MS = 1e6;
const ONE_NS = 600;
const RECEIVER = 32;
const CLOCK = 125e6;
const LEAP_INSTRUCTIONS = 1000;

const [path, words] = process.argv.slice(2);
const { uart, pin, bytes, layout, baud, resetUs, frames, own: ownFile, ownFirst, ownAfter, faulty } = JSON.parse(words);
const own = readFileSync(ownFile);
const board = power(readFileSync(path));
const { clock, mcu } = board;
const line = mcu.uart[uart];
const byteNs = 1e10 / baud;
const events = [];
const faults = [];
const wrong = (why) => faults.push(`${(clock.nanos / MS).toFixed(3)} ms: ${why}`);

/** Something that happens at an instant that is still to come. */
function at(ns, act) {
  let place = events.length;
  while (place > 0 && events[place - 1].ns > ns) {
    place--;
  }
  events.splice(place, 0, { ns, act });
}

let seed = 1;
function any(below) {
  seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
  return (seed >>> 8) % below;
}

/** CRC-16/MCRF4XX by its parameters (RevEng's catalogue, from memory): 0x1021, reflected, from 0xFFFF. */
const reflected = (value, bits) => parseInt(value.toString(2).padStart(bits, '0').split('').reverse().join(''), 2);
function crc(list) {
  let sum = 0xffff;
  for (const byte of list) {
    sum ^= reflected(byte, 8) << 8;
    for (let bit = 0; bit < 8; bit++) {
      sum = ((sum << 1) ^ (sum & 0x8000 ? 0x1021 : 0)) & 0xffff;
    }
  }
  return reflected(sum, 16);
}
if (crc(Buffer.from('123456789')) !== 0x6f91) {
  throw new Error('the CRC here is wrong');
}

/* ---- the wire ---- */

let phase = 'own';
let wire = [];
let bits = [];
let rise = 0;
let fall = -Infinity;
let ownNext = 0;
let leastResetUs = Infinity;
let backMs = 0;
let last = 0;

mcu.gpio[pin].addListener(() => {
  const high = mcu.gpio[pin].outputEnable && mcu.gpio[pin].outputValue;
  const now = clock.nanos;
  if (high) {
    if (bits.length === 0) {
      const low = (now - fall) / 1000;
      leastResetUs = Math.min(leastResetUs, low);
      if (low < resetUs) {
        wrong(`a frame begins after ${low} us of reset`);
      }
    }
    rise = now;
  } else if (rise > 0) {
    fall = now;
    bits.push(now - rise > ONE_NS ? 1 : 0);
    if (bits.length === 8 * bytes) {
      const frame = Buffer.alloc(bytes);
      bits.forEach((bit, i) => (frame[i >> 3] |= bit << (7 - (i & 7))));
      bits = [];
      isSent(frame);
    }
  }
});

function isSent(frame) {
  if (phase === 'live') {
    wire.push(frame);
    return;
  }
  if (phase === 'silent') {
    if (wire.length < sentFrames) {
      wire.push(frame); /* the last frame's bits may come after its answer */
      return;
    }
    if (ownNext === 0) {
      backMs = (clock.nanos - last) / MS;
      if (backMs < 1000 || backMs > 1300) {
        wrong(`the own show is back after ${backMs} ms`);
      }
    }
  }
  const first = (ownNext * bytes) % own.length;
  if (!frame.equals(own.subarray(first, first + bytes))) {
    wrong(`frame ${ownNext} of the own show is not what is on the wire`);
  }
  ownNext++;
  if (phase === 'silent' && ownNext >= ownAfter) {
    phase = 'done';
  }
}

/* ---- the serial line ---- */

let deepest = 0;
let txEnd = 0;

/** Puts bytes on the line from now on; gives the instant at which the last one ends. */
function put(list, from) {
  list.forEach((byte, i) =>
    at(from + (i + 0.95) * byteNs, () => {
      if (line.rxFIFO.itemCount >= RECEIVER) {
        wrong('a byte is lost in the receiver');
      } else {
        line.feedByte(byte);
        deepest = Math.max(deepest, line.rxFIFO.itemCount);
      }
    }),
  );
  return from + list.length * byteNs;
}

line.onByte = (byte) => {
  const bitNs = (1e9 / CLOCK) * 16 * line.baudDivider;
  if (Math.abs(bitNs / (1e9 / baud) - 1) > 0.015) {
    wrong(`a bit takes ${bitNs} ns`);
  }
  txEnd = Math.max(txEnd, clock.nanos) + 10 * bitNs;
  const end = txEnd;
  at(end, () => hear(byte, end));
};

/* ---- the computer ---- */

const frameOf = [];
let sequence = 0;
let answer = [];
let asked = 0;
let sentFrames = 0;
let tried = 0;
let first = 0;
let awaited = false;

function packet(frame, number) {
  const list = [frame.length & 255, frame.length >> 8, number, ...frame];
  const sum = crc(list);
  return [0xa7, ...list, sum & 255, sum >> 8];
}

function ask(ns) {
  if (phase !== 'own' && phase !== 'asking') {
    return;
  }
  if (ownNext >= ownFirst) {
    phase = 'asking';
    asked++;
    sequence = (sequence + 1) & 255;
    put(packet([], sequence), ns);
  }
  at(ns + (phase === 'asking' ? 100 : 1) * MS, ask);
}

function damaged(kind) {
  const list = packet(frameOf[sentFrames], (sequence + 100) & 255);
  switch (kind) {
    case 0:
      list[4 + any(bytes)] ^= 1 << any(8);
      return list;
    case 1:
      list[list.length - 1] ^= 1 << any(8);
      return list;
    case 2:
      return list.slice(0, 1 + any(list.length - 1));
    case 3:
      return packet([...frameOf[sentFrames], 0], 7);
    default:
      return Array.from({ length: 40 }, () => (any(3) === 0 ? 0xa7 : any(256)));
  }
}

function send(ns) {
  sequence = (sequence + 1) & 255;
  awaited = true;
  put(packet(frameOf[sentFrames], sequence), ns);
}

function goOn(ns) {
  if (sentFrames === frames) {
    phase = 'silent';
    ownNext = 0;
    last = ns;
    return;
  }
  frameOf.push(Array.from({ length: bytes }, (_, i) => (sentFrames % 4 === 1 ? [0xa7, 0, 0][i % 3] : any(256))));
  if (!faulty || sentFrames % 3 === 0) {
    send(ns);
  } else {
    const kind = tried++ % 5;
    at(put(damaged(kind), ns) + (kind < 2 ? 0 : 60 * MS), send);
  }
}

function hear(byte, ns) {
  answer.push(byte);
  if (answer.length < 2 || answer.length < (answer[1] === 1 ? 11 : 5)) {
    return;
  }
  const whole = answer;
  answer = [];
  const sum = crc(whole.slice(1, -2));
  if (whole[0] !== 0x7a || whole.at(-2) !== (sum & 255) || whole.at(-1) !== sum >> 8) {
    wrong(`an answer is ${whole}`);
  } else if (whole[1] === 1 && whole[2] === sequence && phase === 'asking') {
    const [, , , version, flags, low, high, layoutLow, layoutHigh] = whole;
    if (version !== 1 || flags !== 0 || (low | (high << 8)) !== bytes || (layoutLow | (layoutHigh << 8)) !== layout) {
      wrong(`the answer is ${whole}`);
    }
    phase = 'live';
    first = ns;
    goOn(ns);
  } else if (whole[1] === 2) {
    if (!awaited || whole[2] !== sequence) {
      wrong('an answer to no packet');
    }
    awaited = false;
    sentFrames++;
    last = ns;
    goOn(ns);
  }
}

at(MS, ask);

/** How long nothing but the timer counts, while the controller waits: that is moved on. */
function quietNs() {
  let nextEvent = phase === 'silent' ? last + 995 * MS : Infinity;
  for (let i = events.length - 1; i >= 0 && events[i].ns > clock.nanos; i--) {
    nextEvent = Math.min(nextEvent, events[i].ns);
  }
  const waits = (phase === 'silent' && wire.length === sentFrames) || (phase === 'live' && !awaited);
  return waits && clock.nanos > fall + MS ? nextEvent - clock.nanos : 0;
}

let instructions = 0;
const execute = mcu.core.executeInstruction.bind(mcu.core);
mcu.core.executeInstruction = () => {
  instructions++;
  if (instructions % LEAP_INSTRUCTIONS === 0 && quietNs() > 3 * MS) {
    clock.tick(MS);
  }
  return execute();
};
run(board, 60e9, events, () => phase === 'done' || faults.length > 20);

wire.forEach((frame, i) => {
  if (i >= frameOf.length || !frame.equals(Buffer.from(frameOf[i]))) {
    wrong(`frame ${i} is not what is on the wire`);
  }
});
if (wire.length !== frames) {
  wrong(`${wire.length} of ${frames} frames came`);
}
console.log(
  JSON.stringify({
    passed: faults.length === 0,
    taken: sentFrames,
    faultyPackets: tried,
    questions: asked,
    framesPerSecond: Number((((sentFrames - 1) * 1e9) / (last - first)).toFixed(1)),
    bytesKept: deepest,
    leastResetUs,
    silenceMs: Number(backMs.toFixed(2)),
    faults: faults.slice(0, 10),
  }),
);
process.exitCode = faults.length === 0 ? 0 : 1;
