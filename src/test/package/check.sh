#!/usr/bin/env bash
# Builds what is delivered and tries it as a newcomer would. Needs a Debian system, and the right to install packages.
#   src/test/package/check.sh
# 1. two builds give the same bytes; 2. the whole jar, the application folder and the installed package run;
# 3. man and bash (and zsh, if there) read what was made for them; 4. the package goes without a trace.
set -eu
cd "$(dirname "$0")/../../.."
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
export FOURFOLD_STORE="$work/family.db" FOURFOLD_LANGUAGE=en LC_ALL=C.UTF-8
say() { printf '%-64s %s\n' "$1" "$2"; }

echo "-- two builds, same bytes"
for n in 1 2; do
  git clone -q . "$work/clone$n"
  (cd "$work/clone$n" && mvn -q -B -ntp -DskipTests -Papplication,debian package)
  (cd "$work/clone$n/target" && sha256sum fourfold.jar fourfold-*-whole.jar lib/*.jar) > "$work/sums$n"
done
cmp "$work/sums1" "$work/sums2"; say "the jars of two clones" "the same"
cd "$work/clone1/target"

echo "-- runs"
for program in "java -jar fourfold.jar" "java -jar $(echo fourfold-*-whole.jar)" application/fourfold/bin/fourfold; do
  $program --version > /dev/null
  $program grid --demo --child Pip --debug | grep -q "55 families fluent"
  say "$program" "grid of the demo"
done

echo "-- package"
dpkg -i fourfold_*.deb > /dev/null; say "$(ls fourfold_*.deb)" "installed, $(du -h fourfold_*.deb | cut -f1)"
[ "$(command -v fourfold)" = /usr/bin/fourfold ]
fourfold children --add Mina > /dev/null
printf '\n' | script -qec "fourfold --version" /dev/null | grep -q "^fourfold "; say "/usr/bin/fourfold in a terminal" "runs"
# One plain drill: every line asked is answered with a 1 at a child's pace; the program must take and keep what came.
for line in $(seq 40); do echo 1; sleep 2; done 2> /dev/null | fourfold drill --child Mina --minutes 1 --plain > "$work/drill.txt" || true
fourfold export answers "$work/answers.csv"; lines=$(($(wc -l < "$work/answers.csv") - 1))
[ "$lines" -gt 5 ]; say "a plain drill with the installed program" "$lines answers kept"
fourfold verify > /dev/null; say "its file" "whole"

echo "-- for the shells and for man"
man --warnings fourfold 2> "$work/warnings" | grep -q "EXIT STATUS"; [ ! -s "$work/warnings" ]; say "man fourfold" "no warnings"
bash -c 'source /usr/share/bash-completion/completions/fourfold; complete -p fourfold' > /dev/null; say "bash" "completes"
if command -v zsh > /dev/null; then
  zsh -fc 'autoload -Uz compinit && compinit -u && source /usr/share/bash-completion/completions/fourfold' && say "zsh" "reads the script"
else
  say "zsh" "not here, not tried"
fi

echo "-- gone again"
dpkg -r fourfold > /dev/null
[ ! -e /opt/fourfold ] && [ ! -e /usr/bin/fourfold ]; say "package removed" "no trace"
[ -s "$FOURFOLD_STORE" ]; say "the family's answers" "still there"
