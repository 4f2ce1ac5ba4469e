#!/usr/bin/env bash
# Whole runs of the command on simulated nights: time, processor time and memory for more and more
# frames, with one worker and with two. Run on an idle machine with 16 GB of memory or more, so that
# the pictures are read from the page cache; rendering them takes half an hour the first time.
#   bash src/test/bench/night.sh large [numbers of frames, 200 at most]  24-megapixel DNG, 48 MB each
#   bash src/test/bench/night.sh small [numbers of frames, 800 at most]  1-megapixel TIFF
# WORKERS=2 for two workers only. Needs libraw-bin for the large ones.
set -euo pipefail
cd "$(dirname "$0")/../../.."
kind=${1:?large or small}
shift

mvn -q -B test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
classes=target/classes:target/test-classes:$(cat target/classpath.txt)
case $kind in
  large) recipe=night24 format=DNG counts="25 50 100 200" ;;
  small) recipe=night1 format=TIFF counts="100 200 400 800" ;;
  *) echo "large or small?" >&2 && exit 2 ;;
esac
# shellcheck disable=SC2086 # numbers, to be split
[ $# -gt 0 ] || set -- $counts
nights=target/bench-nights
mkdir -p "$nights"
[ -d "$nights/$kind" ] || {
  java -cp "$classes" rondure.cli.Main sim --format "$format" \
    "src/test/resources/bench/$recipe.json" "$nights/new" > "$nights/log"
  mv "$nights/new" "$nights/$kind"
}
find "$nights/$kind" -type f -exec cat {} + > /dev/null
java -cp "$classes" rondure.bench.NightTimes "$nights/$kind" "$nights/work" "${WORKERS:-1,2}" "$@"
