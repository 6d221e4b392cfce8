"""Lists that become objects when they are first asked for: the stops of a large plan, or the prices of a certificate, are
hundreds of thousands, and whoever wants a total within a time limit has no time for them."""

from typing import TYPE_CHECKING

from . import _core


class Late:
    """Of a class with such a list ``x`` it and the slot ``_late_x`` are empty at first, and in this there is what the list is
    made of."""

    __slots__ = ()

    if not TYPE_CHECKING:  # or any attribute would pass for one

        def __getattr__(self, name):
            if hasattr(type(self), "_late_" + name):
                return _core._late_list(self, name)
            raise AttributeError(f"{type(self).__name__!r} object has no attribute {name!r}")
