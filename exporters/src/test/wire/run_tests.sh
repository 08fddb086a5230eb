#!/bin/sh
# Builds the prover and runs every test of the wire driver. Needs gcc-avr, avr-libc, libsimavr-dev,
# libelf-dev; sigrok-cli for the second reading of the waveforms; gcc, g++ and gcc-arm-none-eabi for
# the hook. Prints a line for each test and at the end `N passed, N failed`.
. "$(dirname "$0")/lib.sh"
passed=0 failed=0
mkdir -p "$build/src"
cp "$root"/library/src/*.[ch] "$build/src/"
rm -f "$build/src/lampwright_config.h" "$build"/src/lampwright_scenes.*
make -s -C "$root/prover" BUILD="$build"
gcc -std=c99 -O1 -Wall -Wextra -Wpedantic -Werror "$here/make_table.c" -o "$build/make_table"

ok() { passed=$((passed + 1)) && echo "ok      $*"; }
bad() { failed=$((failed + 1)) && echo "FAILED  $*"; }
field() { sed -n "s/.*\"$1\":\([^,}]*\)[,}].*/\1/p" "$dir/report.json"; }
summary() {
  echo "$name: $(field tableFrames) frames x $at bytes, $(grep -o '"framesCompared":[0-9]*' \
    "$dir/report.json" | head -1 | cut -d: -f2) compared, off $(field longestOffCycles) cycles"
}
prove() {
  # shellcheck disable=SC2086
  "$build/prover" $options "$@" > "$dir/report.json"
}

# proves NAME ...: builds the case and expects it proved
proves() {
  # idle time is leapt over where nothing goes on in it
  case "$*" in
    *TEST_BUSY* | *CLOCK_TIMER=-1* | *UNPACED*) skip= ;;
    *) skip=--skip-idle ;;
  esac
  # shellcheck disable=SC2086
  if build_case "$@" && {
    case "$*" in
      *CLOCK_TIMER=-1* | *UNPACED*) options=$(echo "$options" | sed 's/--rate [0-9]*//') ;;
    esac
  } && prove --vcd "$dir/wave.vcd" $skip; then ok "$(summary)"; else bad "$1"; fi
}
# reads REST...: sigrok-cli on the waveform of the last case
reads() {
  if sh "$here/sigrok.sh" "$dir/wave.vcd" "$1" "$dir/table.bin" "$at" "$2" "$3" 2 ${4:-} \
    > "$dir/sigrok.txt" 2>&1; then
    ok "$name: $(cat "$dir/sigrok.txt")"
  else
    bad "$name: $(cat "$dir/sigrok.txt")"
  fi
}
# finds WHAT FIELD: the prover must find a fault in the last case, with FIELD not 0
finds() {
  what=$1 key=$2
  shift 2
  if prove "$@"; then
    bad "$what: not found"
  elif [ "$(grep -o "\"$key\":[0-9]*" "$dir/report.json" | head -1 | cut -d: -f2)" = 0 ]; then
    bad "$what: $key is 0"
  else
    ok "$what is found"
  fi
}
# refuses WHAT MESSAGE build_case-arguments: the compiler must stop with MESSAGE
refuses() {
  what=$1 message=$2
  shift 2
  if build_case "$@" 2> "$build/refused.txt"; then
    bad "$what: compiled"
  elif grep -q "$message" "$build/refused.txt"; then
    ok "$what is refused: $message"
  else
    bad "$what: other message, see $build/refused.txt"
  fi
}
# holds NAME CONDITION: an arithmetic condition on the last report
holds() { if [ "$2" -eq 1 ]; then ok "$1"; else bad "$1"; fi; }

# waves T0H T0L T1H T1L: every bit of the last case has exactly these cycles
waves() {
  for wave in "t0h $1" "t0l $2" "t1h $3" "t1l $4"; do
    grep -q "\"${wave% *}\":{[^}]*\"minCycles\":${wave#* },\"maxCycles\":${wave#* }," "$dir/report.json" ||
      { bad "$name: $wave cycles" && return; }
  done
  ok "$name: every bit has T0H $1, T0L $2, T1H $3, T1L $4 cycles"
}

m=atmega328p u=atmega32u4 t=attiny85
# The frame clock keeps the rate exactly: no leaps here.
build_case exact-rate $m 16000000 59940 walk 40 "B0:ws2812b:3" ""
if prove --slow --frames 400; then ok "$name"; else bad "$name"; fi
period=$(grep -o '"averageUs":[0-9]*[.][0-9]' "$dir/report.json" | cut -d: -f2 | tr -d .)
holds "59.94 frames a second: 16683.4 us, measured $period tenths" \
  "$((period >= 166831 && period <= 166836))"
