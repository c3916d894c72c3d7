"""The tables of the page: the drive in figures, each figure with a link to its calculation."""

from collections.abc import Sequence
from dataclasses import dataclass

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.measures.gear_limits import ranking
from checker.measures.registry import measures
from checker.report import words
from checker.report.drive_table import DriveTable, asked, drive_table
from checker.report.gear_table import (
    failing_share_text,
    least_in_hand,
    life_rows,
    power_rows,
    restoring,
    worst_of_each,
)
from checker.report.html.calculation import Calculations, Figure
from checker.review.rulebook import Rulebook
from checker.spec.subject import Subject

_GEOMETRY = ("teeth", "module", "face_width", "helix.angle", "profile_shift", "tip_diameter")
_BEARINGS = ("basic_life", "life_over_target", "modified_life_over_target", "static_safety")
_SHAFTS = (
    "fatigue_safety",
    "gyroscopic_fatigue_safety",
    "yield_safety",
    "critical_speed_margin",
)
_TORSION = ("modes", "barred_ranges", "smallest_change", "sensitivity")


@dataclass(frozen=True, slots=True)
class Table:
    """A table whose first column names the row.

    Attributes:
        caption: what it shows.
        heads: headings of the columns.
        rows: the cells, each a figure or a text without link.
        figures: whether all but the first column are figures.
    """

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Figure, ...], ...]
    figures: bool = True


def drive_tables(design: Design, book: Rulebook, calculations: Calculations) -> list[Table]:
    """The drive with one ratio set: motion, gears, lives, bearings, shafts, torsion."""
    table = drive_table(design)
    made = [
        *_motion(table, calculations),
        _meshes(table, calculations),
        _measured("Gears", design, "gear", _GEOMETRY, calculations),
        *_gear_limits(design, book, calculations),
        _measured("Bearings", design, "bearing", _BEARINGS, calculations),
        _measured("Shafts", design, "shaft", _SHAFTS, calculations),
        *_torsion(design, calculations),
    ]
    return [each for each in made if each.rows and len(each.heads) > 1]


def _texts(*texts: str) -> tuple[Figure, ...]:
    return tuple(Figure(text) for text in texts)


def _motion(table: DriveTable, calculations: Calculations) -> list[Table]:
    heads = ("Operation point", *(", ".join(shafts) for shafts in table.shafts))

    def rows(of: str) -> tuple[tuple[Figure, ...], ...]:
        return tuple(
            (Figure(row.point), *(calculations.figure(each) for each in getattr(row, of)))
            for row in table.points
        )

    return [
        Table("Speeds of the shafts", heads, rows("speeds")),
        Table("Torques of the shafts", heads, rows("torques")),
    ]


def _meshes(table: DriveTable, calculations: Calculations) -> Table:
    heads = ("Mesh", "Gears", "Teeth", "Mating teeth", "Ratio", "Contact", "Overlap")
    rows = tuple(
        (
            Figure(row.mesh),
            Figure(f"{row.driver} drives {row.driven}"),
            *map(
                calculations.figure,
                (
                    row.teeth,
                    row.mate_teeth,
                    row.ratio,
                    row.transverse_contact_ratio,
                    row.overlap_ratio,
                ),
            ),
        )
        for row in table.meshes
    )
    return Table("Meshes", heads, rows)


def _measured(
    caption: str, design: Design, kind: str, names: Sequence[str], calculations: Calculations
) -> Table:
    """Measures or stated fields of every part of a kind; without what no part has."""
    parts = design.subjects.all(kind)
    values = {name: [asked_or_stated(design, name, part) for part in parts] for name in names}
    shown = [name for name in names if any(isinstance(each, Known) for each in values[name])]
    rows = tuple(
        (
            Figure(part.name),
            *(
                calculations.figure(values[name][index], _answers(design, name, part))
                for name in shown
            ),
        )
        for index, part in enumerate(parts)
    )
    return Table(caption, (kind.capitalize(), *(_head(kind, name) for name in shown)), rows)


def asked_or_stated(design: Design, name: str, part: Subject) -> Value:
    """A measure of a part, or what the spec states of it under that name."""
    return asked(design, name, part) if (part.kind, name) in measures() else part.given(name)


def _head(kind: str, name: str) -> str:
    measure = measures().get((kind, name))
    text = measure.title if measure is not None else name.replace("_", " ").replace(".", " ")
    return words.prose(text[:1].upper() + text[1:])


def _answers(design: Design, name: str, part: Subject) -> str:
    return f"{part.address}.{name}{words.set_text(design.subjects.ratio_set)}"


def _gear_limits(design: Design, book: Rulebook, calculations: Calculations) -> list[Table]:
    """Which gear limits the drive; nothing where it cannot be rated, which its rules say."""
    found = ranking(design)
    if isinstance(found, Unknown):
        return []
    figure = calculations.figure
    limits = tuple(
        (
            *_texts(f"{each.gear}, {each.mode}", each.mesh, each.point),
            figure(each.safety),
            figure(each.load_in_hand),
        )
        for each in worst_of_each(found)
    )
    return [
        Table(
            "Which gear limits, the least load in hand first",
            ("Flank or root", "Mesh", "At", "Safety", "Load in hand"),
            limits,
        ),
        Table(
            "What limits first, and what alone would restore it",
            ("Question", "Answer"),
            tuple(_texts(*row) for row in restoring(design, book, found)),
            figures=False,
        ),
        *_powers_and_lives(design, calculations),
    ]


def _powers_and_lives(design: Design, calculations: Calculations) -> list[Table]:
    """What each mesh may carry by both standards, and the hours of each gear."""
    figure = calculations.figure
    powers = tuple(
        (*_texts(row.mesh, row.point), figure(row.iso), figure(row.agma), figure(row.ratio))
        for row in least_in_hand(power_rows(design))
    )
    lives = tuple(
        (Figure(row.gear), figure(row.pitting), figure(row.breakage)) for row in life_rows(design)
    )
    return [
        Table(
            "Power that each mesh may carry",
            ("Mesh", "At", "Power by ISO", "Power by AGMA", "ISO over AGMA"),
            powers,
        ),
        Table(
            f"Life of the gears{failing_share_text(design)}",
            ("Gear", "By pitting", "By breakage"),
            lives,
        ),
    ]


def _torsion(design: Design, calculations: Calculations) -> list[Table]:
    """What the torsional survey says; nothing where there is none, which its rules say."""
    drive = design.subjects.the("drive")
    crossings = asked(design, "interference", drive)
    if isinstance(crossings, Unknown):
        return []
    met = [each.partition(": ") for each in words.value_text(crossings).split("; ")]
    href = calculations.href(crossings, "drive.interference")
    known = {name: asked(design, name, drive) for name in _TORSION}
    said = tuple(
        (Figure(_head("drive", name)), calculations.figure(value, f"drive.{name}"))
        for name, value in known.items()
        if isinstance(value, Known)
    )
    return [
        Table(
            "Torsional crossings: orders that meet a natural frequency",
            ("Order and speed of the crankshaft", "Alternating torque, and where"),
            tuple((Figure(where, href), Figure(torque)) for where, _, torque in met),
            figures=False,
        ),
        Table("Torsional survey in words", ("Question", "Answer"), said, figures=False),
    ]
