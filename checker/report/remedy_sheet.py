"""What would clear a finding, as text for a terminal."""

from checker.report import words
from checker.report.awaited_words import hint_lines
from checker.report.sheet import Sheet
from checker.review.finding import Finding
from checker.review.remedy import Remedy
from checker.review.review import Review
from checker.spec.problem import dotted
from checker.text import plain

_LABEL = 12
_MOST_OPENED = 3
_CAUTIONS = (
    "A change listed here only clears this finding by these rules. It is a place to begin the "
    "calculation and the drawing, and no instruction.",
    "A rating, strength or stiffness of a part is changed by another part, never by another figure "
    "in the spec.",
)


def remedy_sheet(
    review: Review, finding: Finding, found: list[Remedy], *, width: int, colour: bool
) -> str:
    """Write the smallest changes that clear a finding.

    Args:
        review: the review that found it.
        finding: the finding.
        found: the changes, the best first.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    _head(sheet, review, finding)
    if not found:
        sheet.heading("No change of one stated number clears it")
        sheet.line(
            "Every number that its value was computed from was moved up to fourfold, one by one."
        )
    else:
        sheet.heading(f"One change that clears it at the level {finding.level}")
    for number, remedy in enumerate(found, 1):
        _remedy(sheet, review, remedy, number)
    sheet.heading("Bear in mind")
    for caution in (*_CAUTIONS, *words.CAUTIONS[1:3]):
        sheet.line(caution, indent=2, label="-")
    return sheet.text()


def _head(sheet: Sheet, review: Review, finding: Finding) -> None:
    sheet.line(f"Falls short: {words.prose(finding.rule.title)}", style="bold")
    for label, text in (
        ("Rule", f"{plain(finding.rule.id)}, {finding.level}"),
        ("Part", words.part_text(finding)),
        ("Found", words.found_text(finding)),
        ("Place", words.place_text(review.loaded.document, finding.place)),
        ("Remedy", words.prose(finding.rule.remedy)),
    ):
        sheet.line(text, indent=_LABEL, label=label)


def _remedy(sheet: Sheet, review: Review, remedy: Remedy, number: int) -> None:
    line = review.loaded.document.place(remedy.path).line
    sheet.gap()
    before, after = plain(str(remedy.before)), plain(str(remedy.after))
    title = f"{plain(dotted(remedy.path))}: {before} becomes {after}"
    sheet.line(title, indent=4, label=f"{number:>2}", style="bold")
    sheet.line(f"{remedy.share:+.1%}, line {line}", indent=4 + _LABEL, label="    Change")
    sheet.line(_consequence(remedy), indent=4 + _LABEL, label="    Besides")


def _consequence(remedy: Remedy) -> str:
    """What else the change does to the review."""
    opened = [f"{plain(each.rule.id)} at {words.part_text(each)}" for each in remedy.opens]
    cleared = len(remedy.changes.of("cleared"))
    clears = f"clears {words.counted(cleared, 'finding')} in all" if cleared else ""
    if not opened:
        said = "opens or worsens no warning and no caution"
        return f"{said}; {clears}" if clears else said
    said = f"opens or worsens {len(opened)}: {words.listed(opened, _MOST_OPENED)}"
    return f"{said}; {clears}" if clears else said


def to_state_sheet(review: Review, finding: Finding, *, width: int, colour: bool) -> str:
    """Write what a finding that is not shown waits for.

    Args:
        review: the review.
        finding: a finding that is not shown.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    sheet.line(f"Not shown: {words.prose(finding.rule.title)}", style="bold")
    sheet.line(plain(finding.rule.id), indent=_LABEL, label="Rule")
    sheet.line(words.part_text(finding), indent=_LABEL, label="Part")
    missing = (finding.place, *finding.related)
    for path in missing:
        line = review.loaded.document.place(path).line
        sheet.line(plain(f"State {dotted(path)} (line {line})"), indent=2, label="-")
    for hint in hint_lines(missing):
        sheet.line(hint, indent=2, label="-")
    if finding.reason:
        sheet.line(words.prose(finding.reason), indent=2, label="-")
    return sheet.text()
