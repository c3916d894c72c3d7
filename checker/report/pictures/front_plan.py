"""Where shafts, gears and oil stand across the drive, as far as the spec says."""

from dataclasses import dataclass

from checker.known import Known, Unknown
from checker.measures.design import Design
from checker.report.pictures.svg import Point
from checker.spec.problem import dotted

CLOCKWISE = {1: "clockwise", -1: "anticlockwise"}


@dataclass(frozen=True, slots=True)
class Disc:
    """A gear seen along its axis; diameters in metres.

    Attributes:
        pitch: its working pitch diameters, one for each mesh where they differ.
        tip: its tip diameter, if stated.
    """

    name: str
    teeth: str
    pitch: tuple[float, ...]
    tip: float | None

    @property
    def largest(self) -> float:
        """The largest of its diameters; zero where none is known."""
        return max((*self.pitch, self.tip or 0.0), default=0.0)


@dataclass(frozen=True, slots=True)
class Axis:
    """Shafts on one line, seen along it.

    Attributes:
        centre: right and up of the first shaft's axis [m].
        shafts: their names.
        senses: sense of each, +1 clockwise seen towards the propeller; ``None`` if unknown.
        discs: the gears on them.
    """

    centre: Point
    shafts: tuple[str, ...]
    senses: tuple[int | None, ...]
    discs: tuple[Disc, ...]

    @property
    def radius(self) -> float:
        """Radius of the largest gear on it; zero without one."""
        return 0.5 * max((disc.largest for disc in self.discs), default=0.0)


@dataclass(frozen=True, slots=True)
class FrontPlan:
    """The drive seen from the engine towards the propeller.

    Attributes:
        axes: its axes.
        bottom: height of the case bottom over the first axis [m], if stated.
        level: height of the running oil level over the first axis [m], if stated.
        notes: what is not stated, and what was drawn in its place.
    """

    axes: tuple[Axis, ...]
    bottom: float | None
    level: float | None
    notes: tuple[str, ...]

    @property
    def corners(self) -> list[Point]:
        """Places that bound the drawing [m]."""
        reach = [(*axis.centre, axis.radius) for axis in self.axes]
        corners = [(x - r, y - r) for x, y, r in reach] + [(x + r, y + r) for x, y, r in reach]
        return corners + [(0.0, each) for each in (self.bottom, self.level) if each is not None]


def front_plan(design: Design) -> FrontPlan:
    """Lay the drive out across its axes."""
    centres, notes = shaft_centres(design)
    together: dict[tuple[float, float], list[str]] = {}
    for shaft, (right, up) in centres.items():
        together.setdefault((round(right, 6), round(up, 6)), []).append(shaft)
    axes = tuple(_axis(design, shafts, centres[shafts[0]], notes) for shafts in together.values())
    bottom, level = _oil(design, notes)
    return FrontPlan(axes, bottom, level, tuple(notes))


def needs(unknown: Unknown) -> str:
    """What an unknown lacks, in words."""
    fields = ", ".join(dotted(path) for path in unknown.missing)
    return f"{fields} not stated" if fields else unknown.because


def shaft_centres(design: Design) -> tuple[dict[str, Point], list[str]]:
    """Right and up of each shaft that can be placed [m], with notes on those that are not stated.

    The first shaft's axis is the origin. A shaft whose place is not stated stands straight above
    its driver at the centre distance, or in line with it where no mesh lies between.
    """
    centres: dict[str, Point] = {}
    notes = []
    for name in (design.train.first, *design.train.fed_by):
        shaft = design.subjects.the("shaft", name)
        right, up = shaft.given("centre.right"), shaft.given("centre.up")
        if isinstance(right, Known) and isinstance(up, Known):
            centres[name] = (right.number, up.number)
        elif name == design.train.first:
            centres[name] = (0.0, 0.0)
        else:
            place, note = _beside_driver(design, name, centres)
            notes.append(note)
            if place is not None:
                centres[name] = place
    return centres, notes


def _beside_driver(
    design: Design, name: str, centres: dict[str, Point]
) -> tuple[Point | None, str]:
    link = design.train.fed_by[name]
    driver = centres.get(link.driver)
    if driver is None:
        return None, f"Shaft {name}: not drawn, the place of its driver is not known."
    if link.kind != "mesh":
        said = f"Shaft {name}: centre not stated, drawn in line with {link.driver}."
        return driver, said
    distance = design.pairs[link.name].centre_distance()
    if isinstance(distance, Unknown):
        return None, f"Shaft {name}: not drawn, centre and centre distance are not stated."
    said = f"Shaft {name}: centre not stated, drawn above {link.driver} at the centre distance."
    return (driver[0], driver[1] + distance.number), said


def _axis(design: Design, shafts: list[str], centre: Point, notes: list[str]) -> Axis:
    senses = []
    for shaft in shafts:
        sense = design.motion.sense(shaft)
        senses.append(int(sense.number) if isinstance(sense, Known) else None)
    discs = tuple(
        _disc(design, name, notes)
        for name, wheel in design.wheels.items()
        if wheel.subject.raw("shaft") in shafts
    )
    return Axis(centre, tuple(shafts), tuple(senses), discs)


def _disc(design: Design, name: str, notes: list[str]) -> Disc:
    wheel = design.wheels[name]
    tip = wheel.tip_diameter()
    if isinstance(tip, Unknown):
        notes.append(f"Gear {name}: tip circle not drawn, {needs(tip)}.")
    pitch: list[float] = []
    for pair in design.pairs.values():
        if wheel not in (pair.driver, pair.driven):
            continue
        diameter = pair.working_diameter(wheel)
        if isinstance(diameter, Unknown):
            notes.append(f"Gear {name}: pitch circle not drawn, {needs(diameter)}.")
        elif not any(abs(diameter.number - each) < 1e-6 for each in pitch):
            pitch.append(diameter.number)
    teeth = wheel.teeth
    said = f"{teeth.value} teeth" if isinstance(teeth, Known) else "teeth not stated"
    return Disc(name, said, tuple(pitch), tip.number if isinstance(tip, Known) else None)


def _oil(design: Design, notes: list[str]) -> tuple[float | None, float | None]:
    """Heights of case bottom and running level over the first axis [m]."""
    bottom = design.subjects.the("housing").given("bottom")
    if isinstance(bottom, Unknown):
        notes.append("Oil level: not drawn, the case bottom is not stated.")
        return None, None
    level = design.subjects.the("lubrication").given("running_level")
    if isinstance(level, Unknown):
        notes.append("Oil level: not stated.")
        return bottom.number, None
    return bottom.number, bottom.number + level.number
