"""Measures of how the drive fails: the clutch locked, the clutch slipping, other single parts."""

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.stated import stated
from checker.spec.fields import NONE
from checker.spec.subject import Subject

_LOCKED = "failure_evidence.locked"
_SLIP = "failure_evidence.slip"


@measure("clutch", "", "whether shutdown, restart and taxi with a locked clutch are described")
def locked_consequences_stated(design: Design, clutch: Subject) -> Value:
    """Whether it is stated what a locked clutch does at shutdown, restart and taxi."""
    return stated(clutch, *(f"{_LOCKED}.{when}" for when in ("shutdown", "restart", "taxi")))


@measure("clutch", "", "whether the finding of a locked clutch is described")
def locked_detection_stated(design: Design, clutch: Subject) -> Value:
    """Whether it is stated how a locked clutch is found before flight."""
    return stated(clutch, f"{_LOCKED}.detected_by")


@measure("clutch", "", "whether the preflight list has the hand check of the clutch")
def hand_check_listed(design: Design, clutch: Subject) -> Value:
    """Whether the records list the hand check of the clutch before each flight."""
    return design.subjects.the("records").given("clutch_hand_check")


@measure("clutch", "", "whether the review of a locked clutch rests on stated evidence")
def locked_evidence_stated(design: Design, clutch: Subject) -> Value:
    """Whether analysis or test is named for the locked clutch."""
    return stated(clutch, f"{_LOCKED}.evidence")


@measure("clutch", "", "whether the effect of a slipping clutch is described")
def slip_effect_stated(design: Design, clutch: Subject) -> Value:
    """Whether it is stated what slip does to thrust and engine."""
    return stated(clutch, f"{_SLIP}.effect")


@measure("clutch", "", "whether something limits the consequence of a slipping clutch")
def slip_mitigated(design: Design, clutch: Subject) -> Value:
    """Whether a mitigation of the loss of thrust is stated; false where it is ``none``."""
    mitigation = clutch.given(f"{_SLIP}.mitigation")
    if isinstance(mitigation, Unknown):
        return mitigation
    return Known(mitigation.value != NONE, "", "mitigated", inputs=(mitigation,))


@measure("clutch", "", "whether the beginning of slip can be noticed")
def slip_detection_stated(design: Design, clutch: Subject) -> Value:
    """Whether it is stated how the crew notices the beginning of slip."""
    return stated(clutch, f"{_SLIP}.detected_by")


@measure("clutch", "", "whether the review of a slipping clutch rests on stated evidence")
def slip_evidence_stated(design: Design, clutch: Subject) -> Value:
    """Whether analysis or test is named for the slipping clutch."""
    return stated(clutch, f"{_SLIP}.evidence")


@measure("drive", "", "whether a one-way clutch frees the propeller from a stopped engine")
def propeller_runs_free(design: Design, drive: Subject) -> Value:
    """Whether the propeller can turn on when the engine stops."""
    present = design.subjects.presence("clutch")
    if present is None:
        return Unknown((("clutch",),))
    return Known(present, "", "clutch", path=("clutch",))


@measure("records", "1", "parts of the power path not listed", at="single_failures")
def unlisted_single_failures(design: Design, records: Subject) -> Value:
    """Number of shafts, links, joints, gears and bearings of the power path that are not listed."""
    listed = _listed_parts(records)
    if isinstance(listed, Unknown):
        return listed
    left_out = [label for label in _parts_of_power_path(design) if label not in listed]
    return _count(left_out, "parts of the power path that records.single_failures leaves out")


@measure("records", "", "whether effect and sign of each single failure are described")
def single_failures_described(design: Design, records: Subject) -> Value:
    """Whether each listed failure says what it does and how it shows."""
    failures = records.raw("single_failures")
    place = records.place("single_failures")
    if failures is None:
        return Unknown((place,))
    missing = tuple(
        (*place, index, field)
        for index, failure in enumerate(failures)
        for field in ("effect", "detected_by")
        if getattr(failure, field) is None
    )
    return Unknown(missing) if missing else Known(True, "", "described", path=place)


def _listed_parts(records: Subject) -> list[str] | Unknown:
    failures = records.raw("single_failures")
    if failures is None:
        return Unknown((records.place("single_failures"),))
    return [failure.part for failure in failures]


def _parts_of_power_path(design: Design) -> list[str]:
    """Labels of shafts, links, joints, gears and bearings that carry the power, each once."""
    shafts = design.train.path_shafts
    elsewhere = {shaft.name for shaft in design.subjects.all("shaft")} - set(shafts)
    joints = [
        joint.label
        for joint in design.subjects.all("joint")
        if joint.raw("shaft") in shafts and joint.raw("to") not in elsewhere
    ]
    meshes = [
        design.subjects.the("mesh", link.name)
        for link in design.train.power_path
        if link.kind == "mesh"
    ]
    bearings = [
        bearing.label
        for bearing in design.subjects.all("bearing")
        if bearing.raw("shaft") in shafts or bearing.raw("runs_on") in shafts
    ]
    labels = [
        *(f"shafts.{shaft}" for shaft in shafts),
        *(".".join(map(str, link.path)) for link in design.train.power_path),
        *joints,
        *(f"gears.{mesh.raw(side)}" for mesh in meshes for side in ("driver", "driven")),
        *bearings,
    ]
    return list(dict.fromkeys(labels))


def _count(labels: list[str], origin: str) -> Known:
    inputs = tuple(Known(label, "", "part", origin=origin) for label in labels)
    return Known(len(labels), "1", "n", origin=f"count of {origin}", inputs=inputs)
