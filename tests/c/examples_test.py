"""Runs an example program and compares what it prints with the text beside its source.

examples_test.py EXPECTED COMMAND...: with LATCHWORK_RENEW=1 in the environment EXPECTED is written anew instead.
"""
import difflib
import os
import pathlib
import subprocess
import sys

expected_file = pathlib.Path(sys.argv[1])
result = subprocess.run(sys.argv[2:], capture_output=True, text=True, encoding="utf-8")
if result.returncode != 0:
    sys.exit(f"it ended with {result.returncode}:\n{result.stderr}{result.stdout}")
if os.environ.get("LATCHWORK_RENEW") == "1":
    expected_file.write_text(result.stdout, encoding="utf-8")
expected = expected_file.read_text(encoding="utf-8")
if result.stdout != expected:
    lines = difflib.unified_diff(expected.splitlines(), result.stdout.splitlines(), str(expected_file.name), "printed", lineterm="")
    sys.exit("\n".join(lines))
