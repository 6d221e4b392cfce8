"""Builds a tiny host in each way a host can take latchwork in, and runs it.

consumers_test.py WAY SOURCE BUILD: WAY is subdirectory, static, shared or pkg-config; BUILD a scratch folder.
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


def configure(source, build, *options):
    run("cmake", "-S", source, "-B", build, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug", "-DLATCHWORK_FETCH=OFF", *options)


def check(output, expected):
    if expected not in output:
        sys.exit(f"the host printed {output!r}, without {expected!r}")
    print(output.strip())


def install(source, build, prefix, shared):
    configure(source, build, f"-DCMAKE_INSTALL_PREFIX={prefix}", f"-DBUILD_SHARED_LIBS={shared}", "-DLATCHWORK_TESTS=OFF",
              "-DLATCHWORK_EXAMPLES=OFF", "-DCMAKE_INSTALL_LIBDIR=lib")
    run("cmake", "--build", build)
    run("cmake", "--install", build)


def main():
    way, source, build = sys.argv[1], pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(sys.argv[3]).resolve()
    shutil.rmtree(build / "host", ignore_errors=True)
    shutil.rmtree(build / "prefix", ignore_errors=True)
    consumers = source / "tests/package/consumers"
    prefix = build / "prefix"
    if way == "subdirectory":
        configure(consumers / "subdirectory", build / "host", f"-DLATCHWORK_SOURCE={source}")
        run("cmake", "--build", build / "host", "--target", "host")
        check(run(build / "host/host"), "verified")
    elif way in ("static", "shared"):
        install(source, build / "library", prefix, "ON" if way == "shared" else "OFF")
        for schema in ("grid", "strip", "panel", "machine", "plan"):
            if not (prefix / f"share/latchwork/schema/{schema}.schema.json").is_file():
                sys.exit(f"the schema of {schema} files is not installed")
        configure(consumers / "installed", build / "host", f"-DCMAKE_PREFIX_PATH={prefix}")
        run("cmake", "--build", build / "host")
        check(run(build / "host/host"), "verified")
        check(run(build / "host/host_c"), "row 9")
    elif way == "pkg-config":
        install(source, build / "library", prefix, "OFF")
        environment = dict(os.environ, PKG_CONFIG_PATH=str(prefix / "lib/pkgconfig"))
        flags = run("pkg-config", "--cflags", "--libs", "latchwork_c", env=environment).split()
        (build / "host").mkdir(parents=True)
        run("cc", "-std=c99", "-pedantic", "-Wall", "-Wextra", "-Werror", consumers / "main.c", "-o", build / "host/host_c",
            *flags, f"-Wl,-rpath,{prefix}/lib")
        check(run(build / "host/host_c"), "row 9")
    else:
        sys.exit(f"no such way: {way}")


main()
