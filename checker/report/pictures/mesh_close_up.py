"""Two gears where they meet: true flanks, line of action and contact segment.

The line of centres stands upright, the driver below, in the transverse section. Working flanks
touch at the pitch point; backlash opens behind them.
"""

from dataclasses import dataclass
from functools import partial
from math import cos, floor, hypot, pi, sin, sqrt
from xml.etree.ElementTree import Element

from checker.known import Known, Unknown, Value, merged
from checker.measures.design import Design
from checker.report.pictures.callouts import Callout, column
from checker.report.pictures.frame import Frame, scale_bar
from checker.report.pictures.front_plan import CLOCKWISE, needs
from checker.report.pictures.picture import Picture
from checker.report.pictures.svg import LINE, Pen, Point, Sheet, cut
from checker.report.pictures.tooth_form import ToothForm, outline, tooth_form
from checker.report.words import set_text
from checker.spec.subject import Subject
from checker.spec.units import show
from checker.train.pair import Pair, Wheel

_CORNER: Point = (16.0, 32.0)
_WINDOW: Point = (500.0, 380.0)
_MIDDLE: Point = (_CORNER[0] + 0.5 * _WINDOW[0], _CORNER[1] + 0.5 * _WINDOW[1])
_COLUMN = 548.0
_ROOM = 720.0 - _COLUMN - 4.0
_PITCHES = 4.4
"""Working pitches that the window shows across."""

_SEEN = "Transverse section, seen from the engine towards the propeller"
_UPRIGHT = "Turned so that the line of centres stands upright; the engine drives."
_SIMPLE = (
    "True involutes at their stated thickness; root fillets simplified to radial lines, tip "
    "chamfers left out."
)
_PENS = {
    "tip": Pen("ink", 1.0),
    "pitch": Pen("series-1", 1.0, "9 3 2 3"),
    "base": Pen("series-3", 1.2, "4 3"),
    "root": Pen("faint", 1.0, "1 3"),
}


@dataclass(frozen=True, slots=True)
class _Meeting:
    """A pair as it is drawn: forms of driver and driven, and the line of action.

    Attributes:
        angle: working pressure angle [rad].
        ends: distances of A before and E beyond the pitch point on the line of action [m], or
            what is missing for them.
        base_pitch: distance from one pair in contact to the next [m].
        sense: of the driver, +1 clockwise seen towards the propeller; ``None`` if unknown.
    """

    driver: ToothForm
    driven: ToothForm
    angle: float
    ends: tuple[float, float] | Unknown
    base_pitch: float
    sense: int | None

    @property
    def way(self) -> Point:
        """Direction in which contact moves along the line of action."""
        return (self.sense or 1) * cos(self.angle), sin(self.angle)


def mesh_close_up(design: Design, mesh: Subject, name: str = "mesh") -> Picture:
    """The teeth of one mesh in contact, or in words what is missing to draw them."""
    pair = design.pairs[mesh.name]
    title = f"Mesh {mesh.name} close up, to scale{set_text(design.subjects.ratio_set)}"
    sheet = Sheet(name)
    met = _meeting(design, pair)
    if isinstance(met, Unknown):
        said = f"Mesh {mesh.name} is not drawn: {needs(met)}."
        end = sheet.notes(20.0, [said])
        return sheet.picture(title, said, end)
    frame = Frame(_WINDOW[0] * met.driver.teeth / (_PITCHES * 2 * pi * met.driver.working), _MIDDLE)
    within = sheet.window("view", _CORNER, _WINDOW)
    sheet.text((_CORNER[0], 20.0), f"{_SEEN}.", bold=True)
    _gears(sheet, met, frame, within)
    callouts = _circles(sheet, met, frame, within)
    _action(sheet, met, frame, within)
    sheet.rectangle(_CORNER, _WINDOW, Pen("rule"))
    _words_in_drawing(sheet, pair, met, frame)
    column(sheet, callouts, _COLUMN, _CORNER[1], bold=0)
    bottom = _CORNER[1] + _WINDOW[1] + LINE
    scale_bar(sheet, frame, (_CORNER[0], bottom))
    notes = _notes(pair, met)
    bottom = sheet.notes(bottom + 1.5 * LINE, notes)
    return sheet.picture(title, f"{_SEEN}. {_who(pair, met)} {' '.join(notes)}", bottom)


