"""The drive from its right side: shafts in section, gears, bearings, couplings and thrusts."""

from collections.abc import Iterator
from math import cos, pi, sin

from checker.measures.design import Design
from checker.report.pictures.frame import Frame, fitted, scale_bar, up_arrow
from checker.report.pictures.picture import Picture
from checker.report.pictures.side_plan import Item, Push, SidePlan, Stretch, side_plan
from checker.report.pictures.svg import LINE, Box, Pen, Point, Sheet, text_box, width_of, wrapped
from checker.report.words import set_text
from checker.spec.units import show

_CORNER: Point = (40.0, 60.0)
_AREA: Point = (630.0, 440.0)
_COLUMN_WIDTH = 344.0
_BALLOON = 10.0
_ARROW = 30.0
_SEEN = "Seen from the right side in section; engine left, propeller right"
_KEY = (
    "Hatched: gears, out to their tips. Crossed: bearings. Dashed: no place of its own in the"
    " spec. Arrows: axial thrust on each gear from each mesh at the point where it is greatest;"
    " their length means nothing. Axes that stand to the right or left of each other are seen at"
    " their height, so that what is on them may overlap."
)
_DASHED = ("clutch", "damper")


def side_view(design: Design, name: str = "side-view") -> Picture:
    """Shafts, gears and bearings at their stated stations, with the axial thrusts."""
    plan = side_plan(design)
    sheet = Sheet(name)
    title = f"The drive from the side, to scale{set_text(design.subjects.ratio_set)}"
    if not plan.stretches:
        said = ["Not drawn: no part has a stated place along the drive.", *plan.notes]
        end = sheet.notes(20.0, said)
        return sheet.picture(title, " ".join(said), end)
    frame = fitted(_corners(plan), _CORNER, _AREA)
    sheet.text((LINE, 20.0), f"{_SEEN}.", bold=True)
    up_arrow(sheet, (LINE + 4.0, 66.0))
    low = max(frame.to(0.0, y)[1] for _, y in _corners(plan))
    hatch = sheet.hatching("hatch")
    for item in plan.items:
        _item(sheet, item, frame, hatch)
    _axes(sheet, plan, frame)
    _engine_face(sheet, frame, low)
    numbers = {id(item): str(index) for index, item in enumerate(plan.items, 1)}
    gears = {item.name: numbers[id(item)] for item in plan.of("gear")}
    for push in plan.pushes:
        _push(sheet, push, frame, gears.get(push.of, ""))
    for item in plan.items:
        _number(sheet, item, frame, numbers[id(item)])
    scale_bar(sheet, frame, (_CORNER[0], low + 34.0))
    bottom = _list(sheet, plan, low + 34.0 + 2 * LINE)
    bottom = sheet.notes(bottom + 6.0, [_KEY, _thrusts(plan), *plan.notes])
    return sheet.picture(title, _words(plan), bottom)


def _corners(plan: SidePlan) -> list[Point]:
    bodies = plan.stretches
    corners = [(each.start, each.height - each.outside) for each in bodies]
    return [(0.0, bodies[0].height), *corners, *((s.end, s.height + s.outside) for s in bodies)]


def _item(sheet: Sheet, item: Item, frame: Frame, hatch: str) -> None:
    for body in item.stretches:
        if item.kind == "shaft":
            _halves(sheet, body, frame, Pen("ink", 1.2, fill="steel"))
        elif item.kind == "gear":
            _halves(sheet, body, frame, Pen("none", fill="ground"))
            _halves(sheet, body, frame, Pen("ink", 1.2, hatch=hatch))
        elif item.kind == "bearing":
            _halves(sheet, body, frame, Pen("series-1", 1.4, fill="ground"))
            _crosses(sheet, body, frame)
        elif item.kind in _DASHED:
            _halves(sheet, body, frame, Pen("series-4", 1.6, "5 3"))


def _halves(sheet: Sheet, body: Stretch, frame: Frame, pen: Pen) -> None:
    """The cut faces of a body: two where it is hollow, one where it is solid."""
    for low, high in _cuts(body):
        x, y = frame.to(body.start, high)
        size = frame.scale * (body.end - body.start), frame.scale * (high - low)
        sheet.rectangle((x, y), size, pen)


def _cuts(body: Stretch) -> list[tuple[float, float]]:
    """Lowest and highest point of each cut face [m]."""
    if not body.inside:
        return [(body.height - body.outside, body.height + body.outside)]
    return [
        (body.height + body.inside, body.height + body.outside),
        (body.height - body.outside, body.height - body.inside),
    ]


def _crosses(sheet: Sheet, body: Stretch, frame: Frame) -> None:
    for low, high in _cuts(body):
        for start, end in ((low, high), (high, low)):
            line = frame.to(body.start, start), frame.to(body.end, end)
            sheet.line(*line, Pen("series-1", 1.0))


