#!/usr/bin/env bash
# Lets a real browser print every page in every language on both sizes of paper, and with large letters: how many sheets,
# whether the words are all there and inside the margins, none on top of another, and each card's back behind its front.
#   src/test/print/check.sh [FOLDER [LANGUAGE...]]   needs chromium and poppler-utils; the pages are left in FOLDER
#   FOURFOLD='java -jar target/fourfold.jar'   is what makes the pages
set -eu
cd "$(dirname "$0")/../../.."
out=${1:-$(mktemp -d)}; languages=${*:2}; mkdir -p "$out"; out=$(cd "$out" && pwd)
if [ -z "${FOURFOLD:-}" ]; then
  [ -f target/fourfold.jar ] || mvn -q -DskipTests package
  FOURFOLD='java -jar target/fourfold.jar'
fi
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome)
profile=$(mktemp -d); trap 'rm -rf "$profile"' EXIT
javac -d "$profile" src/test/print/Positions.java
# The last page waits for the last stone, which the demo's child has not laid.
java src/test/print/WholeStairs.java > "$profile/whole.csv"
FOURFOLD_LANGUAGE=en $FOURFOLD --store "$profile/whole.db" import answers "$profile/whole.csv" --yes > "$profile/import.txt" 2>&1
failed=0
check() { # language page sheets words...
  language=$1; page=$2; pages=$3; shift 3
  whose=--demo; [ "$page" != whole ] || whose="--store $profile/whole.db"
  for size in a4 letter; do
    name="${page// /}-$size-$language"; html="$out/$name.html"; pdf="$out/$name.pdf"; rm -f "$html" "$pdf"
    # shellcheck disable=SC2086
    FOURFOLD_LANGUAGE=$language $FOURFOLD print $page $whose --child Pip --size "$size" --output "$html" 2> /dev/null
    "$browser" --headless --no-sandbox --disable-gpu --disable-background-networking --disable-component-update \
      --disable-sync --no-first-run --user-data-dir="$profile/browser" --no-pdf-header-footer --print-to-pdf="$pdf" \
      "file://$html" 2> /dev/null
    got=$(pdfinfo "$pdf" | sed -n 's/^Pages: *//p')
    paper=$(pdfinfo "$pdf" | sed -n 's/^Page size: *//p')
    text=$(pdftotext -layout "$pdf" - | tr -s " \n" " "); missing=""
    for word in "$@"; do grep -qF -- "${word// /}" <<< "${text// /}" || missing="$missing $word"; done
    case $page in cards*) backs=backs ;; *) backs="" ;; esac
    pdftotext -bbox "$pdf" "$profile/words.xml"
    # shellcheck disable=SC2086
    places=$(java -cp "$profile" Positions "$profile/words.xml" $backs)
    pdftoppm -r 60 -png "$pdf" "$out/$name"
    [ "$got" = "$pages" ] && [ -z "$missing" ] && [ -z "$places" ] || failed=1
    printf '%s %-24s %-7s %s sheets (%s wanted), %s, missing:%s, places: %s\n' \
      "$language" "$page" "$size" "$got" "$pages" "$paper" "${missing:- none}" "${places:-well}"
  done
}
all() { # language, then a word for each page in this order
  language=$1; shift
  [[ " ${languages:-$language} " == *" $language "* ]] || return 0
  check "$language" practice 2 "$1" "="
  check "$language" "practice --letters large" 4 "$1"
  check "$language" "practice --asked missing" 2 "$1" "="
  check "$language" minute 2 "$2" "31" "49"
  check "$language" life 2 "$3"
  check "$language" "life --letters large" 4 "$3"
  check "$language" cards 2 "$4"
  check "$language" "cards --letters large" 4 "$4"
  check "$language" squarecards 2 "$4" "↔" "↕"
  check "$language" picturecards 2 "$4"
  check "$language" squares 2 "$5" "↔"
  check "$language" pictures 1 "$6"
  check "$language" domino 1 "$7" "1." "5."
  check "$language" pairs 1 "$8" "5."
  check "$language" lotto 2 "$9" "5."
  check "$language" table 2 "${10}" "100" "81"
  check "$language" supplies 1 "${11}"
  check "$language" cando 1 "${12}"
  check "$language" report 2 "${13}" "${14}" "1 / 2" "2 / 2"
  check "$language" whole 1 "${15}" "Pip" "2026" "55"
}
all en "Practice" "One minute" "In everyday life" "flip on the long edge" "Squares of four" "See the family" \
  "Dominoes of facts" "Pairs" "Lotto" "Fill in the table" "What we need" "What I can do now" "Report on practice" \
  "qualified specialist" "The stairs are whole"
all de "Übungsblatt" "Eine Minute" "Im Alltag" "lange Kante wenden" "Viererquadrate" "Die Familie sehen" \
  "Domino mit Aufgaben" "Paare finden" "Lotto mit Aufgaben" "Fülle die Tafel aus" "Was wir brauchen" \
  "Was ich jetzt kann" "Bericht über das Üben" "Fachperson" "Die Treppe ist fertig"
all es "Práctica" "Un minuto" "En la vida diaria" "voltea por el borde largo" "Cuadrados de cuatro" "Ver la familia" \
  "Dominó de operaciones" "Parejas" "Lotería" "Completa la tabla" "Lo que necesitamos" "Lo que ya sé hacer" \
  "Informe de práctica" "especialista" "La escalera está completa"
exit $failed
