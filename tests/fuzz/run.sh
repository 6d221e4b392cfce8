#!/bin/sh
# Runs every fuzzer of a build made with LATCHWORK_FUZZ=ON for a while, from the corpus: sh tests/fuzz/run.sh BUILD SECONDS
# What a fuzzer finds is left in the current folder and makes this fail.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
build=$1
seconds=$2
found=0
for program in "$build"/tests/fuzz/latchwork_fuzz_*; do
  name=$(basename "$program")
  case "$name" in *_tests | *.*) continue ;; esac
  inputs=$(mktemp -d)
  found=$((found + 1))
  echo "$name for $seconds s"
  "$program" -max_total_time="$seconds" -rss_limit_mb=4096 -timeout=20 -verbosity=0 -print_final_stats=0 "$inputs" \
    "$top/corpus/${name#latchwork_fuzz_}"
  rm -rf "$inputs"
done
[ "$found" -gt 0 ] || { echo "no fuzzer in $build" >&2; exit 1; }
