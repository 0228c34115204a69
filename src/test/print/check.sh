#!/usr/bin/env bash
# Lets a real browser print every page on both sizes of paper: how many pages, and whether the words are all there.
#   src/test/print/check.sh [FOLDER]      needs chromium and poppler-utils; the pages are left in FOLDER if one is given
set -eu
cd "$(dirname "$0")/../../.."
out=${1:-$(mktemp -d)}; mkdir -p "$out"
[ -f target/fourfold.jar ] || mvn -q -DskipTests package
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome)
profile=$(mktemp -d); trap 'rm -rf "$profile"' EXIT
failed=0
check() { # page pages words...
  page=$1; pages=$2; shift 2
  for size in a4 letter; do
    html="$out/$page-$size.html"; pdf="$out/$page-$size.pdf"; rm -f "$html" "$pdf"
    java -jar target/fourfold.jar print "$page" --demo --child Pip --size "$size" --output "$html"
    "$browser" --headless --no-sandbox --disable-gpu --disable-background-networking --disable-component-update \
      --disable-sync --no-first-run --user-data-dir="$profile" --no-pdf-header-footer --print-to-pdf="$pdf" \
      "file://$html" 2> /dev/null
    got=$(pdfinfo "$pdf" | sed -n 's/^Pages: *//p')
    paper=$(pdfinfo "$pdf" | sed -n 's/^Page size: *//p')
    text=$(pdftotext -layout "$pdf" -); missing=""
    for word in "$@"; do grep -qF -- "$word" <<< "$text" || missing="$missing $word"; done
    pdftoppm -r 60 -png "$pdf" "$out/$page-$size"
    [ "$got" = "$pages" ] && [ -z "$missing" ] || failed=1
    printf '%-9s %-7s %s pages (%s wanted), %s, missing:%s\n' "$page" "$size" "$got" "$pages" "$paper" "${missing:- none}"
  done
}
check cards 2 "×" "÷"
check practice 2 "Pip" "Answers for Pip" "="
check table 2 "Fill in the table" "100" "81"
check progress 1 "Pip" "lasting" "fluent" "qualified specialist" "table"
exit $failed
