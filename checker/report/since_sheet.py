"""What a review says of an older report, as lines of its sheet."""

from checker.report import words
from checker.report.fingerprint import fingerprint_of
from checker.report.sheet import Sheet
from checker.report.since import Since, Stood
from checker.review.finding import Finding
from checker.review.review import Review
from checker.text import plain


def parted(
    findings: tuple[Finding, ...], since: Since
) -> tuple[tuple[Finding, ...], tuple[Finding, ...]]:
    """The open findings that became worse, and those that did not."""
    open_ = [each for each in findings if each.is_open]
    worse = tuple(each for each in open_ if since.made_worse(each))
    return worse, tuple(each for each in open_ if not since.made_worse(each))


def since_lines(sheet: Sheet, review: Review, since: Since, worse: tuple[Finding, ...]) -> None:
    """What the older report is, and how many findings are worse than in it."""
    ways = [since.way(finding) for finding in worse]
    counts = ", ".join(
        f"{ways.count(way)} {way}" for way in ("appeared", "worse") if ways.count(way)
    )
    style = "bold red" if worse else "bold"
    sheet.heading(f"Worse since {source_text(since)}: {counts or 'nothing'}", style)
    if since.is_new:
        sheet.line("It reviewed no spec of this name, so that everything open counts as new.")
    for sentence in since.old.differences(review.book):
        sheet.line(plain(sentence))


def source_text(since: Since) -> str:
    """The older report by name and day."""
    return plain(f"{since.old.file} of {since.old.on}")


def cleared_lines(sheet: Sheet, since: Since) -> None:
    """What was open in the older report and is not now."""
    if since.cleared:
        sheet.heading(f"Cleared since then, or judged no more: {len(since.cleared)}")
    for stood in since.cleared:
        sheet.line(cleared_text(stood), indent=2, label="-")


def cleared_text(stood: Stood) -> str:
    """A finding that was open, on one line."""
    was = f"{stood.outcome} at the level {stood.level}"
    return words.prose(f"{stood.title} ({stood.rule}), {stood.part}: {was}")


def before_text(since: Since, finding: Finding) -> str:
    """What an open finding was in the older report."""
    was = since.before.get(fingerprint_of(finding))
    if was is None:
        return "no such finding"
    level = f" at the level {was.level}" if was.level is not None else ""
    margin = f"; {was.margin_text}" if was.margin_text else ""
    return words.prose(f"{was.outcome}{level}{margin}")


def stood_heading(sheet: Sheet, since: Since, stood: tuple[Finding, ...]) -> None:
    """How much of what is open was so before; it does not count for the exit status."""
    if stood:
        better = sum(since.way(finding) == "better" for finding in stood)
        part = f", {better} better now" if better else ""
        sheet.heading(f"Stood before: {words.counted(len(stood), 'open finding')}{part}")
