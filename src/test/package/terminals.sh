#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# What each kind of terminal gets, as a table: src/test/package/terminals.sh > src/test/package/terminals.txt
# Starts the built program in a pseudo-terminal under each name, with the demo's first page, and counts what it wrote.
set -u
cd "$(dirname "$0")/../../.."
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
unset NO_COLOR COLORTERM CLICOLOR COLORFGBG FOURFOLD_STORE
export LC_ALL=C.UTF-8 FOURFOLD_LANGUAGE=en

row() { # NAME VARIABLES...
    local name=$1; shift
    (sleep "${WAIT:-6}"; printf '\003'; sleep 1) | env "$@" script -qefc \
        "stty cols 80 rows 24; java @target/fourfold.start --demo" "$work/log" > /dev/null 2>&1
    python3 - "$name" "$work/log" <<'P'
import re, sys
data = open(sys.argv[2], "rb").read()
data = data.split(b"\n", 1)[1] if data.startswith(b"Script started") else data
data = re.sub(rb"\nScript done.*", b"", data, flags=re.S)
sgr = b";".join(re.findall(rb"\x1b\[([0-9;]*)m", data))
kinds = []
if re.search(rb"[34]8;2;", sgr): kinds.append("24 bits")
if re.search(rb"[34]8;5;", sgr): kinds.append("256")
rest = re.sub(rb"[34]8;[25];[0-9;]+?(?=;[^0-9]|$)", b"", sgr)
plain = set(re.findall(rb"(?<![0-9;])((?:3|4|9|10)[0-7])(?![0-9])", sgr))
if plain and not kinds: kinds.append("bright and plain" if any(p[:1] in b"91" and p != b"1" for p in plain) else "plain 8")
drawn = b"\x1b[?1049h" in data
text = "UTF-8" if re.search("[\u2500-\u25ff×÷]".encode(), data) or any(c > 0x7f for c in data) else "ASCII"
asks = "yes" if b"\x1b]11;?" in data else "no"
modes = "mouse" if re.search(rb"\x1b\[\?100[0-6]h", data) else "none"
print("%-34s %-8s %-6s %-18s %-8s %-6s %6d  %4.1f s" % (sys.argv[1], "drawn" if drawn else "lines", text,
      ", ".join(kinds) or "none", asks, modes, len(data), len(data) / 1000))
P
}

printf '%-34s %-8s %-6s %-18s %-8s %-6s %6s  %s\n' terminal page text colours "ground?" modes bytes "at 1 kB/s"
row "xterm" TERM=xterm
row "xterm-16color" TERM=xterm-16color
row "xterm-256color" TERM=xterm-256color
row "xterm-256color, 24 bits" TERM=xterm-256color COLORTERM=truecolor
row "xterm-256color, light ground told" TERM=xterm-256color "COLORFGBG=0;15"
row "xterm-256color, dark ground told" TERM=xterm-256color "COLORFGBG=15;0"
row "linux console" TERM=linux
row "screen" TERM=screen
row "screen-256color" TERM=screen-256color
row "tmux-256color" TERM=tmux-256color
row "vt100" TERM=vt100
row "unknown" TERM=unknown
row "dumb" TERM=dumb
row "NO_COLOR=1" TERM=xterm-256color NO_COLOR=1
row "CLICOLOR=0" TERM=xterm-256color CLICOLOR=0
row "LC_ALL=C" TERM=xterm-256color LC_ALL=C
cat <<'T'

page     drawn on the whole screen, or plain lines
ground?  whether the terminal is asked for the colour of its ground (OSC 11); one that does not answer is waited for shortly
modes    modes of the terminal that are switched on besides the second screen. No mouse is asked for, and no marks around
         a paste; sequences of a mouse, of a paste and of keys that mean nothing here are swallowed whole
         (KeyDecoderTest, RandomBytesTest), and a paste in a drill answers nothing (PasteGuardTest)
bytes    from the start to the first page and back; at 1 kB/s says how long a line of that speed needs for them
T
