"""The drive seen from the engine: axes, pitch and tip circles, senses of rotation and oil."""

from math import cos, hypot, pi, sin

from checker.measures.design import Design
from checker.report.pictures.callouts import Callout, column
from checker.report.pictures.frame import Frame, fitted, scale_bar, up_arrow
from checker.report.pictures.front_plan import CLOCKWISE, Axis, Disc, FrontPlan, front_plan
from checker.report.pictures.picture import Picture
from checker.report.pictures.svg import LINE, Pen, Point, Sheet, cut
from checker.report.words import set_text
from checker.spec.units import show

_AREA: Point = (340.0, 480.0)
_CORNER: Point = (40.0, 70.0)
_COLUMN = 420.0
_ROOM = 720.0 - _COLUMN - 8.0
_SEEN = "Seen from the engine towards the propeller, level"
_KEY = "Full circles: tips. Dashes and dots: working pitch circles."
_MOVED = 1e-6


def front_view(design: Design, name: str = "front-view") -> Picture:
    """Shafts at their stated places with their gears, senses of rotation and the oil level."""
    plan = front_plan(design)
    sheet = Sheet(name)
    frame = fitted(plan.corners, _CORNER, _AREA)
    _oil(sheet, plan, frame)
    for index, axis in enumerate(plan.axes, 1):
        _circles(sheet, axis, frame, index)
        _senses(sheet, axis, frame)
    said = [Callout(_edge(axis, frame), tuple(_axis_lines(axis))) for axis in plan.axes]
    end = _column(sheet, [*said, *_oil_callouts(plan, frame)])
    notes = [_KEY, *plan.notes]
    bottom = _close(sheet, frame, _SEEN, plan, end, notes)
    words = ". ".join("; ".join(_axis_words(axis)) for axis in plan.axes)
    return sheet.picture(
        f"The drive from the front, to scale{set_text(design.subjects.ratio_set)}",
        f"{_SEEN}. {words}. {_oil_words(plan)} {' '.join(plan.notes)}".strip(),
        bottom,
    )


def front_view_overlay(old: Design, new: Design, name: str = "front-view-of-both") -> Picture:
    """Two revisions of a drive on each other: the old one dashed, the new one in full lines."""
    before, after = front_plan(old), front_plan(new)
    sheet = Sheet(name)
    frame = fitted([*before.corners, *after.corners], _CORNER, _AREA)
    for axis in before.axes:
        _old_circles(sheet, axis, frame)
    for index, axis in enumerate(after.axes, 1):
        _circles(sheet, axis, frame, index)
    levels = ((before, Pen("series-2", 1.5, "6 4")), (after, Pen("series-2", 1.5)))
    for plan, pen in levels:
        if plan.level is not None:
            y = frame.to(0.0, plan.level)[1]
            sheet.line((_CORNER[0], y), (_CORNER[0] + _AREA[0], y), pen)
    changes = {axis: _changes(before, axis) for axis in after.axes}
    said = [Callout(_edge(axis, frame), (_names(axis), *changes[axis])) for axis in after.axes]
    gone = [axis for axis in before.axes if not _kept(axis, after)]
    said += [Callout(frame.to(*axis.centre), (_names(axis), "only in the old")) for axis in gone]
    level = _level_change(before, after)
    end = _column(sheet, said)
    notes = ["Full lines: new. Dashed: old.", level, *after.notes]
    bottom = _close(sheet, frame, f"{_SEEN}; both to one scale", after, end, notes)
    words = [f"{', '.join(axis.shafts)}: {', '.join(changes[axis])}" for axis in after.axes]
    words += [f"{', '.join(axis.shafts)}: only in the old" for axis in gone]
    return sheet.picture(
        f"The drive from the front, old and new, to scale{set_text(new.subjects.ratio_set)}",
        f"{_SEEN}. {'. '.join(words)}. {level} {' '.join(after.notes)}".strip(),
        bottom,
    )


def _close(
    sheet: Sheet, frame: Frame, seen: str, plan: FrontPlan, end: float, notes: list[str]
) -> float:
    """View, up arrow, scale bar and notes; returns the height of the picture."""
    sheet.text((LINE, 20.0), f"{seen}.", bold=True)
    up_arrow(sheet, (LINE + 4.0, 66.0))
    low = min(y for _, y in plan.corners)
    bottom = max(frame.to(0.0, low)[1] + 30.0, end, 160.0)
    scale_bar(sheet, frame, (_CORNER[0], bottom))
    return sheet.notes(bottom + 2 * LINE, notes)


def _column(sheet: Sheet, callouts: list[Callout]) -> float:
    return column(sheet, callouts, _COLUMN, 36.0)


def _circles(sheet: Sheet, axis: Axis, frame: Frame, index: int) -> None:
    centre = frame.to(*axis.centre)
    for disc in axis.discs:
        if disc.tip is not None:
            sheet.circle(centre, 0.5 * frame.scale * disc.tip, Pen("ink", 1.4))
        for diameter in disc.pitch:
            sheet.circle(centre, 0.5 * frame.scale * diameter, Pen("series-1", 1.0, "9 3 2 3"))
    x, y = centre
    arm = 7.0
    sheet.line((x - arm, y), (x + arm, y), Pen("ink", 1.2))
    sheet.line((x, y - arm), (x, y + arm), Pen("ink", 1.2))
    sheet.circle(centre, 2.0, Pen("ink", 1.0, fill="ink"), part=f"axis-{index}")


