"""The transverse outline of involute teeth, for a drawing.

Between the start of its involute and its tip circle a flank is the true involute, at the true
thickness. Below, the root fillet is simplified to a radial line down to the root circle, and tip
chamfers are left out.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import acos, pi, sqrt

from checker.known import Known, Unknown, Value, all_known
from checker.mechanics.tooth import involute
from checker.report.pictures.svg import Point
from checker.train.pair import Pair, Wheel

_ON_A_FLANK = 16
_ON_AN_ARC = 4


@dataclass(frozen=True, slots=True)
class ToothForm:
    """Radii of a gear in its transverse section [m], and half the angle of a tooth.

    Attributes:
        teeth: number of teeth.
        base, start, root, tip, working: radii of base circle, start of the involute, root circle,
            tip circle and working pitch circle.
        half_angle: half the angle that a tooth fills at the working pitch circle [rad].
    """

    teeth: int
    base: float
    start: float
    root: float
    tip: float
    working: float
    half_angle: float

    @property
    def pitch_angle(self) -> float:
        """Angle from tooth to tooth [rad]."""
        return 2.0 * pi / self.teeth

    def half_angle_at(self, radius: float) -> float:
        """Half the angle that a tooth fills at a radius on its involute [rad]."""
        there = acos(min(1.0, self.base / radius))
        return self.half_angle + involute(acos(self.base / self.working)) - involute(there)

    def flank(self) -> list[Point]:
        """Angle from the middle of the tooth and radius of points on a flank, from its start up.

        Points lie closer where the involute is bent more; a flank ends where the tooth is pointed.
        """
        first, last = (sqrt(radius**2 - self.base**2) for radius in (self.start, self.tip))
        steps = (first + (last - first) * each / _ON_A_FLANK for each in range(_ON_A_FLANK + 1))
        radii = [sqrt(self.base**2 + step**2) for step in steps]
        points = [(self.half_angle_at(radius), radius) for radius in radii]
        return [(angle, radius) for angle, radius in points if angle > 0.0]


def tooth_form(pair: Pair, wheel: Wheel) -> ToothForm | Unknown:
    """The form of one gear of a pair, or what is missing for it.

    Where the tool is not stated the involute starts at the base circle or the root circle.
    """
    working = pair.working_diameter(wheel)
    needed = (
        wheel.teeth,
        wheel.base_diameter,
        wheel.root_diameter(),
        wheel.tip_diameter(),
        working,
        wheel.thickness_at(working),
    )
    unknown = all_known(*needed)
    if unknown is not None:
        return unknown
    teeth, *sizes = (value.number for value in needed if isinstance(value, Known))
    base, root, tip, rolling, thickness = (0.5 * size for size in sizes)
    start = max(base, root, _radius(wheel.root_form_diameter()))
    if not max(start, root) < tip or rolling <= base:
        return Unknown(because=f"the tips of {wheel.subject.label} reach past no involute")
    return ToothForm(int(teeth), base, start, root, tip, rolling, thickness / rolling)


def outline(form: ToothForm, middle: float, half_reach: float, depth: float) -> list[Point]:
    """Angle and radius of points round teeth and the body below them, a closed line.

    Args:
        form: the form of the teeth.
        middle: angle of the middle of one tooth.
        half_reach: angle to either side within which teeth are wanted.
        depth: radius to which the body is drawn where the gear is not drawn whole.
    """
    each_side = int(half_reach / form.pitch_angle) + 1
    if 2 * each_side + 1 >= form.teeth:
        return list(_teeth(form, [middle + k * form.pitch_angle for k in range(form.teeth)]))
    middles = [middle + k * form.pitch_angle for k in range(-each_side, each_side + 1)]
    points = list(_teeth(form, middles))
    first, last = points[0][0], points[-1][0]
    steps = _ON_AN_ARC * len(middles)
    below = [(last + (first - last) * each / steps, depth) for each in range(steps + 1)]
    return points + below


def _teeth(form: ToothForm, middles: list[float]) -> Iterator[Point]:
    flank = form.flank()
    for middle in middles:
        yield from _arc(middle - 0.5 * form.pitch_angle, middle - flank[0][0], form.root)
        yield from ((middle - angle, radius) for angle, radius in flank)
        tip, radius = flank[-1]
        yield from list(_arc(middle - tip, middle + tip, radius))[1:-1]
        yield from ((middle + angle, radius) for angle, radius in reversed(flank))
        yield from _arc(middle + flank[0][0], middle + 0.5 * form.pitch_angle, form.root)


def _arc(start: float, end: float, radius: float) -> Iterator[Point]:
    for each in range(_ON_AN_ARC + 1):
        yield start + (end - start) * each / _ON_AN_ARC, radius


def _radius(diameter: Value) -> float:
    return 0.5 * diameter.number if isinstance(diameter, Known) else 0.0
