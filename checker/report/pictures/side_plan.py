"""Where shafts, gears, bearings and couplings stand along the drive, as far as the spec says."""

from dataclasses import dataclass, field

from checker.known import Known, Unknown, Value, all_known, merged
from checker.measures.design import Design
from checker.report.pictures.front_plan import needs, shaft_centres
from checker.spec.coupling import Clutch, Damper
from checker.spec.subject import Subject
from checker.spec.units import show
from checker.train import bearing_size

_ON_THE_FACE = 0.86
"""Part of the pitch radius at which a thrust is drawn, to part it from that of the mate."""

_SAME = 0.01
"""Part of a diameter within which a race and a section of a shaft are taken as one."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A body round an axis: from and to along it, radii, and height of the axis [m].

    Attributes:
        inside: radius of the bore; zero if solid, ``None`` if not stated.
    """

    start: float
    end: float
    height: float
    outside: float
    inside: float | None

    @property
    def middle(self) -> float:
        """Middle along the axis [m]."""
        return 0.5 * (self.start + self.end)


@dataclass(frozen=True, slots=True)
class Item:
    """A part of the drive with its words and where it is drawn.

    Attributes:
        kind: shaft, gear, bearing, clutch, damper or joint.
        stretches: its bodies; empty where the spec gives no place.
    """

    kind: str
    name: str
    words: str
    stretches: tuple[Stretch, ...] = ()


@dataclass(frozen=True, slots=True)
class Push:
    """An axial force at its greatest, where it acts.

    Attributes:
        force: in newtons, positive towards the propeller.
        at: station of its origin and height [m].
    """

    of: str
    force: float
    point: str
    at: tuple[float, float]


@dataclass(slots=True)
class SidePlan:
    """The drive seen from its right side, engine on the left.

    Attributes:
        items: parts with a place.
        pushes: axial forces.
        notes: what is not stated, and what was drawn in its place.
    """

    items: list[Item] = field(default_factory=list)
    pushes: list[Push] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    @property
    def stretches(self) -> list[Stretch]:
        """Every body that is drawn."""
        return [stretch for item in self.items for stretch in item.stretches]

    def of(self, kind: str) -> list[Item]:
        """The parts of one kind."""
        return [item for item in self.items if item.kind == kind]

    def add(self, item: Item, *lacking: str) -> None:
        """Add a part; one without a place goes to the notes."""
        if item.stretches:
            self.items.append(item)
        else:
            called = item.kind if item.kind == item.name else f"{item.kind} {item.name}"
            self.notes.append(f"Not drawn: {called}, {'; '.join(lacking)}.")


def side_plan(design: Design) -> SidePlan:
    """Lay the drive out along its axes."""
    centres, notes = shaft_centres(design)
    heights = {name: up for name, (_, up) in centres.items()}
    plan = SidePlan(notes=notes)
    sections = {name: _sections(design, name, heights, plan) for name in heights}
    for name, gear in design.wheels.items():
        shaft = str(gear.subject.raw("shaft"))
        if shaft in heights:
            _gear(plan, name, gear.subject, sections[shaft], heights[shaft])
    for bearing in design.subjects.all("bearing"):
        shaft = str(bearing.raw("shaft"))
        if shaft in heights:
            _bearing(plan, bearing, heights[shaft])
    spec = design.subjects.spec
    if isinstance(spec.damper, Damper):
        _damper(plan, design, sections)
    if isinstance(spec.clutch, Clutch):
        _clutch(plan, design, sections)
    for joint in design.subjects.all("joint"):
        if joint.raw("to") == "propeller":
            _propeller_flange(plan, joint, sections)
    _pushes(plan, design, heights)
    return plan


