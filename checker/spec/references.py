"""Names in one part of a spec that must be found in another."""

import difflib
from collections.abc import Iterable

from checker.known import Path
from checker.spec.coupling import Clutch, Damper
from checker.spec.document import Document
from checker.spec.model import Spec
from checker.spec.problem import Problem

_RESERVED = ("engine", "propeller")


def reference_problems(spec: Spec, document: Document) -> list[Problem]:
    """Every name that refers to nothing, and every name used twice."""
    return [
        problem
        for problem in (
            *_shaft_names(spec, document),
            *_mesh_gears(spec, document),
            *_ratio_sets(spec, document),
            *_points(spec, document),
        )
        if problem is not None
    ]


def _named(
    document: Document, path: Path, name: str, known: Iterable[str], kind: str
) -> Problem | None:
    names = list(known)
    if name in names:
        return None
    near = difflib.get_close_matches(name, names, n=1, cutoff=0.5)
    hint = f"did you mean '{near[0]}'?" if near else "known: " + ", ".join(names)
    return document.problem(
        path, f"there is no {kind} of that name", repr(name), f"the name of a {kind}", hint=hint
    )


def _shaft_names(spec: Spec, document: Document) -> list[Problem | None]:
    uses: list[tuple[Path, str]] = [
        (("engine", "drives"), spec.engine.drives),
        (("propeller", "shaft"), spec.propeller.shaft),
    ]
    uses += [(("gears", name, "shaft"), gear.shaft) for name, gear in spec.gears.items()]
    uses += [(("bearings", name, "shaft"), each.shaft) for name, each in spec.bearings.items()]
    uses += [(("seals", name, "shaft"), seal.shaft) for name, seal in spec.seals.items()]
    uses += [(("joints", name, "shaft"), joint.shaft) for name, joint in spec.joints.items()]
    uses += [
        (("joints", name, "to"), joint.to)
        for name, joint in spec.joints.items()
        if joint.to is not None and joint.to not in _RESERVED
    ]
    uses += [
        (("shafts", name, "turns_freely_on"), shaft.turns_freely_on)
        for name, shaft in spec.shafts.items()
        if shaft.turns_freely_on is not None
    ]
    for field, link in (("damper", spec.damper), ("clutch", spec.clutch)):
        if isinstance(link, (Damper, Clutch)):
            uses += [((field, "between", end), link.between[end]) for end in (0, 1)]
    if isinstance(spec.clutch, Clutch) and spec.clutch.outer is not None:
        uses.append((("clutch", "outer"), spec.clutch.outer))
    reserved = [
        document.problem(("shafts", name), "reserved name", repr(name), "another name", at_key=True)
        for name in spec.shafts
        if name in _RESERVED
    ]
    return [*reserved, *(_named(document, path, name, spec.shafts, "shaft") for path, name in uses)]


def _mesh_gears(spec: Spec, document: Document) -> list[Problem | None]:
    problems = [
        _named(document, ("meshes", name, side), gear, spec.gears, "gear")
        for name, mesh in spec.meshes.items()
        for side, gear in (("driver", mesh.driver), ("driven", mesh.driven))
    ]
    meshing = {gear for mesh in spec.meshes.values() for gear in (mesh.driver, mesh.driven)}
    problems += [
        document.problem(
            ("gears", name),
            "this gear meshes with nothing",
            f"no mesh with {name!r}",
            "a mesh in meshes that names it",
            at_key=True,
        )
        for name in spec.gears
        if name not in meshing
    ]
    return problems


def _ratio_sets(spec: Spec, document: Document) -> list[Problem | None]:
    return [
        _named(document, ("ratio_sets", name, "gears", gear), gear, spec.gears, "gear")
        for name, ratio_set in spec.ratio_sets.items()
        for gear in ratio_set.gears
    ]


def _points(spec: Spec, document: Document) -> list[Problem | None]:
    seen: set[str] = set()
    problems: list[Problem | None] = []
    for index, point in enumerate(spec.operation):
        if point.name in seen:
            problems.append(
                document.problem(
                    ("operation", index, "name"),
                    "two points of operation share a name",
                    repr(point.name),
                    "a name of its own",
                )
            )
        seen.add(point.name)
    return problems
