#!/bin/sh
# Measures latchwork against peers in the same run and prints tables: sh tests/bench/run.sh
# Every figure is a median; ratios compare medians of runs that took turns.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
build=$top/build/bench
python=/usr/bin/python3

sh "$top/cmake/install_packages.sh" cmake g++ ninja-build libfmt-dev nlohmann-json3-dev catch2 pybind11-dev python3 \
  python3-dev python3-numpy python3-scipy
cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DLATCHWORK_FETCH=OFF -DLATCHWORK_TESTS=ON \
  -DLATCHWORK_C=OFF -DLATCHWORK_EXAMPLES=OFF -DLATCHWORK_PYTHON=ON \
  -DPython_EXECUTABLE="$python" -DPYTHON_EXECUTABLE="$python" >/dev/null
cmake --build "$build" --target latchwork_bench latchwork_python >/dev/null

echo "== grid: mirror and repeat against NumPy's flip and tile"
PYTHONPATH=$build/python "$python" "$top/tests/bench/grid_numpy.py"
echo "== fit against the same search in NumPy"
PYTHONPATH=$build/python "$python" "$top/tests/bench/fit_numpy.py"
echo "== plan against HiGHS on the same model"
"$python" "$top/tests/bench/plan_highs.py" --bench "$build/tests/bench/latchwork_plan_bench"
echo "== plan: proven within 5 s, of 300 of each kind"
"$build/tests/bench/latchwork_plan_bench" 300 "" 5
echo "== plan: growth in rows and in classes, time and memory"
"$build/tests/bench/latchwork_plan_bench" growth
for name in file chart simulate spoil; do
  echo "== $name"
  "$build/tests/bench/latchwork_${name}_bench"
done
echo "== plan: time limits"
PYTHONPATH=$build/python "$python" "$top/tests/bench/limits_python.py"
"$build/tests/bench/latchwork_plan_bench" limits
