"""Words for people that several classes use."""


def count_of(count: int, thing: str, ending: str = "s") -> str:
    """A count with its noun: "1 row", "3 rows", "0 stitches" (ending "es")."""
    return f"{count} {thing}{'' if count == 1 else ending}"


def extent(columns: int, rows: int) -> str:
    """A grid's or panel's: "2 stitches x 1 row"."""
    return f"{count_of(columns, 'stitch', 'es')} x {count_of(rows, 'row')}"
