"""The review sheet as text for a terminal."""

from checker import __version__
from checker.known import Unknown, Value, merged
from checker.report import awaited_words, paper_words, words
from checker.report.awaited import awaited_fields, awaited_reasons
from checker.report.drive_table import DriveTable, MeshRow, drive_table
from checker.report.failure_sheet import failures
from checker.report.gear_limits_sheet import gear_limits
from checker.report.sheet import Sheet
from checker.report.since import Since
from checker.report.since_sheet import (
    before_text,
    cleared_lines,
    parted,
    since_lines,
    stood_heading,
)
from checker.review.digest import rulebook_digest
from checker.review.finding import Finding
from checker.review.review import Review
from checker.review.rule import LEVELS
from checker.spec.document import Document
from checker.spec.problem import dotted
from checker.text import plain

_STYLES = {"warning": "bold red", "caution": "bold yellow", "advisory": "bold cyan"}
_DISPOSITION_STYLES = {
    "hold": "bold red",
    "not for flight": "bold yellow",
    "no open findings": "bold",
}
_LABEL = 12
_MOST_VALUES = 4


def review_sheet(
    review: Review,
    *,
    width: int,
    colour: bool,
    everything: bool = False,
    since: Since | None = None,
) -> str:
    """Write the sheet of a review.

    Args:
        review: the review.
        width: columns of the terminal.
        colour: whether styles are printed.
        everything: also list what meets its rule or does not apply.
        since: the older report it is held against; what became worse then comes first.
    """
    sheet = Sheet(width, colour=colour)
    _head(sheet, review)
    if since is None:
        _open(sheet, review, review.findings)
    else:
        worse, stood = parted(review.findings, since)
        since_lines(sheet, review, since, worse)
        numbers = _open(sheet, review, worse, since=since)
        cleared_lines(sheet, since)
        stood_heading(sheet, since, stood)
        _open(sheet, review, stood, numbers)
    _deviations(sheet, review)
    _remarks(sheet, review)
    if everything:
        _closed(sheet, review)
    sheet.heading("Counts")
    sheet.line(words.counts_text(review))
    _assumptions(sheet, review)
    for design in review.designs.values():
        _drive(sheet, review.loaded.document, drive_table(design))
        gear_limits(sheet, design, review.book)
    failures(sheet, next(iter(review.designs.values())))
    _changes(sheet, review)
    sheet.heading("Bear in mind")
    for caution in words.CAUTIONS:
        sheet.line(caution, indent=2, label="-")
    return sheet.text()


def _head(sheet: Sheet, review: Review) -> None:
    drive = review.loaded.spec.drive
    revision = f", revision {words.prose(drive.revision)}" if drive.revision else ""
    sheet.line(f"Design review: {words.prose(drive.name)}{revision}", style="bold")
    rows = (
        ("Purpose", words.prose(drive.purpose or "")),
        ("Spec", f"{plain(review.loaded.document.name)}, sha256 {review.sha256[:12]}"),
        ("Held", f"on {review.on.isoformat()}"),
        ("Against", words.rulebook_text(review.book, __version__, rulebook_digest(review.book))),
    )
    for label, text in rows:
        if text:
            sheet.line(text, indent=_LABEL, label=label)
    sheet.heading(
        f"Disposition: {review.disposition.upper()}", _DISPOSITION_STYLES[review.disposition]
    )
    sheet.line(f"{words.DISPOSITION_MEANS[review.disposition]} {words.NO_PERMIT}")
    still_open = words.open_text(review)
    if still_open:
        sheet.line(still_open)
    if review.sign_off is not None:
        style = "" if review.sign_off.matches else "bold yellow"
        sheet.line(paper_words.sign_off_text(review.sign_off), style=style)


def _open(
    sheet: Sheet,
    review: Review,
    findings: tuple[Finding, ...],
    numbers: dict[str, int] | None = None,
    since: Since | None = None,
) -> dict[str, int]:
    """What is open among some findings; gives and takes the numbers under which rules stand."""
    numbers = _findings(sheet, review, findings, numbers or {"": 0}, since)
    _awaited(sheet, review, findings)
    return numbers


