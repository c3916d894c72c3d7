"""Safety of flanks and roots at each operation point, by ISO 6336 and beside it by AGMA 2001.

A gear with several mates is judged by the worst of them. Without a known application factor every
value is the best it can be. A propeller strike is outside this rating.
"""

from collections.abc import Callable
from functools import partial

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures import rating
from checker.measures.design import Design
from checker.measures.rating import (
    agma_state,
    cycles_at,
    driver_shaft,
    state,
    teeth_of,
    with_application,
    worst,
)
from checker.measures.registry import measure, varying_measure
from checker.mechanics import agma_rating, iso_contact, kinematics
from checker.mechanics import engine as engine_mechanics
from checker.solve.iso_state import IsoState
from checker.solve.iso_tooth import Tooth
from checker.spec.subject import Subject


@measure("drive", "1", "application factor of the gear rating, as stated", at="application_factor")
def stated_application_factor(design: Design, drive: Subject) -> Value:
    """K_A as stated with its evidence, or 1 where the load spectrum holds the pulses."""
    return rating.stated_application_factor(design)


@measure("drive", "", "whether torque pulses are counted twice", at="application_factor")
def pulses_counted_twice(design: Design, drive: Subject) -> Value:
    """Whether a factor above 1 is put on powers that already hold the vibratory torque."""
    holds = drive.given("application_factor.in_spectrum")
    factor = drive.given("application_factor.factor", "K_A")
    if isinstance(holds, Unknown):
        return holds
    if holds.value is False or isinstance(factor, Unknown):
        return Known(False, "", "counted twice", inputs=(holds,))
    return Known(factor.number != 1.0, "", "counted twice", inputs=(holds, factor))


@varying_measure("mesh", "", "whether the mesh carries torque")
def carries_torque(design: Design, mesh: Subject, point: Subject) -> Value:
    """Whether torque passes the mesh at the point."""
    return _carries(design, driver_shaft(design, mesh), point)


@varying_measure("gear", "", "whether the gear carries torque")
def is_loaded(design: Design, gear: Subject, point: Subject) -> Value:
    """Whether torque passes the gear at the point."""
    return _carries(design, str(gear.raw("shaft")), point)


def _carries(design: Design, shaft: str, point: Subject) -> Value:
    torque = design.motion.torque(shaft, point)
    if isinstance(torque, Unknown):
        return torque
    return Known(torque.number != 0.0, "", "carries torque", inputs=(torque,))


def _of_mesh(
    design: Design, mesh: Subject, point: Subject, value: Callable[[IsoState], Value]
) -> Value:
    return with_application(lambda best: value(state(design, mesh, point, best)))


@varying_measure("mesh", "1", "dynamic factor")
def dynamic_factor(design: Design, mesh: Subject, point: Subject) -> Value:
    """K_v by ISO 6336-1, method B."""
    return _of_mesh(design, mesh, point, lambda each: each.dynamic_factor)


@varying_measure("mesh", "1", "face load factor for contact")
def face_load_factor(design: Design, mesh: Subject, point: Subject) -> Value:
    """K_Hβ by ISO 6336-1, method C."""
    return _of_mesh(design, mesh, point, lambda each: each.face_factor)


@varying_measure("mesh", "1", "transverse load factor for contact")
def transverse_load_factor(design: Design, mesh: Subject, point: Subject) -> Value:
    """K_Hα by ISO 6336-1, method B."""
    return _of_mesh(design, mesh, point, lambda each: each.transverse_factor)


Rated = Callable[[IsoState, Tooth], Value]
_NO_FACTOR = Known(1.0, "1", "K_A", origin="the peak holds what K_A stands for")
_AT_REST = Known(0.0, "rad/s", "ω", origin="a single overload")


def _of_gear(
    design: Design, gear: Subject, point: Subject, value: Rated, *, largest: bool = False
) -> Value:
    """The worst of a value over the meshes of a gear."""

    def over_meshes(best: bool) -> Value:
        values = [
            value(state(design, mesh, point, best), tooth) for mesh, tooth in teeth_of(design, gear)
        ]
        return worst(values, largest=largest)

    return with_application(over_meshes)