def _sections(
    design: Design, name: str, heights: dict[str, float], plan: SidePlan
) -> list[Stretch]:
    shaft = design.subjects.the("shaft", name)
    stretches = []
    stated = shaft.raw("sections") or []
    for index, section in enumerate(stated, 1):
        if section.from_ is None or section.to is None or section.outside is None:
            plan.notes.append(f"Shaft {name}: section {index} not drawn, place or size not stated.")
            continue
        inside = None if section.inside is None else 0.5 * section.inside.value
        if inside is None:
            plan.notes.append(f"Shaft {name}: bore of section {index} not stated, drawn solid.")
        stretches.append(
            Stretch(
                section.from_.value,
                section.to.value,
                heights[name],
                0.5 * section.outside.value,
                inside,
            )
        )
    plan.add(Item("shaft", name, f"shaft {name}", tuple(stretches)), "sections not stated")
    return stretches


def _gear(plan: SidePlan, name: str, gear: Subject, shaft: list[Stretch], height: float) -> None:
    station, width, tip = (gear.given(each) for each in ("station", "face_width", "tip_diameter"))
    words = f"gear {name}"
    if isinstance(width, Known):
        words += f", face {show(width.number, 'm')}"
    if not (isinstance(station, Known) and isinstance(width, Known) and isinstance(tip, Known)):
        plan.add(Item("gear", name, words), _needs(station, width, tip))
        return
    half = 0.5 * width.number
    under = [each.outside for each in shaft if each.start <= station.number <= each.end]
    body = Stretch(
        station.number - half,
        station.number + half,
        height,
        0.5 * tip.number,
        min(max(under, default=0.0), 0.5 * tip.number),
    )
    plan.add(Item("gear", name, words, (body,)))


def _bearing(plan: SidePlan, bearing: Subject, height: float) -> None:
    station = bearing.given("station")
    sizes = (bearing_size.width(bearing), bearing_size.outside(bearing), bearing.given("bore"))
    kind, locates = bearing.raw("kind"), bearing.raw("locates")
    words = f"bearing {bearing.name}, {kind or 'kind not stated'}"
    if locates not in (None, "none"):
        words += f", locates {'both ways' if locates == 'both' else locates}"
    known = [each.number for each in (station, *sizes) if isinstance(each, Known)]
    if len(known) < 4:
        plan.add(Item("bearing", bearing.name, words), _needs(station, *sizes))
        return
    middle, width, outside, bore = known
    body = Stretch(middle - 0.5 * width, middle + 0.5 * width, height, 0.5 * outside, 0.5 * bore)
    plan.add(Item("bearing", bearing.name, words, (body,)))


def _damper(plan: SidePlan, design: Design, sections: dict[str, list[Stretch]]) -> None:
    """The gap between the two shafts that the damper joins; its own place is no spec field."""
    damper = design.subjects.the("damper")
    driving, driven = (sections.get(each, []) for each in damper.raw("between"))
    words = f"damper, {damper.raw('kind') or 'kind not stated'}: place and size not stated"
    gap: tuple[Stretch, ...] = ()
    if driving and driven:
        left, right = max(driving, key=lambda s: s.end), min(driven, key=lambda s: s.start)
        if left.end < right.start:
            gap = (Stretch(left.end, right.start, right.height, right.outside, None),)
            plan.notes.append("Damper: drawn dashed in the gap between its shafts.")
    plan.add(Item("damper", "damper", words, gap), "its place is not stated")


def _clutch(plan: SidePlan, design: Design, sections: dict[str, list[Stretch]]) -> None:
    """Where the sections of its races lie opposite each other; its own place is no spec field."""
    clutch = design.subjects.the("clutch")
    words = f"clutch, {clutch.raw('kind') or 'kind not stated'}: station not stated"
    place = _between_races(clutch, sections)
    if place is not None:
        plan.notes.append("Clutch: drawn dashed over the length where its races lie opposite.")
    plan.add(
        Item("clutch", "clutch", words, (place,) if place else ()),
        "its station is not stated and no sections have its race radii",
    )