def _old_circles(sheet: Sheet, axis: Axis, frame: Frame) -> None:
    centre = frame.to(*axis.centre)
    for disc in axis.discs:
        for diameter in (disc.tip, *disc.pitch):
            if diameter is not None:
                sheet.circle(centre, 0.5 * frame.scale * diameter, Pen("series-2", 1.2, "5 4"))
    sheet.circle(centre, 4.0, Pen("series-2", 1.2, "2 2"))


def _senses(sheet: Sheet, axis: Axis, frame: Frame) -> None:
    """An arrow round the axis for each sense in which its shafts turn."""
    x, y = frame.to(*axis.centre)
    turning = sorted({sense for sense in axis.senses if sense is not None}, reverse=True)
    for step, sense in enumerate(turning):
        radius = max(16.0, 0.5 * frame.scale * axis.radius) + 10.0 * step
        angles = [sense * (-0.35 * pi + 0.07 * pi * each) - 0.5 * pi for each in range(11)]
        arc = [(x + radius * cos(angle), y + radius * sin(angle)) for angle in angles]
        sheet.arrow(arc, Pen("series-3", 2.0))


def _oil(sheet: Sheet, plan: FrontPlan, frame: Frame) -> None:
    left, wide = _CORNER[0], _AREA[0]
    if plan.bottom is None:
        return
    low = frame.to(0.0, plan.bottom)[1]
    if plan.level is not None:
        high = frame.to(0.0, plan.level)[1]
        if high < low:
            sheet.rectangle((left, high), (wide, low - high), Pen("none", fill="oil"))
        sheet.line((left, high), (left + wide, high), Pen("series-5", 1.4), part="oil-level")
    sheet.line((left, low), (left + wide, low), Pen("ink", 2.0), part="case-bottom")


def _oil_callouts(plan: FrontPlan, frame: Frame) -> list[Callout]:
    if plan.bottom is None:
        return []
    x = _CORNER[0] + _AREA[0]
    lines = ["case bottom; sides are not stated"]
    if plan.level is not None:
        lines = [f"running oil level {_level(plan)}", *lines]
    return [Callout((x, frame.to(0.0, plan.level or plan.bottom)[1]), tuple(lines))]


def _level(plan: FrontPlan) -> str:
    height = (plan.level or 0.0) - (plan.bottom or 0.0)
    return f"{show(height, 'm')} above case bottom"


def _oil_words(plan: FrontPlan) -> str:
    return f"Running oil level {_level(plan)}." if plan.level is not None else ""


def _edge(axis: Axis, frame: Frame) -> Point:
    """The rightmost point of the largest gear, or the centre where there is none."""
    x, y = frame.to(*axis.centre)
    return x + frame.scale * axis.radius, y


def _names(axis: Axis) -> str:
    return cut(", ".join(axis.shafts), _ROOM)


def _axis_lines(axis: Axis) -> list[str]:
    words = _axis_words(axis)
    return [_names(axis), *(cut(word, _ROOM) for word in words[1:])]


def _axis_words(axis: Axis) -> list[str]:
    """Names of the shafts, how they turn, and the gears with their diameters."""
    words = [f"On the axis of {', '.join(axis.shafts)}"]
    turns = [CLOCKWISE.get(sense or 0, "sense not stated") for sense in axis.senses]
    if len(set(turns)) == 1:
        words.append(f"turns {turns[0]}" if axis.senses[0] else turns[0])
    else:
        words += [f"{name}: {turn}" for name, turn in zip(axis.shafts, turns, strict=True)]
    for disc in axis.discs:
        words.append(f"{disc.name}: {disc.teeth}")
        words += [f"pitch ⌀ {_sizes(disc.pitch)}"] if disc.pitch else []
        words += [f"tip ⌀ {_size(disc.tip)}"] if disc.tip is not None else []
    return words


def _kept(axis: Axis, plan: FrontPlan) -> bool:
    """Whether a plan has any of the shafts of an axis."""
    return any(set(axis.shafts) & set(each.shafts) for each in plan.axes)


def _changes(before: FrontPlan, axis: Axis) -> list[str]:
    """What of an axis and its gears is not as it was."""
    old = next((each for each in before.axes if set(each.shafts) & set(axis.shafts)), None)
    if old is None:
        return ["new"]
    changes = []
    moved = hypot(axis.centre[0] - old.centre[0], axis.centre[1] - old.centre[1])
    if moved > _MOVED:
        changes.append(f"moved by {show(moved, 'm')}")
    was = {disc.name: disc for disc in old.discs}
    for disc in axis.discs:
        earlier = was.get(disc.name)
        if earlier is None:
            changes.append(cut(f"{disc.name}: new", _ROOM))
        elif earlier != disc:
            changes += [cut(each, _ROOM) for each in _disc_changes(earlier, disc)]
    return changes or ["as before"]


def _disc_changes(old: Disc, new: Disc) -> list[str]:
    changes = []
    if old.teeth != new.teeth:
        changes.append(f"{new.name}: {new.teeth}, was {old.teeth}")
    if new.tip != old.tip:
        changes.append(f"{new.name}: tip ⌀ {_size(new.tip)}, was {_size(old.tip)}")
    if new.pitch != old.pitch:
        changes += [f"{new.name}: pitch ⌀ {_sizes(new.pitch)}", f"was {_sizes(old.pitch)}"]
    return changes


def _sizes(diameters: tuple[float, ...]) -> str:
    return " and ".join(show(each, "m") for each in diameters) or "not stated"


def _size(diameter: float | None) -> str:
    return "not stated" if diameter is None else show(diameter, "m")


def _level_change(before: FrontPlan, after: FrontPlan) -> str:
    if before.level == after.level and before.bottom == after.bottom:
        return "Oil level as before."
    return f"Oil level over the first axis {_size(after.level)}, was {_size(before.level)}."
