"""Which gear limits the drive: flanks and roots by load in hand, and what restores the first."""

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.measures.gear_limits import ranking, size_at_limit
from checker.report import words
from checker.report.gear_table import least_in_hand, life_rows, power_rows
from checker.report.sheet import Sheet
from checker.review.rulebook import Rulebook
from checker.solve.gear_limit import Limit, Minima
from checker.text import plain

_RESTORING = (
    ("Face width", "face_width"),
    ("Module", "module"),
    ("Hardness", "material.surface_hardness"),
    ("Helix", "helix.angle"),
)
_LABEL = 12


def gear_limits(sheet: Sheet, design: Design, book: Rulebook) -> None:
    """Write the ranking of a design; nothing where it cannot be rated, which its rules say."""
    found = ranking(design)
    if isinstance(found, Unknown):
        return
    sheet.heading(f"Which gear limits{words.set_text(design.subjects.ratio_set)}")
    worst: dict[tuple[str, str, str], Limit] = {}
    for limit in found:
        worst.setdefault((limit.mesh, limit.gear, limit.mode), limit)
    rows = [
        (
            plain(f"{each.gear}, {each.mode}"),
            plain(each.mesh),
            plain(each.point),
            words.value_text(each.safety),
            words.value_text(each.load_in_hand),
        )
        for each in worst.values()
    ]
    sheet.table(("Flank or root", "Mesh", "At", "Safety", "Load in hand"), rows)
    sheet.gap()
    _first_limit(sheet, design, found[0])
    minima = Minima(_least_allowed(book, "contact_safety"), _least_allowed(book, "bending_safety"))
    _what_restores(sheet, design, minima.first(found), minima)
    _powers_and_lives(sheet, design)


def _powers_and_lives(sheet: Sheet, design: Design) -> None:
    """What each mesh may carry by both standards, and the hours of each gear."""
    sheet.gap()
    powers = [
        (
            plain(row.mesh),
            plain(row.point),
            *(_cell(each) for each in (row.iso, row.agma, row.ratio)),
        )
        for row in least_in_hand(power_rows(design))
    ]
    sheet.table(("Mesh", "At", "Power by ISO", "Power by AGMA", "ISO over AGMA"), powers)
    sheet.gap()
    lives = [
        (plain(row.gear), _cell(row.pitting), _cell(row.breakage)) for row in life_rows(design)
    ]
    chance = design.subjects.the("drive").given("failure_probability", "q")
    share = f", until {100.0 * chance.number:g} % fail" if isinstance(chance, Known) else ""
    sheet.table((f"Gear{share}", "By pitting", "By breakage"), lives)


def _cell(value: Value) -> str:
    return "-" if isinstance(value, Unknown) else words.value_text(value)


def _first_limit(sheet: Sheet, design: Design, first: Limit) -> None:
    drive = design.subjects.the("drive")
    power = design.measure("power_at_first_limit", drive)
    if isinstance(power, Known):
        where = plain(f"{first.text}, reached at {words.value_text(power)}")
        sheet.line(where, indent=_LABEL, label="First limit")


def _least_allowed(book: Rulebook, measure: str) -> float:
    """The safety below which a rule of the rulebook warns; 1 where none does."""
    limits = [rule.limits.get("warning") for rule in book.rules if rule.measure == measure]
    return max((each.low for each in limits if each and each.low is not None), default=1.0)


def _what_restores(sheet: Sheet, design: Design, short: Limit, minima: Minima) -> None:
    """What alone would bring the gear that is the farthest below its least safety back to it."""
    if minima.in_hand(short) >= 1.0:
        return
    sheet.line(
        plain(f"{short.text}, to a safety of {minima.of(short):g}"),
        indent=_LABEL,
        label="To restore",
    )
    for label, field in _RESTORING:
        needed = size_at_limit(design, field, minima)
        if isinstance(needed, Known):
            text = f"{words.value_text(needed)} alone would restore it"
        else:
            text = words.prose(needed.because or "its size is not stated")
        sheet.line(text, indent=_LABEL, label=label)