def _axes(sheet: Sheet, plan: SidePlan, frame: Frame) -> None:
    for item in plan.of("shaft"):
        first, last = item.stretches[0], item.stretches[-1]
        ends = frame.to(first.start, first.height), frame.to(last.end, last.height)
        left, right = (ends[0][0] - 8.0, ends[0][1]), (ends[1][0] + 8.0, ends[1][1])
        sheet.line(left, right, Pen("faint", 0.9, "12 3 3 3"))


def _engine_face(sheet: Sheet, frame: Frame, low: float) -> None:
    x = frame.to(0.0, 0.0)[0]
    sheet.line((x, _CORNER[1] - 8.0), (x, low + 8.0), Pen("faint", 1.2, "2 3"))
    sheet.text((x + 6.0, _CORNER[1] - 14.0), "engine face", ink="faint")


def _push(sheet: Sheet, push: Push, frame: Frame, on: str) -> None:
    """An arrow for a thrust, with its force and the number of the gear that it pushes."""
    x, y = frame.to(*push.at)
    way = 1.0 if push.force > 0.0 else -1.0
    if push.of == "propeller":
        y -= 6.0
    sheet.arrow(((x, y), (x + way * _ARROW, y)), Pen("series-2", 2.4))
    text = show(abs(push.force), "N") + (f" on {on}" if on else "")
    middle = x + 0.5 * way * _ARROW
    sheet.taken.append(Box(min(x, x + way * _ARROW), y - 4.0, max(x, x + way * _ARROW), y + 4.0))
    half = 0.5 * width_of(text)
    for at in _round((middle, y), 6):
        spot = (min(max(at[0], half + 2.0), 718.0 - half), at[1])
        box = text_box(spot, text, "middle", 12.0)
        if not any(box.meets(each) for each in sheet.taken):
            break
    sheet.text(spot, text, anchor="middle", ink="series-2", bold=True)


def _round(middle: Point, rings: int) -> Iterator[Point]:
    """Places for words above, below and beside a point, nearest first."""
    x, y = middle
    for ring in range(rings):
        far = 14.0 * ring
        for turn in (0.0, -0.6, 0.6):
            yield x + turn * far, y - 6.0 - far
            yield x + turn * far, y + 16.0 + far


def _number(sheet: Sheet, item: Item, frame: Frame, text: str) -> None:
    """The number of an item, on its body where there is room, beside it where there is none."""
    spots = [spot for body in item.stretches for spot in _inside(body, frame)]
    body = max(item.stretches, key=lambda each: each.end - each.start)
    low, high = _cuts(body)[0]
    anchor = frame.to(body.middle, 0.5 * (low + high))
    around = [
        (anchor[0] + ring * cos(turn * pi / 6), anchor[1] + ring * sin(turn * pi / 6))
        for ring in range(24, 160, 12)
        for turn in (-3, -2, -4, -1, -5, 3, 2, 4, 1, 5, 0, 6)
    ]
    for spot in spots:
        box = Box(spot[0] - 10, spot[1] - 10, spot[0] + 10, spot[1] + 10)
        if not any(box.meets(each) for each in sheet.taken):
            sheet.balloon(text, spot, [spot])
            return
    sheet.balloon(text, anchor, [each for each in around if 12.0 < each[0] < 708.0])


def _inside(body: Stretch, frame: Frame) -> Iterator[Point]:
    """Places on the cut faces of a body that have room for a number."""
    wide = frame.scale * (body.end - body.start)
    for low, high in _cuts(body):
        if frame.scale * (high - low) >= 2 * _BALLOON and wide >= 2 * _BALLOON:
            for share in (0.5, 0.3, 0.7):
                along = body.start + share * (body.end - body.start)
                yield frame.to(along, 0.5 * (low + high))


def _list(sheet: Sheet, plan: SidePlan, top: float) -> float:
    """What the numbers name, in two columns; returns where the longer one ends."""
    entries = [
        wrapped(f"{index} {_said(item)}", _COLUMN_WIDTH) for index, item in enumerate(plan.items, 1)
    ]
    half = 0.5 * sum(len(entry) for entry in entries)
    ends = [top, top]
    before = 0
    for entry in entries:
        column = 0 if before < half else 1
        x = LINE + column * (_COLUMN_WIDTH + 8.0)
        ends[column] = sheet.lines((x, ends[column]), entry)
        before += len(entry)
    return max(ends)


def _said(item: Item) -> str:
    if item.kind in ("gear", "bearing"):
        return f"{item.words}, at {show(item.stretches[0].middle, 'm')}"
    return item.words


def _thrusts(plan: SidePlan) -> str:
    """The axial thrusts in words."""
    said = []
    for push in plan.pushes:
        way = "propeller" if push.force > 0.0 else "engine"
        force = show(abs(push.force), "N")
        said.append(f"{push.of} {force} towards the {way} at {push.point}")
    return f"Axial thrust: {'; '.join(said) or 'none shown'}."


def _words(plan: SidePlan) -> str:
    said = (f"{_said(item)}." for item in plan.items)
    return " ".join([f"{_SEEN}.", *said, _thrusts(plan), *plan.notes])
