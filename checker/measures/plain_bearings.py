"""Measures of plain bearings: pressure on the lining, and pressure times sliding speed."""

from collections.abc import Iterable

from checker.known import Known, Unknown, Value, compute
from checker.measures.bearing_loads import axial_in, worst_of
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import kinematics, plain_bearing
from checker.mechanics.bearing_life import mean_diameter
from checker.spec.subject import Subject
from checker.train.bearing_size import width
from checker.train.load_cases import LoadCase


@measure("bearing", "", "whether it is a plain bearing under load", at="kind")
def slides_under_load(design: Design, bearing: Subject) -> Value:
    """Whether it slides, and stands on a shaft that gear, propeller or a member on it loads."""
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    slides = kind.value == "plain" and design.reactions.is_loaded(str(bearing.raw("shaft")))
    return Known(slides, "", "slides under load", inputs=(kind,))


@measure("bearing", "1", "pressure over its limit in the worst state of load", at="pressure_limit")
def plain_pressure_share(design: Design, bearing: Subject) -> Value:
    """p/p_lim of bush or thrust face in the worst of all operation points and limit cases."""
    cases = design.reactions.cases

    def share(limits: Iterable[LoadCase]) -> Value:
        worst = worst_of(
            [*cases.points.values(), *limits],
            lambda case: largest([p for p, _ in _pressures(design, bearing, case)]),
        )
        limit = bearing.given("pressure_limit", "p_lim")
        return more_is_worse(worst, lambda each: compute(kinematics.quotient, each, limit))

    return cases.judged(share, str(bearing.raw("shaft")))


@varying_measure("bearing", "1", "pressure times speed over its limit", at="pv_limit")
def plain_heat_share(design: Design, bearing: Subject, point: Subject) -> Value:
    """p v/(p v)_lim of bush or thrust face at an operation point."""
    case = design.reactions.cases.points[point.name]
    speed = design.measure("ring_speed", bearing, point)
    worst = largest(
        [
            compute(plain_bearing.pressure_speed, pressure, speed, diameter)
            for pressure, diameter in _pressures(design, bearing, case)
        ]
    )
    limit = bearing.given("pv_limit", "(p v)_lim")
    return more_is_worse(worst, lambda each: compute(kinematics.quotient, each, limit))


def _pressures(design: Design, bearing: Subject, case: LoadCase) -> list[tuple[Value, Value]]:
    """Pressure and sliding diameter of the bush, and of its thrust face if there is one."""
    bore = bearing.given("bore", "d")
    radial = design.reactions.radial(bearing, case)
    found = [(compute(plain_bearing.mean_pressure, radial, bore, width(bearing)), bore)]
    outer = bearing.given("thrust_outside", "D_t")
    if isinstance(outer, Known):
        area = compute(plain_bearing.thrust_face, outer, bore)
        pressure = compute(plain_bearing.face_pressure, axial_in(design, bearing, case), area)
        found.append((pressure, compute(mean_diameter, bore, outer)))
    return found
