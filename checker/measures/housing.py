"""Measures of the gear case: what warmth does to the seats of the bearings."""

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.stated import stated
from checker.mechanics import housing, kinematics, oil
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject
from checker.train.bearing_size import outside


@measure("housing", "m", "greatest interference that the warm case takes from a bearing seat")
def seat_loosening(design: Design, case: Subject) -> Value:
    """ΔD, growth of the largest seat beyond that of its ring, from building to running [m]."""
    bearings = design.subjects.all("bearing")
    if not bearings:
        return Unknown((("bearings",),))
    warming = compute(
        oil.temperature_reserve,
        case.given("highest_temperature", "T_case"),
        design.subjects.the("drive").given("build_temperature", "T_build"),
    )
    expansion = compute(housing.thermal_expansion, case.given("material", "material"))
    seats = [
        compute(housing.seat_loosening, outside(bearing), expansion, warming)
        for bearing in bearings
    ]
    unknown = [seat for seat in seats if isinstance(seat, Unknown)]
    return merged(unknown) if unknown else max(seats, key=_size)


@measure("housing", "", "whether the stress in the case is shown", at="stress_evidence")
def stress_shown(design: Design, case: Subject) -> Value:
    """True where an analysis or test of the stress is stated; it is not computed here."""
    return stated(case, "stress_evidence")


@measure("housing", "", "whether the stiffness of the case is shown", at="stiffness_evidence")
def stiffness_shown(design: Design, case: Subject) -> Value:
    """True where an analysis or test of the stiffness is stated; it is not computed here."""
    return stated(case, "stiffness_evidence")


@measure(
    "housing", "1", "mass of the drive over that of its stated parts", at="mounting.drive_mass"
)
def drive_mass_over_parts(design: Design, case: Subject) -> Value:
    """Stated mass of the drive over that of case and gears; at best that of those stated.

    Shafts, bearings, damper, clutch and oil have no stated mass: they come on top.
    """
    parts = [case, *design.subjects.all("gear")]
    masses = [part.given("mass", f"m of {part.label}") for part in parts]
    known = tuple(mass for mass in masses if isinstance(mass, Known))
    unknown = [mass for mass in masses if isinstance(mass, Unknown)]
    total = Known(
        housing.mass_of_parts(tuple(mass.number for mass in known)),
        "kg",
        "Σ m",
        origin=equation_of(housing.mass_of_parts),
        inputs=known,
    )
    drive = case.given("mounting.drive_mass", "m")
    if not known or isinstance(drive, Unknown):
        return merged([*([drive] if isinstance(drive, Unknown) else []), *unknown])
    ratio = compute(kinematics.quotient, drive, total)
    if not unknown or isinstance(ratio, Unknown):
        return ratio
    missing = merged(unknown)
    return Unknown(missing.missing, missing.because, at_best=ratio)


def _size(seat: Value) -> float:
    return 0.0 if isinstance(seat, Unknown) else seat.number
