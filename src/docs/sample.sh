#!/bin/bash
# Makes docs/sample anew: the report of samples/night and pictures of two of its pages.
# Needs Java 17 and Maven, like the program itself. From anywhere: bash src/docs/sample.sh
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -B -DskipTests package
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
java -jar target/rondure.jar report samples/night --out "$out/results"
mkdir -p docs/sample
cp "$out/results/report.pdf" docs/sample/report.pdf
java -Djava.awt.headless=true -cp target/rondure.jar src/docs/SamplePages.java \
  docs/sample/report.pdf docs/sample "Likely cause: tripod"
ls -l docs/sample
