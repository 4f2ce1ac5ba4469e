#!/usr/bin/env bash
# One frame of 24 megapixels: Rondure's time and that of the C library sep, on the same pixels and
# on one core. Run on an idle machine; takes about eight minutes.
#   bash src/test/bench/speed.sh
# Needs util-linux (taskset), libraw-bin, and Debian's python3-sep and python3-astropy.
set -euo pipefail
cd "$(dirname "$0")/../../.."
core=${CORE:-1}
python=${PYTHON:-/usr/bin/python3}

mvn -q -B test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath.txt
classes=target/classes:target/test-classes:$(cat target/classpath.txt)
[ -e target/speed/heavy.fits ] || java -cp "$classes" rondure.bench.HeavyFrame target/speed

alone=(taskset -c "$core")
chrt -f 10 true 2>/dev/null && alone=(chrt -f 10 "${alone[@]}") # as root: nobody else on the core

"${alone[@]}" "$python" src/test/bench/time_sep.py target/speed/heavy.fits
"${alone[@]}" java -cp "$classes" org.openjdk.jmh.Main FrameBenchmark
