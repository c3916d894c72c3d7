"""Names in one part of a spec that must be found in another.

They are looked up in the data as written, so that they are told together with whatever keeps the
data from being a spec. What is not of the form that a lookup needs is passed over here: the typed
reading tells of it.
"""

import difflib
from collections.abc import Collection, Iterator
from typing import Any

from checker.known import Path
from checker.spec.damping import damper_problems
from checker.spec.document import Document
from checker.spec.fields import NONE, UNKNOWN
from checker.spec.firing import firing_problems
from checker.spec.problem import Problem

NAMED_PARTS = ("shafts", "gears", "meshes", "bearings", "joints", "seals")
"""Sections whose parts have names of their own."""

_SINGLE_PARTS = ("engine", "propeller", "lubrication", "vent", "housing")
_COUPLINGS = ("damper", "clutch")
_RESERVED = ("engine", "propeller")
_SINKS = ("sump", "reservoir", "engine")
_SOURCES = ("pump", *_SINKS, "engine gallery")
_MOST_LISTED = 12


def reference_problems(document: Document) -> list[Problem]:
    """Every name that refers to nothing, every name used twice, and what else does not agree."""
    names = _Names(document)
    return [
        *_shafts(names),
        *_meshes(names),
        *_ratio_sets(names),
        *_points(names),
        *_oil_paths(names),
        *_kept_oil(names),
        *_parts_in_records(names),
        *firing_problems(document),
        *damper_problems(document),
    ]


