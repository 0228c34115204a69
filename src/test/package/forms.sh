#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# How large each form is and how long it takes to open, beside a bare program that paints one frame, as a table:
#   mvn -DskipTests -Pportable,debian package && src/test/package/forms.sh > src/test/resources/benchmark/forms.txt
# TARGET names another folder of a build, ROUNDS another number of rounds.
set -eu
cd "$(dirname "$0")/../../.."
target=$(readlink -f "${TARGET:-target}")
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
unset NO_COLOR COLORTERM CLICOLOR COLORFGBG JAVA_TOOL_OPTIONS
export LC_ALL=C.UTF-8 FOURFOLD_LANGUAGE=en TERM=xterm-256color XDG_CACHE_HOME="$work/cache" FOURFOLD_STORE="$work/family.db"

# The files of the package as its installation leaves them, without installing it.
dpkg-deb -x "$target"/fourfold_*.deb "$work/installed"
"$work/installed/usr/lib/fourfold/fourfold" --make-archive
java -jar "$target/fourfold.jar" children --add Mina > /dev/null
cp -a "$target/forms/portable" "$target/forms/application" "$work"

python3 - "$target" "$work" "${ROUNDS:-9}" <<'P'
import glob, os, pty, select, signal, statistics, subprocess, sys, time

target, work, rounds = sys.argv[1], sys.argv[2], int(sys.argv[3])
portable, = glob.glob(work + "/portable/fourfold-*/fourfold")
application = work + "/application/fourfold/fourfold"
debian = work + "/installed/usr/bin/fourfold"
plain = ["java", "-jar", target + "/fourfold.jar"]
bare = ["java", "-cp", target + "/test-classes:" + glob.glob(target + "/lib/lanterna-*.jar")[0], "fourfold.benchmark.BareFrame"]
# Single words: blanks are passed over by moving the cursor.
PAGE, FRAME = b"practise?", b"there."


def shown(command, words):
    """Milliseconds from the start of the process until the terminal has been sent the words; it is 80 x 24."""
    began = time.monotonic()
    pid, terminal = pty.fork()
    if pid == 0:
        os.execvp("sh", ["sh", "-c", 'stty cols 80 rows 24; exec "$@"', "sh"] + command)
    got = b""
    while words not in got:
        if not select.select([terminal], [], [], 30)[0]:
            sys.exit("nothing shown by " + " ".join(command) + repr(got[-300:]))
        try:
            got += os.read(terminal, 65536)
        except OSError:
            sys.exit("ended: " + " ".join(command) + repr(got[-300:]))
    took = time.monotonic() - began
    os.kill(pid, signal.SIGTERM)
    try:
        while os.read(terminal, 65536):
            pass
    except OSError:
        pass
    os.waitpid(pid, 0)
    os.close(terminal)
    return took * 1000


def printed(command):
    began = time.monotonic()
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, check=True)
    return (time.monotonic() - began) * 1000


def megabytes(*places):
    return sum(int(subprocess.check_output(["du", "-sb", p]).split()[0]) for p in places) / 1e6


load = open("/proc/loadavg").read().split()[:3]
forms = {"java -jar": plain, "portable folder": [portable], "application folder": [application], "Debian package": [debian]}
first = {}
# Each with a cache of its own: a first start sweeps out what another form has archived there.
for name in ("portable folder", "application folder"):
    cache = work + "/cache-" + name.split()[0]
    forms[name] = ["env", "XDG_CACHE_HOME=" + cache] + forms[name]
    first[name] = shown(forms[name], PAGE)
    for _ in range(60):
        if glob.glob(cache + "/fourfold/classes-*/fourfold.jsa"):
            break
        time.sleep(0.5)
    else:
        sys.exit("no archive of classes for the " + name + ": " + str(glob.glob(cache + "/fourfold/*/*")))
kinds = {("bare frame", ""): lambda: shown(bare, FRAME)}
for name, command in forms.items():
    kinds[name, "first page"] = lambda c=command: shown(c, PAGE)
    kinds[name, "grid"] = lambda c=command: printed(c + ["grid", "--child", "Mina"])
    kinds[name, "--demo"] = lambda c=command: shown(c + ["--demo"], PAGE)
    kinds[name, "tour"] = lambda c=command: shown(c + ["tour"], PAGE)
times = {kind: [] for kind in kinds}
for turn in range(-1, rounds):
    for kind, measure in kinds.items():
        took = measure()
        if turn >= 0:
            times[kind].append(took)

version = subprocess.run(["java", "-version"], stderr=subprocess.PIPE, text=True).stderr.split('"')[1]
print("Forms: what each weighs, and process start to the first page, or to the end of a printed command")
print("Machine: %d cores, shared with other work; load average %s at the start, %s at the end; Java %s."
      % (os.cpu_count(), " ".join(load), " ".join(open("/proc/loadavg").read().split()[:3]), version))
print("A file of one child; %d rounds, interleaved; milliseconds. Each form has made its archive of classes; java -jar has none." % rounds)
print()
print("%-22s %-12s %8s %8s %8s  %s" % ("", "", "least", "median", "most", "median : bare frame"))
floor = statistics.median(times["bare frame", ""])
for (name, what), t in times.items():
    print("%-22s %-12s %8.0f %8.0f %8.0f  %6.2f" % (name, what, min(t), statistics.median(t), max(t), statistics.median(t) / floor))
print()
for name, took in first.items():
    print("%-22s first start on this computer, before there is an archive of classes: %.0f ms" % (name, took))
print()
print("%-22s %16s %16s" % ("megabytes", "as handed over", "as it lies there"))
sizes = {
    "jar and libraries": (None, megabytes(target + "/fourfold.jar", target + "/lib")),
    "portable archive": (megabytes(*glob.glob(target + "/fourfold-*-portable.zip")), megabytes(work + "/portable")),
    "application folder": (None, megabytes(work + "/application")),
    "Debian package": (megabytes(*glob.glob(target + "/fourfold_*.deb")), megabytes(work + "/installed")),
}
for name, (packed, lying) in sizes.items():
    print("%-22s %16s %16.1f" % (name, "" if packed is None else "%.1f" % packed, lying))
P
