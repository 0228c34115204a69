#!/usr/bin/env bash
# Lets a real browser print every page in every language on both sizes of paper: how many pages, and whether the words
# are all there.
#   src/test/print/check.sh [FOLDER]      needs chromium and poppler-utils; the pages are left in FOLDER if one is given
set -eu
cd "$(dirname "$0")/../../.."
out=${1:-$(mktemp -d)}; mkdir -p "$out"
[ -f target/fourfold.jar ] || mvn -q -DskipTests package
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome)
profile=$(mktemp -d); trap 'rm -rf "$profile"' EXIT
failed=0
check() { # language page pages words...
  language=$1; page=$2; pages=$3; shift 3
  for size in a4 letter; do
    name="$page-$size-$language"; html="$out/$name.html"; pdf="$out/$name.pdf"; rm -f "$html" "$pdf"
    FOURFOLD_LANGUAGE=$language java -jar target/fourfold.jar print "$page" --demo --child Pip --size "$size" --output "$html"
    "$browser" --headless --no-sandbox --disable-gpu --disable-background-networking --disable-component-update \
      --disable-sync --no-first-run --user-data-dir="$profile" --no-pdf-header-footer --print-to-pdf="$pdf" \
      "file://$html" 2> /dev/null
    got=$(pdfinfo "$pdf" | sed -n 's/^Pages: *//p')
    paper=$(pdfinfo "$pdf" | sed -n 's/^Page size: *//p')
    text=$(pdftotext -layout "$pdf" - | tr -s " \n" " "); missing=""
    for word in "$@"; do grep -qF -- "$word" <<< "$text" || missing="$missing $word"; done
    pdftoppm -r 60 -png "$pdf" "$out/$name"
    [ "$got" = "$pages" ] && [ -z "$missing" ] || failed=1
    printf '%s %-9s %-7s %s pages (%s wanted), %s, missing:%s\n' \
      "$language" "$page" "$size" "$got" "$pages" "$paper" "${missing:- none}"
  done
}
check en cards 2 "×" "÷"
check en practice 2 "Pip" "Answers for Pip" "="
check en table 2 "Fill in the table" "100" "81"
check en progress 1 "Pip" "lasting" "fluent" "qualified specialist" "table"
check de cards 2 "·" ":"
check de practice 2 "Pip" "Antworten für Pip" "="
check de table 2 "Fülle die Tafel aus" "100" "81"
check de progress 1 "Pip" "bleibend" "flüssig" "Fachperson" "Reihe"
check es cards 2 "×" "÷"
check es practice 2 "Pip" "Respuestas de Pip" "="
check es table 2 "Completa la tabla" "100" "81"
check es progress 1 "Pip" "duradera" "fluida" "especialista" "tabla"
exit $failed
