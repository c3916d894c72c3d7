"""The ways of the oil as a graph: places in layers, each behind what feeds it."""

from collections.abc import Iterator

from checker.measures.flows import OilWay
from checker.report.pictures.chart import WIDTH, Drawing, Point, shortened
from checker.spec.units import show

_BOX, _PITCH, _LINE, _GAP = 210.0, 300.0, 13.0, 7.0
_DASHES = {True: "", False: "6 4", None: "1.5 3"}

Ways = tuple[OilWay, ...]


def way_words(way: OilWay) -> str:
    """How a way brings oil, how much, and whether it does."""
    flow = f", {show(way.flow, 'm3/s')}" if way.flow is not None else ""
    runs = {True: "", False: ", no oil here", None: ", not shown to run"}[way.runs]
    return f"{way.kind}{flow}{runs}"


def draw_ways(drawing: Drawing, ways: Ways, top: float) -> float:
    """Draw places and the ways between them; the height that is used up."""
    drawing.text(2.0, top + 10.0, "Oil, from left to right", bold=True)
    layers = _layers(ways)
    pitch = min(_PITCH, WIDTH / (max(layers.values()) + 0.8))
    width = min(_BOX, 0.8 * pitch)
    rows = dict(_rows(ways, layers, top + 24.0))
    corners = {name: (pitch * layers[name], y) for name, y in rows.items()}
    sources = list(dict.fromkeys(way.source for way in ways))
    with drawing.group("ways"):
        for way in ways:
            x1, y1 = corners[way.source]
            x2, y2 = corners[way.to]
            middle = x2 - 9.0 - 5.0 * (sources.index(way.source) % 5)
            line = [
                (x1 + width, y1 + 14.0),
                (middle, y1 + 14.0),
                (middle, y2 + 14.0),
                (x2, y2 + 14.0),
            ]
            drawing.path(line, colour="faint", width=1.3, dashes=_DASHES[way.runs])
    with drawing.group("places"):
        for name, corner in corners.items():
            _place(drawing, name, corner, width, [way for way in ways if way.to == name])
    bottom = max(y + _height(name, ways) for name, y in rows.items()) + 16.0
    words = "Broken lines: no oil at this point. Dotted lines: not shown to run."
    drawing.text(2.0, bottom, words, colour="faint")
    return bottom + 8.0


def _place(
    drawing: Drawing, name: str, corner: Point, width: float, entering: list[OilWay]
) -> None:
    """A place, with what each way brings to it."""
    x, y = corner
    drawing.box(x, y, width, 16.0 + _LINE * len(entering) + 5.0, fill="panel")
    drawing.box(x, y, 3.0, 16.0 + _LINE * len(entering) + 5.0, fill="oil")
    drawing.text(x + 9.0, y + 14.0, shortened(name, width - 12.0), bold=True)
    for line, way in enumerate(entering, 1):
        source = f"{way.source}: " if len(entering) > 1 else ""
        text = shortened(f"{source}{way_words(way)}", width - 10.0)
        drawing.text(x + 9.0, y + 14.0 + _LINE * line, text)


def _height(name: str, ways: Ways) -> float:
    return 21.0 + _LINE * sum(way.to == name for way in ways)


def _layers(ways: Ways) -> dict[str, int]:
    """The layer of each place: one behind the farthest that feeds it, and is not fed by it."""
    layers = {name: 0 for way in ways for name in (way.source, way.to)}
    forward = [way for way in ways if not _feeds(ways, way.to, way.source)]
    for _ in layers:
        for way in forward:
            layers[way.to] = max(layers[way.to], layers[way.source] + 1)
    return layers


def _feeds(ways: Ways, source: str, sink: str) -> bool:
    """Whether oil gets from one place to another."""
    reached, waiting = {source}, [source]
    while waiting:
        here = waiting.pop()
        fed = {way.to for way in ways if way.source == here} - reached
        reached |= fed
        waiting += sorted(fed)
    return sink in reached


def _rows(ways: Ways, layers: dict[str, int], top: float) -> Iterator[tuple[str, float]]:
    """The height of each place: beside the first that it feeds, below all that came before."""
    feeder: dict[str, str] = {}
    for way in ways:
        if layers[way.source] < layers[way.to]:
            feeder.setdefault(way.to, way.source)
    waiting = [name for name in layers if name not in feeder][::-1]
    bottoms = dict.fromkeys(layers.values(), top)
    y = top
    while waiting:
        name = waiting.pop()
        y = max(y, bottoms[layers[name]])
        yield name, y
        below = y + _height(name, ways) + _GAP
        bottoms[layers[name]] = below
        fed = [each for each in layers if feeder.get(each) == name]
        waiting += fed[::-1]
        y = y if fed else below
