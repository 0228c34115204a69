#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# Pictures of the window, of its icon and of the entry in a menu, on a virtual display, to be looked at:
#   mvn -DskipTests -Papplication package && src/test/package/images.sh FOLDER
# Those that were looked at on 2026-11-28 are in src/test/resources/screens.
# Needs Xvfb, openbox, xdotool, xprop and ImageMagick. The menu is openbox's, with the name and icon of fourfold.desktop.
set -eu
out=$1; mkdir -p "$out"; out=$(cd "$out" && pwd)
cd "$(dirname "$0")/../../.."
package=$PWD/src/main/package; program=$PWD/target/forms/application/fourfold/fourfold
work=$(mktemp -d); started=()
trap 'for p in "${started[@]}"; do kill "$p" 2> /dev/null || true; done; rm -rf "$work"' EXIT
export HOME="$work" XDG_CONFIG_HOME="$work" XDG_CACHE_HOME="$work/cache" LC_ALL=C.UTF-8 FOURFOLD_LANGUAGE=en FOURFOLD_STORE="$work/family.db"
told() { sed -n "s/^$1=//p" "$package/fourfold.desktop" | head -1; }

mkdir -p "$work/openbox"
cat > "$work/openbox/menu.xml" <<M
<openbox_menu><menu id="root-menu" label="Menu"><item label="$(told Name)" icon="$package/$(told Icon).png">
<action name="Execute"><command>$program --demo</command></action></item></menu></openbox_menu>
M
cat > "$work/openbox/rc.xml" <<'R'
<openbox_config><menu><file>menu.xml</file><showIcons>yes</showIcons></menu>
<mouse><context name="Root"><mousebind button="Right" action="Press"><action name="ShowMenu"><menu>root-menu</menu></action></mousebind></context></mouse>
</openbox_config>
R
mkfifo "$work/number"
Xvfb -displayfd 3 -screen 0 1280x800x24 3> "$work/number" > /dev/null 2>&1 & started+=($!)
read -r number < "$work/number"; export DISPLAY=:$number
openbox > "$work/openbox.log" 2>&1 & started+=($!)
for _ in $(seq 60); do xprop -root _NET_SUPPORTING_WM_CHECK 2> /dev/null | grep -q 0x && break; sleep 0.5; done

xdotool mousemove 300 200 click 3; sleep 2
import -window root -crop 320x120+200+150 +repage "$out/menu.png"
# The entry starts the program, as a click does.
xdotool mousemove_relative 20 10 click 1
for _ in $(seq 120); do window=$(xdotool search --onlyvisible --name Fourfold 2> /dev/null | head -1) && [ -n "$window" ] && break; sleep 0.5; done
sleep 4
import -window root "$out/window.png"
xprop -id "$window" _NET_WM_ICON WM_CLASS WM_NAME > "$out/window.txt"
started+=("$(xdotool getwindowpid "$window")")
convert "$package/fourfold.png" "$out/icon.png"
echo "window, icon and menu are in $out"
