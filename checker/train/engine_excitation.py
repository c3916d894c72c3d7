"""Torque of the cylinders by order, at any speed and mean torque of the crankshaft."""

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from checker.known import Known, Unknown, Value, all_known, compute
from checker.mechanics import engine as engine_mechanics
from checker.mechanics import excitation as formulas
from checker.mechanics.equation import OutOfRange
from checker.spec.subject import Subject, Subjects
from checker.train.pressure_cycle import FRICTION_SHARE, pressure_cycle

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]


@dataclass(frozen=True)
class EngineExcitation:
    """How strongly the cylinders twist the crankshaft.

    Attributes:
        orders: per turn of the crankshaft.
        angles: firing angle of each cylinder [rad], in firing order.
        even: whether they are equally spaced.
        spread: how far the work of the weakest cylinder stays behind the mean of all.
        strokes: per cycle, 2 or 4.
        gas: computed gas torque of one cylinder.
        intake: absolute pressure in the manifold at full load [Pa].
        throttled: intake pressure with the throttle closed over that at full load.
        stated: gas torque of the whole engine at full load by order [N m]; not a number where it
            is computed. It differs from the computed torque in proportion to load, each cylinder by
            its share, so that what twists a crankshaft between its throws stays.
        unphased: the orders whose stated torque has no phase.
        inertia: of one cylinder by order, per (rad/s)² [kg m²].
        full: mean torque at full load [N m].
        pressure_per_torque: mean pressure that stands for one newton metre [Pa/(N m)].
        inputs: everything it was made of.
    """

    orders: tuple[float, ...]
    angles: tuple[float, ...]
    even: bool
    spread: float
    strokes: int
    gas: formulas.GasHarmonics
    intake: float
    throttled: float
    stated: "Complex"
    unphased: "NDArray[np.bool_]"
    inertia: "Complex"
    full: float
    pressure_per_torque: float
    inputs: tuple[Known, ...]

    def weak(self, *, lumped: bool) -> tuple[int, ...]:
        """Cylinders, counted in firing order, of which each may be the weak one.

        Where all act on one inertia and fire evenly, every order is as large whichever it is.

        Args:
            lumped: whether they act on one inertia.
        """
        import numpy as np

        measured = not np.isnan(self.stated).any()
        alike = lumped and (measured or self.even)
        return (0,) if alike else tuple(range(len(self.angles)))

    def unthrottled(self) -> "EngineExcitation":
        """The same engine drawing in as with an open throttle: at a start and a stop.

        At these speeds the little air that passes a closed throttle fills the cylinders; a blower
        is taken to fill them as at full load.
        """
        return replace(self, throttled=1.0)

    def motored(self) -> float:
        """Mean torque of the crankshaft without combustion [N m], its friction alone."""
        return -FRICTION_SHARE.number * self.full

    def of_cylinders(
        self, cylinders: tuple[int, ...], speed: "Real", mean: "Real", weak: int = 0
    ) -> "Complex":
        """Torque of some cylinders by order [N m], as far as its phase is known: [speed, order].

        Args:
            cylinders: which, counted in firing order.
            speed: of the crankshaft [rad/s].
            mean: mean torque of the crankshaft at each speed [N m].
            weak: the cylinder that does less work than the others.
        """
        import numpy as np

        load = self._load(mean)
        vectors = _vectors(self.orders, tuple(self.angles[each] for each in cylinders))
        inertia = np.multiply.outer(speed**2, self.inertia * vectors)
        share = len(cylinders) / len(self.angles)
        gas = self._computed(cylinders, vectors, load, weak)
        if not np.isnan(self.stated).all():
            more = np.where(self.unphased, 0.0, self.stated) - self._whole_at_full(weak)
            more = np.where(np.isnan(more), 0.0, more)
            gas = gas + share * np.multiply.outer(load, more)
        return np.asarray(gas + inertia)

    def _whole_at_full(self, weak: int) -> "Complex":
        """Computed gas torque of all cylinders at full load by order [N m]."""
        import numpy as np

        every = tuple(range(len(self.angles)))
        vectors = _vectors(self.orders, self.angles)
        return np.asarray(self._computed(every, vectors, np.ones(1), weak)[0])

    def unphased_of(self, cylinders: tuple[int, ...], mean: "Real") -> "Complex":
        """Stated torque of some cylinders by order [N m] whose phase is not known: [speed, order].

        Args:
            cylinders: which, counted in firing order.
            mean: mean torque of the crankshaft at each speed [N m].
        """
        import numpy as np

        share = len(cylinders) / len(self.angles)
        stated = np.where(self.unphased, abs(self.stated), 0.0).astype(complex)
        return np.asarray(share * np.multiply.outer(self._load(mean), stated))

    def _load(self, mean: "Real") -> "Real":
        """Share of the indicated torque at full load."""
        import numpy as np

        friction = FRICTION_SHARE.number * self.full
        return np.asarray(np.maximum(mean + friction, 0.0) / (self.full + friction))

    def _computed(
        self, cylinders: tuple[int, ...], vectors: "Complex", load: "Real", weak: int
    ) -> "Complex":
        """Gas torque of some cylinders from the pressure cycle, at shares of the full load."""
        import numpy as np

        whole = self.full * (1.0 + FRICTION_SHARE.number)
        intake = self.intake * np.clip(load, self.throttled, 1.0)
        indicated = load * whole * self.pressure_per_torque
        if self.strokes == 4:
            # Combustion also does the work of drawing in against a throttle.
            indicated = indicated + formulas.ATMOSPHERE - intake
        weights = formulas.cylinder_weights(len(self.angles), self.spread, weak)
        worked = _vectors(
            self.orders,
            tuple(self.angles[each] for each in cylinders),
            tuple(weights[each] for each in cylinders),
        )
        pumped = np.multiply.outer(intake, self.gas.charge) + self.gas.ambient
        burned = np.multiply.outer(indicated, self.gas.combustion)
        return np.asarray(pumped * vectors + burned * worked)


