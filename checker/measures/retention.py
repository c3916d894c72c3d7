"""Measures of what keeps the propeller on, of the failure table, and of papers part by part."""

from collections.abc import Callable, Sequence

from checker.known import Known, Path, Unknown, Value, merged
from checker.measures.bearings import BOTH_WAYS, ENGINE_WAY, PROPELLER_WAY
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.spec.fields import NONE
from checker.spec.papers import Evidence, Retention, SingleFailure
from checker.spec.subject import Subject

_EVERY_PART = ("material", "heat_treatment", "hardness", "crack_test")
_LOCATES = (PROPELLER_WAY, ENGINE_WAY, BOTH_WAYS)
# Its bolts are part of a flange, and a shoulder part of the shaft; all else stands apart.
_FLANGE, _OF_THE_SHAFT = "bolted flange", "shoulder"
_TABLE = ("failure", "engine_effect", "check", "interval")


@measure("records", "1", "parts between propeller and case that are not listed", at="retention")
def unlisted_retention_parts(design: Design, records: Subject) -> Value:
    """Number of parts between propeller and gear case that records.retention leaves out."""
    entries = records.raw("retention")
    if entries is None:
        return Unknown((records.place("retention"),))
    counted = _counted(
        _unlisted(design, entries),
        "parts between propeller and case that records.retention leaves out",
    )
    unsaid = _unsaid_between(design)
    if unsaid:
        return Unknown(unsaid, at_best=counted)
    return counted


@measure("records", "1", "single failures that let the propeller go unseen", at="retention")
def open_release_paths(design: Design, records: Subject) -> Value:
    """Number of parts whose failure alone may release the propeller, with nothing against it.

    Against it stands a second hold, or an inspection with its interval that finds the crack.
    Unknown while a part is not listed, as nobody has said what its failure does.
    """
    entries = records.raw("retention")
    place = records.place("retention")
    if entries is None:
        return Unknown((place,))
    open_paths: list[str] = []
    missing: list[Unknown] = []
    for index, entry in enumerate(entries):
        state = _release(entry)
        if state is True:
            open_paths.append(entry.part)
        elif state is not False:
            missing.append(Unknown(tuple((*place, index, field) for field in state)))
    missing += [
        Unknown((place,), f"records.retention leaves out {label}")
        for label in _unlisted(design, entries)
    ]
    unsaid = _unsaid_between(design)
    if unsaid:
        missing.append(Unknown(unsaid))
    if missing and not open_paths:
        return merged(missing)
    return _counted(open_paths, "parts whose single failure lets the propeller go")


@measure("records", "", "whether every inspection in it has its interval", at="retention")
def release_intervals_stated(design: Design, records: Subject) -> Value:
    """Whether each inspection that is named states its interval.

    Also that of a part behind which another holds: while nobody looks, the second hold is the only.
    """
    entries = records.raw("retention")
    place = records.place("retention")
    if entries is None:
        return Unknown((place,))
    missing = tuple(
        (*place, index, "interval")
        for index, entry in enumerate(entries)
        if _given(entry.inspection) and entry.interval is None
    )
    return Unknown(missing) if missing else Known(True, "", "stated", path=place)


@measure("records", "", "whether the failure table is complete", at="single_failures")
def failure_table_complete(design: Design, records: Subject) -> Value:
    """Whether each listed failure says what fails, its effect on the engine, check and interval."""
    entries = records.raw("single_failures")
    return _complete(entries, records.place("single_failures"), lambda _: _TABLE)


@measure("records", "1", "critical parts without papers of their own", at="evidence")
def critical_parts_without_evidence(design: Design, records: Subject) -> Value:
    """Number of gears and power-path shafts that records.evidence leaves out."""
    entries = records.raw("evidence")
    if entries is None:
        return Unknown((records.place("evidence"),))
    listed = {entry.part for entry in entries}
    missing = [label for label in _critical(design) if label not in listed]
    return _counted(missing, "critical parts that records.evidence leaves out")


@measure("records", "", "whether the papers of each critical part are named", at="evidence")
def evidence_complete(design: Design, records: Subject) -> Value:
    """Whether each entry names its papers.

    Material, heat treatment, hardness and crack test; of a gear its inspection sheet as well.
    """
    entries = records.raw("evidence")
    return _complete(entries, records.place("evidence"), _papers_of)


