"""The C library exports what latchwork.h declares and nothing else, and the linker map says the same, name by name.

symbols_test.py SOURCE LIBRARY: compares the header, the map and `nm -D` of the built library.
symbols_test.py SOURCE --write-map: writes the map anew from the header.
"""
import pathlib
import re
import subprocess
import sys


def declared(source):
    text = (source / "bindings/c/include/latchwork/latchwork.h").read_text(encoding="utf-8")
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    names = re.findall(r"LATCHWORK_C_API\b[^;(]*?\b(latchwork_\w+)\s*\(", text)
    prototypes = re.findall(r"\b(latchwork_\w+)\s*\([^;{]*\)\s*;", text)
    if sorted(names) != sorted(prototypes):
        sys.exit(f"declared without LATCHWORK_C_API, or twice: {sorted(set(prototypes) ^ set(names))}")
    if len(names) != len(set(names)):
        sys.exit(f"declared twice: {sorted(n for n in set(names) if names.count(n) > 1)}")
    return set(names)


def mapped(source):
    text = (source / "bindings/c/latchwork_c.map").read_text(encoding="utf-8")
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    if not re.search(r"local:\s*\*;", text):
        sys.exit("the map does not hide the rest: it lacks `local: *;`")
    return set(re.findall(r"\b(latchwork_\w+);", text))


def exported(library):
    listing = subprocess.run(["nm", "-D", "--defined-only", library], check=True, capture_output=True, text=True).stdout
    names = (line.split()[-1].split("@")[0] for line in listing.splitlines())
    # The version node itself is listed as an absolute symbol.
    return {name for name in names if name != "LATCHWORK_C_0"}


def write_map(source):
    lines = ["/* What the C library exports; all else is hidden. Written by tests/package/symbols_test.py --write-map. */"]
    lines += ["LATCHWORK_C_0 {", "  global:"]
    lines += [f"    {name};" for name in sorted(declared(source))]
    lines += ["  local: *;", "};"]
    (source / "bindings/c/latchwork_c.map").write_text("\n".join(lines) + "\n", encoding="utf-8")


def main():
    source = pathlib.Path(sys.argv[1])
    if sys.argv[2] == "--write-map":
        write_map(source)
        return
    header = declared(source)
    failed = False
    for place, names in (("the map", mapped(source)), ("the library", exported(sys.argv[2]))):
        for name in sorted(header - names):
            print(f"{place} lacks {name}, which latchwork.h declares")
        for name in sorted(names - header):
            print(f"{place} has {name}, which latchwork.h does not declare")
        failed = failed or names != header
    print(f"{len(header)} functions in latchwork.h")
    sys.exit(failed)


if __name__ == "__main__":
    main()
