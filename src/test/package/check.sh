#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# Builds what is delivered and tries it as a newcomer would. Needs a Debian system and root; the package is installed
# over a throw-away layer of this system where the kernel has overlays, so that nothing of it stays.
#   src/test/package/check.sh            everything
#   src/test/package/check.sh --built    what is already in target, without the second build
#   OLD=fourfold_old.deb ...             also upgrades from that package
# 1. two builds give the same bytes; 2. parts, licences and list agree; 3. each form runs; 4. the package installs, is
# used, upgraded and removed; 5. man, shells, menu and lintian read what was made for them.
set -eu
cd "$(dirname "$0")/../../.."
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
export FOURFOLD_STORE="$work/family.db" FOURFOLD_LANGUAGE=en LC_ALL=C.UTF-8
say() { printf '%-64s %s\n' "$1" "$2"; }

if [ "${1:-}" = --installed ]; then
  . src/test/package/installed.sh
  exit
fi

if [ "${1:-}" != --built ]; then
  echo "-- two builds, same bytes"
  git clone -q . "$work/clone1"; git clone -q "$work/clone1" "$work/clone2"
  for n in 1 2; do
    (cd "$work/clone$n" && mvn -q -B -ntp -Dstyle.color=never -DskipTests -Pportable,debian package)
    # Java makes no two archives of its own classes alike; it is all that may differ.
    (cd "$work/clone$n/target" && sha256sum fourfold.jar lib/*.jar fourfold-*-portable.zip fourfold_*.deb \
      && find forms/application -type f ! -name classes.jsa -print0 | LC_ALL=C sort -z | xargs -0 sha256sum) > "$work/sums$n"
  done
  diff "$work/sums1" "$work/sums2"; say "jars, archive, application folder and package of two clones" "the same"
  built=$work/clone1/target
else
  built=$PWD/target
fi

echo "-- parts"
ls "$built/lib" | sed 's/\.jar$//' | sort > "$work/shipped"
python3 - "$built/parts.json" > "$work/listed" <<'P'
import json, sys
print("\n".join(sorted(c["name"] + "-" + c["version"] for c in json.load(open(sys.argv[1]))["components"])))
P
diff "$work/shipped" "$work/listed"; say "the list of parts (CycloneDX) and what is shipped" "the same $(wc -l < "$work/listed")"
for form in "$built"/forms/portable/fourfold-* "$built/forms/application/fourfold"; do
  diff <(ls "$form/program/lib" | sed 's/\.jar$//' | sort) "$work/listed"
  for text in NOTICE.txt LICENSE LGPL-3.0.txt GPL-3.0.txt letters-licence.txt fastcsv/LICENSE jackson-core/NOTICE \
    sqlite-jdbc/LICENSE flyway-core/LICENSE.txt parts.json; do
    [ -s "$form/licences/$text" ]
  done
  say "${form##*/forms/}" "parts and licences, $(du -sh "$form" | cut -f1)"
done
while read -r part; do
  grep -qi "^$(sed 's/-[0-9].*//; s/sqlite-jdbc/SQLite JDBC/; s/flyway-core/Flyway/' <<< "$part")" src/main/package/licences/NOTICE.txt
done < "$work/listed"; say "the notice names every part" "yes"

echo "-- runs"
lanterna=$(ls "$built"/lib/lanterna-*.jar)
for form in "$built/fourfold.jar" "$built"/forms/portable/fourfold-*/fourfold "$built/forms/application/fourfold/fourfold"; do
  case $form in *.jar) program=(java -jar "$form") ;; *) program=("$form") ;; esac
  "${program[@]}" --version > /dev/null
  "${program[@]}" grid --demo --child Pip | grep -q "families fluent"
  say "${form#"$built"/}" "grid of the demo"
done
for form in "$built"/forms/portable/fourfold-*/fourfold "$built/forms/application/fourfold/fourfold"; do
  archive() { XDG_CACHE_HOME=$work/cache "$form" --debug children 2>&1 | sed -n 's/^archive of classes: //p'; }
  first=$(archive)
  for _ in $(seq 60); do said=$(archive); [ "$said" != "$first" ] && break; sleep 0.5; done
  case "$first, then $said" in "none yet"*", then in use") ;; *) echo "$first, then $said"; exit 1 ;; esac
  say "archive of classes of ${form#"$built"/}" "made by the first start, then in use"
done
[ "$(ls "$work"/cache/fourfold/classes-*/fourfold.jsa | wc -l)" = 2 ]; say "two forms in turn" "each keeps its own"
cp -a "$built"/forms/portable/fourfold-* "$work/changed"
mkdir "$work/unpacked"; (cd "$work/unpacked" && unzip -q "$lanterna" && jar --create --file "$work/own.jar" .)
cp "$work/own.jar" "$work/changed/program/lib/$(basename "$lanterna")"
XDG_CACHE_HOME=$work/cache "$work/changed/fourfold" tour --help > /dev/null
say "another build of Lanterna in its place" "runs"

echo "-- package"
deb=$(ls "$built"/fourfold_*.deb)
export DEB=$deb OLD=${OLD:-}
layer="$work/layer"; mkdir -p "$layer"
if unshare -m true 2> /dev/null; then
  unshare -m bash -ec '
    mount -t tmpfs tmpfs "$1"
    for part in usr var etc opt; do
      mkdir -p "$1/$part/up" "$1/$part/work"
      mount -t overlay overlay -o "lowerdir=/$part,upperdir=$1/$part/up,workdir=$1/$part/work" "/$part"
    done
    exec src/test/package/check.sh --installed' layer "$layer"
else
  src/test/package/check.sh --installed
fi
