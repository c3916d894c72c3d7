"""The card for the first run: for a terminal, and as a page to print and take along."""

from dataclasses import dataclass

from checker.known import Known
from checker.report import words
from checker.report.sheet import Sheet
from checker.review.first_run import GROUND, STOP, Card, Step, Watch
from checker.review.inspection import Inspection
from checker.spec.problem import dotted
from checker.spec.units import show
from checker.text import plain

AID = (
    "This card is an aid to the builder's own plan for the first run, drawn from figures and "
    "rules. It replaces no plan, no judgement and no authority."
)


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the card.

    Attributes:
        id: of its heading in a page.
        title: its heading.
        lines: what it says, each to be ticked off.
    """

    id: str
    title: str
    lines: tuple[str, ...]


def parts_of(card: Card) -> list[Part]:
    """The card in parts, in the order of the work; those with nothing to say are left out.

    Args:
        card: the card.
    """
    parts = [
        Part("open", "Open: the builder answers for these", _open(card)),
        Part("before", "Before the start", (*GROUND, *_looks(card.before))),
        Part("idle", "Idle", _idle(card)),
        Part("steps", "Step by step, each until temperatures stand", _steps(card)),
        Part("barred", "Pass without stopping", _barred(card)),
        Part("watch", "Temperatures to watch", _watched(card)),
        Part("stop", "Stop at once", STOP),
        Part("after", "After the run, and after the first hour", _looks(card.after)),
    ]
    return [each for each in parts if each.lines]


def _open(card: Card) -> tuple[str, ...]:
    return tuple(
        f"{each.level}, {each.outcome}: {words.prose(each.rule.title)} ({words.part_text(each)})"
        for each in card.open
    )


def _looks(tasks: tuple[Inspection, ...]) -> tuple[str, ...]:
    return tuple(f"{each.look}{' (earlier than usual)' if each.earlier else ''}" for each in tasks)


def _idle(card: Card) -> tuple[str, ...]:
    if not card.steps:
        return ()
    return (
        f"Warm up at {_speed(card.steps[0])}; look for leaks and listen before any step up",
        "Oil pressure and temperature noted; stop, look again, then start anew",
    )


def _steps(card: Card) -> tuple[str, ...]:
    if card.unknown is not None and not card.steps:
        missing = ", ".join(plain(dotted(path)) for path in card.unknown.missing)
        because = words.prose(card.unknown.because)
        told = "; ".join(filter(None, (f"state {missing}" if missing else "", because)))
        return (f"Speeds not shown: {told}",)
    return tuple(_step(each) for each in card.steps)


def _step(step: Step) -> str:
    notes = []
    if step.moved:
        notes.append("moved away from a resonance or a barred range")
    if step.is_close:
        notes.append(
            f"a resonance stands {step.separation:.0%} away: do not stay longer than needed"
        )
    return f"{_speed(step)}, {step.minutes} min{''.join(f'; {note}' for note in notes)}"


def _speed(step: Step) -> str:
    engine, propeller = show(step.engine, "rad/s"), show(step.propeller, "rad/s")
    return f"{engine} at the engine, {propeller} at the propeller"


def _barred(card: Card) -> tuple[str, ...]:
    return tuple(
        f"{show(low, 'rad/s')} to {show(high, 'rad/s')} at the engine" for low, high in card.barred
    )


def _watched(card: Card) -> tuple[str, ...]:
    return tuple(_watch(each) for each in card.watched)


def _watch(watch: Watch) -> str:
    if isinstance(watch.computed, Known):
        found = f"at most {words.value_text(watch.computed)} computed, at {plain(watch.point)}"
    else:
        found = "not computed"
    if isinstance(watch.limit, Known):
        return f"{watch.what}: {found}; stop above {words.value_text(watch.limit)}"
    return f"{watch.what}: {found}; no limit is stated: set one before the run"


def card_sheet(card: Card, *, width: int, colour: bool) -> str:
    """Write the card.

    Args:
        card: the card.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    drive = card.review.loaded.spec.drive
    revision = f", revision {words.prose(drive.revision)}" if drive.revision else ""
    sheet.line(f"First run: {words.prose(drive.name)}{revision}", style="bold")
    sheet.line(f"{AID} {words.NO_PERMIT}")
    for part in parts_of(card):
        sheet.heading(part.title)
        for line in part.lines:
            sheet.line(line, indent=4, label="[ ]")
    _bear_in_mind(sheet)
    return sheet.text()


def _bear_in_mind(sheet: Sheet) -> None:
    sheet.heading("Bear in mind")
    for caution in words.CAUTIONS:
        sheet.line(caution, indent=2, label="-")


def html_card(card: Card) -> str:
    """The card as one HTML file to print.

    Args:
        card: the card.
    """
    from checker import __version__
    from checker.report.page import Section, Shell, page
    from checker.review.digest import rulebook_digest

    review = card.review
    drive = review.loaded.spec.drive
    digest = rulebook_digest(review.book)
    facts = (
        ("Drive", f"{drive.name}{f', revision {drive.revision}' if drive.revision else ''}"),
        ("Spec", f"{review.loaded.document.name}, sha256 {review.sha256[:12]}"),
        ("Held", f"on {review.on.isoformat()}"),
        ("Against", words.rulebook_text(review.book, __version__, digest)),
        ("Disposition", review.disposition),
    )
    parts = parts_of(card)
    contents = tuple(Section(each.id, each.title) for each in parts)
    shell = Shell(f"First run of {drive.name}", "First-run card", facts, contents)
    return page("first_run.html.j2", shell, parts=parts, aid=AID, words=words, version=__version__)
