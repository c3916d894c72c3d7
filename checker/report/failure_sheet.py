"""The failure table on the sheet for a terminal."""

from checker.measures.design import Design
from checker.report import words
from checker.report.failure_table import HEADS, failure_table
from checker.report.sheet import Sheet

_LABEL = 24


def failures(sheet: Sheet, design: Design) -> None:
    """Write what fails, part by part; nothing where the spec says nothing of failures."""
    rows = failure_table(design)
    if rows:
        sheet.heading("Failures: what the spec states; a dash is left open")
    for row in rows:
        part, failure, *others = (words.prose(text) or "-" for text in row.texts)
        sheet.gap()
        sheet.line(f"{part}: {failure}", indent=2, style="bold")
        for head, text in zip(HEADS[2:], others, strict=True):
            sheet.line(text, indent=2 + _LABEL, label=f"  {head}")
