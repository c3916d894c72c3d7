"""A sheet of text for a terminal: lines with hanging indents, labels, tables, colour as a help.

Text goes in as text and never as markup, so that nothing in a spec can set a style. Whether and
how wide to print is decided by the caller; the same calls always make the same sheet.
"""

from collections.abc import Sequence
from io import StringIO

from rich.console import Console
from rich.table import Table
from rich.text import Text

_NARROWEST = 40
_WIDEST = 110
"""Running text in longer lines is hard to read."""


class Sheet:
    """Collects the lines of a sheet.

    Args:
        width: columns of the terminal.
        colour: whether styles are printed.
    """

    def __init__(self, width: int, *, colour: bool) -> None:
        self._width = max(_NARROWEST, width)
        self._console = Console(
            file=StringIO(),
            width=self._width,
            height=100,
            color_system="standard" if colour else None,
            force_terminal=colour,
            no_color=not colour,
            legacy_windows=False,
            highlight=False,
            markup=False,
            emoji=False,
            _environ={},
        )
        self._lines: list[Text] = []

    def text(self) -> str:
        """Everything on the sheet."""
        self._flush()
        file = self._console.file
        assert isinstance(file, StringIO)
        lines = file.getvalue().splitlines()
        return "".join(f"{line.rstrip()}\n" for line in lines)

    def gap(self) -> None:
        """An empty line."""
        self._lines.append(Text())

    def heading(self, text: str, style: str = "bold") -> None:
        """A heading, with an empty line before it."""
        self.gap()
        self.line(text, style=style)

    def line(self, text: str, *, indent: int = 0, label: str = "", style: str = "") -> None:
        """A text, wrapped behind its indent.

        Args:
            text: the text.
            indent: columns before the text.
            label: what stands in the indent of the first line.
            style: style of the text.
        """
        room = min(self._width, _WIDEST) - indent
        first = Text(label.ljust(indent)[:indent], style="bold" if style else "dim")
        for part in Text(text, style=style).wrap(self._console, room, overflow="fold"):
            part.rstrip()
            self._lines.append(Text.assemble(first, part))
            first = Text(" " * indent)

    def table(self, heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        """A table whose first column is text and whose others are figures."""
        self._flush()
        table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="dim")
        for index, head in enumerate(heads):
            table.add_column(
                Text(head), justify="right" if index else "left", overflow="fold", min_width=4
            )
        for row in rows:
            table.add_row(*(Text(cell) for cell in row))
        self._console.print(table)

    def _flush(self) -> None:
        """Print what is collected: one call for many lines costs far less than one for each."""
        if self._lines:
            self._console.print(Text("\n").join(self._lines), soft_wrap=True)
            self._lines.clear()
