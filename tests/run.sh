#!/bin/sh
# Builds latchwork with its C ABI and Python bindings and runs every test: sh tests/run.sh [ctest arguments]
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
build=$top/build/tests
python=/usr/bin/python3  # Debian's own, whichever comes first on PATH: pybind11 and numpy are installed for it

sh "$top/cmake/install_packages.sh" cmake g++ make ninja-build pkg-config binutils libfmt-dev nlohmann-json3-dev catch2 \
  pybind11-dev python3 python3-dev python3-pytest python3-hypothesis python3-numpy python3-scipy python3-jsonschema python3-lxml \
  librsvg2-bin weasyprint mypy python3-pint python3-nbformat python3-nbclient python3-ipykernel python3-matplotlib
cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DLATCHWORK_FETCH=OFF -DLATCHWORK_TESTS=ON \
  -DLATCHWORK_C=ON -DLATCHWORK_PYTHON=ON -DLATCHWORK_EXAMPLES=ON -DCMAKE_UNITY_BUILD=ON \
  -DPython_EXECUTABLE="$python" -DPYTHON_EXECUTABLE="$python" >/dev/null
cmake --build "$build" --target all all_verify_interface_header_sets
ctest --test-dir "$build" --output-on-failure "$@"
