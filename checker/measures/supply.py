"""Measures of the oil supply: whether oil is led to a part."""

from checker.known import Known, Path, Unknown, Value
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.spec.subject import Subject


@measure("mesh", "", "whether oil is led to the mesh")
@measure("bearing", "", "whether oil is led to the bearing")
@measure("clutch", "", "whether oil is led to the clutch")
def is_supplied(design: Design, part: Subject) -> Value:
    """Whether a path of the oil, drains apart, leads to the part."""
    supplies = _supplies(design, part)
    if isinstance(supplies, Unknown):
        return supplies
    inputs = tuple(supplies)
    place = design.subjects.the("lubrication").place("paths")
    return Known(bool(inputs), "", "supplied", inputs=inputs, path=None if inputs else place)


def _supplies(design: Design, part: Subject) -> list[Known] | Unknown:
    """Kinds of the paths that lead to a part; unknown where paths are, or one may lead there."""
    lubrication = design.subjects.the("lubrication")
    place = lubrication.place("paths")
    paths = lubrication.raw("paths")
    if paths is None:
        return Unknown((place,))
    found: list[Known] = []
    unclear: list[Path] = []
    for index, each in enumerate(paths):
        if each.to is None:
            unclear.append((*place, index, "to"))
        if each.to != (part.name or part.kind):
            continue
        way = Subject("supply", "", (*place, index), each)
        kind = way.given("kind", "supply")
        if isinstance(kind, Unknown):
            unclear += kind.missing
        elif kind.value != "drain" and not is_dry(way.given("flow")):
            found.append(kind)
    return Unknown(tuple(unclear)) if unclear and not found else found


def is_dry(flow: Value) -> bool:
    """Whether the flow of a way is stated as nothing; one that is not stated may run."""
    return isinstance(flow, Known) and flow.number == 0.0
