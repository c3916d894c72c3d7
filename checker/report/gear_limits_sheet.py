"""Which gear limits the drive: flanks and roots by load in hand, and what restores the first."""

from checker.known import Unknown, Value
from checker.measures.design import Design
from checker.measures.gear_limits import ranking
from checker.report import words
from checker.report.gear_table import (
    failing_share_text,
    least_in_hand,
    life_rows,
    power_rows,
    restoring,
    worst_of_each,
)
from checker.report.sheet import Sheet
from checker.review.rulebook import Rulebook
from checker.text import plain

_LABEL = 12


def gear_limits(sheet: Sheet, design: Design, book: Rulebook) -> None:
    """Write the ranking of a design; nothing where it cannot be rated, which its rules say."""
    found = ranking(design)
    if isinstance(found, Unknown):
        return
    sheet.heading(f"Which gear limits{words.set_text(design.subjects.ratio_set)}")
    rows = [
        (
            plain(f"{each.gear}, {each.mode}"),
            plain(each.mesh),
            plain(each.point),
            words.value_text(each.safety),
            words.value_text(each.load_in_hand),
        )
        for each in worst_of_each(found)
    ]
    sheet.table(("Flank or root", "Mesh", "At", "Safety", "Load in hand"), rows)
    sheet.gap()
    for label, text in restoring(design, book, found):
        sheet.line(text, indent=_LABEL, label=label)
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
    sheet.table((f"Gear{failing_share_text(design)}", "By pitting", "By breakage"), lives)


def _cell(value: Value) -> str:
    return "-" if isinstance(value, Unknown) else words.value_text(value)
