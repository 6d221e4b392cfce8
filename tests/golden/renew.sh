#!/bin/sh
# Writes the examples' expected outputs anew: sh tests/golden/renew.sh [PATH_OF_make_panel]
# Read the difference (git diff examples) before it is kept.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
program=${1:-$top/build/tests/examples/make_panel}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for brief in "$top"/examples/briefs/*/; do
  name=$(basename "$brief")
  "$program" "$brief" "$work/$name" >/dev/null
  mkdir -p "$brief/expected"
  for file in summary.txt instructions.txt plan.json article.txt; do
    test -e "$work/$name/$file" || continue
    cp "$work/$name/$file" "$brief/expected/$file"
  done
  echo "$name"
done
# All of the small brief, a picture of one with crossings, and the large one's chart in letters: a picture of that would only
# make long differences.
for file in sampler/chart.txt sampler/chart-rs.svg sampler/chart-operator.svg sampler/page.html sampler/schematic.svg cushion/chart-rs.svg \
  harbour-cushion/chart.txt; do
  cp "$work/$file" "$top/examples/briefs/$(dirname "$file")/expected/"
done
