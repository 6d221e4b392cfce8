"""The build backend: scikit-build-core, but for source archives.

A source archive made here would miss the C++ above this folder and fail where it is unpacked, so none is made.
"""

from scikit_build_core.build import *  # noqa: F403


def build_sdist(sdist_directory, config_settings=None):
    raise SystemExit(
        "latchwork offers wheels only: a source archive of bindings/python would miss the C++ library above it. "
        "Build a wheel from the whole repository: pip wheel --no-deps ./bindings/python"
    )