proves one-pixel $m 16000000 50000 noise 50 "B0:ws2812b:3" ""
reads B0 0 3
proves edges $m 16000000 50000 edges 16 "D7:ws2812b:24" ""
waves 6 15 13 8
proves black-and-white $m 16000000 25000 walk 24 "C5:sk6812:24" ""
proves rgbw $m 16000000 50000 noise 60 "B0:sk6812:64" ""
waves 5 14 10 9
reads B0 0 64
proves 256-pixels $m 16000000 50000 noise 30 "D4:ws2812b:768" ""
proves 256-pixels-long-reset $m 16000000 80000 noise 30 "D4:ws2813:768" ""
waves 6 16 14 8
proves rgb-and-rgbw $m 16000000 40000 noise 60 "B0:ws2812b:45 D6:sk6812:32" ""
reads B0 0 45
reads D6 45 32
proves three-chains-one-waveform $m 16000000 40000 noise 60 "B0:ws2812b:9 C1:ws2812b:6 B1:ws2812b:3" ""
proves eight-chains $m 16000000 40000 noise 20 "B0:ws2812b:3 B1:sk6812:4 B2:ws2813:3 B3:ws2812b:6
  D0:sk6812:8 D1:ws2813:3 D2:ws2812b:3 D3:ws2812b:3" ""
proves outputs-alone $m 16000000 50000 noise 120 "" "B1 B2 B3 D3"
proves outputs-of-every-pwm-timer-but-1 $m 16000000 50000 edges 32 "" "D5 D6 B3 D3"
proves outputs-of-timers-0-and-1 $m 16000000 50000 noise 32 "" "D5 D6 B1 B2"
proves outputs-on-every-timer $m 16000000 50000 noise 60 "" "B1 B2 B3 D3 D5 D6" \
  -DLAMPWRIGHT_CLOCK_TIMER=-1
proves chain-and-outputs $m 16000000 50000 noise 60 "B0:ws2812b:24" "B1 D3"
proves one-frame $m 16000000 50000 noise 1 "B0:sk6812:32" "B1"
proves at-8-MHz $m 8000000 50000 noise 60 "B0:ws2812b:45 D6:sk6812:32" "B1"
reads B0 0 45
proves 32u4-rgb $u 16000000 50000 noise 60 "B4:ws2812b:96" ""
waves 6 15 13 8
reads B4 0 96
proves 32u4-rgbw-every-port $u 16000000 50000 noise 20 "B4:sk6812:8 C7:ws2812b:3 D7:sk6812:4 E6:ws2812b:3 F4:sk6812:4" ""
proves 32u4-outputs $u 16000000 50000 noise 60 "B4:ws2812b:24" "B5 B6 D0"
proves 32u4-outputs-of-timer-3 $u 16000000 50000 noise 60 "B4:ws2812b:24" "C6 B7"
proves tiny-16-MHz-rgb $t 16000000 50000 noise 60 "B0:ws2812b:48" ""
waves 6 15 13 8
reads B0 0 48
proves tiny-16-MHz-rgbw $t 16000000 50000 noise 60 "B3:sk6812:48" ""
reads B3 0 48
proves tiny-16-MHz-outputs $t 16000000 50000 noise 60 "B2:sk6812:32" "B0 B1"
proves tiny-8-MHz-rgb $t 8000000 50000 noise 60 "B0:ws2812b:48" ""
waves 3 7 6 4
reads B0 0 48
proves tiny-8-MHz-rgbw $t 8000000 50000 noise 60 "B3:sk6812:48" ""
waves 3 7 5 5
reads B3 0 48 timing
proves tiny-8-MHz-ws2813 $t 8000000 50000 noise 60 "B3:ws2813:48" ""
waves 3 8 7 4
reads B3 0 48
proves tiny-8-MHz-two-chains $t 8000000 50000 noise 30 "B3:ws2812b:24 B4:sk6812:16" "B0 B1"
proves tiny-timer-1-output $t 8000000 50000 noise 30 "B3:ws2812b:24" "B4"

# A loop that sends as fast as it can still leaves every reset.
proves unpaced $m 16000000 50000 noise 60 "B0:ws2812b:24" "" -DTEST_UNPACED
rest=$(grep -o '"leastResetUs":[0-9]*' "$dir/report.json" | cut -d: -f2)
holds "the reset of 280 us is kept, and little more: $rest us" "$((rest >= 280 && rest < 340))"
proves unpaced-tiny $t 8000000 50000 noise 60 "B0:sk6812:24" "" -DTEST_UNPACED

# An interrupt routine of 20 us, every 80 us; gaps of up to 26 us are its doing.
gap=26
proves interrupts-let-in $m 16000000 50000 noise 30 "B0:ws2812b:96" "" -DTEST_BUSY=20 -DTEST_BUSY_BIT=5
holds "the chain was interrupted: $(field gapsStretched | head -1) gaps" \
  "$(grep -c '"gapsStretched":[1-9]' "$dir/report.json")"
