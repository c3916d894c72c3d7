"""What the families of gear rating share: the pair as it is rated, its states, its load cycles."""

from collections.abc import Callable, Iterator

from checker.known import Known, Unknown, Value, all_known, assumed, compute
from checker.measures import oil_properties
from checker.measures.design import Design
from checker.measures.kept import kept
from checker.measures.misalignment import flank_misalignment
from checker.mechanics import iso_load_factors, miner
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
    "the application factor is neither stated with its evidence nor known from the torsional survey"
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


def stated_application_factor(design: Design) -> Value:
    """K_A as stated with its evidence: 1 where the spectrum holds the pulses."""
    drive = design.subjects.the("drive")
    evidence = drive.given("application_factor.evidence")
    if drive.raw("application_factor.in_spectrum") is True:
        if isinstance(evidence, Unknown):
            return evidence
        return Known(1.0, "1", "K_A", origin=_IN_SPECTRUM, inputs=(evidence,))
    factor = drive.given("application_factor.factor", "K_A")
    if isinstance(factor, Known) and isinstance(evidence, Known):
        return Known(factor.value, "1", "K_A", inputs=(factor, evidence))
    return all_known(factor, evidence) or factor


def application_factor(design: Design, mesh: Subject, point: Subject) -> Value:
    """K_A of a mesh at an operation point: of what is stated and what the survey gives, the larger.

    A stated factor counts with or without its evidence: that it lacks its evidence makes no gear
    better. Where the spectrum itself holds the pulses it is 1, so that they are not counted twice.
    """
    drive = design.subjects.the("drive")
    proven = stated_application_factor(design)
    if drive.raw("application_factor.in_spectrum") is True:
        return proven if isinstance(proven, Known) else _without_factor(_BEST_CASE, proven)
    stated = drive.given("application_factor.factor", "K_A")
    computed = design.measure("application_factor", mesh, point)
    if isinstance(stated, Known) and isinstance(computed, Known):
        counted = proven if isinstance(proven, Known) else stated
        return compute(iso_load_factors.larger_application_factor, counted, computed)
    if isinstance(computed, Known):
        return computed
    if isinstance(proven, Known):
        return proven
    return _without_factor(stated if isinstance(stated, Known) else _BEST_CASE, proven, computed)


def _without_factor(at_best: Known, *unknown: Value) -> Unknown:
    missing = all_known(*unknown) or Unknown()
    return Unknown(missing.missing, _SURVEY, at_best=at_best)


def with_application(value: Callable[[bool], Value]) -> Value:
    """A value that rests on K_A; where that is all it lacks, the best it can be.

    Args:
        value: the value, from whether an unknown K_A counts as the least that it can be.
    """
    found = value(False)
    if isinstance(found, Known):
        return found
    best = value(True)
    if isinstance(best, Known):
        return Unknown(found.missing, found.because, at_best=best)
    return found


@kept
def state(design: Design, mesh: Subject, point: Subject, best: bool) -> IsoState:
    """The pair of a mesh at an operation point; at best, with the least that K_A can be."""
    factor = application_factor(design, mesh, point)
    if best and isinstance(factor, Unknown) and factor.at_best is not None:
        factor = factor.at_best
    shaft = driver_shaft(design, mesh)
    return IsoState(
        rated(design, mesh),
        design.motion.torque(shaft, point),
        design.motion.speed(shaft, point),
        factor,
    )


@kept
def _agma_sizes(design: Design, mesh: Subject) -> AgmaPair:
    return AgmaPair(rated(design, mesh))


@kept
def agma_state(design: Design, mesh: Subject, point: Subject, best: bool) -> AgmaState:
    """The pair of a mesh at an operation point, by AGMA."""
    found = state(design, mesh, point, best)
    return AgmaState(_agma_sizes(design, mesh), found.torque, found.speed, found.application)


def driver_shaft(design: Design, mesh: Subject) -> str:
    """Name of the shaft of the driving gear of a mesh."""
    return str(design.pairs[mesh.name].driver.subject.raw("shaft"))


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
    """N_L, load cycles of the busier flank of the gear's teeth at a point over the target life."""
    return compute(
        miner.load_cycles,
        point.given("share", "q"),
        design.subjects.the("drive").given("target_life", "L"),
        speed_of(design, gear, point),
        mates_on_one_flank(design, gear),
    )


def mates_on_one_flank(design: Design, gear: Subject) -> Known:
    """How often a flank bears in each turn: as often as the gear drives, or is driven."""
    meshes = design.subjects.all("mesh")
    as_driver = sum(mesh.raw("driver") == gear.name for mesh in meshes)
    as_driven = sum(mesh.raw("driven") == gear.name for mesh in meshes)
    return Known(
        max(1, as_driver, as_driven),
        "1",
        "n_mates",
        origin="mates that load one flank; a gear bears on the other where it is driven",
    )


def worst(values: list[Value], *, largest: bool = False) -> Value:
    """The worst of some values of one kind; unknown where any is, and no better than the worst."""
    best = [each if isinstance(each, Known) else each.at_best for each in values]
    known = [each for each in best if each is not None]
    pick = max if largest else min
    found = pick(known, key=lambda each: each.number) if known else None
    unknown = all_known(*values)
    if unknown is not None:
        return Unknown(unknown.missing, unknown.because, at_best=found)
    return found or Unknown()


def loaded(design: Design, mesh: Subject, point: Subject) -> bool | Unknown:
    """Whether the mesh carries torque at a point."""
    shaft = str(design.pairs[mesh.name].driver.subject.raw("shaft"))
    torque = design.motion.torque(shaft, point)
    return torque if isinstance(torque, Unknown) else torque.number != 0.0