@lru_cache(maxsize=256)
def _vectors(
    orders: tuple[float, ...], angles: tuple[float, ...], weights: tuple[float, ...] | None = None
) -> "Complex":
    """The phase vectors, which do not change from one speed or drive to the next."""
    return formulas.phase_vectors(orders, angles, weights)


def engine_excitation(subjects: Subjects) -> EngineExcitation | Unknown:
    """The excitation by the engine, or everything that is missing for it."""
    engine = subjects.the("engine")
    strokes = compute(engine_mechanics.strokes_of, engine.given("cycle", "cycle"))
    count = engine.given("cylinders", "z")
    full = compute(
        engine_mechanics.mean_torque,
        engine.given("maximum_continuous.power", "P_MC"),
        engine.given("maximum_continuous.speed", "ω_MC"),
    )
    sizes = {
        name: engine.given(name, symbol)
        for name, symbol in (
            ("stroke", "s"),
            ("rod_length", "l"),
            ("reciprocating_mass", "m_rec"),
        )
    }
    intervals = engine.raw("firing_intervals")
    missing: list[Value] = [strokes, count, full, *sizes.values()]
    if not intervals or None in intervals:
        missing.append(Unknown((engine.place("firing_intervals"),)))
    unknown = all_known(*missing)
    if unknown is not None:
        return unknown
    if _number(full) <= 0.0 or not all(math.isfinite(_number(each)) for each in missing):
        return Unknown(
            (engine.place("maximum_continuous"),), "an engine without power excites nothing"
        )
    known = {name: _number(each) for name, each in sizes.items()}
    inputs = tuple(each for each in missing if isinstance(each, Known))
    return _made(engine, int(_number(strokes)), int(_number(count)), _number(full), known, inputs)


def _number(value: Value) -> float:
    assert isinstance(value, Known)
    return value.number


def _made(
    engine: Subject,
    strokes: int,
    count: int,
    full: float,
    sizes: dict[str, float],
    inputs: tuple[Known, ...],
) -> EngineExcitation | Unknown:
    orders = formulas.survey_orders(strokes, count)
    intervals = [each.value for each in engine.raw("firing_intervals")]
    angles = engine_mechanics.firing_angles(intervals)
    try:
        even = engine_mechanics.firing_is_even(intervals, strokes)
        inertia = formulas.inertia_harmonics(
            sizes["reciprocating_mass"], sizes["stroke"], sizes["rod_length"], orders
        )
    except OutOfRange as outside:
        return Unknown((), str(outside))
    stated = _stated_harmonics(engine, orders)
    if isinstance(stated, Unknown):
        return stated
    cycle = pressure_cycle(engine, strokes, count, full, sizes, stated.left_out)
    if isinstance(cycle, Unknown):
        return cycle
    return EngineExcitation(
        orders,
        angles,
        even,
        _number(cycle.spread),
        strokes,
        formulas.gas_harmonics(cycle.cylinder, orders),
        cycle.intake,
        cycle.throttled,
        stated.torque,
        stated.unphased,
        inertia,
        full,
        cycle.pressure_per_torque,
        (*inputs, FRICTION_SHARE, *stated.used, *cycle.used),
    )


@dataclass(frozen=True)
class _Stated:
    """The stated gas torque of the whole engine by order.

    Attributes:
        torque: complex amplitude [N m], not a number where an order is left out.
        unphased: whether an order is stated without its phase.
        left_out: the orders left out.
        used: what was stated.
    """

    torque: "Complex"
    unphased: "NDArray[np.bool_]"
    left_out: tuple[float, ...]
    used: tuple[Known, ...]


def _stated_harmonics(engine: Subject, orders: tuple[float, ...]) -> _Stated | Unknown:
    """The stated gas torque by order, or what is missing of it."""
    import numpy as np

    torque = np.full(len(orders), np.nan, dtype=complex)
    unphased = np.zeros(len(orders), dtype=bool)
    used: list[Known] = []
    for index, part in enumerate(engine.raw("torque_harmonics") or ()):
        each = Subject("engine", "", (*engine.place("torque_harmonics"), index), part)
        order, amplitude = each.given("order", "h"), each.given("amplitude", "T_h")
        unknown = all_known(order, amplitude)
        if unknown is not None:
            return unknown
        if _number(order) not in orders:
            return Unknown(
                (each.place("order"),),
                f"order {_number(order):g} is not surveyed: multiples of {orders[0]:g} up to "
                f"{orders[-1]:g} are",
            )
        at = orders.index(_number(order))
        phase = each.given("phase", "φ_h")
        turned = phase.number if isinstance(phase, Known) else 0.0
        unphased[at] |= isinstance(phase, Unknown)
        torque[at] = np.nan_to_num(torque[at]) + _number(amplitude) * np.exp(1j * turned)
        used += [value for value in (order, amplitude, phase) if isinstance(value, Known)]
    left_out = tuple(order for order, value in zip(orders, torque, strict=True) if np.isnan(value))
    return _Stated(torque, unphased, left_out, tuple(used))