holds "interrupts are off for two bits at most" "$(( $(field longestOffCycles) <= 42 ))"
proves interrupts-let-in-256 $m 16000000 25000 noise 8 "B0:ws2812b:768" "" -DTEST_BUSY=20 -DTEST_BUSY_BIT=5
proves interrupts-let-in-tiny-8 $t 8000000 50000 noise 30 "B0:ws2812b:48" "" -DTEST_BUSY=20 \
  -DLAMPWRIGHT_CLOCK_TIMER=1
holds "interrupts are off for two bits at most" "$(( $(field longestOffCycles) <= 20 ))"
proves interrupts-let-in-tiny-8-rgbw $t 8000000 50000 noise 30 "B0:sk6812:48" "" -DTEST_BUSY=20 \
  -DLAMPWRIGHT_CLOCK_TIMER=1
proves interrupts-let-in-tiny-16 $t 16000000 50000 noise 30 "B0:ws2812b:48" "" -DTEST_BUSY=20 \
  -DLAMPWRIGHT_CLOCK_TIMER=1 -DTEST_BUSY_BIT=4
build_case port-written-by-an-interrupt $t 8000000 50000 noise 30 "B0:ws2812b:48" "" -DTEST_BUSY=20 \
  -DLAMPWRIGHT_CLOCK_TIMER=1 -DTEST_BUSY_BIT=4
finds "below 15 MHz, an undone change of the same port" faultCount --seconds 1
gap=
proves interrupts-off-at-the-call $m 16000000 50000 noise 30 "B0:ws2812b:96" "" -DTEST_BUSY=20 -DTEST_OFF
holds "interrupts that were off at the call stay off" "$((${served:-$(field served)} == 0))"
interrupts=0
proves interrupts-held-off $m 16000000 50000 noise 30 "B0:ws2812b:96" "" -DTEST_BUSY=20 -DTEST_BUSY_BIT=5
proves interrupts-held-off-tiny-8 $t 8000000 50000 noise 30 "B0:ws2812b:48" "" -DTEST_BUSY=20 \
  -DLAMPWRIGHT_CLOCK_TIMER=1 -DTEST_BUSY_BIT=4
interrupts=1

# The prover can fail: one fault each.
build_case faulty $m 16000000 50000 noise 20 "B0:ws2812b:24" "B1"
cp "$dir/table.bin" "$dir/right.bin"
printf '\001' | dd of="$dir/table.bin" bs=1 seek=133 conv=notrunc 2> "$dir/dd.txt"
finds "a wrong byte of a chain" framesWrong
cp "$dir/right.bin" "$dir/table.bin"
printf '\001' | dd of="$dir/table.bin" bs=1 seek=124 conv=notrunc 2> "$dir/dd.txt"
finds "a wrong duty" dutiesWrong
head -c 475 "$dir/right.bin" > "$dir/table.bin"
finds "a frame too few (the seam)" framesWrong
cp "$dir/right.bin" "$dir/table.bin"
whole=$options
for limit in t0h-max=370 t0h-min=380 t1h-max=810 t1h-min=815 t0l-max=930 t0l-min=940 t1l-max=499 \
  t1l-min=501 period-max=1300 period-min=1320; do
  options=$(echo "$whole" | sed "s/,reset=280/,$limit,reset=280/")
  finds "a bit outside $limit" bitsOutsideLimits
done
options=$(echo "$whole" | sed 's/--rate 50000/--rate 50200/')
finds "another frame rate" faultCount
options=$(echo "$whole" | sed 's/reset=280/reset=25000/')
finds "a reset that is too short" faultCount
options=$(echo "$whole" | sed 's/bytes=24,/bytes=21,/')
finds "a pixel too many" framesWrong
options=$(echo "$whole" | sed 's/com=0x80.7/com=0x80.6/')
finds "an output that is not connected" dutiesWrong
options=$whole

options=$(echo "$whole" | sed 's/ --register 0x81=0x03/ --register 0x81=0x02/')
finds "a timer at another rate" faultCount
options=$whole

# What can't work is refused by the compiler, with the remedy.
refuses "a missing pin" "chain 0: this controller has no such pin" x1 $t 8000000 50000 walk 4 "B6:ws2812b:6" ""
refuses "a missing port" "chain 1: this controller has no such pin" x2 $m 16000000 50000 walk 4 "B0:ws2812b:6 E1:ws2812b:3" ""
refuses "an output without PWM" "output 0: that pin has no PWM" x3 $m 16000000 50000 walk 4 "" "D4"
grep -q "D5 D6 B1 B2 B3 D3" "$build/refused.txt" && ok "and the pins with PWM are named" || bad "pins not named"
refuses "outputs on every timer" "the frame clock needs one" x4 $m 16000000 50000 walk 4 "" "D5 B1 B3"
refuses "a clock that is too slow" "cannot keep the times of its pixels" x5 $m 4000000 50000 walk 4 "B0:ws2812b:6" ""

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