def _findings(
    sheet: Sheet,
    review: Review,
    findings: tuple[Finding, ...],
    numbers: dict[str, int],
    since: Since | None,
) -> dict[str, int]:
    """What is broken and what falls short, numbered, the worst first.

    The numbers are those under which each rule is explained, and without a rule the last one.
    With an older report each finding says what it was there.
    """
    broken = [finding for finding in findings if finding.outcome == "broken"]
    if broken:
        sheet.heading(words.broken_heading(len(broken)), "bold red")
    number = numbers[""]
    for finding in broken:
        number += 1
        _broken(sheet, review, finding, number)
    for level in LEVELS:
        short = [
            finding
            for finding in findings
            if finding.outcome == "falls short" and finding.level == level
        ]
        if short:
            sheet.heading(words.level_heading(level, len(short)), _STYLES[level])
        for finding in short:
            number += 1
            told = numbers.setdefault(finding.rule.id, number)
            before = "" if since is None else before_text(since, finding)
            _short(sheet, review, finding, number, told, before)
    return {**numbers, "": number}


def _title(sheet: Sheet, number: int, text: str) -> None:
    sheet.gap()
    sheet.line(text, indent=4, label=f"{number:>2}", style="bold")


def _row(sheet: Sheet, label: str, text: str) -> None:
    sheet.line(text, indent=4 + _LABEL, label=f"    {label}")


def _broken(sheet: Sheet, review: Review, finding: Finding, number: int) -> None:
    _title(sheet, number, f"Broken: {words.prose(finding.rule.title)}")
    _row(sheet, "Part", words.part_text(finding))
    _row(sheet, "Reason", words.prose(finding.reason))
    _row(sheet, "Place", words.place_text(review.loaded.document, finding.place))
    _row(sheet, "Measure", words.target_text(finding))
    _row(sheet, "Rule", plain(finding.rule.id))


def _short(
    sheet: Sheet, review: Review, finding: Finding, number: int, told: int, before: str
) -> None:
    """A finding that falls short; ``told`` is the number under which its rule is explained."""
    rule, document = finding.rule, review.loaded.document
    _title(sheet, number, f"Falls short: {words.prose(rule.title)}")
    _row(sheet, "Part", words.part_text(finding))
    _row(sheet, "Judged", words.measure_text(rule))
    _row(sheet, "Found", words.found_text(finding))
    for label, text in words.details_of(finding):
        _row(sheet, label, text)
    if before:
        _row(sheet, "Before", before)
    _row(sheet, "Place", words.place_text(document, finding.place))
    related = [f"{dotted(path)} (line {document.place(path).line})" for path in finding.related]
    if related:
        _row(sheet, "Rests on", plain(words.listed(related, _MOST_VALUES)))
    if finding.reason:
        _row(sheet, "Besides", words.prose(finding.reason))
    if told == number:
        _row(sheet, "Why", words.first_sentence(rule.why))
        _row(sheet, "Remedy", words.first_sentence(rule.remedy))
        _row(sheet, "Source", words.sources_text(rule))
    _row(sheet, "Measure", words.target_text(finding))
    explained = "" if told == number else f", explained under {told}"
    _row(sheet, "Rule", plain(rule.id) + explained)


def _awaited(sheet: Sheet, review: Review, findings: tuple[Finding, ...]) -> None:
    """What is not shown, by what would show it."""
    fields = awaited_fields(findings)
    for level in LEVELS:
        groups = [group for group in fields if group.level == level]
        if groups:
            sheet.heading(f"Not shown at the level {level}", _STYLES[level])
        for group in groups:
            for_what = " for it" if len(group.fields) == 1 else " for them"
            reasons = f"{awaited_words.reasons_text(group)}; " if group.reasons else ""
            text = f"{awaited_words.to_state_text(review.loaded.document, group.fields)}: {reasons}"
            sheet.line(text + awaited_words.waiting_text(group, for_what), indent=2, label="-")
            for hint in awaited_words.hint_lines(group.fields):
                sheet.line(hint, indent=4)
    unanswered = awaited_reasons(findings)
    if unanswered:
        sheet.heading("Not shown, whatever the spec states")
    for group in unanswered:
        reasons, waiting = awaited_words.reasons_text(group), awaited_words.waiting_text(group)
        text = f"{group.level.capitalize()}: {reasons}: {waiting}"
        sheet.line(text, indent=2, label="-")


def _deviations(sheet: Sheet, review: Review) -> None:
    accepted = [finding for finding in review.findings if finding.outcome == "deviation"]
    if accepted:
        sheet.heading("Deviations accepted in the spec")
    for finding in accepted:
        deviation = finding.deviation
        assert deviation is not None
        title = f"{words.prose(finding.rule.title)} ({finding.level}, {plain(finding.rule.id)})"
        sheet.line(title, indent=2, label="-")
        _row(sheet, "Part", words.part_text(finding))
        _row(sheet, "Found", words.found_text(finding))
        _row(sheet, "Accepted", f"by {words.prose(deviation.by)}: {words.prose(deviation.reason)}")
        _row(sheet, "Stands", f"from {deviation.date} to {deviation.expires}")
        if deviation.mitigation:
            _row(sheet, "Mitigation", words.prose(deviation.mitigation))


