"""The one exception latchwork raises for bad input."""

from ._enums import ErrorCode


class Error(ValueError):
    """Bad input. ``str(error)`` names place, value and limit; the attributes spare you from parsing it.

    What does not apply is left at its default, as in C++ and C: row 0, column -1, line 0, field "", character 0.
    """

    __slots__ = ("code", "row", "column", "line", "field", "character")

    code: ErrorCode
    """What went wrong."""
    row: int
    """Grid row 1..R, counted up from the cast-on; 0: none."""
    column: int
    """Grid column 0..W-1 from the left on the RS; -1: none."""
    line: int
    """Line of a text or file, from 1; 0: none."""
    field: str
    """Argument, or path of a field in a file ("crossings[2].left"); "": none."""
    character: int
    """Character of the text of a field, from 1; 0: none."""

    def __init__(
        self,
        message: str,
        code: ErrorCode,
        row: int = 0,
        column: int = -1,
        line: int = 0,
        field: str = "",
        character: int = 0,
    ) -> None:
        super().__init__(message)
        self.code = code
        self.row = row
        self.column = column
        self.line = line
        self.field = field
        self.character = character

    def __reduce__(self) -> tuple[object, ...]:
        place = (self.row, self.column, self.line, self.field, self.character)
        return type(self), (str(self), self.code, *place)
