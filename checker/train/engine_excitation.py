"""Torque of the cylinders by order, at any speed and mean torque of the crankshaft."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from checker.known import Known, Unknown, Value, all_known, assumed, compute
from checker.mechanics import engine as engine_mechanics
from checker.mechanics import excitation as formulas
from checker.mechanics.equation import OutOfRange
from checker.spec.subject import Subject, Subjects

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]

_FRICTION_SHARE = assumed(
    0.15, "1", "q_f", "friction torque of the engine over its full mean torque (from memory)"
)
_CYCLE = assumed(
    formulas.POLYTROPIC, "1", "n", "polytropic exponent of compression and expansion (from memory)"
)
_INTAKE = assumed(
    formulas.LEAST_INTAKE,
    "1",
    "q_i",
    "intake pressure of the closed throttle over that of the open one (from memory)",
)


@dataclass(frozen=True)
class EngineExcitation:
    """How strongly the cylinders twist the crankshaft.

    Attributes:
        orders: per turn of the crankshaft.
        angles: firing angle of each cylinder [rad], in firing order.
        gas: gas torque of one cylinder; ``None`` where the whole engine's is stated.
        stated: gas torque of the whole engine at full load by order [N m]; ``None`` if computed.
        inertia: of one cylinder by order, per (rad/s)² [kg m²].
        full: mean torque at full load [N m].
        pressure_per_torque: mean pressure that stands for one newton metre [Pa/(N m)].
        phased: whether the phases of all orders are known.
        inputs: everything it was made of.
    """

    orders: tuple[float, ...]
    angles: tuple[float, ...]
    gas: formulas.GasHarmonics | None
    stated: "Complex | None"
    inertia: "Complex"
    full: float
    pressure_per_torque: float
    phased: bool
    inputs: tuple[Known, ...]

    def of_cylinders(self, cylinders: tuple[int, ...], speed: "Real", mean: "Real") -> "Complex":
        """Torque of some cylinders by order [N m]: [speed, order].

        Args:
            cylinders: which, counted in firing order.
            speed: of the crankshaft [rad/s].
            mean: mean torque of the crankshaft at each speed [N m].
        """
        import numpy as np

        friction = _FRICTION_SHARE.number * self.full
        load = np.maximum(mean + friction, 0.0)
        whole = self.full + friction
        vectors = formulas.phase_vectors(self.orders, [self.angles[each] for each in cylinders])
        inertia = np.multiply.outer(speed**2, self.inertia * vectors)
        if self.gas is None and self.stated is not None:
            share = len(cylinders) / len(self.angles)
            gas = share * np.multiply.outer(load / whole, self.stated)
            return np.asarray(gas + inertia)
        assert self.gas is not None
        indicated = load * self.pressure_per_torque
        intake = formulas.ATMOSPHERE * np.clip(load / whole, formulas.LEAST_INTAKE, 1.0)
        one = (
            np.multiply.outer(intake, self.gas.charge)
            + np.multiply.outer(indicated, self.gas.combustion)
            + self.gas.ambient
        )
        return np.asarray(one * vectors + inertia)


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
    harmonics = engine.raw("torque_harmonics")
    if not harmonics:
        sizes["bore"] = engine.given("bore", "d")
        sizes["compression_ratio"] = engine.given("compression_ratio", "ε")
    intervals = engine.raw("firing_intervals")
    missing: list[Value] = [strokes, count, full, *sizes.values()]
    if not intervals or None in intervals:
        missing.append(Unknown((engine.place("firing_intervals"),)))
    unknown = all_known(*missing)
    if unknown is not None:
        return unknown
    known = {name: each for name, each in sizes.items() if isinstance(each, Known)}
    inputs = tuple(each for each in missing if isinstance(each, Known))
    return _made(engine, int(_number(strokes)), int(_number(count)), _number(full), known, inputs)


def _angles_between(engine: Subject) -> list[float]:
    return [each.value for each in engine.raw("firing_intervals")]


def _number(value: Value) -> float:
    assert isinstance(value, Known)
    return value.number


def _made(
    engine: Subject,
    strokes: int,
    count: int,
    full: float,
    sizes: dict[str, Known],
    inputs: tuple[Known, ...],
) -> EngineExcitation | Unknown:
    orders = formulas.survey_orders(strokes)
    stroke, rod = sizes["stroke"].number, sizes["rod_length"].number
    try:
        inertia = formulas.inertia_harmonics(
            sizes["reciprocating_mass"].number, stroke, rod, orders
        )
    except OutOfRange as outside:
        return Unknown((), str(outside))
    gas = stated = None
    pressure, phased = 0.0, True
    used = (*inputs, _FRICTION_SHARE)
    if "bore" in sizes:
        cylinder = formulas.Cylinder(
            sizes["bore"].number, stroke, rod, sizes["compression_ratio"].number, strokes
        )
        gas = formulas.gas_harmonics(cylinder, orders)
        pressure = formulas.mean_pressure(1.0, count, cylinder.displacement, strokes)
        used = (*used, _CYCLE, _INTAKE)
    else:
        harmonics = _stated_harmonics(engine, orders)
        if isinstance(harmonics, Unknown):
            return harmonics
        stated, phased, more = harmonics
        used = (*used, *more)
    angles = engine_mechanics.firing_angles(_angles_between(engine))
    return EngineExcitation(orders, angles, gas, stated, inertia, full, pressure, phased, used)


def _stated_harmonics(
    engine: Subject, orders: tuple[float, ...]
) -> "tuple[Complex, bool, list[Known]] | Unknown":
    """The stated gas torque by order [N m], whether all phases are stated, and what was stated."""
    import numpy as np

    total = np.zeros(len(orders), dtype=complex)
    phased = True
    used: list[Known] = []
    for index, part in enumerate(engine.raw("torque_harmonics")):
        each = Subject("engine", "", (*engine.place("torque_harmonics"), index), part)
        order, amplitude = each.given("order", "h"), each.given("amplitude", "T_h")
        unknown = all_known(order, amplitude)
        if unknown is not None:
            return unknown
        if _number(order) not in orders:
            return Unknown((each.place("order"),), f"one of the orders {orders} is needed")
        phase = each.given("phase", "φ_h")
        phased &= isinstance(phase, Known)
        turned = phase.number if isinstance(phase, Known) else 0.0
        total[orders.index(_number(order))] += _number(amplitude) * np.exp(1j * turned)
        used += [value for value in (order, amplitude, phase) if isinstance(value, Known)]
    return total, phased, used
