#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# What each kind of terminal gets, as a table: src/test/package/terminals.sh > src/test/resources/benchmark/terminals.txt
# Starts the built program in a pseudo-terminal under each name, with the demo's first page, and counts what it wrote.
set -u
cd "$(dirname "$0")/../../.."
unset NO_COLOR COLORTERM CLICOLOR COLORFGBG FOURFOLD_STORE
export LC_ALL=C.UTF-8 FOURFOLD_LANGUAGE=en

row() { # NAME VARIABLES...; ANSWER is what the terminal says when it is asked for the colour of its ground
    local name=$1; shift
    env "$@" python3 - "$name" "${ANSWER:-}" <<'P'
import os, pty, re, select, sys, time

pid, terminal = pty.fork()
if pid == 0:
    os.execvp("sh", ["sh", "-c", "stty cols 80 rows 24; exec java @target/fourfold.start --demo"])
data, answered, left, last, began = b"", False, False, 0, time.monotonic()
while True:
    if select.select([terminal], [], [], 0.1)[0]:
        try:
            data += os.read(terminal, 65536)
        except OSError:
            break
        last = time.monotonic()
        if sys.argv[2] and not answered and b"\x1b]11;?" in data:
            answered = True
            os.write(terminal, b"\x1b]11;rgb:%s\x07\x1b[?1;2c" % sys.argv[2].encode())
    now = time.monotonic()
    # The page is there when nothing has come for a good while since something was shown.
    if not left and (now - began > 30 or len(data) > 40 and now - last > 3):
        left = True
        os.write(terminal, b"\x03")
    if now - began > 40:
        os.kill(pid, 9)
        sys.exit("no end under " + sys.argv[1])
os.waitpid(pid, 0)
sgr = b";".join(re.findall(rb"\x1b\[([0-9;]*)m", data))
kinds = []
if re.search(rb"[34]8;2;", sgr): kinds.append("24 bits")
if re.search(rb"[34]8;5;", sgr): kinds.append("256")
rest = re.sub(rb"[34]8;(?:5;\d+|2;\d+;\d+;\d+)", b"", sgr)
if re.search(rb"(?<!\d)(?:9|10)[0-7](?!\d)", rest): kinds.append("16")
elif re.search(rb"(?<!\d)[34][0-7](?!\d)", rest): kinds.append("8")
drawn = b"\x1b[?1049h" in data
text = "UTF-8" if any(c > 0x7f for c in data) else "ASCII"
asks = "yes" if b"\x1b]11;?" in data else "no"
modes = "mouse" if re.search(rb"\x1b\[\?100[0-6]h", data) else "paste" if b"\x1b[?2004h" in data else "none"
print("%-34s %-8s %-6s %-18s %-8s %-6s %6d  %4.1f s" % (sys.argv[1], "drawn" if drawn else "lines", text,
      ", ".join(kinds) or "none", asks, modes, len(data), len(data) / 1000))
P
}

printf '%-34s %-8s %-6s %-18s %-8s %-6s %6s  %s\n' terminal page text colours "ground?" modes bytes "at 1 kB/s"
row "xterm" TERM=xterm
row "xterm, dark ground told" TERM=xterm "COLORFGBG=15;0"
row "xterm-16color, light ground told" TERM=xterm-16color "COLORFGBG=0;15"
row "xterm-256color" TERM=xterm-256color
ANSWER=ffff/ffff/ffff row "xterm-256color, answers: light" TERM=xterm-256color
ANSWER=0000/0000/0000 row "xterm-256color, answers: dark" TERM=xterm-256color
row "xterm-256color, light ground told" TERM=xterm-256color "COLORFGBG=0;15"
ANSWER=ffff/ffff/ffff row "24 bits, answers: light" TERM=xterm-256color COLORTERM=truecolor
ANSWER=0000/0000/0000 row "24 bits, answers: dark" TERM=xterm-256color COLORTERM=truecolor
row "linux console" TERM=linux
row "linux console, dark ground told" TERM=linux "COLORFGBG=15;0"
row "screen" TERM=screen
row "screen-256color" TERM=screen-256color
ANSWER=0000/0000/0000 row "tmux-256color, answers: dark" TERM=tmux-256color
row "vt100" TERM=vt100
row "unknown" TERM=unknown
row "dumb" TERM=dumb
ANSWER=ffff/ffff/ffff row "NO_COLOR=1" TERM=xterm-256color NO_COLOR=1
ANSWER=ffff/ffff/ffff row "CLICOLOR=0" TERM=xterm-256color CLICOLOR=0
ANSWER=ffff/ffff/ffff row "LC_ALL=C" TERM=xterm-256color LC_ALL=C
cat <<'T'

page     drawn on the whole screen, or plain lines
colours  the program has colours for a light and for a dark ground, from the 256 that do not change with a terminal's own
         taste. A terminal that can't show those, or whose ground is neither told (COLORFGBG, or the family's setting)
         nor answered, keeps its own two colours with bold and reverse: no page needs more
ground?  whether the terminal is asked for the colour of its ground (OSC 11); one that does not answer is waited for shortly
modes    modes of the terminal that are switched on besides the second screen: marks around a paste. No mouse is asked
         for; sequences of a mouse, of a paste and of keys that mean nothing here are swallowed whole
         (KeyDecoderTest, RandomBytesTest), and a paste in a drill answers nothing (PasteGuardTest)
bytes    from the start to the first page and back; at 1 kB/s says how long a line of that speed needs for them
T
