"""A pair of gears with some of its stated sizes changed in proportion: what a solve tries."""

from collections.abc import Mapping
from math import cos

from checker.known import Known, Unknown, Value
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train.pair import Pair, Wheel

_GROWS_WITH_MODULE = (
    "module",
    "tip_diameter",
    "root_diameter",
    "tip_chamfer",
    "thickness_allowance",
    "rim_thickness",
)


class Varied(Subject):
    """A part with some stated values multiplied."""

    __slots__ = ("_factors",)

    def __init__(self, subject: Subject, factors: Mapping[str, float]) -> None:
        super().__init__(
            subject.kind,
            subject.name,
            subject.path,
            subject.part,
            subject._over,
            subject._over_path,
        )
        self._factors = factors

    def given(self, field: str, symbol: str = "", at: str = "value") -> Value:
        """A stated value, multiplied where it is varied."""
        stated = super().given(field, symbol, at)
        factor = self._factors.get(field)
        if factor is None or isinstance(stated, Unknown):
            return stated
        return Known(
            stated.number * factor,
            stated.unit,
            stated.symbol,
            origin=f"the stated value times {factor:.6g}",
            path=stated.path,
        )


def _pair(pair: Pair, gear: Mapping[str, float], mesh: Mapping[str, float]) -> Pair:
    driver, driven = (Wheel(Varied(wheel.subject, gear)) for wheel in (pair.driver, pair.driven))
    return Pair(Varied(pair.subject, mesh), driver, driven)


def with_face_width(pair: Pair, factor: float) -> Pair:
    """The pair with both faces wider or narrower."""
    return _pair(pair, {"face_width": factor}, {})


def with_module(pair: Pair, factor: float) -> Pair:
    """The pair drawn larger or smaller across its axes, faces as they are."""
    gear = dict.fromkeys(_GROWS_WITH_MODULE, factor)
    # A disc that grows across but not along its axis.
    gear["inertia"] = factor**4
    return _pair(pair, gear, {"centre_distance": factor, "backlash": factor})


def with_hardness(pair: Pair, factor: float) -> Pair:
    """The pair with flanks, and of through-hardened gears the core, harder or softer."""
    return _pair(pair, {"material.surface_hardness": factor, "material.core_hardness": factor}, {})


def with_helix(pair: Pair, factor: float) -> Pair:
    """The pair with another helix angle on the same reference circles, so another normal module.

    A spur pair stays as it is: it has no helix to change.
    """
    angle = pair.driver.helix_angle
    if pair.driver.subject.raw("helix") == NONE or isinstance(angle, Unknown):
        return pair
    module = cos(angle.number * factor) / cos(angle.number)
    return _pair(pair, {"helix.angle": factor, "module": module}, {})