def _meeting(design: Design, pair: Pair) -> _Meeting | Unknown:
    driver, driven = tooth_form(pair, pair.driver), tooth_form(pair, pair.driven)
    angle, pitch = pair.working_pressure_angle(), pair.driver.base_pitch
    if isinstance(driver, Unknown) or isinstance(driven, Unknown):
        return merged([each for each in (driver, driven) if isinstance(each, Unknown)])
    if isinstance(angle, Unknown) or isinstance(pitch, Unknown):
        return merged([each for each in (angle, pitch) if isinstance(each, Unknown)])
    sense = design.motion.sense(str(pair.driver.subject.raw("shaft")))
    turns = int(sense.number) if isinstance(sense, Known) else None
    return _Meeting(driver, driven, angle.number, _ends(pair), pitch.number, turns)


def _ends(pair: Pair) -> tuple[float, float] | Unknown:
    """How far A lies before and E beyond the pitch point [m]."""
    before, beyond = pair.addendum_path(pair.driven), pair.addendum_path(pair.driver)
    if isinstance(before, Known) and isinstance(beyond, Known):
        return before.number, beyond.number
    return merged([each for each in (before, beyond) if isinstance(each, Unknown)])


def _place(form: ToothForm, up: int, mirror: int, point: Point) -> Point:
    """A point of a gear by angle and radius, from the pitch point; ``up`` is -1 for the driver."""
    angle, radius = point
    return mirror * radius * sin(angle), up * (form.working - radius * cos(angle))


def _gears(sheet: Sheet, met: _Meeting, frame: Frame, within: Element) -> None:
    half = 0.5 * hypot(*_WINDOW) / frame.scale
    for part, form, up, behind in (("driven", met.driven, 1, 1), ("driver", met.driver, -1, -1)):
        place = partial(_place, form, up, met.sense or 1)
        depth = max(0.0, form.root - 2.0 * half)
        reach = 2.0 * half / form.root
        points = outline(form, behind * form.half_angle, reach, depth)
        pen = Pen("ink", 1.4, fill="steel" if part == "driver" else "panel")
        drawn = [frame.to(*place(point)) for point in points]
        sheet.path(drawn, pen, closed=True, part=part, within=within)


def _circles(sheet: Sheet, met: _Meeting, frame: Frame, within: Element) -> list[Callout]:
    """Tip, pitch, base and root circles, with what stands beside them at the window's edge."""
    callouts = []
    for part, form, up in (("driver", met.driver, -1), ("driven", met.driven, 1)):
        radii = {"tip": form.tip, "pitch": form.working, "base": form.base, "root": form.root}
        for kind, radius in radii.items():
            centre = frame.to(0.0, up * form.working)
            identity = f"{part}-{kind}"
            drawn = frame.scale * radius
            sheet.circle(centre, drawn, _PENS[kind], part=identity, within=within)
            edge = _CORNER[0] + _WINDOW[0] - centre[0]
            if drawn > edge:
                y = centre[1] + up * sqrt(drawn**2 - edge**2)
                if _CORNER[1] < y < _CORNER[1] + _WINDOW[1]:
                    size = show(2.0 * radius, "m")
                    at = (centre[0] + edge, y)
                    callouts.append(Callout(at, (f"{part} {kind} ⌀", size)))
    return callouts


def _action(sheet: Sheet, met: _Meeting, frame: Frame, within: Element) -> None:
    """Line of action between the base circles, contact segment, points in contact."""
    across, up = met.way

    def along(distance: float) -> Point:
        return frame.to(distance * across, distance * up)

    first = along(-met.driver.working * sin(met.angle))
    last = along(met.driven.working * sin(met.angle))
    sheet.line(first, last, Pen("series-2", 1.2, "10 3 2 3"), within=within)
    left, right = (frame.to(side * 0.5 * _WINDOW[0] / frame.scale, 0.0) for side in (-1, 1))
    sheet.line(left, right, Pen("faint", 0.8, "2 3"), within=within)
    sheet.line(
        (_MIDDLE[0], _CORNER[1]),
        (_MIDDLE[0], _CORNER[1] + _WINDOW[1]),
        Pen("faint", 0.8, "12 3 3 3"),
        within=within,
    )
    arc = 0.36 * _WINDOW[0] / frame.scale
    turns = [met.angle * each / 8 for each in range(9)]
    bent = [frame.to((met.sense or 1) * arc * cos(each), arc * sin(each)) for each in turns]
    sheet.path(bent, Pen("ink", 1.2), part="pressure-angle")
    if not isinstance(met.ends, Unknown):
        before, beyond = met.ends
        sheet.line(along(-before), along(beyond), Pen("series-2", 3.5), part="contact-segment")
        touching = range(-floor(before / met.base_pitch), floor(beyond / met.base_pitch) + 1)
        for each in touching:
            sheet.circle(along(each * met.base_pitch), 4.5, Pen("ink", 1.2, fill="series-2"))
    sheet.circle(frame.to(0.0, 0.0), 3.0, Pen("ink", 1.2, fill="ground"), part="pitch-point")


