"""Measures of the gear case: what warmth does to the seats of the bearings."""

from checker.known import Unknown, Value, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.stated import stated
from checker.mechanics import housing, oil
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


def _size(seat: Value) -> float:
    return 0.0 if isinstance(seat, Unknown) else seat.number
