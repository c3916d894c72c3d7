"""What the families of gear rating share: the pair as it is rated, its states, its load cycles."""

from collections.abc import Callable, Iterator

from checker.known import Known, Unknown, Value, all_known, assumed, compute, merged
from checker.measures import oil_properties
from checker.measures.design import Design
from checker.measures.kept import kept
from checker.measures.misalignment import flank_misalignment
from checker.mechanics import miner
from checker.solve.agma_pair import AgmaPair, AgmaState
from checker.solve.iso_pair import IsoPair
from checker.solve.iso_state import IsoState
from checker.solve.iso_tooth import Tooth
from checker.spec.subject import Subject

_BEST_CASE = assumed(
    1.0, "1", "K_A", "best case: torque without any pulses, to see what falls short even so"
)
_IN_SPECTRUM = "the powers of the operation points hold the vibratory torque (ISO 6336-6)"
_SURVEY = (
    "the application factor is not stated with its evidence, and the torsional survey that would "
    "give it is not computed"
)


@kept
def rated(design: Design, mesh: Subject) -> IsoPair:
    """The pair of a mesh, ready to be rated."""
    pair = design.pairs[mesh.name]
    idlers = (
        design.measure("is_idler", pair.driver.subject),
        design.measure("is_idler", pair.driven.subject),
    )
    return IsoPair(
        pair,
        oil_properties.viscosity_40(design, "low"),
        compute(miner.reliability_factor, _failure_probability(design)),
        flank_misalignment(design, mesh),
        idlers,
    )


def _failure_probability(design: Design) -> Value:
    return design.subjects.the("drive").given("failure_probability", "q")


def application_factor(design: Design) -> Value:
    """K_A as stated with its evidence; at best 1 where it is not."""
    drive = design.subjects.the("drive")
    evidence = drive.given("application_factor.evidence")
    if drive.raw("application_factor.in_spectrum") is True:
        return _one_in_spectrum(evidence)
    factor = drive.given("application_factor.factor", "K_A")
    if isinstance(factor, Known) and isinstance(evidence, Known):
        return Known(factor.value, "1", "K_A", inputs=(factor, evidence))
    unknown = all_known(factor, evidence) or Unknown()
    return Unknown(unknown.missing, _SURVEY, at_best=_BEST_CASE)


def _one_in_spectrum(evidence: Value) -> Value:
    """K_A = 1 where the load spectrum holds the pulses, if there is evidence of it."""
    if isinstance(evidence, Unknown):
        return Unknown(evidence.missing, _SURVEY, at_best=_BEST_CASE)
    return Known(1.0, "1", "K_A", origin=_IN_SPECTRUM, inputs=(evidence,))


def with_application(design: Design, value: Callable[[Known], Value]) -> Value:
    """A value that rests on K_A; with K_A unknown, the best it can be."""
    factor = application_factor(design)
    if isinstance(factor, Known):
        return value(factor)
    best = value(_BEST_CASE)
    if isinstance(best, Unknown):
        return merged([factor, best])
    return Unknown(factor.missing, factor.because, at_best=best)


@kept
def _state(design: Design, mesh: Subject, point: Subject, best: bool) -> IsoState:
    factor = application_factor(design)
    known = factor if isinstance(factor, Known) and not best else _BEST_CASE
    shaft = str(design.pairs[mesh.name].driver.subject.raw("shaft"))
    return IsoState(
        rated(design, mesh),
        design.motion.torque(shaft, point),
        design.motion.speed(shaft, point),
        known,
    )


def state(design: Design, mesh: Subject, point: Subject, factor: Known) -> IsoState:
    """The pair of a mesh at an operation point."""
    return _state(design, mesh, point, factor is _BEST_CASE)


@kept
def _agma_sizes(design: Design, mesh: Subject) -> AgmaPair:
    return AgmaPair(rated(design, mesh))


@kept
def _agma_state(design: Design, mesh: Subject, point: Subject, best: bool) -> AgmaState:
    found = _state(design, mesh, point, best)
    shaft = str(design.pairs[mesh.name].driver.subject.raw("shaft"))
    return AgmaState(
        _agma_sizes(design, mesh),
        design.motion.torque(shaft, point),
        design.motion.speed(shaft, point),
        found.application,
    )


def agma_state(design: Design, mesh: Subject, point: Subject, factor: Known) -> AgmaState:
    """The pair of a mesh at an operation point, by AGMA."""
    return _agma_state(design, mesh, point, factor is _BEST_CASE)


def teeth_of(design: Design, gear: Subject) -> Iterator[tuple[Subject, Tooth]]:
    """Every mesh of a gear, with the gear as it is rated there."""
    for mesh in design.subjects.all("mesh"):
        if gear.name in (mesh.raw("driver"), mesh.raw("driven")):
            yield mesh, rated(design, mesh).tooth(gear.name)


def speed_of(design: Design, gear: Subject, point: Subject) -> Value:
    """ω of a gear [rad/s]."""
    return design.motion.speed(str(gear.raw("shaft")), point)


@kept
def cycles_at(design: Design, gear: Subject, point: Subject) -> Value:
    """N_L, load cycles of a tooth of the gear at a point over the target life."""
    return compute(
        miner.load_cycles,
        point.given("share", "q"),
        design.subjects.the("drive").given("target_life", "L"),
        speed_of(design, gear, point),
    )


def worst(values: list[Value], *, largest: bool = False) -> Value:
    """The worst of some values of one kind; unknown where any is."""
    unknown = all_known(*values)
    if unknown is not None:
        return unknown
    known = [each for each in values if isinstance(each, Known)]
    pick = max if largest else min
    return pick(known, key=lambda each: each.number)


def loaded(design: Design, mesh: Subject, point: Subject) -> bool | Unknown:
    """Whether the mesh carries torque at a point."""
    shaft = str(design.pairs[mesh.name].driver.subject.raw("shaft"))
    torque = design.motion.torque(shaft, point)
    return torque if isinstance(torque, Unknown) else torque.number != 0.0