@varying_measure("gear", "Pa", "contact stress", at="face_width")
def contact_stress(design: Design, gear: Subject, point: Subject) -> Value:
    """σ_H of the worse flank [Pa]."""
    return _of_gear(
        design, gear, point, lambda each, tooth: each.contact_stress(tooth), largest=True
    )


@varying_measure("gear", "Pa", "tooth root stress", at="module")
def root_stress(design: Design, gear: Subject, point: Subject) -> Value:
    """σ_F of the worse root side [Pa]."""
    return _of_gear(design, gear, point, lambda each, tooth: each.root_stress(tooth), largest=True)


@varying_measure("gear", "1", "safety against pitting", at="face_width")
def contact_safety(design: Design, gear: Subject, point: Subject) -> Value:
    """S_H for the load cycles of the point over the target life."""
    cycles = cycles_at(design, gear, point)
    return _of_gear(design, gear, point, lambda each, tooth: each.contact_safety(tooth, cycles))


@varying_measure("gear", "1", "safety against tooth breakage", at="module")
def bending_safety(design: Design, gear: Subject, point: Subject) -> Value:
    """S_F for the load cycles of the point over the target life; 0.7 σ_FE for an idler."""
    cycles = cycles_at(design, gear, point)
    return _of_gear(design, gear, point, lambda each, tooth: each.bending_safety(tooth, cycles))


@varying_measure("gear", "1", "safety against pitting by AGMA", at="face_width")
def contact_safety_agma(design: Design, gear: Subject, point: Subject) -> Value:
    """S_H of AGMA 2001 for the load cycles of the point; never held against a limit of ISO."""
    cycles = cycles_at(design, gear, point)

    def over_meshes(best: bool) -> Value:
        return worst(
            [
                agma_state(design, mesh, point, best).contact_safety(tooth, cycles)
                for mesh, tooth in teeth_of(design, gear)
            ]
        )

    return with_application(over_meshes)


@varying_measure("gear", "1", "safety against tooth breakage by AGMA", at="module")
def bending_safety_agma(design: Design, gear: Subject, point: Subject) -> Value:
    """S_F of AGMA 2001 for the load cycles of the point; never held against a limit of ISO."""
    cycles = cycles_at(design, gear, point)

    def over_meshes(best: bool) -> Value:
        return worst(
            [
                agma_state(design, mesh, point, best).bending_safety(tooth, cycles)
                for mesh, tooth in teeth_of(design, gear)
            ]
        )

    return with_application(over_meshes)


@varying_measure("mesh", "W", "power that the mesh may carry by ISO")
def permissible_power(design: Design, mesh: Subject, point: Subject) -> Value:
    """Power at the crankshaft at which the first safety factor of ISO 6336 falls to 1 [W]."""

    def permitted(best: bool) -> Value:
        found = state(design, mesh, point, best)
        teeth = [(tooth, _cycles(design, tooth, point)) for tooth in found.rating.teeth]
        bending = [found.bending_safety(*each) for each in teeth]
        contact = [found.contact_safety(*each) for each in teeth]
        return _power(point, bending, contact)

    return with_application(permitted)


@varying_measure("mesh", "W", "power that the mesh may carry by AGMA")
def permissible_power_agma(design: Design, mesh: Subject, point: Subject) -> Value:
    """Power at the crankshaft at which the first safety factor of AGMA 2001 falls to 1 [W]."""

    def permitted(best: bool) -> Value:
        found = agma_state(design, mesh, point, best)
        teeth = [(tooth, _cycles(design, tooth, point)) for tooth in found.rating.teeth]
        bending = [found.bending_safety(*each) for each in teeth]
        contact = [found.contact_safety(*each) for each in teeth]
        return _power(point, bending, contact)

    return with_application(permitted)


