# Functions that the test scripts share. Needs: avr-gcc, xxd or od, build/prover, build/make_table.
set -eu # stop at the first command that fails
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/.." && pwd)
build=$root/build
flags="-Os -std=c99 -Wall -Wextra -Wpedantic -Werror -ffunction-sections -fdata-sections"

# limits of a pixel type: config lines' times, then prover's limits
# sources: the datasheets named in the product's table of facts
bit_times() {
  case $1 in
    ws2812b) echo 400 850 800 450 150 280 ;;
    sk6812) echo 300 900 600 600 150 80 ;;
    ws2813) echo 375 1000 875 500 75 300 ;;
  esac
}
limits() {
  case $1 in
    ws2812b) echo t0h=400,t0l=850,t1h=800,t1l=450,tol=150,period=1250,ptol=600,reset=280 ;;
    sk6812) echo t0h=300,t0l=900,t1h=600,t1l=600,tol=150,period=1250,ptol=600,reset=80 ;;
    ws2813) echo t0h-min=300,t0h-max=450,t1h-min=750,t1h-max=1000,period=1250,ptol=300,reset=300 ;;
  esac
}

# build_case NAME MCU HZ MILLIHERTZ KIND FRAMES "CHAINS" "OUTPUTS" [more compiler flags]
# CHAINS: B0:ws2812b:24 ... (pin, type, bytes); OUTPUTS: B1 ... (pins)
# Leaves build/NAME/{firmware.elf,table.bin} and in $options the prover's options.
build_case() {
  name=$1 mcu=$2 hz=$3 rate=$4 kind=$5 frames=$6 chains=$7 outputs=$8
  shift 8
  dir=$build/$name
  rm -rf "$dir" && mkdir -p "$dir"
  config=$dir/lampwright_config.h
  options="--elf $dir/firmware.elf --mcu $mcu --hz $hz --rate $rate --table $dir/table.bin"
  {
    echo "#ifndef LAMPWRIGHT_CONFIG_H"
    echo "#define LAMPWRIGHT_CONFIG_H"
    at=0 n=0 reset=0 list=
    for chain in $chains; do
      pin=${chain%%:*} rest=${chain#*:}
      type=${rest%%:*} bytes=${rest#*:}
      set_times=$(bit_times "$type")
      echo "$set_times" | {
        read -r t0h t0l t1h t1l tol _
        echo "#define LAMPWRIGHT_CHAIN_${n}_PORT $(echo "$pin" | cut -c1)"
        echo "#define LAMPWRIGHT_CHAIN_${n}_BIT $(echo "$pin" | cut -c2)"
        echo "#define LAMPWRIGHT_CHAIN_${n}_BYTES $bytes"
        echo "#define LAMPWRIGHT_CHAIN_${n}_T0H_NS $t0h"
        echo "#define LAMPWRIGHT_CHAIN_${n}_T0L_NS $t0l"
        echo "#define LAMPWRIGHT_CHAIN_${n}_T1H_NS $t1h"
        echo "#define LAMPWRIGHT_CHAIN_${n}_T1L_NS $t1l"
        echo "#define LAMPWRIGHT_CHAIN_${n}_TOLERANCE_NS $tol"
      }
      r=$(echo "$set_times" | cut -d' ' -f6)
      [ "$r" -gt "$reset" ] && reset=$r
      options="$options --chain pin=$pin,at=$at,bytes=$bytes,$(limits "$type")${gap:+,gap=$gap}"
      list="$list${list:+, }$bytes"
      at=$((at + bytes)) n=$((n + 1))
    done
    echo "#define LAMPWRIGHT_CHAINS $n"
    echo "#define LAMPWRIGHT_CHAIN_BYTES { $list }"
    echo "#define LAMPWRIGHT_RESET_US $reset"
    n=0
    for pin in $outputs; do
      echo "#define LAMPWRIGHT_OUTPUT_${n}_PORT $(echo "$pin" | cut -c1)"
      echo "#define LAMPWRIGHT_OUTPUT_${n}_BIT $(echo "$pin" | cut -c2)"
      options="$options --output at=$at,$(registers "$mcu" "$pin") $(timer "$mcu" "$pin")"
      at=$((at + 1)) n=$((n + 1))
    done
    echo "#define LAMPWRIGHT_OUTPUTS $n"
    echo "#define LAMPWRIGHT_FRAME_BYTES $at"
    echo "#define LAMPWRIGHT_INTERRUPTS ${interrupts:-1}"
    sed -n '/The player.s limits/,/^#endif/p' "$root/library/src/lampwright_config.h" |
      sed "s/MAX_LAMPS .*/MAX_LAMPS ${lamps:-12}/"
    echo "#endif"
  } > "$config"
  options="$options --frame-bytes $at"
  if [ -n "${table:-}" ]; then
    cp "$table" "$dir/table.bin"
  else
    "$build/make_table" "$kind" "$frames" "$at" 7 > "$dir/table.bin"
  fi
  {
    echo "static const unsigned char test_table[] LAMPWRIGHT_DATA = {"
    od -An -v -tu1 "${packed:-$dir/table.bin}" | sed 's/  */,/g; s/^,//; s/$/,/'
    echo "};"
  } > "$dir/table.h"
  parts=
  for part in "${player:-$root/test/standin}"/*.[cS]; do
    [ -e "$part" ] && parts="$parts $part"
  done
  # shellcheck disable=SC2086
  avr-gcc -mmcu="$mcu" -DF_CPU="${hz}UL" $flags -DLAMPWRIGHT_PROBE -DTEST_MILLIHERTZ="$rate" "$@" \
    -I"$dir" -I"${player:-$root/test/standin}" -I"$build/src" "$root/test/main.c" \
    "$build"/src/*.c $parts -Wl,--gc-sections -o "$dir/firmware.elf"
}

# data addresses of a PWM pin: duty register, direction bit, compare output bit (avr-libc's headers)
registers() {
  case $1:$2 in
    atmega328p:D6) echo ocr=0x47,ddr=0x2A.6,com=0x44.7 ;;
    atmega328p:D5) echo ocr=0x48,ddr=0x2A.5,com=0x44.5 ;;
    atmega328p:B1) echo ocr=0x88,ddr=0x24.1,com=0x80.7 ;;
    atmega328p:B2) echo ocr=0x8A,ddr=0x24.2,com=0x80.5 ;;
    atmega328p:B3) echo ocr=0xB3,ddr=0x24.3,com=0xB0.7 ;;
    atmega328p:D3) echo ocr=0xB4,ddr=0x2A.3,com=0xB0.5 ;;
    atmega32u4:B7) echo ocr=0x47,ddr=0x24.7,com=0x44.7 ;;
    atmega32u4:D0) echo ocr=0x48,ddr=0x2A.0,com=0x44.5 ;;
    atmega32u4:B5) echo ocr=0x88,ddr=0x24.5,com=0x80.7 ;;
    atmega32u4:B6) echo ocr=0x8A,ddr=0x24.6,com=0x80.5 ;;
    atmega32u4:C6) echo ocr=0x98,ddr=0x27.6,com=0x90.7 ;;
    attiny85:B0) echo ocr=0x49,ddr=0x37.0,com=0x4A.7 ;;
    attiny85:B1) echo ocr=0x48,ddr=0x37.1,com=0x4A.5 ;;
    attiny85:B4) echo ocr=0x4B,ddr=0x37.4,com=0x4C.5 ;;
  esac
}

# what the timer of that pin must be set to: 8-bit phase-correct PWM, a 64th of the clock (the
# ATtiny85's timer 1: channel B in PWM mode, top 255, a 64th); datasheets, registers TCCRnA and TCCRnB
timer() {
  case $1:$2 in
    attiny85:B4) echo "--register 0x4C/0x40=0x40 --register 0x50=0x07 --register 0x4D=0xFF" ;;
    attiny85:*) echo "--register 0x4A/0x03=0x01 --register 0x53=0x03" ;;
    atmega328p:D5 | atmega328p:D6 | atmega32u4:B7 | atmega32u4:D0)
      echo "--register 0x44/0x03=0x01 --register 0x45=0x03" ;;
    atmega328p:B3 | atmega328p:D3) echo "--register 0xB0/0x03=0x01 --register 0xB1=0x04" ;;
    atmega32u4:C6) echo "--register 0x90/0x03=0x01 --register 0x91=0x03" ;;
    *) echo "--register 0x80/0x03=0x01 --register 0x81=0x03" ;;
  esac
}
