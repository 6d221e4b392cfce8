"""Builds a tiny host in each way a host can take latchwork in, and runs it.

consumers_test.py WAY SOURCE BUILT SCRATCH: WAY is subdirectory, static, shared or pkg-config; BUILT is a build tree of
a static library, for the ways that need no other.
"""
import os
import pathlib
import shutil
import subprocess
import sys


def run(*command, **options):
    result = subprocess.run([str(word) for word in command], text=True, capture_output=True, **options)
    if result.returncode != 0:
        sys.exit(f"{' '.join(map(str, command))} failed:\n{result.stdout}\n{result.stderr}")
    return result.stdout


# What is tried is how a host is put together, not how fast it is: nothing is optimised, unless the environment asks for
# a build type, as one with a compiler cache does.
def configure(source, build, *options, generator="Ninja"):
    run("cmake", "-S", source, "-B", build, "-G", generator, "-DLATCHWORK_FETCH=OFF", "-DCMAKE_UNITY_BUILD=ON", *options)


def check(output, expected):
    if expected not in output:
        sys.exit(f"the host printed {output!r}, without {expected!r}")
    print(output.strip())


def find_pkg_config_folder(prefix):
    return next(prefix.glob("lib/**/pkgconfig"))


def main():
    os.environ.setdefault("CMAKE_BUILD_TYPE", "None")
    way = sys.argv[1]
    source, built, build = (pathlib.Path(argument).resolve() for argument in sys.argv[2:5])
    shutil.rmtree(build / "host", ignore_errors=True)
    shutil.rmtree(build / "prefix", ignore_errors=True)
    consumers = source / "tests/package/consumers"
    prefix = build / "prefix"
    if way == "subdirectory":
        # A host gets none of the library's warnings; only with them has a cache what is built here, and only if it is
        # built from within its own folder, as make does and Ninja does not.
        cached = ["-DLATCHWORK_WARNINGS=ON"] if os.environ["CMAKE_BUILD_TYPE"] != "None" else []
        configure(consumers / "subdirectory", build / "host", f"-DLATCHWORK_SOURCE={source}", *cached,
                  generator="Unix Makefiles")
        run("cmake", "--build", build / "host", "--target", "host", "--parallel", os.cpu_count())
        check(run(build / "host/host"), "verified")
    elif way in ("static", "shared"):
        if way == "shared":
            built = build / "library"
            configure(source, built, "-DBUILD_SHARED_LIBS=ON", "-DLATCHWORK_TESTS=OFF", "-DLATCHWORK_EXAMPLES=OFF")
            run("cmake", "--build", built)
        run("cmake", "--install", built, "--prefix", prefix)
        schemas = {path.name for path in (source / "src/file/schema").glob("*.schema.json")}
        installed = {path.name for path in (prefix / "share/latchwork/schema").iterdir()}
        if not schemas or installed != schemas:
            sys.exit(f"installed are the schemas {sorted(installed)}, and not {sorted(schemas)}")
        configure(consumers / "installed", build / "host", f"-DCMAKE_PREFIX_PATH={prefix}")
        run("cmake", "--build", build / "host")
        check(run(build / "host/host"), "verified")
        check(run(build / "host/host_c"), "row 9")
    elif way == "pkg-config":
        run("cmake", "--install", built, "--prefix", prefix)
        folder = find_pkg_config_folder(prefix)
        paths = [line for line in (folder / "latchwork_c.pc").read_text().splitlines() if "/" in line]
        if not paths or any("//" in line for line in paths):
            sys.exit(f"latchwork_c.pc has paths with a double slash, or none: {paths}")
        environment = dict(os.environ, PKG_CONFIG_PATH=str(folder))
        flags = run("pkg-config", "--cflags", "--libs", "latchwork_c", env=environment).split()
        (build / "host").mkdir(parents=True)
        run("cc", "-std=c99", "-pedantic", "-Wall", "-Wextra", "-Werror", consumers / "main.c", "-o", build / "host/host_c",
            *flags, f"-Wl,-rpath,{folder.parent}")
        check(run(build / "host/host_c"), "row 9")
    else:
        sys.exit(f"no such way: {way}")


main()
