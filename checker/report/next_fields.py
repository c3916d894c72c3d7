"""What to state next, as text for a terminal: what most rules wait for comes first."""

from checker.report import words
from checker.report.awaited import awaited_fields
from checker.report.sheet import Sheet
from checker.review.review import Review
from checker.spec.problem import dotted
from checker.text import plain

_MOST = 15
_MOST_FIELDS = 3


def next_fields_sheet(review: Review, *, width: int, colour: bool) -> str:
    """Write what a spec says so far, and what to measure or state next.

    Args:
        review: the review of a spec that leaves much unknown.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    document = review.loaded.document
    sheet.line(f"Written: {plain(document.name)}", style="bold")
    sheet.line(words.counts_text(review))
    groups = sorted(awaited_fields(review.findings), key=lambda each: -len(each.rules))
    if groups:
        sheet.heading("Find out and state next, what most rules wait for first")
    for group in groups[:_MOST]:
        named = [f"{dotted(path)} (line {document.place(path).line})" for path in group.fields]
        count = words.counted(len(group.rules), "rule")
        sheet.line(f"{plain(words.listed(named, _MOST_FIELDS))}: {count}", indent=2, label="-")
    if len(groups) > _MOST:
        sheet.line(f"The rest is told by: thrustline review {plain(document.name)}")
    sheet.heading("Bear in mind")
    for caution in words.CAUTIONS[:3]:
        sheet.line(caution, indent=2, label="-")
    return sheet.text()
