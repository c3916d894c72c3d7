"""A shaft as a beam on rigid radial supports, in one plane through its axis.

Signs. x runs along the shaft, v is the deflection across it in the plane, θ = dv/dx its slope. A
force is positive along v; a couple is positive where it does work on a positive θ. The bending
moment M = E I dθ/dx at x is the sum, over all that acts at smaller x, of force · (x − x_i) less
the couple.

With two supports the reactions follow from equilibrium alone. Each further support is released,
its reaction found from the condition that the shaft does not move there (force method, with the
unit-load integrals worked out exactly for a bending stiffness that changes in steps), and the two
outer reactions again from equilibrium, so that the balance holds to the last digit.
"""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from checker.mechanics.equation import OutOfRange, equation

YOUNGS_MODULUS = 206e9  # steel, Pa: ISO 6336-2 (from memory)
SHEAR_MODULUS = 79.3e9  # steel, Pa: Shigley's Mechanical Engineering Design (from memory)
# Stations closer than this [m] are one.
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Load:
    """What acts on the shaft at one station.

    Attributes:
        station: x [m].
        force: across the shaft [N].
        couple: about the axis across the plane [N m].
    """

    station: float
    force: float = 0.0
    couple: float = 0.0


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of even bending stiffness.

    Attributes:
        start: where it begins [m].
        end: where it ends [m].
        stiffness: E I [N m2].
    """

    start: float
    end: float
    stiffness: float


@dataclass(frozen=True, slots=True)
class Bent:
    """A loaded shaft with its reactions: the forces of the supports on it.

    Attributes:
        reactions: one for each support, in their order [N].
        acting: all that acts on the shaft, reactions included, by station.
    """

    reactions: tuple[float, ...]
    acting: tuple[Load, ...]

    def moment(self, x: float, *, before: bool = False) -> float:
        """M at x [N m]; with ``before``, just ahead of a couple that acts there."""
        total = 0.0
        for load in self.acting:
            if load.station < x - _SAME:
                total += load.force * (x - load.station) - load.couple
            elif load.station <= x + _SAME and not before:
                total -= load.couple
        return total


@equation(
    "EI",
    "E I = E π (D⁴ − d⁴) / 64",
    unit="N m2",
    source="Beer, Johnston & DeWolf, Mechanics of Materials (from memory)",
    outside="D [m]",
    inside="d [m]",
    modulus="E [Pa]",
)
def bending_stiffness(outside: float, inside: float, modulus: float) -> float:
    """Bending stiffness of a round hollow section.

    Raises:
        OutOfRange: the bore leaves no wall.
    """
    if inside >= outside:
        raise OutOfRange("inside must be below outside: the section has no wall")
    return modulus * math.pi * (outside**4 - inside**4) / 64.0


@equation(
    "R",
    "ΣF = 0, ΣM = 0, and no deflection at any support",
    unit="N",
    source="statics; force method with unit loads (Beer, Johnston & DeWolf; from memory)",
    supports="x_s [m]",
    loads="F_i [N]",
    stretches="E I [N m2]",
)
def bend(supports: Sequence[float], loads: Sequence[Load], stretches: Sequence[Stretch]) -> Bent:
    """The reactions of rigid supports, and with them the moments.

    Args:
        supports: stations of two or more supports, in any order [m].
        loads: what acts besides the supports.
        stretches: bending stiffness along the shaft; needed with more than two supports only.

    Raises:
        OutOfRange: fewer than two supports, or two at one station.
    """
    order = sorted(range(len(supports)), key=lambda index: supports[index])
    places = [supports[index] for index in order]
    if len(places) < 2:
        raise OutOfRange("supports: a shaft needs two radial bearings to hold its direction")
    if any(after - before <= _SAME for before, after in itertools.pairwise(places)):
        raise OutOfRange("supports: two of them stand at one station")
    inner = _redundant(places, loads, stretches) if len(places) > 2 else []
    held = [*loads, *(Load(x, force) for x, force in zip(places[1:-1], inner, strict=True))]
    first, last = _outer(places[0], places[-1], held)
    along = [first, *inner, last]
    acting = tuple(
        sorted(
            [*loads, *(Load(x, force) for x, force in zip(places, along, strict=True))],
            key=lambda load: load.station,
        )
    )
    by_support = {index: force for index, force in zip(order, along, strict=True)}
    return Bent(tuple(by_support[index] for index in range(len(supports))), acting)


_UNIT_LOAD = "unit-load method (Beer, Johnston & DeWolf, Mechanics of Materials; from memory)"


@equation(
    "M",
    "M = Σ F_i (x − x_i) − Σ M_i, over all that acts before x, reactions included",
    unit="N m",
    source="statics; the section method of any handbook of beams",
    bent="F_i [N]",
    station="x [m]",
    before="just before x []",
)
def bending_moment(bent: Bent, station: float, before: bool) -> float:
    """Bending moment of a loaded shaft in one plane."""
    return bent.moment(station, before=before)


@equation(
    "v",
    "v = ∫ M m / (E I) dx, m by a unit force at x",
    unit="m",
    source=_UNIT_LOAD,
    bent="F_i [N]",
    station="x [m]",
    supports="x_s [m]",
    stretches="E I [N m2]",
)
def deflection(
    bent: Bent, station: float, supports: Sequence[float], stretches: Sequence[Stretch]
) -> float:
    """Deflection of a loaded shaft at a station, in one plane."""
    return _virtual_work(bent, _unit(supports, Load(station, force=1.0)), stretches)


@equation(
    "θ",
    "θ = ∫ M m / (E I) dx, m by a unit couple at x",
    unit="rad",
    source=_UNIT_LOAD,
    bent="F_i [N]",
    station="x [m]",
    supports="x_s [m]",
    stretches="E I [N m2]",
)
def slope(
    bent: Bent, station: float, supports: Sequence[float], stretches: Sequence[Stretch]
) -> float:
    """Slope of a loaded shaft at a station, in one plane."""
    return _virtual_work(bent, _unit(supports, Load(station, couple=1.0)), stretches)


def _unit(supports: Sequence[float], load: Load) -> Bent:
    """A unit load on the shaft with its outer supports alone: any state in balance will do."""
    return bend((min(supports), max(supports)), (load,), ())


def _outer(first: float, last: float, loads: Sequence[Load]) -> tuple[float, float]:
    span = last - first
    about_first = sum(load.force * (load.station - first) + load.couple for load in loads)
    about_last = sum(load.force * (last - load.station) - load.couple for load in loads)
    return -about_last / span, -about_first / span


def _redundant(
    places: Sequence[float], loads: Sequence[Load], stretches: Sequence[Stretch]
) -> list[float]:
    """Reactions of the inner supports: with them the shaft does not move there."""
    ends = (places[0], places[-1])
    free = bend(ends, loads, ())
    units = [bend(ends, (Load(x, force=1.0),), ()) for x in places[1:-1]]
    flexibility = [[_virtual_work(one, other, stretches) for other in units] for one in units]
    moved = [_virtual_work(free, unit, stretches) for unit in units]
    return solved(flexibility, [-each for each in moved])


def _virtual_work(real: Bent, virtual: Bent, stretches: Sequence[Stretch]) -> float:
    """∫ M m / (E I) dx: both moments are linear between stations, so each piece is exact."""
    if not stretches:
        raise OutOfRange("stretches: without sections of the shaft its bending is not known")
    loaded = [load.station for load in (*real.acting, *virtual.acting)]
    low, high = stretches[0].start, stretches[-1].end
    total = 0.0
    for index, stretch in enumerate(stretches):
        # What overhangs the stated sections is as stiff as the nearest of them.
        start = min(low, *loaded) if index == 0 else stretch.start
        end = max(high, *loaded) if index == len(stretches) - 1 else stretch.end
        cuts = sorted({start, end, *(x for x in loaded if start < x < end)})
        for a, b in itertools.pairwise(cuts):
            if b - a <= _SAME:
                continue
            total += _piece(real, virtual, a, b) / stretch.stiffness
    return total


def _piece(real: Bent, virtual: Bent, a: float, b: float) -> float:
    """Simpson's rule, exact for the product of two linear moments."""
    start = real.moment(a) * virtual.moment(a)
    end = real.moment(b, before=True) * virtual.moment(b, before=True)
    middle = (a + b) / 2.0
    return (b - a) / 6.0 * (start + 4.0 * real.moment(middle) * virtual.moment(middle) + end)


def solved(matrix: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    """Solve a small set of linear equations by elimination with pivoting.

    Raises:
        OutOfRange: the equations do not decide the unknowns.
    """
    size = len(right)
    rows = [[*row, value] for row, value in zip(matrix, right, strict=True)]
    for column in range(size):
        pivot = max(range(column, size), key=lambda index: abs(rows[index][column]))
        if rows[pivot][column] == 0.0:
            raise OutOfRange("matrix: the equations do not decide the unknowns")
        rows[column], rows[pivot] = rows[pivot], rows[column]
        for below in range(column + 1, size):
            factor = rows[below][column] / rows[column][column]
            for place in range(column, size + 1):
                rows[below][place] -= factor * rows[column][place]
    found = [0.0] * size
    for index in range(size - 1, -1, -1):
        known = sum(rows[index][place] * found[place] for place in range(index + 1, size))
        found[index] = (rows[index][size] - known) / rows[index][index]
    return found
