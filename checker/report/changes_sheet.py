"""What a revision changed, as text for a terminal."""

from checker.report import words
from checker.report.sheet import Sheet
from checker.review.changes import Changes, InputChange, Moved
from checker.review.finding import Finding
from checker.review.review import Review
from checker.review.rule import LEVELS
from checker.text import plain

_LABEL = 12
_MOST_MARGINS = 12
_LONGEST = 60
HEADINGS = {
    "appeared": "Appeared: open now and not before",
    "worse": "Worse: open before, and further from its limit or graver now",
    "moved": "Moved: open before and now, for another reason",
    "better": "Better: still open, but nearer its limit or less grave",
    "cleared": "Cleared: open before and not now",
}


def changes_sheet(changes: Changes, *, width: int, colour: bool, everything: bool = False) -> str:
    """Write what differs between two reviews.

    Args:
        changes: the comparison.
        width: columns of the terminal.
        colour: whether styles are printed.
        everything: list every margin that moved, also of what meets its rule in both.
    """
    sheet = Sheet(width, colour=colour)
    _head(sheet, changes)
    open_either = [each for each in changes.moved if each.is_open_in_one]
    for way, heading in HEADINGS.items():
        found = [each for each in open_either if each.way == way]
        if found:
            sheet.heading(f"{heading} ({len(found)})")
        for each in found:
            _moved(sheet, each)
    if not open_either:
        sheet.heading("No finding appeared, cleared or moved")
    closed = [each for each in changes.moved if not each.is_open_in_one]
    _margins(sheet, closed, everything)
    _inputs(sheet, changes)
    sheet.heading("Bear in mind")
    for caution in words.CAUTIONS:
        sheet.line(caution, indent=2, label="-")
    return sheet.text()


def _head(sheet: Sheet, changes: Changes) -> None:
    name = words.prose(changes.new.loaded.spec.drive.name)
    sheet.line(f"What a revision changed: {name}", style="bold")
    for label, review in (("Old", changes.old), ("New", changes.new)):
        sheet.line(_review_text(review), indent=_LABEL, label=label)
    sheet.line(f"on {changes.new.on.isoformat()}", indent=_LABEL, label="Held")


def _review_text(review: Review) -> str:
    revision = review.loaded.spec.drive.revision
    named = f" (revision {words.prose(revision)})" if revision else ""
    open_ = words.open_text(review).removeprefix("Open: ").removesuffix(".")
    still = f"; open: {open_}" if open_ else ""
    return f"{plain(review.loaded.document.name)}{named}: {review.disposition}{still}"


def _moved(sheet: Sheet, moved: Moved) -> None:
    finding = moved.shown
    level = finding.level or (moved.before.level if moved.before else None) or LEVELS[-1]
    text = f"{words.prose(finding.rule.title)} ({level}, {plain(finding.rule.id)})"
    sheet.line(text, indent=2, label="-")
    sheet.line(words.part_text(finding), indent=4 + _LABEL, label="    Part")
    for label, each in (("Before", moved.before), ("Now", moved.after)):
        sheet.line(outcome_text(each), indent=4 + _LABEL, label=f"    {label}")


def outcome_text(finding: Finding | None) -> str:
    """What came out of a rule on a part, on one line; ``None`` is a part or rule not there."""
    if finding is None:
        return "no such part"
    level = f"{finding.level}: " if finding.level else ""
    if finding.outcome == "not shown":
        missing = ", ".join(".".join(map(str, path)) for path in (finding.place, *finding.related))
        return plain(f"{level}not shown, for want of {missing}") if missing else f"{level}not shown"
    found = words.found_text(finding)
    said = "" if found == finding.outcome else f", {found}"
    return f"{level}{finding.outcome}{said}"


def _margins(sheet: Sheet, closed: list[Moved], everything: bool) -> None:
    """What meets its rule in both, with another margin; the greatest losses first."""
    lost = [each for each in closed if each.way == "worse"]
    gained = [each for each in closed if each.way == "better"]
    other = [each for each in closed if each.way not in ("worse", "better")]
    if not closed:
        return
    sheet.heading("Of what is open in neither")
    sheet.line(
        f"{len(lost)} lost margin, {len(gained)} gained margin, {len(other)} came out differently."
    )
    losses = sorted(lost, key=_loss, reverse=True)
    shown = [*losses, *other, *gained] if everything else losses[:_MOST_MARGINS]
    for each in shown:
        finding = each.shown
        before, after = outcome_text(each.before), outcome_text(each.after)
        text = f"{plain(finding.rule.id)}, {words.part_text(finding)}: {before}; now {after}"
        sheet.line(text, indent=2, label="-")
    if len(shown) < len(closed):
        sheet.line(f"{len(closed) - len(shown)} more with --all.")


def _loss(moved: Moved) -> float:
    """How much of its margin a finding lost."""
    before, after = (each.margin or 0.0 if each else 0.0 for each in (moved.before, moved.after))
    return (before - after) / max(abs(before), abs(after))


def _inputs(sheet: Sheet, changes: Changes) -> None:
    if not changes.inputs:
        sheet.heading("No stated value changed")
        return
    sheet.heading(f"Stated values that changed ({len(changes.inputs)})")
    for each in changes.inputs:
        sheet.line(input_text(changes, each), indent=2, label="-")


def input_text(changes: Changes, change: InputChange) -> str:
    """A stated value before and now, with the lines where it stands."""
    old, new = changes.old.loaded.document, changes.new.loaded.document
    before = stated_text(change.before, old.place(change.old_path).line)
    after = stated_text(change.after, new.place(change.new_path).line)
    return f"{plain(change.name)}: {before}, now {after}"


def stated_text(value: str | None, line: int) -> str:
    """A stated value, cut short where it is long, with its line; ``None`` is not stated."""
    if value is None:
        return "not stated"
    text = words.prose(value)
    return f"{text if len(text) <= _LONGEST else f'{text[:_LONGEST]}…'} (line {line})"
