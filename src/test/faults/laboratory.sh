#!/usr/bin/env bash
# The long form of the fault laboratory: fails, kills and cuts the power of every kind of work on a family's file, and
# writes what it tried and found to src/test/resources/benchmark/faults.txt.
#   src/test/faults/laboratory.sh MINUTES      needs Linux, and a C compiler called cc (apt-get install gcc libc6-dev)
set -eu
cd "$(dirname "$0")/../../.."
[ $# -eq 1 ] || { sed -n 2,4p "$0" >&2; exit 2; }
command -v cc > /dev/null || { apt-get update && apt-get install -y gcc libc6-dev; }
mvn -B -ntp clean verify -Dbenchmark=Faults -Dfourfold.minutes="$1"
