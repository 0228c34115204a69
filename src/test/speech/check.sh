#!/usr/bin/env bash
# Lets a speech synthesiser read every plain page in every language, and looks at the text first: sentences alone, no drawing, no sign.
#   src/test/speech/check.sh [FOLDER]     reads aloud into FOLDER where espeak-ng or espeak is there; the text is looked at anyway
set -eu
cd "$(dirname "$0")/../../.."
out=${1:-$(mktemp -d)}; mkdir -p "$out"
[ -f target/fourfold.jar ] || mvn -q -DskipTests package
voice=$(command -v espeak-ng || command -v espeak || true)
failed=0
for language in en de es; do
  for page in "grid --plain" "family 6x7 --plain" "plan --plain --runs 2" "rates --plain" "year" "today" "calendar --plain" "settings --plain" "history --plain" "note 7 --plain"; do
    child=(--demo --child Pip); case $page in note*) child=();; esac
    name="$language-${page%% *}"
    FOURFOLD_LANGUAGE=$language java -jar target/fourfold.jar $page "${child[@]}" > "$out/$name.txt"
    bad=$(grep -cE '[■□▲◇█▄│─×÷·=~↑↓→←]|[0-9] : [0-9]|[0-9] s( |[.,;]|$)|  [^ ]' "$out/$name.txt" || true)
    lines=$(grep -c . "$out/$name.txt")
    spoken="not read aloud"
    if [ -n "$voice" ]; then
      "$voice" -v "$language" -f "$out/$name.txt" -w "$out/$name.wav"
      spoken="$(stat -c %s "$out/$name.wav") bytes of speech"
    fi
    [ "$bad" = 0 ] && [ "$lines" -gt 0 ] || failed=1
    printf '%s %-22s %3s lines, %s drawn, %s\n' "$language" "$page" "$lines" "$bad" "$spoken"
  done
done
exit $failed
