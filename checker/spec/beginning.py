"""From a few answers to a spec to begin with."""

import math
from dataclasses import dataclass
from typing import Any, Literal

from checker.mechanics.tooth_counts import idler_teeth, step_teeth
from checker.spec.fields import UNKNOWN
from checker.spec.starter import Written, starter_text
from checker.text import plain

Arrangement = Literal["single", "idler", "compound"]
Form = Literal["spur", "helical"]
_PROPOSED = "proposed from the ratio wanted, with a hunting tooth; yours to decide"
_POINTS = ("ground idle", "take-off", "climb", "cruise", "descent")
_GEARS = {
    "single": {"pinion": "input", "prop_gear": "prop"},
    "idler": {"pinion": "input", "idler_gear": "idler", "prop_gear": "prop"},
    "compound": {
        "input_pinion": "input",
        "lay_gear": "lay",
        "lay_pinion": "lay",
        "prop_gear": "prop",
    },
}
"""Gears and their shafts from engine to propeller."""
_MESHES = {"single": [(0, 1)], "idler": [(0, 1), (1, 2)], "compound": [(0, 1), (2, 3)]}
"""Driver and driven gear of each mesh, by their place among the gears."""


@dataclass(frozen=True, slots=True)
class Answers:
    """What a builder says of a drive before anything is measured; ``None`` where he does not.

    Attributes:
        name: name of the drive.
        arrangement: kind of gear train.
        form: form of the teeth.
        ratio: engine speed over propeller speed wanted.
        cylinders: number of cylinders.
        cycle: working cycle of the engine.
        power: take-off power, as a quantity.
        speed: crankshaft speed there, as a quantity.
        damper: kind of damper, or ``none``.
        clutch: kind of one-way clutch, or ``none``.
        blades: number of propeller blades.
        diameter: propeller diameter, as a quantity.
    """

    name: str
    arrangement: Arrangement
    form: Form
    ratio: float | None = None
    cylinders: int | None = None
    cycle: str | None = None
    power: str | None = None
    speed: str | None = None
    damper: str | None = None
    clutch: str | None = None
    blades: int | None = None
    diameter: str | None = None


def beginning(answers: Answers) -> str:
    """A commented spec with what was answered; all else is unknown.

    Args:
        answers: what the builder says.
    """
    return starter_text(_stated(answers), _head(answers))


def _head(answers: Answers) -> tuple[str, ...]:
    return (
        f"Spec of the drive {plain(answers.name)}, for thrustline review.",
        "",
        "What says unknown is not shown in a review: state it when you know it. A quantity has its",
        'unit, and its tolerance where it has one: "76.20 +/- 0.02 mm". Where the drive has no',
        "damper, clutch or vent on purpose, write none. Stations are distances from the engine",
        "face towards the propeller. Add bearings, seals and joints by names of your own.",
    )


def _stated(answers: Answers) -> dict[str, Any]:
    path = _power_path(answers)
    return {
        "drive": {
            "name": answers.name,
            "arrangement": answers.arrangement,
            "ratio": _ratio(answers),
        },
        "engine": {
            "drives": path[0],
            "cylinders": answers.cylinders,
            "cycle": answers.cycle,
            "take_off": {"power": answers.power, "speed": answers.speed},
        },
        "operation": [_point(answers, name) for name in _POINTS],
        "shafts": {shaft: {} for shaft in (*path, *_gear_shafts(answers))},
        "gears": _gears(answers),
        "meshes": _meshes(answers),
        "bearings": {
            f"{shaft}_{end}": {"shaft": shaft}
            for shaft in ("input", *_gear_shafts(answers))
            for end in ("rear", "front")
        },
        "joints": {"prop_flange": {"shaft": "prop"}},
        "damper": _between(answers.damper, path[:2]),
        "clutch": _between(answers.clutch, path[-2:]),
        "seals": {"prop_seal": {"shaft": "prop"}},
        "propeller": {"shaft": "prop", "blades": answers.blades, "diameter": answers.diameter},
    }


def _power_path(answers: Answers) -> list[str]:
    """Shafts from the crankshaft to the first gear, one more for each part between them."""
    has_damper = answers.damper not in (None, "none")
    has_clutch = answers.clutch not in (None, "none")
    if has_damper and has_clutch:
        return ["flywheel", "carrier", "input"]
    return ["flywheel", "input"] if has_damper or has_clutch else ["input"]


def _between(kind: str | None, shafts: list[str]) -> str | dict[str, Any]:
    """A damper or clutch between two shafts, or a word for its absence."""
    if kind in (None, "none"):
        return kind or UNKNOWN
    return {"kind": kind, "between": shafts}


def _point(answers: Answers, name: str) -> dict[str, Any]:
    point: dict[str, Any] = {"name": name, "kind": name}
    if name == "take-off":
        point |= {"engine_speed": answers.speed, "power": answers.power}
    return point


def _gear_shafts(answers: Answers) -> list[str]:
    """Shafts behind the first gear."""
    return [each for each in dict.fromkeys(_GEARS[answers.arrangement].values()) if each != "input"]


def _gears(answers: Answers) -> dict[str, dict[str, Any]]:
    """The gears by name, each with its shaft and a number of teeth to begin with."""
    helix = {"helix": "none" if answers.form == "spur" else {}}
    shafts = _GEARS[answers.arrangement]
    return {
        gear: {"shaft": shaft, "teeth": count and Written(count, _PROPOSED), **helix}
        for (gear, shaft), count in zip(shafts.items(), _counts(answers), strict=True)
    }


def _counts(answers: Answers) -> list[int | None]:
    """Tooth counts in the order of the gears; none without a ratio."""
    if answers.ratio is None:
        return [None] * len(_GEARS[answers.arrangement])
    if answers.arrangement == "compound":
        first = step_teeth(math.sqrt(answers.ratio))
        return [*first, *step_teeth(answers.ratio * first[0] / first[1])]
    pinion, wheel = step_teeth(answers.ratio)
    if answers.arrangement == "idler":
        return [pinion, idler_teeth(pinion, wheel), wheel]
    return [pinion, wheel]


def _ratio(answers: Answers) -> Written | None:
    """The ratio of the proposed tooth counts, which is near the one wanted."""
    if answers.ratio is None:
        return None
    counts = [each for each in _counts(answers) if each is not None]
    reached = 1.0
    for driver, driven in _MESHES[answers.arrangement]:
        reached *= counts[driven] / counts[driver]
    return Written(round(reached, 4), f"{answers.ratio:g} wanted; this is what the teeth give")


def _meshes(answers: Answers) -> dict[str, dict[str, str]]:
    gears = list(_GEARS[answers.arrangement])
    pairs = _MESHES[answers.arrangement]
    return {
        mesh: {"driver": gears[driver], "driven": gears[driven]}
        for mesh, (driver, driven) in zip(("first", "second"), pairs, strict=False)
    }
