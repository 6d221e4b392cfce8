#!/bin/sh
# Builds latchwork and does its main job on a brief: sh examples/quickstart.sh [BRIEF_FOLDER [OUTPUT_FOLDER]]
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
brief=${1:-$top/examples/briefs/harbour-cushion}
out=${2:-$top/out}
build=$top/build/quickstart

sh "$top/cmake/install_packages.sh" cmake g++ ninja-build libfmt-dev nlohmann-json3-dev
if [ ! -f "$build/build.ninja" ]; then
  echo "Configuring in $build"
  cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DLATCHWORK_FETCH=OFF \
    -DLATCHWORK_TESTS=OFF -DLATCHWORK_C=OFF -DLATCHWORK_PYTHON=OFF -DCMAKE_UNITY_BUILD=ON >/dev/null
fi
echo "Building: the first time it takes a few minutes, later runs some seconds"
cmake --build "$build" --target make_panel  # shows how far it is, and what a compiler says
echo "Making the panel of $brief"
made=0
"$build/examples/make_panel" "$brief" "$out" || made=$?
case $made in
  0) echo "Written to $out: open page.html to print it and take it to the machine." ;;
  3) echo "Written to $out, but it cannot be made as asked: summary.txt and page.html say why." ;;
  4) echo "Written to $out without a size or an article: summary.txt and page.html say which gauges swatch.csv lacks." ;;
esac
exit $made