def _words_in_drawing(sheet: Sheet, pair: Pair, met: _Meeting, frame: Frame) -> None:
    room = 0.5 * _WINDOW[0]
    turns = [CLOCKWISE.get(sign * (met.sense or 0), "sense not stated") for sign in (-1, 1)]
    left = _CORNER[0] + 8.0
    for wheel, role, turn, y in (
        (pair.driven, "driven", turns[0], _CORNER[1] + LINE),
        (pair.driver, "driver", turns[1], _CORNER[1] + _WINDOW[1] - 1.75 * LINE),
    ):
        sheet.lines((left, y), (cut(f"{role}: {_called(wheel)}", room), turn), bold=1)
    across, up = met.way
    side = 1 if across > 0.0 else -1
    reach = 0.36 * _WINDOW[0] + 8.0
    x, y = frame.origin[0] + side * reach, frame.origin[1] - 0.5 * reach * sin(met.angle)
    start, end = ("start", "end") if side > 0 else ("end", "start")
    sheet.text((x, y + 4.0), f"{_degrees(met.angle)}", anchor=start)
    sheet.text((frame.origin[0] - 10.0 * side, frame.origin[1] - 8.0), "pitch point", anchor=end)
    if not isinstance(met.ends, Unknown):
        for letter, distance, drop, anchor in (
            ("A", -met.ends[0], 16.0, end),
            ("E", met.ends[1], -8.0, start),
        ):
            px, py = frame.to(distance * across, distance * up)
            sign = -1 if letter == "A" else 1
            sheet.text(
                (px + sign * side * 4.0, py + drop), letter, anchor=anchor, size=14.0, bold=True
            )


def _notes(pair: Pair, met: _Meeting) -> list[str]:
    notes = [_UPRIGHT]
    if met.sense is None:
        notes.append("The sense of rotation is not stated: the driver is drawn clockwise.")
    notes.append(
        f"Working pressure angle {_degrees(met.angle)}, between the common tangent (dots) and the"
        " line of action (dashes and dots)."
    )
    if isinstance(met.ends, Unknown):
        notes.append(f"Contact segment not drawn: {needs(met.ends)}.")
    else:
        length = show(sum(met.ends), "m")
        notes.append(
            f"Thick: the contact segment, from A where contact begins to E where it ends, {length}"
            " long. Filled dots: teeth that touch in this position."
        )
    notes.append(_ratio_words(pair.transverse_contact_ratio(), pair.overlap_ratio))
    tool = pair.driver.root_form_diameter(), pair.driven.root_form_diameter()
    if any(isinstance(each, Unknown) for each in tool):
        notes.append("The tool is not stated: the involutes are drawn down to base or root circle.")
    return [*notes, _SIMPLE]


def _ratio_words(ratio: Value, overlap: Value) -> str:
    """The contact ratio, and what it says of the pairs of teeth that touch."""
    if isinstance(ratio, Unknown):
        best = f", at best {show(ratio.at_best.number, '1')}" if ratio.at_best else ""
        return f"Contact ratio not shown{best}."
    whole = floor(ratio.number)
    share = f"{100.0 * (ratio.number - whole):.0f} %"
    said = f"Transverse contact ratio {ratio.number:.2f}: "
    if whole < 1:
        said += f"no teeth touch for {100.0 * (1.0 - ratio.number):.0f} % of the way"
    else:
        pairs = "one pair of teeth touches" if whole == 1 else f"{whole} pairs of teeth touch"
        said += f"{pairs} always, one more for {share} of the way"
    if isinstance(overlap, Known) and overlap.number > 0.0:
        said += f"; the helix adds an overlap ratio of {overlap.number:.2f}"
    return f"{said}."


def _who(pair: Pair, met: _Meeting) -> str:
    turns = CLOCKWISE.get(met.sense or 0, "in a sense that is not stated")
    return f"{_called(pair.driver)} drives {_called(pair.driven)}; the driver turns {turns}."


def _called(wheel: Wheel) -> str:
    teeth = wheel.teeth
    count = f", {teeth.value} teeth" if isinstance(teeth, Known) else ""
    return f"{wheel.subject.name}{count}"


def _degrees(angle: float) -> str:
    return f"{angle * 180.0 / pi:.2f}°"
