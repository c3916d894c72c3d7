"""What the bearings carry at every operation point, how long they last and how far from a dent."""

from dataclasses import dataclass

from checker.known import Known
from checker.measures.design import Design
from checker.report.pictures.chart import Axis, Drawing, identifier, shortened
from checker.report.pictures.picture import Picture
from checker.report.words import value_text
from checker.spec.subject import Subject
from checker.spec.units import show

_LEFT, _RIGHT = 150.0, 480.0
_LIFE, _SAFETY = 500.0, 610.0
_ROW = 24.0
_HEAD = 46.0
_NAME = 140.0


@dataclass(frozen=True, slots=True)
class _Row:
    """A bearing with its forces at the points at which they are known [N]."""

    name: str
    radial: tuple[tuple[str, float], ...]
    axial: tuple[tuple[str, float], ...]
    life: str
    safety: str


def bearing_loads(design: Design) -> Picture | None:
    """A row for each bearing; ``None`` where no force of any is known."""
    rows = [_row(design, bearing) for bearing in design.subjects.all("bearing")]
    forces = [force for row in rows for _, force in (*row.radial, *row.axial)]
    if not forces or max(forces) <= 0.0:
        return None
    drawing = Drawing(
        identifier("bearing-loads", design.subjects.ratio_set), "What the bearings carry"
    )
    axis = Axis(0.0, 1.05 * max(forces) / 1000.0, _LEFT, _RIGHT)
    for x, text in ((_LEFT, "force"), (_LIFE, "life"), (_SAFETY, "static safety")):
        drawing.text(x, 22.0, text, colour="faint")
    for index, row in enumerate(rows):
        _draw(drawing, axis, row, _HEAD + index * _ROW, index)
    bottom = _HEAD + len(rows) * _ROW
    drawing.across(axis, bottom, "kN")
    _key(drawing, bottom + 42.0)
    drawing.height = bottom + 54.0
    return drawing.picture(" ".join(_words(row) for row in rows))


def _row(design: Design, bearing: Subject) -> _Row:
    return _Row(
        bearing.name,
        _forces(design, "radial_force", bearing),
        _forces(design, "axial_force", bearing),
        _told(design, "basic_life", bearing),
        _told(design, "static_safety", bearing),
    )


def _forces(design: Design, measure: str, bearing: Subject) -> tuple[tuple[str, float], ...]:
    found = design.over_points(measure, bearing)
    return tuple(
        (point.name, abs(value.number)) for point, value in found if isinstance(value, Known)
    )


def _told(design: Design, measure: str, bearing: Subject) -> str:
    value = design.measure(measure, bearing)
    return value_text(value) if isinstance(value, Known) else "not shown"


def _draw(drawing: Drawing, axis: Axis, row: _Row, y: float, index: int) -> None:
    with drawing.group(f"row-{index}"):
        drawing.text(10.0, y + 4.0, shortened(row.name, _NAME - 10.0))
        drawing.path([(_LEFT, y), (_RIGHT, y)], colour="rule", width=0.7)
        for shape, colour, forces in (
            ("disc", "series-1", row.radial),
            ("diamond", "series-2", row.axial),
        ):
            for _, force in forces:
                if force > 0.0:
                    drawing.mark(shape, axis.at(force / 1000.0), y, colour=colour, size=3.2)
        drawing.text(_LIFE, y + 4.0, row.life)
        drawing.text(_SAFETY, y + 4.0, row.safety)


def _key(drawing: Drawing, y: float) -> None:
    drawing.mark("disc", 14.0, y - 4.0, colour="series-1", size=3.2)
    drawing.text(24.0, y, "radial force, one mark for each operation point")
    drawing.mark("diamond", 354.0, y - 4.0, colour="series-2", size=3.2)
    drawing.text(364.0, y, "axial force")


def _words(row: _Row) -> str:
    said = [
        f"{kind} at most {show(force, 'N')} at {point}"
        for kind, forces in (("radial", row.radial), ("axial", row.axial))
        for point, force in [max(forces, key=lambda each: each[1], default=("", 0.0))]
        if force > 0.0
    ]
    carried = ", ".join(said) or "forces not shown"
    return f"{row.name}: {carried}; life {row.life}; static safety {row.safety}."