def _power(point: Subject, bending: list[Value], contact: list[Value]) -> Value:
    factor = compute(agma_rating.permissible_load_factor, *bending, *contact)
    return compute(agma_rating.permissible_power, point.given("power", "P"), factor)


def _cycles(design: Design, tooth: Tooth, point: Subject) -> Value:
    return cycles_at(design, tooth.wheel.subject, point)


@varying_measure("mesh", "1", "permissible power by ISO over that by AGMA")
def standards_ratio(design: Design, mesh: Subject, point: Subject) -> Value:
    """Permissible power of ISO 6336 over that of AGMA 2001, at equal life and reliability."""

    # The dynamic and load distribution factors of ISO follow the load, those of AGMA do not: the
    # application factor does not quite fall out of the quotient.
    powers = [
        design.measure(name, mesh, point)
        for name in ("permissible_power", "permissible_power_agma")
    ]
    unknown = all_known(*powers)
    if unknown is None:
        return compute(kinematics.quotient, *powers)
    best = [each if isinstance(each, Known) else each.at_best or each for each in powers]
    ratio = compute(kinematics.quotient, *best)
    at_best = ratio if isinstance(ratio, Known) else None
    return Unknown(unknown.missing, unknown.because, at_best=at_best)


def _safety_at(
    design: Design, mesh: Subject, tooth: Tooth, torque: Value, *, contact: bool
) -> Value:
    """Static safety of a gear in one mesh under a single torque on the driver."""
    pair = rating.rated(design, mesh)
    state_ = IsoState(pair, torque, _AT_REST, _NO_FACTOR, static=True)
    stress = state_.contact_stress(tooth) if contact else state_.root_stress(tooth)
    strength = tooth.contact_static if contact else tooth.bending_static
    return compute(iso_contact.safety_factor, strength, stress)


def _ultimate(limit: Value) -> Value:
    return compute(engine_mechanics.ultimate_torque, limit)


def _at_peak(
    design: Design, gear: Subject, *, contact: bool, load: Callable[[Value], Value] | None = None
) -> Value:
    """Static safety of a gear at the peak torque, the worst over its meshes."""

    def safety(mesh: Subject, tooth: Tooth, peak: Value) -> Value:
        torque = load(peak) if load else peak
        return _safety_at(design, mesh, tooth, torque, contact=contact)

    return worst(
        [
            design.peaks.judged(partial(safety, mesh, tooth), driver_shaft(design, mesh), mesh.name)
            for mesh, tooth in teeth_of(design, gear)
        ]
    )


@measure("gear", "1", "static safety of the flanks at peak torque", at="face_width")
def static_contact_safety(design: Design, gear: Subject) -> Value:
    """S_H,stat at the peak torque; at best, with the floor of the peak."""
    return _at_peak(design, gear, contact=True)


@measure("gear", "1", "static safety of the roots at peak torque", at="module")
def static_bending_safety(design: Design, gear: Subject) -> Value:
    """S_F,stat at the peak torque; at best, with the floor of the peak."""
    return _at_peak(design, gear, contact=False)


@measure("gear", "1", "static safety of the roots at ultimate load", at="module")
def ultimate_bending_safety(design: Design, gear: Subject) -> Value:
    """S_F,stat at 1.5 times the limit torque; at best, with the floor of the peak."""
    return _at_peak(design, gear, contact=False, load=_ultimate)


@measure("gear", "1", "static safety of the roots at the start", at="module")
def start_bending_safety(design: Design, gear: Subject) -> Value:
    """S_F,stat at the torque that starter and engine bear with the propeller locked to the crank.

    Without a clutch or with a locked one, that torque passes the teeth at a start.
    """
    crank = design.subjects.the("engine").given("starter_torque_limit", "T_start")
    behind_engine = design.motion.torque_behind_engine(crank)
    safeties = []
    for mesh, tooth in teeth_of(design, gear):
        torque = design.motion.torque_passed_on(behind_engine, driver_shaft(design, mesh))
        safeties.append(_safety_at(design, mesh, tooth, torque, contact=False))
    return worst(safeties)
