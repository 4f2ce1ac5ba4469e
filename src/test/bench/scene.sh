#!/usr/bin/env bash
# What the work on whole scenes costs, for scenes of 100 to 1,000 frames of about 500 stars, on one
# core and in a heap of 512 MiB (HEAP=… for another); processor time, so the machine may be busy.
#   bash src/test/bench/scene.sh [numbers of frames, the largest last]
set -euo pipefail
cd "$(dirname "$0")/../../.."

mvn -q -B test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
classes=target/classes:target/test-classes:$(cat target/classpath.txt)
[ $# -gt 0 ] || set -- 100 200 400 800 1000
java "-Xmx${HEAP:-512m}" -XX:+UseSerialGC -XX:ActiveProcessorCount=1 -cp "$classes" \
  rondure.bench.SceneBenchmark "$@"
