"""Every download of cmake/dependencies.cmake is pinned by its archive's hash, and an archive of another hash is refused.

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
    print(f"{len(pins)} downloads are pinned")


main()
