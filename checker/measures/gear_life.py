"""Hours of flanks and roots under the whole spectrum of operation, by Miner's sum."""

from collections import defaultdict
from collections.abc import Callable

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.rating import loaded, speed_of, state, teeth_of, with_application, worst
from checker.measures.registry import measure
from checker.mechanics import kinematics, miner
from checker.mechanics.equation import equation_of
from checker.solve.iso_state import IsoState
from checker.solve.iso_tooth import Tooth
from checker.spec.subject import Subject

Rate = Callable[[IsoState, Tooth, Value, Value], Value]


@measure("gear", "s", "life of the flanks", at="face_width")
def pitting_life(design: Design, gear: Subject) -> Value:
    """Running time to pitting of the worse flank at the stated chance of failure [s]."""
    return _life(design, gear, IsoState.contact_damage)


@measure("gear", "s", "life of the tooth roots", at="module")
def bending_life(design: Design, gear: Subject) -> Value:
    """Running time to a broken tooth at the stated chance of failure [s]."""
    return _life(design, gear, IsoState.bending_damage)


@measure("gear", "1", "life of the flanks over the target life", at="face_width")
def pitting_life_share(design: Design, gear: Subject) -> Value:
    """Running time to pitting over the target life."""
    return _over_target(design, "pitting_life", gear)


@measure("gear", "1", "life of the tooth roots over the target life", at="module")
def bending_life_share(design: Design, gear: Subject) -> Value:
    """Running time to a broken tooth over the target life."""
    return _over_target(design, "bending_life", gear)


def _over_target(design: Design, name: str, gear: Subject) -> Value:
    target = design.subjects.the("drive").given("target_life", "L_target")
    life = design.measure(name, gear)
    if isinstance(life, Known) or life.at_best is None:
        return compute(kinematics.quotient, life, target)
    best = compute(kinematics.quotient, life.at_best, target)
    if isinstance(best, Unknown):
        return Unknown((*life.missing, *best.missing), life.because)
    return Unknown(life.missing, life.because, at_best=best)


def _life(design: Design, gear: Subject, rate: Rate) -> Value:
    """Life of the worse of the two flanks of a gear's teeth."""

    def of_flanks(best: bool) -> Value:
        rates: dict[int, list[Value]] = defaultdict(list)
        for mesh, tooth in teeth_of(design, gear):
            role = 1 if gear.name == mesh.raw("driver") else -1
            shaft = str(design.pairs[mesh.name].driver.subject.raw("shaft"))
            for point in design.points:
                carries = loaded(design, mesh, point)
                if carries is False:
                    continue
                torque = design.motion.torque(shaft, point)
                if isinstance(torque, Unknown):
                    return torque
                # A gear that drives bears on one flank, driven on the other; overrun turns it.
                flank = role if torque.number > 0.0 else -role
                found = state(design, mesh, point, best)
                speed = speed_of(design, gear, point)
                rates[flank].append(rate(found, tooth, point.given("share", "q"), speed))
        if not rates:
            return Unknown((("operation",),), "no operation point loads the gear")
        return worst([_until_failure(each) for each in rates.values()])

    return with_application(of_flanks)


def _until_failure(rates: list[Value]) -> Value:
    unknown = all_known(*rates)
    if unknown is not None:
        return unknown
    known = tuple(each for each in rates if isinstance(each, Known))
    printed = equation_of(miner.life_of)
    life = miner.life_of([each.number for each in known])
    return Known(life, printed.unit, printed.symbol, origin=printed, inputs=known)
