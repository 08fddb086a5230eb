#!/bin/sh
# The hook for other controllers: runs on the host as C and as C++ under the sanitizers, compiles for
# an ARM microcontroller, and everything compiles without a warning for every AVR as C and as C++.
. "$(dirname "$0")/lib.sh"
passed=0 failed=0
out=$build/hook
rm -rf "$out" && mkdir -p "$out"
strict="-Wall -Wextra -Wpedantic -Werror -I$root/library/src -I$here/standin"
ok() { passed=$((passed + 1)) && echo "ok      $*"; }
bad() { failed=$((failed + 1)) && echo "FAILED  $*"; }
files="$root/library/src/*.c $here/standin/*.c"
# shellcheck disable=SC2086
if gcc -std=c99 -O1 -g -fsanitize=address,undefined $strict $files "$here/hook_test.c" -o "$out/c" &&
  "$out/c"; then ok "hook as C"; else bad "hook as C"; fi
# shellcheck disable=SC2086
if g++ -x c++ -std=c++11 -O1 -g -fsanitize=address,undefined $strict $files "$here/hook_test.c" \
  -o "$out/cpp" && "$out/cpp"; then ok "hook as C++"; else bad "hook as C++"; fi
# compiles COMPILER...: each file alone
compiles() {
  for file in $files; do
    # shellcheck disable=SC2086
    "$@" $strict -c "$file" -o "$out/x.o" || { bad "$* $file" && return; }
  done
  ok "$*"
}
compiles arm-none-eabi-gcc -std=c99 -Os -mcpu=cortex-m0 -mthumb
compiles arm-none-eabi-g++ -x c++ -std=c++11 -Os -mcpu=cortex-m0 -mthumb
for target in "atmega328p 16000000" "atmega328p 8000000" "atmega32u4 16000000" "attiny85 8000000" \
  "attiny85 16000000" "atmega2560 16000000"; do
  for level in -Os -O2 -O0; do
    compiles avr-gcc -std=c99 "-mmcu=${target% *}" "-DF_CPU=${target#* }UL" $level
  done
  compiles avr-g++ -x c++ -std=gnu++11 "-mmcu=${target% *}" "-DF_CPU=${target#* }UL" -Os
done
compiles avr-gcc -std=c99 -mmcu=atmega328p -DF_CPU=16000000UL -Os -DLAMPWRIGHT_EMIT_BYTES
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
