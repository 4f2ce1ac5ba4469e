#!/usr/bin/env bash
# What it costs that frames are measured in worker processes: 40 DNG frames in this process and
# through one worker, in turns, on one core.
#   bash src/test/bench/isolation.sh [frame.dng …]
# Without frames it renders one of 24 megapixels. Needs util-linux (taskset) and libraw-bin.
set -euo pipefail
cd "$(dirname "$0")/../../.."
core=${CORE:-1} frames=${FRAMES:-40} times=${TIMES:-5}

mvn -q -B test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
classes=target/classes:target/test-classes:$(cat target/classpath.txt)
if [ $# -eq 0 ]; then
  [ -e target/speed/heavy.dng ] || java -cp "$classes" rondure.bench.HeavyFrame target/speed
  set -- target/speed/heavy.dng
fi

here=(-Xmx528m -Xmn32m -XX:+UseSerialGC -XX:-UsePerfData) # as a worker
for ((i = 0; i < times; i++)); do
  MALLOC_ARENA_MAX=2 taskset -c "$core" java "${here[@]}" -cp "$classes" \
    rondure.crew.IsolationBenchmark here "$frames" "$@"
  taskset -c "$core" java -cp "$classes" rondure.crew.IsolationBenchmark crew "$frames" "$@"
done
