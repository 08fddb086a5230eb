#!/bin/sh
# Reads a waveform that the prover wrote with sigrok-cli and compares the bits with the frame table.
#   sigrok.sh WAVEFORM.vcd PIN TABLE.bin FRAME_BYTES AT BYTES FRAMES [timing]
# PIN is the pin's name in the file (B0). sigrok's protocol decoder for addressable RGB LEDs
# (rgb_led_ws281x) tells each single bit, so any number of bits a pixel will do. It takes a bit for a
# 1 if it is high for more than half of its length, and so can't read pixels whose 1 is high for just
# half (SK6812 at 8 MHz). For these say `timing`: then sigrok's edge timer gives the high and low
# times, and a high time of 0.5 us or more is a 1.
set -eu
vcd=$1 pin=$2 table=$3 frame=$4 at=$5 bytes=$6 frames=$7 reader=${8:-rgb_led_ws281x}
if [ "$reader" = timing ]; then
  # first a high time, then a low time, and so on; a low time in anything but ns is a reset
  sigrok-cli -I vcd -i "$vcd" -P "timing:data=$pin" -A timing=time | awk '
    NR % 2 == 1 { line = line ($3 == "ns" && $2 < 500 ? 0 : 1) }
    NR % 2 == 0 && ($3 != "ns" || $2 > 50000) { print line; line = "" }
    END { if (length(line)) print line }' > "$vcd.read"
else
  # Two steps and a half to a cycle at 16 MHz; at one a nanosecond it takes ten times as long.
  sigrok-cli -I vcd:downsample=25 -i "$vcd" -P "rgb_led_ws281x:din=$pin" -A rgb_led_ws281x=bit:reset |
    sed 's/.*: //' | awk '
    $0 == "0" || $0 == "1" { line = line $0; next }
    { if (length(line)) print line; line = "" }
    END { if (length(line)) print line }' > "$vcd.read"
fi
f=0
while [ "$f" -lt "$frames" ]; do
  od -An -v -tu1 -w1 -j $((f * frame + at)) -N "$bytes" "$table" | awk '
    { for (b = 128; b >= 1; b /= 2) { line = line (int($1 / b) % 2) } } END { print line }'
  f=$((f + 1))
done > "$vcd.want"
if cmp -s "$vcd.read" "$vcd.want"; then
  echo "sigrok-cli ($reader) reads the same $((bytes * 8 * frames)) bits on $pin"
else
  echo "sigrok-cli ($reader) reads other bits on $pin; see $vcd.read and $vcd.want" >&2
  exit 1
fi
