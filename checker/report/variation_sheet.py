"""A variation as a table for a terminal and as CSV."""

import csv
import io

from checker.known import Unknown
from checker.report.sheet import Sheet
from checker.report.variation import Range, Step, answer_cells, heads, outcome_cells
from checker.review.review import Review
from checker.review.rule import LEVELS
from checker.text import plain

_RISKY = ("=", "+", "-", "@", "\t", "\r")


def variation_sheet(
    review: Review, ranges: tuple[Range, ...], steps: list[Step], *, width: int, colour: bool
) -> str:
    """Write the table of a variation.

    Args:
        review: the review of the spec as it is.
        ranges: the fields varied.
        steps: every combination.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    sheet.line(f"{plain(review.loaded.document.name)}: {_names(ranges)} varied", style="bold")
    for each in ranges:
        stated = "not stated" if each.stated is None else f"stated as {plain(str(each.stated))}"
        sheet.line(f"{plain(each.field)} is {stated}", indent=2)
    sheet.gap()
    asked = heads(steps)
    letters = [f"({chr(ord('a') + index)})" for index in range(len(asked))]
    fields = [plain(each.field.rpartition(".")[2]) for each in ranges]
    sheet.table(
        (*fields, "Disposition", "Open", *letters, "Gravest"),
        [_row(ranges, step, len(asked)) for step in steps],
    )
    sheet.line("Open: warnings, cautions and advisories, falling short or not shown.")
    for letter, head in zip(letters, asked, strict=True):
        sheet.line(f"{letter} {head}")
    return sheet.text()


def _names(ranges: tuple[Range, ...]) -> str:
    return " and ".join(plain(each.field) for each in ranges)


def _row(ranges: tuple[Range, ...], step: Step, asked: int) -> tuple[str, ...]:
    """The widest cell at the end, where it wraps without pushing the others apart."""
    values = [str(each.values[index]) for each, index in zip(ranges, step.at, strict=True)]
    disposition, *counts, gravest = outcome_cells(step)
    answers = answer_cells(step) or ["-"] * asked
    return (*map(plain, values), disposition, "/".join(counts), *answers, gravest)


def variation_csv(ranges: tuple[Range, ...], steps: list[Step]) -> str:
    """The table as CSV (RFC 4180): numbers bare, their units in the head.

    Args:
        ranges: the fields varied.
        steps: every combination.
    """
    file = io.StringIO()
    rows = csv.writer(file)
    rows.writerow(
        [
            *(_harmless(f"{each.field} [{each.unit or '1'}]") for each in ranges),
            "disposition",
            *(f"open {level}" for level in LEVELS),
            "gravest",
            *(
                _harmless(f"{head} [{unit}]")
                for head, unit in zip(heads(steps), _units(steps), strict=True)
            ),
        ]
    )
    for step in steps:
        at = [each.numbers[index] for each, index in zip(ranges, step.at, strict=True)]
        answers = [
            "" if isinstance(each.value, Unknown) else each.value.value for each in step.answers
        ]
        cells = [_harmless(cell) for cell in outcome_cells(step)]
        rows.writerow([*at, *cells, *answers])
    return file.getvalue()


def _units(steps: list[Step]) -> list[str]:
    """SI unit of each column of answers, from the first step that knows it."""
    columns = zip(*(step.answers for step in steps if step.answers), strict=True)
    return [
        next((each.value.unit for each in column if not isinstance(each.value, Unknown)), "")
        for column in columns
    ]


def _harmless(cell: str) -> str:
    """A text that a spreadsheet does not take for a formula."""
    return f"'{cell}" if cell.startswith(_RISKY) and cell != "-" else cell
