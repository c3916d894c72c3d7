"""What the spec says of failures: of the one-way clutch both ways, and of other single parts."""

from checker.measures.design import Design
from checker.report.html.calculation import Calculations, Figure
from checker.report.html.tables import Table
from checker.spec.coupling import LockedFailure, SlipFailure
from checker.spec.papers import SingleFailure

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
    return [each for each in (*made, _single_failures(design, calculations)) if each.rows]


def _single_failures(design: Design, calculations: Calculations) -> Table:
    records = design.subjects.the("records")
    fields = SingleFailure.model_fields
    rows = tuple(
        tuple(
            Figure(getattr(each, name) or "–", calculations.place_href(path) * (name == "part"))
            for name in fields
        )
        for index, each in enumerate(records.raw("single_failures") or [])
        for path in [(*records.place("single_failures"), index)]
    )
    heads = tuple(name.replace("_", " ").capitalize() for name in fields)
    return Table("Single failures that stop the propeller", heads, rows, figures=False)
