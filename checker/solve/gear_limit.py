"""Which flank or root is at its limit first, at what power, and what size would just restore it.

One unknown at a time, by a bracketed root of the logarithm of the least load in hand. All else
stays as stated, above all the load cycles that the rating is for.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import exp, log

from checker.known import Known, Unknown, Value, compute
from checker.mechanics import iso_contact
from checker.solve.iso_state import IsoState
from checker.solve.root import Root, bracketed_root
from checker.train.pair import Pair

_TOLERANCE = 1e-5
_SIZE_STEP = 1.1
_BEYOND, _LEAST_STEP = 1.25, 0.02
_FARTHEST = 30.0


@dataclass(frozen=True, slots=True)
class Limit:
    """Load in hand of one flank or root at one operation point.

    Attributes:
        mesh: name of the mesh.
        gear: name of the gear.
        mode: pitting or breakage.
        point: name of the operation point.
        load_in_hand: load at the limit over the load that is there: S_F, or S_H².
        safety: S_F or S_H itself.
    """

    mesh: str
    gear: str
    mode: str
    point: str
    load_in_hand: Known
    safety: Known

    @property
    def text(self) -> str:
        """The limit in words."""
        return f"{self.mode} of {self.gear} in {self.mesh} at {self.point}"


@dataclass(frozen=True, slots=True)
class Minima:
    """Safety that flanks and roots are to keep."""

    pitting: float = 1.0
    breakage: float = 1.0

    def of(self, limit: Limit) -> float:
        """The safety that a flank or root is to keep."""
        return self.pitting if limit.mode == "pitting" else self.breakage

    def in_hand(self, limit: Limit) -> float:
        """Load at which that safety is just kept over the load that is there."""
        power = 2.0 if limit.mode == "pitting" else 1.0
        return float(limit.load_in_hand.number / self.of(limit) ** power)

    def first(self, limits: Sequence[Limit]) -> Limit:
        """The limit with the least load in hand."""
        return min(limits, key=self.in_hand)


AT_FAILURE = Minima()


@dataclass(frozen=True, slots=True)
class Duty:
    """A mesh at one operation point.

    Attributes:
        state: the pair under its stated load.
        mesh: name of the mesh.
        point: name of the operation point.
        cycles: load cycles of driver and driven gear over the target life.
    """

    state: IsoState
    mesh: str
    point: str
    cycles: tuple[Value, Value]


def limits_of(duty: Duty, state: IsoState | None = None) -> list[Limit] | Unknown:
    """Load in hand of both flanks and roots, as stated or in another state."""
    state = state or duty.state
    found = []
    for tooth, cycles in zip(state.rating.teeth, duty.cycles, strict=True):
        contact = state.contact_safety(tooth, cycles)
        bending = state.bending_safety(tooth, cycles)
        in_hand = compute(iso_contact.load_in_hand, contact)
        for mode, value, safety in (
            ("pitting", in_hand, contact),
            ("breakage", bending, bending),
        ):
            if isinstance(value, Unknown) or isinstance(safety, Unknown):
                return value if isinstance(value, Unknown) else Unknown()
            gear = tooth.wheel.subject.name
            found.append(Limit(duty.mesh, gear, mode, duty.point, value, safety))
    return found


def load_at_first_limit(duties: Sequence[Duty]) -> Root | Unknown:
    """Multiple of the load at which the first of several meshes reaches its limit.

    Load factors fall as the load grows, so it lies a little beyond the load in hand: the first
    step goes there.
    """

    def in_hand(load: float) -> float | Unknown:
        return _least([limits_of(duty, duty.state.at_load(load)) for duty in duties], AT_FAILURE)

    at_one = in_hand(1.0)
    if isinstance(at_one, Unknown):
        return at_one
    return _crossing(in_hand, exp(_BEYOND * abs(at_one)) + _LEAST_STEP)


def factor_at_limit(
    duty: Duty, change: Callable[[Pair, float], Pair], minima: Minima
) -> Root | Unknown:
    """Multiple of a size at which a mesh just keeps its safety."""

    def in_hand(factor: float) -> float | Unknown:
        changed = duty.state.with_pair(change(duty.state.rating.pair, factor))
        return _least([limits_of(duty, changed)], minima)

    return _crossing(in_hand, _SIZE_STEP)


def _least(found: Sequence[list[Limit] | Unknown], minima: Minima) -> float | Unknown:
    """Logarithm of the least load in hand."""
    limits: list[Limit] = []
    for each in found:
        if isinstance(each, Unknown):
            return each
        limits += each
    return log(minima.in_hand(minima.first(limits)))


def _crossing(in_hand: Callable[[float], float | Unknown], step: float) -> Root | Unknown:
    """Where the load in hand is one, searched outwards from the stated design."""
    at_one = in_hand(1.0)
    if isinstance(at_one, Unknown):
        return at_one
    bracket = _bracket(in_hand, at_one, step)
    if isinstance(bracket, Unknown):
        return bracket

    def number(factor: float) -> float:
        value = in_hand(factor)
        if isinstance(value, Unknown):
            raise ArithmeticError(f"no load in hand within the bracket: {value.because}")
        return value

    return bracketed_root(number, *bracket, tolerance=_TOLERANCE)


def _bracket(
    in_hand: Callable[[float], float | Unknown], at_one: float, step: float
) -> tuple[float, float] | Unknown:
    """Two multiples with the crossing between them, sought both ways while it comes nearer."""
    for stride in (step, 1.0 / step):
        near, before = 1.0, at_one
        while 1.0 / _FARTHEST < near < _FARTHEST:
            far = near * stride
            after = in_hand(far)
            if isinstance(after, Unknown):
                break
            if after * at_one <= 0.0:
                return near, far
            if abs(after) >= abs(before):
                break
            near, before = far, after
    return Unknown(because="no such change alone brings the mesh to its limit")
