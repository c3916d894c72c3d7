"""How a value is come by, where that is not plain."""

from checker.known import Path

_SWUNG = (
    "hung level on two or three wires and swung about its axis: J = m g r² T² / (4 π² L) with its "
    "mass m, wires of length L at radius r, and the time T of one swing"
)
_SHAPED = "from its sections where these are stated, else"
_TWISTED = "hold one end, twist the other, and divide the torque by the twist"
_CRANK_DRAWING = "by its maker, or from the section drawing of the crankshaft"

HINTS = {
    "propeller.inertia": "hang it level on two or three wires, time the swing, state swing_test",
    "propeller.blade_damping": (
        "tap a blade in its plane, hub held: twice the natural logarithm of one swing over the next"
    ),
    "damper.dynamic_stiffness": "by its maker, or twist it on the bench and state twist_test",
    "damper.inertia_engine_side": f"by its maker, or that half {_SWUNG}",
    "damper.inertia_propeller_side": f"by its maker, or that half {_SWUNG}",
    "engine.inertia": f"by its maker, or the crankshaft with what turns with it {_SWUNG}",
    "engine.first_crank_frequency": _CRANK_DRAWING,
    "engine.crankshaft.throw_inertia": _CRANK_DRAWING,
    "engine.crankshaft.throw_stiffness": _CRANK_DRAWING,
    "engine.crankshaft.output_stiffness": _CRANK_DRAWING,
    "clutch.torsional_stiffness": (
        "from its elements where these are stated, else hold one race, twist the other the way it "
        "drives, and divide a step of torque about the mean by its step of twist"
    ),
    "shafts.*.inertia": f"{_SHAPED} {_SWUNG}",
    "shafts.*.torsional_stiffness": f"{_SHAPED} {_TWISTED}",
    "gears.*.inertia": "from its size where that is stated",
    "meshes.*.backlash": "a dial gauge at the working pitch circle, at several turns",
    "meshes.*.stiffness": "from the teeth where these are stated",
    "operation.*.oil_temperature": "what you expect now, what you measure later",
    "engine.crankcase.pressure": "a water manometer at the breather, in flight",
}
"""By field; ``*`` stands for any name. The swing and the twist are derived, for small angles."""


def hint_of(path: Path) -> str:
    """How the value of a field is come by; empty where that is plain."""
    whole = ".".join(map(str, path))
    named = ".".join(map(str, (*path[:1], "*", *path[2:])))
    return HINTS.get(whole) or HINTS.get(named, "")
