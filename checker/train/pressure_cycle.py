"""The pressure cycle of a cylinder, from what the spec says of the engine."""

from dataclasses import dataclass

from checker.known import Known, Unknown, Value, all_known, assumed, compute
from checker.mechanics import engine as engine_mechanics
from checker.mechanics import excitation as formulas
from checker.spec.subject import Subject

FRICTION_SHARE = assumed(
    0.15, "1", "q_f", "friction torque of the engine over its full mean torque (from memory)"
)
_EXPONENT = assumed(
    formulas.POLYTROPIC, "1", "n", "polytropic exponent of compression and expansion (from memory)"
)
_INTAKE = assumed(
    formulas.LEAST_INTAKE,
    "1",
    "q_i",
    "intake pressure of the closed throttle over that of the open one (from memory)",
)
_NO_THROTTLE = assumed(
    1.0,
    "1",
    "q_i",
    f"an engine of a compression ratio above {formulas.MOST_THROTTLED:g} has no throttle "
    "(from memory)",
)
_DRAWN_IN = assumed(
    formulas.ATMOSPHERE,
    "Pa",
    "p_m",
    "the throttle open, an engine that is not blown fills its manifold to one atmosphere "
    "(from memory)",
)
_SPREAD = assumed(
    0.1,
    "1",
    "q_z",
    "the weakest cylinder does a tenth less work than the mean of all (from memory)",
)


def indicated_pressure(engine: Subject) -> Value:
    """p_i, indicated mean pressure at maximum continuous power [Pa]."""
    torque = compute(
        engine_mechanics.mean_torque,
        engine.given("maximum_continuous.power", "P_MC"),
        engine.given("maximum_continuous.speed", "ω_MC"),
    )
    return compute(
        formulas.mean_pressure,
        compute(formulas.indicated_torque, torque, FRICTION_SHARE),
        engine.given("cylinders", "z"),
        compute(formulas.displacement, engine.given("bore", "d"), engine.given("stroke", "s")),
        compute(engine_mechanics.strokes_of, engine.given("cycle", "cycle")),
    )


def manifold_pressure(engine: Subject) -> Value:
    """p_m, absolute pressure in the manifold at full load [Pa].

    Left out, it is one atmosphere, unless more work is stated than a cylinder makes of that.
    """
    stated = engine.given("manifold_pressure", "p_m")
    indicated = indicated_pressure(engine)
    if isinstance(stated, Known) or isinstance(indicated, Unknown):
        return stated
    if indicated.number > formulas.MOST_UNBOOSTED:
        return Unknown(
            stated.missing,
            f"an indicated mean pressure of {indicated.number / 1e5:.1f} bar is more than an "
            "engine draws in by itself",
        )
    return _DRAWN_IN


@dataclass(frozen=True)
class PressureCycle:
    """What the pressure cycle of a cylinder needs."""

    cylinder: formulas.Cylinder
    intake: float
    throttled: float
    pressure_per_torque: float
    spread: Known
    used: tuple[Known, ...]


def pressure_cycle(
    engine: Subject,
    strokes: int,
    count: int,
    full: float,
    sizes: dict[str, float],
    orders: tuple[float, ...],
) -> PressureCycle | Unknown:
    """The pressure cycle, or what is missing for it.

    Stated torque needs it too: it holds at full load, and below that compression stays.

    Args:
        engine: the engine.
        strokes: per cycle.
        count: number of cylinders.
        full: mean torque at full load [N m].
        sizes: of the slider crank.
        orders: the orders whose torque is not stated.
    """
    bore, squeeze = engine.given("bore", "d"), engine.given("compression_ratio", "ε")
    unknown = all_known(bore, squeeze)
    if unknown is not None:
        told = ", ".join(f"{order:g}" for order in orders)
        also = engine.raw("torque_harmonics")
        if not also:
            return unknown
        if not orders:
            because = "the stated torque holds at full load, below that compression is computed"
            return Unknown(unknown.missing, because)
        return Unknown(
            (*unknown.missing, engine.place("torque_harmonics")),
            f"the torque of order {told} is neither stated nor to be computed",
        )
    assert isinstance(bore, Known)
    assert isinstance(squeeze, Known)
    cylinder = formulas.Cylinder(
        bore.number, sizes["stroke"], sizes["rod_length"], squeeze.number, strokes
    )
    swept = formulas.displacement(bore.number, sizes["stroke"])
    pressure = formulas.mean_pressure(1.0, count, swept, strokes)
    manifold = manifold_pressure(engine)
    if isinstance(manifold, Unknown):
        return manifold
    idle = engine.given("idle_manifold_pressure", "p_0")
    if isinstance(idle, Known):
        throttled, closed = min(idle.number / manifold.number, 1.0), idle
    else:
        closed = _INTAKE if squeeze.number <= formulas.MOST_THROTTLED else _NO_THROTTLE
        throttled = closed.number
    stated = engine.given("cylinder_spread", "q_z")
    spread = stated if isinstance(stated, Known) else _SPREAD
    used = (bore, squeeze, manifold, closed, *((spread,) if orders else ()), _EXPONENT)
    return PressureCycle(cylinder, manifold.number, throttled, pressure, spread, used)