def _remarks(sheet: Sheet, review: Review) -> None:
    if review.remarks:
        sheet.heading("Remarks of reviewers")
    for each in review.remarks:
        remark = each.remark
        sheet.line(paper_words.target_of(each), indent=2, label="-")
        _row(sheet, "About", paper_words.about_text(each, review.loaded.document))
        _row(sheet, "Says", f"{words.prose(remark.says)} ({words.prose(remark.by)}, {remark.date})")
        _row(sheet, "Answer", paper_words.answer_text(remark))


def _closed(sheet: Sheet, review: Review) -> None:
    meets = [finding for finding in review.findings if finding.outcome == "meets"]
    if meets:
        sheet.heading("Meets")
    for finding in meets:
        text = f"{plain(finding.rule.id)}, {words.part_text(finding)}: {words.found_text(finding)}"
        sheet.line(text, indent=2, label="-")
    idle = [finding for finding in review.findings if finding.outcome == "does not apply"]
    if idle:
        sheet.heading("Does not apply")
    for finding in idle:
        sheet.line(f"{plain(finding.rule.id)}, {words.part_text(finding)}", indent=2, label="-")


def _assumptions(sheet: Sheet, review: Review) -> None:
    """What is assumed, by source; symbols of the same value stand together."""
    by_source: dict[str, dict[str, list[str]]] = {}
    for known in review.assumptions:
        values = by_source.setdefault(words.prose(str(known.origin)), {})
        symbols = values.setdefault(words.value_text(known), [])
        if known.symbol not in symbols:
            symbols.append(known.symbol)
    if by_source:
        sheet.heading("Assumed: not stated in the spec, taken from the source named")
    for source, values in sorted(by_source.items()):
        told = [f"{plain(', '.join(symbols))} = {value}" for value, symbols in values.items()]
        sheet.line(f"{source}: {'; '.join(told)}", indent=2, label="-")


def _drive(sheet: Sheet, document: Document, table: DriveTable) -> None:
    ratio = "" if isinstance(table.ratio, Unknown) else f", ratio {_cell(table.ratio)}"
    sheet.heading(f"The drive{words.set_text(table.ratio_set)}{ratio}")
    if table.points:
        rows = [
            (
                plain(row.point),
                *(
                    f"{_cell(speed)}\n{_cell(torque)}"
                    for speed, torque in zip(row.speeds, row.torques, strict=True)
                ),
            )
            for row in table.points
        ]
        heads = [plain(", ".join(shafts)) for shafts in table.shafts]
        sheet.table(("Speed and torque", *heads), rows)
        _dashes(sheet, document, table)
        sheet.gap()
    heads = ["Mesh", "Teeth", "Ratio", "Contact", "Overlap"]
    sheet.table(heads, [_mesh_row(row) for row in table.meshes])


def _dashes(sheet: Sheet, document: Document, table: DriveTable) -> None:
    """What would show the speeds and torques for which the table has a dash."""
    figures = [each for row in table.points for each in row.speeds + row.torques]
    unknown = merged([each for each in figures if isinstance(each, Unknown)])
    if unknown.missing:
        told = awaited_words.to_state_text(document, unknown.missing[:_MOST_VALUES])
        more = len(unknown.missing) - _MOST_VALUES
        sheet.line(f"{told}{f' and {more} more' if more > 0 else ''}, to fill the dashes.")
    if unknown.because:
        sheet.line(f"A dash can mean: {words.prose(unknown.because)}.")


def _mesh_row(row: MeshRow) -> tuple[str, ...]:
    return (
        f"{row.mesh}\n{row.driver} > {row.driven}",
        f"{_cell(row.teeth)} > {_cell(row.mate_teeth)}",
        _cell(row.ratio),
        _cell(row.transverse_contact_ratio),
        _cell(row.overlap_ratio),
    )


def _cell(value: Value) -> str:
    return "-" if isinstance(value, Unknown) else words.value_text(value)


def _changes(sheet: Sheet, review: Review) -> None:
    if review.book.changes:
        sheet.heading(f"Limits changed by house rulebook {words.prose(review.book.house)}")
    for change in review.book.changes:
        sheet.line(words.change_text(change), indent=2, label="-")
