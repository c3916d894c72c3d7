"""The drive at a glance: how fast its shafts turn, what they carry, and how its gears mesh."""

from dataclasses import dataclass

from checker.known import Known, Unknown, Value, compute
from checker.measures.design import Design
from checker.mechanics import kinematics
from checker.spec.subject import Subject


@dataclass(frozen=True, slots=True)
class PointRow:
    """An operation point: speed and torque of each group of shafts."""

    point: str
    speeds: tuple[Value, ...]
    torques: tuple[Value, ...]


@dataclass(frozen=True, slots=True)
class MeshRow:
    """A mesh: teeth, ratio and contact ratios."""

    mesh: str
    driver: str
    driven: str
    teeth: Value
    mate_teeth: Value
    ratio: Value
    transverse_contact_ratio: Value
    overlap_ratio: Value


@dataclass(frozen=True, slots=True)
class DriveTable:
    """The drive with one ratio set.

    Attributes:
        ratio_set: the set, ``None`` where there are none.
        ratio: engine speed over propeller speed.
        shafts: every shaft, those that always turn as one together; the power path first.
        points: a row for each operation point.
        meshes: a row for each mesh.
    """

    ratio_set: str | None
    ratio: Value
    shafts: tuple[tuple[str, ...], ...]
    points: tuple[PointRow, ...]
    meshes: tuple[MeshRow, ...]


def drive_table(design: Design) -> DriveTable:
    """Ask a design for the figures of its table."""
    shafts = _turning_as_one(design)
    drive = design.subjects.the("drive")
    return DriveTable(
        design.subjects.ratio_set,
        asked(design, "computed_ratio", drive),
        shafts,
        tuple(
            PointRow(
                point.name,
                tuple(design.motion.speed(group[0], point) for group in shafts),
                tuple(design.motion.torque(group[0], point) for group in shafts),
            )
            for point in design.points
        ),
        tuple(_mesh_row(design, mesh) for mesh in design.subjects.all("mesh")),
    )


def _turning_as_one(design: Design) -> tuple[tuple[str, ...], ...]:
    """The shafts in groups: on the power path a damper or joint hands on speed and torque alike."""
    path = design.train.path_shafts
    groups = [[path[0]]]
    for link in design.train.power_path:
        if link.kind in ("damper", "joint"):
            groups[-1].append(link.driven)
        else:
            groups.append([link.driven])
    others = [[shaft.name] for shaft in design.subjects.all("shaft") if shaft.name not in path]
    return tuple(tuple(group) for group in (*groups, *others))


def _mesh_row(design: Design, mesh: Subject) -> MeshRow:
    pair = design.pairs[mesh.name]
    before = Known(1.0, "1", "i′", origin="a train of this mesh alone")
    return MeshRow(
        mesh.name,
        pair.driver.subject.name,
        pair.driven.subject.name,
        pair.driver.teeth,
        pair.driven.teeth,
        compute(kinematics.step_ratio, before, pair.driver.teeth, pair.driven.teeth),
        asked(design, "transverse_contact_ratio_least", mesh),
        asked(design, "overlap_ratio", mesh),
    )


def asked(design: Design, name: str, subject: Subject) -> Value:
    """A measure; unknown where it is not there or fails."""
    if design.measure_named(name, subject) is None:
        return Unknown(because="there is no such measure")
    try:
        return design.measure(name, subject)
    except Exception as error:  # its own rule reports it as broken; the table must not hide that
        return Unknown(because=f"{type(error).__name__}: {error}")
