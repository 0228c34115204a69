# SPDX-License-Identifier: Apache-2.0
# The part of check.sh that installs the package named by DEB (and before it the one named by OLD), uses it, removes it.
quietly() { "$@" > "$work/said" 2>&1 || { cat "$work/said"; return 1; }; }
plain_drill() { # every line asked is answered with a 1 at a child's pace; the program must take and keep what came
  for line in $(seq 20); do echo 1; sleep 2; done 2> /dev/null | fourfold drill --child Mina --minutes 1 --plain > "$work/drill.txt" || true
}
answers() { # by way of a file, which earlier versions can write too
  rm -f "$work/answers.csv"; fourfold export answers "$work/answers.csv" > /dev/null; tail -n +2 "$work/answers.csv" | wc -l
}

if [ -n "$OLD" ]; then
  quietly dpkg -i "$OLD"; fourfold children --add Mina > /dev/null; plain_drill
  before=$(answers); [ "$before" -gt 5 ]; say "the earlier package, used" "$before answers"
fi
quietly dpkg -i "$DEB"; say "$(basename "$DEB")" "installed, $(du -h "$DEB" | cut -f1)"
[ "$(command -v fourfold)" = /usr/bin/fourfold ]
if [ -n "$OLD" ]; then
  [ "$(answers)" = "$before" ]; say "upgraded" "the $before answers are there"
  [ ! -e /opt/fourfold ]; say "what the earlier package had in /opt" "gone"
else
  fourfold children --add Mina > /dev/null
fi
[ -s /usr/lib/fourfold/fourfold.jsa ]; [ -s /usr/lib/fourfold/runtime/lib/server/classes.jsa ]
say "archives of classes, made at installation" "$(du -h /usr/lib/fourfold/fourfold.jsa | cut -f1)"
JAVA_TOOL_OPTIONS=-Xlog:class+load fourfold --version 2> /dev/null | grep -q "fourfold.*shared objects file"; say "by the installed program" "in use"
plain_drill; lines=$(answers); [ "$lines" -gt 5 ]; say "a plain drill with the installed program" "$lines answers kept"
fourfold verify > /dev/null; say "its file" "whole"

echo "-- for man, the shells, the menu"
[ -s /usr/share/man/man1/fourfold.1.gz ] && gzip -dc /usr/share/man/man1/fourfold.1.gz | man --warnings -l - > "$work/page" 2> "$work/warnings"
grep -q "EXIT STATUS" "$work/page"; [ ! -s "$work/warnings" ]; say "man fourfold" "no warnings"
bash -c 'source /usr/share/bash-completion/completions/fourfold; complete -p fourfold' > /dev/null; say "bash" "completes"
if command -v zsh > /dev/null; then
  zsh -fc 'autoload -Uz compinit && compinit -u && source /usr/share/bash-completion/completions/fourfold' && say "zsh" "reads the script"
else
  say "zsh" "not here, not tried"
fi
[ -s /usr/share/icons/hicolor/128x128/apps/fourfold.png ]; say "icon" "$(file -b /usr/share/icons/hicolor/128x128/apps/fourfold.png | cut -d, -f1,2)"
if command -v desktop-file-validate > /dev/null; then
  desktop-file-validate /usr/share/applications/fourfold.desktop; say "menu entry" "valid"
else
  say "menu entry" "no validator here, not tried"
fi
if command -v lintian > /dev/null; then
  lintian --allow-root --fail-on error,warning "$DEB"; say "lintian" "no errors, no warnings"
else
  say "lintian" "not here, not tried"
fi

echo "-- gone again"
dpkg -L fourfold > "$work/installed"
quietly dpkg -P fourfold
while read -r place; do
  case $place in
    */fourfold | */fourfold/*) [ ! -e "$place" ] && [ ! -h "$place" ] ;;
    *) [ ! -f "$place" ] ;;
  esac || { echo "left behind: $place"; exit 1; }
done < "$work/installed"
say "package removed" "no trace"
[ -s "$FOURFOLD_STORE" ]; say "the family's answers" "still there"
