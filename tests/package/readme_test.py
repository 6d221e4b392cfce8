"""Runs the code of each README and compares what it prints with the text block below each.

readme_test.py SOURCE BUILT [--renew]: BUILT is a build tree with the C ABI and the Python bindings.
"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile

READMES = {  # and the languages that each shows
    "README.md": {"cpp", "python", "c"},
    "examples/README.md": {"python"},
    "bindings/python/README.md": {"python"},
}
BLOCK = re.compile(r"```(cpp|python|c)\n(.*?)\n```\n\n()```text\n(.*?)```\n", re.S)


def run(*command, **options):
    result = subprocess.run([str(word) for word in command], text=True, capture_output=True, **options)
    if result.returncode != 0:
        sys.exit(f"{' '.join(map(str, command))} failed:\n{result.stdout}\n{result.stderr}")
    return result.stdout


def printed(language, code, source, built, folder):
    environment = dict(os.environ, PYTHONPATH=str(built / "python"), LD_LIBRARY_PATH=str(built / "bindings/c"))
    if language == "python":
        return run(sys.executable, "-c", code, env=environment)
    program = folder / "program"
    if language == "cpp":
        (folder / "program.cpp").write_text(code, encoding="utf-8")
        run("c++", "-std=c++20", "-I", source / "include", folder / "program.cpp", "-o", program, built / "liblatchwork.a",
            "-lfmt")
    else:
        (folder / "program.c").write_text(code, encoding="utf-8")
        run("cc", "-std=c99", "-pedantic", "-Wall", "-Wextra", "-Werror", "-I", source / "bindings/c/include",
            folder / "program.c", "-o", program, "-L", built / "bindings/c", "-llatchwork_c")
    return run(program, env=environment)


def check(readme, languages, source, built, renew):
    """Whether each sample prints what stands below it; `renew` writes there what it prints."""
    text = (source / readme).read_text(encoding="utf-8")
    blocks = list(BLOCK.finditer(text))
    if {block.group(1) for block in blocks} != languages:
        sys.exit(f"{readme} must show {', '.join(sorted(languages))}, each with its output below")
    same = True
    for block in reversed(blocks):
        with tempfile.TemporaryDirectory() as folder:
            made = printed(block.group(1), block.group(2), source, built, pathlib.Path(folder))
        tidy = "".join(line.rstrip() + "\n" for line in made.rstrip().splitlines())
        if tidy == block.group(4):
            continue
        text = text[: block.start(4)] + tidy + text[block.end(4) :]
        if not renew:
            same = False
            print(f"the {block.group(1)} sample of {readme} prints\n{tidy}and not\n{block.group(4)}")
    if renew:
        (source / readme).write_text(text, encoding="utf-8")
    return same


def main():
    source, built = (pathlib.Path(argument).resolve() for argument in sys.argv[1:3])
    sys.exit(not all([check(*readme, source, built, "--renew" in sys.argv) for readme in READMES.items()]))


main()