class _Names:
    """What a spec names, whether or not it can be read as a spec."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.data: dict[str, Any] = document.data

    def parts(self, section: str) -> dict[str, dict[str, Any]]:
        """The parts of a section by name; one that is no mapping is without fields."""
        return {name: _fields(part) for name, part in _fields(self.data.get(section)).items()}

    def single(self, section: str) -> dict[str, Any]:
        """The fields of a part that there is one of."""
        return _fields(self.data.get(section))

    def entries(self, *path: str) -> list[dict[str, Any]]:
        """The entries of a list of parts."""
        value: Any = self.data
        for step in path:
            value = _fields(value).get(step)
        return [_fields(entry) for entry in value] if isinstance(value, list) else []

    def couplings(self) -> list[str]:
        """Damper and clutch, unless the spec says that there is none."""
        return [each for each in _COUPLINGS if self.data.get(each) != NONE]

    def named(
        self, path: Path, name: object, known: Collection[str], kind: str, instead: str = ""
    ) -> Iterator[Problem]:
        """A problem if a name is not among the known ones.

        Args:
            path: place of the name.
            name: the name; passed over if it is none.
            known: names that it may be; with none, there is nothing to hold it against.
            kind: what bears such a name.
            instead: what else could be written.
        """
        if not isinstance(name, str) or name == UNKNOWN or not known or name in known:
            return
        near = difflib.get_close_matches(name, known, n=1, cutoff=0.5)
        listed = ", ".join([*known][:_MOST_LISTED]) + (", …" if len(known) > _MOST_LISTED else "")
        hint = f"did you mean '{near[0]}'?" if near else f"known: {listed}"
        message = f"there is no {kind} of that name"
        yield self.document.problem(
            path, message, repr(name), f"the name of a {kind}{instead}", hint
        )


def _fields(value: object) -> dict[str, Any]:
    return value if isinstance(value, dict) else {}


def _shafts(names: _Names) -> Iterator[Problem]:
    known = names.parts("shafts")
    for name in known:
        if name in _RESERVED:
            yield names.document.problem(
                ("shafts", name), "reserved name", repr(name), "another name", at_key=True
            )
    for path, used in _uses_of_shafts(names):
        yield from names.named(path, used, known, "shaft")


def _uses_of_shafts(names: _Names) -> Iterator[tuple[Path, object]]:
    yield ("engine", "drives"), names.single("engine").get("drives")
    yield ("propeller", "shaft"), names.single("propeller").get("shaft")
    for section in ("gears", "bearings", "seals", "joints"):
        for name, part in names.parts(section).items():
            yield (section, name, "shaft"), part.get("shaft")
    for name, joint in names.parts("joints").items():
        if joint.get("to") not in _RESERVED:
            yield ("joints", name, "to"), joint.get("to")
    for name, bearing in names.parts("bearings").items():
        yield ("bearings", name, "runs_on"), bearing.get("runs_on")
    for name, shaft in names.parts("shafts").items():
        yield ("shafts", name, "turns_freely_on"), shaft.get("turns_freely_on")
    for coupling in _COUPLINGS:
        between = names.single(coupling).get("between")
        for end, name in enumerate(between if isinstance(between, list) else ()):
            yield (coupling, "between", end), name
    yield ("clutch", "outer"), names.single("clutch").get("outer")


def _meshes(names: _Names) -> Iterator[Problem]:
    gears = names.parts("gears")
    meshes = names.parts("meshes")
    meshing: list[object] = []
    for name, mesh in meshes.items():
        driver, driven = mesh.get("driver"), mesh.get("driven")
        meshing += [driver, driven]
        yield from names.named(("meshes", name, "driver"), driver, gears, "gear")
        yield from names.named(("meshes", name, "driven"), driven, gears, "gear")
        if driver == driven and isinstance(driver, str) and driver in gears:
            yield names.document.problem(
                ("meshes", name, "driven"),
                "a gear cannot mesh with itself",
                repr(driven),
                "the name of another gear",
            )
    # Where a mesh names no gear, the gear that it means would be told of a second time.
    all_found = all(isinstance(gear, str) and gear in gears for gear in meshing)
    for name in gears if meshes and all_found else ():
        if name not in meshing:
            yield names.document.problem(
                ("gears", name),
                "this gear meshes with nothing",
                f"no mesh with {name!r}",
                "a mesh in meshes that names it",
                at_key=True,
            )


def _ratio_sets(names: _Names) -> Iterator[Problem]:
    gears = names.parts("gears")
    fixed = {
        gear: name
        for name, mesh in names.parts("meshes").items()
        if mesh.get("ratio_set") == "fixed"
        for gear in (mesh.get("driver"), mesh.get("driven"))
        if isinstance(gear, str)
    }
    for name, ratio_set in names.parts("ratio_sets").items():
        for gear in _fields(ratio_set.get("gears")):
            path = ("ratio_sets", name, "gears", gear)
            yield from names.named(path, gear, gears, "gear")
            if gear in fixed:
                yield names.document.problem(
                    path,
                    "this set changes a gear of a fixed mesh",
                    f"{gear!r}, and meshes.{fixed[gear]}.ratio_set: fixed",
                    "ratio_set: swappable in that mesh, or a set without this gear",
                    at_key=True,
                )


def _points(names: _Names) -> Iterator[Problem]:
    seen: list[object] = []
    for index, point in enumerate(names.entries("operation")):
        name = point.get("name")
        if name in seen and isinstance(name, str) and name != UNKNOWN:
            yield names.document.problem(
                ("operation", index, "name"),
                "two points of operation share a name",
                repr(name),
                "a name of its own",
            )
        seen.append(name)


def _oil_paths(names: _Names) -> Iterator[Problem]:
    wetted = [*names.parts("meshes"), *names.parts("bearings"), *names.couplings()]
    moving = [*wetted, *names.parts("gears"), *names.parts("shafts")]
    for index, supply in enumerate(names.entries("lubrication", "paths")):
        path = ("lubrication", "paths", index)
        yield from names.named(
            (*path, "from"),
            supply.get("from"),
            [*moving, *_SOURCES],
            "gear, mesh, bearing, shaft or coupling",
            f", or {', '.join(_SOURCES)}",
        )
        yield from names.named(
            (*path, "to"),
            supply.get("to"),
            [*wetted, *_SINKS],
            "mesh, bearing or coupling",
            f", or {', '.join(_SINKS)}",
        )


def _kept_oil(names: _Names) -> Iterator[Problem]:
    kept = _fields(names.single("states").get("engine_stopped")).get("keeps_oil")
    path = ("states", "engine_stopped", "keeps_oil")
    for index, name in enumerate(kept if isinstance(kept, list) else ()):
        known = [*names.parts("bearings"), *names.couplings()]
        yield from names.named((*path, index), name, known, "bearing or coupling")


def _parts_in_records(names: _Names) -> Iterator[Problem]:
    known = [f"{section}.{name}" for section in NAMED_PARTS for name in names.parts(section)]
    known += [*names.couplings(), *_SINGLE_PARTS]
    for table in ("single_failures", "retention", "evidence"):
        for index, entry in enumerate(names.entries("records", table)):
            path = ("records", table, index, "part")
            part = entry.get("part")
            if table == "retention" and isinstance(part, str):
                # A word after the part names what belongs to it: its retainer, its bolts.
                part = part.partition(" ")[0]
            yield from names.named(
                path, part, known, "part", ", with its section, such as meshes.first"
            )