def _between_races(clutch: Subject, sections: dict[str, list[Stretch]]) -> Stretch | None:
    outer, inner = clutch.given("outer_race_radius"), clutch.given("inner_race_radius")
    carrier = clutch.raw("outer")
    if isinstance(outer, Unknown) or isinstance(inner, Unknown) or carrier is None:
        return None
    carried = next((each for each in clutch.raw("between") if each != carrier), "")
    for around in sections.get(carrier, []):
        for within in sections.get(carried, []):
            start, end = max(around.start, within.start), min(around.end, within.end)
            fits = abs((around.inside or 0.0) - outer.number) < _SAME * outer.number
            sits = abs(within.outside - inner.number) < _SAME * inner.number
            if fits and sits and start < end:
                return Stretch(start, end, within.height, outer.number, inner.number)
    return None


def _propeller_flange(plan: SidePlan, joint: Subject, sections: dict[str, list[Stretch]]) -> None:
    shaft = str(joint.raw("shaft"))
    words = f"joint {joint.name}, {joint.raw('kind') or 'kind not stated'} to the propeller"
    last = max(sections.get(shaft, []), key=lambda each: each.end, default=None)
    if last is None:
        plan.add(Item("joint", joint.name, words), f"sections of shaft {shaft} not stated")
        return
    face = Stretch(last.end, last.end, last.height, last.outside, None)
    plan.add(Item("joint", joint.name, words, (face,)))


def _pushes(plan: SidePlan, design: Design, heights: dict[str, float]) -> None:
    """The greatest axial force that each mesh puts on each of its gears, and the propeller's."""
    lacking: dict[str, list[str]] = {}
    bodies = {item.name: item.stretches[0] for item in plan.of("gear")}
    for mesh in design.subjects.all("mesh"):
        pair = design.pairs[mesh.name]
        for wheel, mate in ((pair.driver, pair.driven), (pair.driven, pair.driver)):
            name = wheel.subject.name
            values = [(each, design.loads.axial(mesh, wheel, each)) for each in design.points]
            greatest = _greatest(values, f"gear {name} in mesh {mesh.name}", lacking)
            if greatest is None or name not in bodies:
                continue
            body = bodies[name]
            other = bodies.get(mate.subject.name, body)
            rolling = pair.working_diameter(wheel)
            reach = 0.5 * rolling.number if isinstance(rolling, Known) else body.outside
            toward = 1.0 if other.height >= body.height else -1.0
            edge = body.end if greatest[0] > 0.0 else body.start
            at = (edge, body.height + _ON_THE_FACE * toward * reach)
            plan.pushes.append(Push(name, *greatest, at))
    _propeller_push(plan, design, heights, lacking)
    plan.notes += [
        f"Axial thrust not known of {', '.join(parts)}: {why}." for why, parts in lacking.items()
    ]


def _propeller_push(
    plan: SidePlan, design: Design, heights: dict[str, float], lacking: dict[str, list[str]]
) -> None:
    last = design.train.last
    shaft = next((item for item in plan.of("shaft") if item.name == last), None)
    if shaft is None:
        return
    values = []
    for point in design.points:
        thrust = design.loads.propeller_thrust(last, point)
        if thrust is not None:
            values.append((point, thrust))
    greatest = _greatest(values, "the propeller", lacking)
    if greatest is not None:
        end = max(each.end for each in shaft.stretches)
        plan.pushes.append(Push("propeller", *greatest, (end, heights[last])))


def _greatest(
    values: list[tuple[Subject, Value]], of: str, lacking: dict[str, list[str]]
) -> tuple[float, str] | None:
    """The force of the largest size with its point; ``None`` where there is none.

    Where it is not known at some points, ``lacking`` learns of what, and why.
    """
    known = [(value.number, point.name) for point, value in values if isinstance(value, Known)]
    unknown = merged([value for _, value in values if isinstance(value, Unknown)])
    if len(known) < len(values):
        where = f"at {len(values) - len(known)} of {len(values)} points, {needs(unknown)}"
        lacking.setdefault(where, []).append(of)
    force, point = max(known, key=lambda each: abs(each[0]), default=(0.0, ""))
    return (force, point) if force else None


def _needs(*values: Value) -> str:
    unknown = all_known(*values)
    return "" if unknown is None else needs(unknown)
