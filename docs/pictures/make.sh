#!/bin/sh
# Makes the pictures of the documents anew, from the built program (mvn -q -DskipTests package).
# Needs Debian's xvfb, xdotool, imagemagick and socat, and jcmd of the JDK. Run from the root of the
# project; with names of pictures of the window it makes those alone.
set -e
root=$PWD
here=$root/docs/pictures
only=" $* "
state=$(mktemp -d)
Xvfb :77 -screen 0 1440x900x24 >/dev/null 2>&1 &
screen=$!
controller=
trap 'kill $screen $controller; rm -rf "$state"' EXIT
export DISPLAY=:77 XDG_STATE_HOME="$state"

# How many threads of the program are at work in its own code, but for the one of the screen.
working() {
  jcmd $program Thread.print 2>/dev/null | awk '
    BEGIN { RS = ""; count = 0 }
    /Full thread dump/ { seen = 1 }
    /\tat lampwright\./ && !/^"JavaFX Application Thread"/ && !/State: (TIMED_)?WAITING/ { count++ }
    END { print seen ? count : "unknown" }'
}

# Until the window has settled: nothing is rendered, packed, measured or painted any more, five times
# running, and the picture stays. What moves by itself is not waited for without end.
rest() {
  calm=0
  until [ $calm -ge 5 ]; do
    kill -0 $program
    sleep 1
    if [ "$(working)" = 0 ]; then calm=$((calm + 1)); else calm=0; fi
  done
  before=
  for try in 1 2 3 4; do
    now=$(import -window root -format '%#' info:)
    [ "$now" = "$before" ] && break
    before=$now
    sleep 2
  done
}

# picture NAME DARK PROJECT KEYS-OR-PLACES..., an empty PROJECT for none
picture() {
  name=$1 dark=$2 file=$3
  shift 3
  case $only in
    "  " | *" $name "*) ;;
    *) return ;;
  esac
  # As the window keeps how it was left: filling the screen, with the palette that is wanted.
  # Without recent files: the picture would show their paths.
  rm -rf "$state/lampwright"
  mkdir -p "$state/lampwright"
  printf 'frame=0 0 1440 900\nmaximised=false\ndividers=0.36 0.62\ndark=%s\nview=side\n' "$dark" \
    > "$state/lampwright/window.properties"
  # There a port can be named without its folder.
  (cd "$state" && exec "$root/app/target/lampwright/bin/lampwright" ${file:+"$root/$file"}) &
  program=$!
  # Until the window is drawn: more than a blank window, which has few colours.
  until [ "$(import -window root -format '%[fx:mean>0.02]' info:)" = 1 ] &&
    [ "$(import -window root -format '%k' info:)" -gt 200 ]; do sleep 1; done
  rest
  for key in "$@"; do
    case $key in
      *,*) xdotool mousemove ${key%,*} ${key#*,} click 1 ;;
      *) xdotool key "$key" ;;
    esac
    sleep 1
  done
  rest
  import -window root -resize 1152x720 -strip -depth 8 +dither -colors 255 "png8:$here/$name.png"
  # What is on the bench is not kept, whatever was asked of it.
  kill $program
  wait $program 2>/dev/null || true
}

picture start-day false ""
picture sheet-day false samples/recovery-tractor.lampwright.json F4
picture sheet-night true samples/mountain-rescue.lampwright.json F4
picture rig-day false samples/recovery-tractor.lampwright.json 181,598
picture flash-caution false samples/recovery-tractor.lampwright.json space
picture harbour-night true samples/harbour-dusk.lampwright.json

# A lamp is named on a controller that stands in for one on a serial port.
tractor=samples/recovery-tractor.lampwright.json
CLASSPATH="$root/app/target/test-classes:$root/app/target/lampwright/lib/*" \
  socat "pty,raw,echo=0,link=$state/ttyUSB0" "EXEC:java lampwright.app.live.StandInController $tractor" &
controller=$!
picture bench-link false $tractor F8 180,680 ctrl+a t t y U S B 0 F9 \
  563,707 r o o f Return 501,740 501,740 713,707 w o r k
kill $controller
controller=

# The tug of the guide, as it comes from the start sheet and with the steps after it.
tug=docs/guide/harbour-tug.lampwright.json
picture guide-start false "" Right Right Right Right
picture guide-rig false $tug 181,598
picture guide-patterns false $tug F4 c a n d l e Down Right Right

# The patterns of the guide, as strip charts.
[ "$only" = "  " ] || exit 0
patterns=docs/guide/patterns.lampwright.json
for name in $(sed -n 's/.*{"id": "\([a-z-]*\)", "lengthMs".*/\1/p' $patterns); do
  app/target/lampwright/bin/lampwright picture $patterns --scene $name --to "$state/chart.png"
  convert "$state/chart.png" -resize 50% -strip -depth 8 +dither -colors 255 "png8:$here/pattern-$name.png"
done