def _release(entry: Retention) -> bool | tuple[str, ...]:
    """Whether a release path is open; the fields that would tell where it cannot be said.

    That a failure does not release the propeller is a bare claim until it is said what holds it
    then, or how and how often one looks for the failure.
    """
    if entry.releases_propeller is None:
        return ("releases_propeller",)
    if _given(entry.retained_by):
        return False
    if _given(entry.inspection):
        return False if entry.interval is not None else ("interval",)
    unsaid = (("retained_by", entry.retained_by), ("inspection", entry.inspection))
    return tuple(field for field, value in unsaid if value is None) or True


def _given(text: str | None) -> bool:
    return text is not None and text != NONE


def _unlisted(design: Design, entries: Sequence[Retention]) -> list[str]:
    listed = {entry.part for entry in entries}
    return [label for label in _between(design) if label not in listed]


def _between(design: Design) -> list[str]:
    """Labels of the parts between propeller and gear case, with a word for what holds them."""
    parts = [f"shafts.{design.train.last}"]
    on_last = _on_last(design, "joint")
    if all(joint.raw("to") not in ("propeller", None) for joint in on_last):
        parts.append("propeller joint")  # what holds a propeller is asked about though not stated
    for joint in _to_propeller(on_last):
        parts.append(joint.label)
        if joint.raw("kind") not in (_FLANGE, None):
            parts.append(f"{joint.label} nut")
    locating = [each for each in _on_last(design, "bearing") if each.raw("locates") in _LOCATES]
    for bearing in locating:
        parts += [bearing.label, f"{bearing.label} retainer"]
    for bearing in _stopping(locating):
        if bearing.raw("shaft_stop") not in (_OF_THE_SHAFT, None):
            parts.append(f"{bearing.label} {bearing.raw('shaft_stop')}")
    return [*parts, "housing", "housing bolts"]


def _unsaid_between(design: Design) -> tuple[Path, ...]:
    """Fields that would tell whether a part stands between propeller and gear case."""
    joints, bearings = _on_last(design, "joint"), _on_last(design, "bearing")
    asked = [
        *((joint, "to") for joint in joints),
        *((joint, "kind") for joint in _to_propeller(joints)),
        *((bearing, "locates") for bearing in bearings),
        *((bearing, "shaft_stop") for bearing in _stopping(bearings)),
    ]
    return tuple(part.place(field) for part, field in asked if part.raw(field) is None)


def _on_last(design: Design, kind: str) -> list[Subject]:
    """The joints or bearings on the shaft of the propeller."""
    last = design.train.last
    return [part for part in design.subjects.all(kind) if part.raw("shaft") == last]


def _to_propeller(joints: list[Subject]) -> list[Subject]:
    return [joint for joint in joints if joint.raw("to") == "propeller"]


def _stopping(bearings: list[Subject]) -> list[Subject]:
    """The bearings that keep their shaft from leaving towards the propeller."""
    return [each for each in bearings if each.raw("locates") in (PROPELLER_WAY, BOTH_WAYS)]


def _critical(design: Design) -> list[str]:
    gears = [gear.label for gear in design.subjects.all("gear")]
    return [*gears, *(f"shafts.{shaft}" for shaft in design.train.path_shafts)]


def _papers_of(part: str) -> tuple[str, ...]:
    return (*_EVERY_PART, "gear_inspection") if part.startswith("gears.") else _EVERY_PART


def _complete(
    entries: Sequence[SingleFailure | Evidence] | None,
    place: Path,
    fields_of: Callable[[str], tuple[str, ...]],
) -> Value:
    if entries is None:
        return Unknown((place,))
    missing: tuple[Path, ...] = tuple(
        (*place, index, field)
        for index, entry in enumerate(entries)
        for field in fields_of(entry.part)
        if getattr(entry, field) is None
    )
    return Unknown(missing) if missing else Known(True, "", "complete", path=place)


def _counted(labels: list[str], origin: str) -> Known:
    inputs = tuple(Known(label, "", "part", origin=origin) for label in labels)
    return Known(len(labels), "1", "n", origin=f"count of {origin}", inputs=inputs)
