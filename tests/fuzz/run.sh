#!/bin/sh
# Runs every fuzzer of a build made with LATCHWORK_FUZZ=ON for a while, from the corpus: sh tests/fuzz/run.sh BUILD SECONDS
# As many at a time as there are processors. What a fuzzer finds is left in the current folder and makes this fail.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
if [ $# -eq 3 ]; then  # one of them, for the call below
  program=$3
  name=$(basename "$program")
  inputs=$(mktemp -d)
  log=$(mktemp)
  "$program" -max_total_time="$2" -rss_limit_mb=4096 -timeout=20 -verbosity=0 -print_final_stats=0 "$inputs" \
    "$top/corpus/${name#latchwork_fuzz_}" >"$log" 2>&1 && code=0 || code=$?
  echo "$name for $2 s"
  [ "$code" -eq 0 ] || cat "$log" >&2
  rm -rf "$inputs" "$log"
  exit "$code"
fi
programs=$(for program in "$1"/tests/fuzz/latchwork_fuzz_*; do
  case "${program##*/}" in *_tests | *.* | *'*') ;; *) printf '%s\n' "$program" ;; esac
done)
[ -n "$programs" ] || { echo "no fuzzer in $1" >&2; exit 1; }
printf '%s\n' "$programs" | xargs -P "$(nproc)" -I '{}' sh "$0" "$1" "$2" '{}'
