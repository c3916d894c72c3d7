"""What the spec says of failures: of the one-way clutch both ways, and of other single parts."""

from checker.measures.design import Design
from checker.report.failure_table import HEADS, failure_table
from checker.report.html.calculation import Calculations, Figure
from checker.report.html.tables import Table
from checker.spec.coupling import LockedFailure, SlipFailure

_WAYS = (("locked", "Fails locked", LockedFailure), ("slip", "Fails slipping", SlipFailure))


def failure_tables(design: Design, calculations: Calculations) -> list[Table]:
    """The failure tables of a drive; a dash is what the spec leaves open."""
    made = []
    if design.subjects.presence("clutch"):
        clutch = design.subjects.the("clutch")
        rows = tuple(
            (
                Figure(way),
                Figure(info.description or field),
                calculations.figure(clutch.given(f"failure_evidence.{name}.{field}")),
            )
            for name, way, model in _WAYS
            for field, info in model.model_fields.items()
        )
        heads = ("The clutch", "What is asked", "What the spec states")
        made.append(Table("How the one-way clutch fails", heads, rows, figures=False))
    return [each for each in (*made, _failures(design, calculations)) if each.rows]


def _failures(design: Design, calculations: Calculations) -> Table:
    rows = tuple(
        tuple(
            Figure(text or "–", calculations.place_href(row.place) * (text is row.part))
            for text in row.texts
        )
        for row in failure_table(design)
    )
    return Table("Failures that stop the propeller", HEADS, rows, figures=False)
