#!/usr/bin/env bash
# Coverage-guided fuzzing of the parsers that are ours, with Jazzer (Apache-2.0), from the seeds of
# FuzzSeeds and SidecarFuzz. What it finds becomes a test; see docs/hostile-files.md.
#   bash src/test/fuzz/fuzz.sh SECONDS [PARSER ...]
# Parsers: tiff png jpeg fits raw facts streams sidecar. Findings and corpora stay in target/fuzz.
set -euo pipefail
cd "$(dirname "$0")/../../.."
seconds=${1:?seconds for each parser}
shift
parsers=("$@")
[ ${#parsers[@]} -gt 0 ] || parsers=(tiff png jpeg fits raw facts streams sidecar)

mvn -q -B -Pfuzz test-compile dependency:build-classpath -Dmdep.outputFile=target/fuzz-classpath.txt
classes=target/classes:target/test-classes:$(cat target/fuzz-classpath.txt)
java -cp "$classes" rondure.intake.FuzzSeeds target/fuzz/seeds
java -cp "$classes" rondure.report.sidecar.SidecarFuzz target/fuzz/seeds

for parser in "${parsers[@]}"; do
  target=rondure.intake.FileFuzz
  [ "$parser" != sidecar ] || target=rondure.report.sidecar.SidecarFuzz
  mkdir -p "target/fuzz/$parser/corpus"
  (
    cd "target/fuzz/$parser"
    java -Xmx700m -Drondure.fuzz="$parser" -cp "$(sed "s#\(^\|:\)target#\1../../../target#g" <<<"$classes")" \
      com.code_intelligence.jazzer.Jazzer --target_class="$target" \
      --instrumentation_includes='rondure.**:com.drew.**:com.adobe.**' --keep_going=20 \
      --disabled_hooks='com.code_intelligence.jazzer.sanitizers.XmlParserSsrfGuidance' \
      -max_total_time="$seconds" -timeout=20 -rss_limit_mb=3000 -max_len=20000 -seed=20261126 \
      corpus ../seeds/"$parser"
  ) >"target/fuzz/$parser.log" 2>&1 || echo "$parser: see target/fuzz/$parser.log"
  echo "$parser: $(grep -o '#[0-9]*.*cov: [0-9]*' "target/fuzz/$parser.log" | tail -1)"
done
