"""Every download of cmake/dependencies.cmake is pinned by its archive's hash, and an archive of another hash is refused.
Where nothing is installed, latchwork is configured with what is downloaded, and with LATCHWORK_FETCH=OFF not at all.

Usage: pins_test.py SOURCE_DIR CMAKE
"""

import hashlib
import pathlib
import re
import subprocess
import sys
import tarfile
import tempfile

DECLARED = re.compile(r"FetchContent_Declare\((\w+)\s+([^)]*)\)")
PINNED = re.compile(r"URL (https://\S+\.tar\.gz)\s+URL_HASH (SHA256=[0-9a-f]{64})\Z")


def configured(cmake: str, folder: pathlib.Path, name: str, url: str, url_hash: str) -> subprocess.CompletedProcess:
    """What configuring a project says that takes `name` from there."""
    source = folder / f"{name}-{url_hash[-8:]}"
    source.mkdir()
    (source / "CMakeLists.txt").write_text(
        "cmake_minimum_required(VERSION 3.24)\nproject(host LANGUAGES NONE)\ninclude(FetchContent)\n"
        f"FetchContent_Declare({name} URL {url} URL_HASH {url_hash})\nFetchContent_MakeAvailable({name})\n"
    )
    return subprocess.run(
        [cmake, "-S", source, "-B", source / "build"], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    )


# Of each dependency no more than the targets that it makes.
MADE = {
    "fmt": "add_library(fmt STATIC made.cpp)\nadd_library(fmt::fmt ALIAS fmt)\n",
    "nlohmann_json": "add_library(nlohmann_json INTERFACE)\nadd_library(nlohmann_json::nlohmann_json ALIAS nlohmann_json)\n",
    "Catch2": "add_library(Catch2WithMain STATIC made.cpp)\nadd_library(Catch2::Catch2WithMain ALIAS Catch2WithMain)\n",
}


def without_any_installed(top: pathlib.Path, cmake: str, folder: pathlib.Path, fetch: str) -> subprocess.CompletedProcess:
    """What configuring latchwork says where no dependency is installed and each download is a folder of `folder`."""
    options = [f"-DLATCHWORK_FETCH={fetch}", "-DLATCHWORK_TESTS=ON", "-DLATCHWORK_C=OFF", "-DLATCHWORK_INSTALL=OFF"]
    for name, targets in MADE.items():
        source = folder / name
        source.mkdir(exist_ok=True)
        (source / "CMakeLists.txt").write_text(f"cmake_minimum_required(VERSION 3.24)\nproject({name} VERSION 3.5.4)\n{targets}")
        (source / "made.cpp").touch()
        options += [f"-DCMAKE_DISABLE_FIND_PACKAGE_{name}=ON", f"-DFETCHCONTENT_SOURCE_DIR_{name.upper()}={source}"]
    return subprocess.run(
        [cmake, "-S", top, "-B", folder / f"latchwork-{fetch}", "-G", "Ninja", *options],
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
    )


def main() -> None:
    top, cmake = pathlib.Path(sys.argv[1]), sys.argv[2]
    declared = DECLARED.findall((top / "cmake" / "dependencies.cmake").read_text())
    assert sorted(name for name, _ in declared) == ["Catch2", "fmt", "nlohmann_json", "pybind11"], declared
    pins = {}
    for name, how in declared:
        pin = PINNED.match(" ".join(how.split()))
        assert pin, f"{name} is not pinned by a hash: {how}"
        pins[name] = pin.group(2)
    with tempfile.TemporaryDirectory() as made:
        folder = pathlib.Path(made)
        (folder / "CMakeLists.txt").write_text("message(STATUS other code)\n")
        forged = folder / "forged.tar.gz"
        with tarfile.open(forged, "w:gz") as archive:
            archive.add(folder / "CMakeLists.txt", "forged/CMakeLists.txt")
        refused = configured(cmake, folder, "fmt", forged.as_uri(), pins["fmt"])
        assert refused.returncode != 0 and "hash" in refused.stdout.lower(), refused.stdout
        taken = configured(
            cmake, folder, "fmt", forged.as_uri(), "SHA256=" + hashlib.sha256(forged.read_bytes()).hexdigest()
        )
        assert taken.returncode == 0, taken.stdout  # so it was the hash, and nothing else

        off = without_any_installed(top, cmake, folder, "OFF")
        assert off.returncode != 0 and "latchwork needs fmt." in off.stdout, off.stdout
        on = without_any_installed(top, cmake, folder, "ON")
        assert on.returncode == 0, on.stdout
        assert all(f"{name} is not installed; downloading a pinned copy" in on.stdout for name in MADE), on.stdout
        rules = (folder / "latchwork-ON" / "build.ninja").read_text()
        assert "-DLATCHWORK_CATCH2_V3" in rules  # a downloaded Catch2 is one of 3
        made = re.search(r"build _deps/fmt-build/CMakeFiles/fmt\.dir/.*?(?=\n\n)", rules, re.DOTALL).group()
        assert "-fPIC" in made, made  # fmt goes into shared libraries
    print(f"{len(pins)} downloads are pinned")


main()
