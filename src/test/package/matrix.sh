#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# Tries the portable archive wherever a family may put it, a line for each case; ends with 1 if one fails.
#   src/test/package/matrix.sh [ARCHIVE]     after mvn -DskipTests -Pportable package
# JAVAS=folder:folder names the Javas to try; without it, those in /usr/lib/jvm. ONLY=accounts tries none of them but
# the usual one. SUITE=yes has mvn verify pass in an odd folder too (minutes). Needs root for accounts of other people.
set -u
archive=$(readlink -f "${1:-$(ls "$(dirname "$0")"/../../../target/fourfold-*-portable.zip)}")
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
chmod 755 "$work"
failed=0
tree=$(cd "$(dirname "$0")/../../.." && pwd)
family=$HOME
unset FOURFOLD_STORE FOURFOLD_LANGUAGE XDG_DATA_HOME XDG_CACHE_HOME JAVA_TOOL_OPTIONS

# In columns, by letters: printf counts bytes where the language setting is C.
told() {
    local LC_ALL=C.UTF-8
    local room=$((78 - ${#1}))
    printf '%s%*s%s\n' "$1" "$((room > 0 ? room : 1))" "" "$2"
}

# line NAME EXPECTED COMMAND...: what the command prints, errors too, must hold what is expected.
line() {
    local name=$1 expected=$2 printed
    shift 2
    printed=$("$@" 2>&1 < /dev/null)
    if [[ $printed == *"$expected"* && $printed != *Exception* && $printed != *WARNING* ]]; then
        told "$name" "ok"
    else
        told "$name" "FAILED: $(head -c 200 <<< "$printed" | head -2 | tr '\n' ' ')"
        failed=1
    fi
}

if [ -z "${JAVAS:-}" ]; then
    JAVAS=$(for java in /usr/lib/jvm/*/bin/java; do readlink -f "$java"; done | sed 's,/bin/java$,,' | sort -u | paste -sd:)
fi
IFS=: read -ra javas <<< "$JAVAS"
[ "${ONLY:-}" != accounts ] || javas=()
mkdir -p "$work/locales"
export LOCPATH="$work/locales"
for name in de_DE tr_TR ar_EG; do localedef -i $name -f UTF-8 "$LOCPATH/$name.UTF-8" 2> /dev/null; done
localedef -i de_DE -f ISO-8859-1 "$LOCPATH/de_DE.ISO-8859-1" 2> /dev/null

mkdir -p "$work/plain" "$work/a b/Übung ×" "$work/home" "$work/homes/a b Ü"
for folder in "$work/plain" "$work/a b/Übung ×"; do (cd "$folder" && unzip -q "$archive"); done
# What fourfold.cmd has Java do, with its variables as it would set them: it can't be run itself, its three lines for
# java can.
windows() {
    local bin=$JAVA_HOME/bin/ here=${odd%fourfold} keep=-Xshare:auto archive=-Xshare:auto options probe known run
    sed 's/\r$//' "${odd%fourfold}fourfold.cmd" > "$work/cmd"
    options=$(sed -n 's/^set "options=\(.*\)"$/\1/p' "$work/cmd")
    { read -r probe; read -r known; read -r run; } < <(grep '^"%bin%java"' "$work/cmd" \
        | sed 's,\\,/,g; s,nul,/dev/null,g; s,%\*,"$@",; s/%\([a-z]*\)%/${\1}/g')
    if eval "$probe"; then
        mkdir -p "$work/a b/& ^ %"
        keep=-XX:+AutoCreateSharedArchive archive="-XX:SharedArchiveFile=$work/a b/& ^ %/fourfold.jsa"
    else
        eval "$known" || { echo "told to be older than 17"; return; }
    fi
    eval "$run"
}
plain=$(echo "$work"/plain/fourfold-*/fourfold)
odd=$(echo "$work/a b/Übung ×"/fourfold-*/fourfold)
export HOME="$work/home" LC_ALL=C.UTF-8
cd /
families="32 of 55 families fluent"

for java in "${javas[@]}"; do
    export JAVA_HOME=$java
    version=$(sed -n 's/^JAVA_VERSION="\(.*\)"/Java \1/p' "$java/release" 2> /dev/null)
    version=${version:-$(basename "$java")}
    for locale in C POSIX C.UTF-8 tr_TR.UTF-8 ar_EG.UTF-8; do
        line "$version, $locale" "$families" env LC_ALL=$locale "$plain" grid --demo --child Pip
        line "$version, $locale, in a b/Übung ×" "$families" env LC_ALL=$locale "$odd" grid --demo --child Pip
    done
    for locale in de_DE.UTF-8 de_DE.ISO-8859-1; do
        line "$version, $locale, in a b/Übung ×" "Pip: 32 von 55" env LC_ALL=$locale "$odd" grid --demo --child Pip
    done
    line "$version, JAVA_TOOL_OPTIONS" "$families" env JAVA_TOOL_OPTIONS=-Dx=y "$plain" grid --demo --child Pip
    line "$version, what fourfold.cmd has it do" "$families" windows grid --demo --child Pip
    line "$version, the same again" "$families" windows grid --demo --child Pip
    rm -rf "$HOME/.cache"
    for starter in "$plain" "$odd"; do
        "$starter" --version > /dev/null
        for _ in $(seq 60); do ls "$HOME"/.cache/fourfold/classes-*/fourfold.jsa > /dev/null 2>&1 && break; sleep 0.5; done
        line "$version, archive of classes made by the first start in $(basename "$(dirname "$(dirname "$starter")")")" \
            "archive of classes: in use" "$starter" --debug grid --demo --child Pip
        rm -rf "$HOME/.cache"
    done
done

unset JAVA_HOME
children() { # HOME STARTER
    HOME=$1 "$2" children --add Mina > /dev/null && HOME=$1 "$2" children
    find "$1" -name fourfold.db
}
line "HOME with a space and an umlaut" "$work/homes/a b Ü/.local/share/fourfold/fourfold.db" children "$work/homes/a b Ü" "$plain"
line "HOME with a space and an umlaut, under C" "Mina" \
    env LC_ALL=C HOME="$work/homes/a b Ü" "$plain" children
line "a program that can't be written, by another account" "$families" \
    setpriv --reuid=65534 --regid=65534 --clear-groups env HOME=/nonexistent "$plain" grid --demo --child Pip
line "a home that can't be written: said in a line" "could not" \
    setpriv --reuid=65534 --regid=65534 --clear-groups env HOME="$work/home" "$plain" children --add Mina
mkdir -m 777 "$work/there"
line "a home that can't be written, and a file elsewhere" "Mina" \
    setpriv --reuid=65534 --regid=65534 --clear-groups env HOME=/nonexistent "$plain" --store "$work/there/f.db" children --add Mina
line "an account without an entry, without HOME: said in a line" "this account has no home folder" \
    setpriv --reuid=54321 --regid=54321 --clear-groups env -u HOME "$plain" children
mkdir -m 777 "$work/theirs"
own() { cd "$work/theirs" && setpriv --reuid=54321 --regid=54321 --clear-groups env HOME="$work/theirs" "$plain" children --add Mina; ls -A; }
line "an account without an entry, with HOME" "Mina" own
line "no folder named by a question mark" "none" sh -c "ls -d '$work/theirs/?' 2> /dev/null || echo none"
line "export into a pipe whose reader has enough" "0" \
    bash -c "set -o pipefail; '$plain' export answers --demo 2>&1 | head -1 > /dev/null; echo \${PIPESTATUS[0]}"

suite() {
    local folder="$work/a b/Übung ×/suite"
    git clone -q "$tree" "$folder"
    (cd "$folder" && HOME=$family LC_ALL=de_DE.UTF-8 mvn -B -ntp -Dstyle.color=never verify) > "$work/suite.log" 2>&1 \
        && sed -n '/Tests run:.*Skipped: [0-9]*$/p; /BUILD SUCCESS/p' "$work/suite.log" \
        || { cp "$work/suite.log" "$tree/target/suite.log"; grep -m 2 '^\[ERROR\]' "$work/suite.log"; }
}
[ "${SUITE:-}" != yes ] || line "mvn verify in a b/Übung ×, de_DE.UTF-8" "BUILD SUCCESS" suite
exit $failed
