"""cmake/install_packages.sh, by which the README's two commands get what they need: nothing is asked of the network when
nothing is missing; what is missing is said and installed, with sudo where that is wanted; where it cannot be, the one command
to run is told. The system's programs are stand-ins that write down how they are called.

Usage: install_packages_test.py SOURCE_DIR
"""

import pathlib
import subprocess
import sys
import tempfile

SCRIPT = pathlib.Path(sys.argv[1]) / "cmake" / "install_packages.sh"
CALLED = 'echo "$(basename "$0") $*" >>"$LOG"\n'
# "ninja" alone is installed. apt-get installs when it may: at once, after an update, or never.
STAND_INS = {
    "dpkg-query": 'for last; do :; done; [ "$last" = ninja ] && printf installed || printf not-installed\n',
    "id": 'echo "$USER_ID"\n',
    "sudo": CALLED + 'exec "$@"\n',
    "apt-get": CALLED
    + 'case "$ARCHIVE $1" in "there "*) ;; "stale update") : >"$LOG.fresh" ;; "stale install") [ -e "$LOG.fresh" ] ;; *) exit 100 ;; esac\n',
    "basename": 'exec /usr/bin/basename "$@"\n',
    "env": 'exec /usr/bin/env "$@"\n',
}


def asked(packages: str, *, user: int, archive: str, sudo: bool = True) -> tuple[subprocess.CompletedProcess, list[str]]:
    """How the script ends for these packages, and which of sudo and apt-get it called."""
    with tempfile.TemporaryDirectory() as made:
        folder = pathlib.Path(made)
        for name, body in STAND_INS.items():
            if name != "sudo" or sudo:
                (folder / name).write_text("#!/bin/sh\n" + body)
                (folder / name).chmod(0o755)
        log = folder / "log"
        environment = {"PATH": made, "LOG": str(log), "USER_ID": str(user), "ARCHIVE": archive}
        ended = subprocess.run(["/bin/sh", SCRIPT, *packages.split()], env=environment, capture_output=True, text=True)
        return ended, log.read_text().splitlines() if log.exists() else []


def main() -> None:
    ended, calls = asked("ninja", user=1000, archive="gone", sudo=False)
    assert (ended.returncode, ended.stdout, ended.stderr, calls) == (0, "", "", []), (ended, calls)

    ended, calls = asked("ninja cmake fmt", user=0, archive="there")
    assert ended.returncode == 0 and ended.stdout == "Installing from Debian's archive: cmake fmt\n", ended
    assert calls == ["apt-get install -y -qq --no-install-recommends cmake fmt"], calls

    # An old list is asked for again, and only then.
    ended, calls = asked("cmake", user=0, archive="stale")
    assert ended.returncode == 0 and [call.split()[1] for call in calls] == ["install", "update", "install"], (ended, calls)

    ended, calls = asked("cmake", user=1000, archive="there")
    assert ended.returncode == 0 and calls[0].startswith("sudo ") and "apt-get install" in calls[0], (ended, calls)

    told = "  apt-get update && apt-get install -y --no-install-recommends cmake fmt\n"
    ended, calls = asked("ninja cmake fmt", user=1000, archive="there", sudo=False)
    assert ended.returncode == 1 and calls == [] and ended.stderr.endswith("Run this as root, then try again:\n" + told), ended
    ended, _ = asked("cmake fmt", user=0, archive="gone")
    assert ended.returncode == 1 and ended.stderr.endswith("Run this, then try again:\n" + told), ended
    ended, _ = asked("cmake", user=1000, archive="gone")
    told = "  sudo apt-get update && sudo apt-get install -y --no-install-recommends cmake\n"
    assert ended.returncode == 1 and ended.stderr.endswith(told), ended
    print("packages are asked for as told")


main()
