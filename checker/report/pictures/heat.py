"""Where heat comes into the oil and where it leaves, and how hot the oil gets."""

from collections.abc import Iterable

from checker.known import Known, Unknown
from checker.measures import flows
from checker.measures.design import Design
from checker.report.pictures.chart import WIDTH, Axis, Drawing, identifier, shortened, tick_text
from checker.report.pictures.picture import Picture
from checker.spec.subject import Subject
from checker.spec.units import show

_LEFT, _WARMTH, _RIGHT = 70.0, 582.0, 704.0
_TOP, _ROW = 62.0, 36.0
_GEARS = "gears in oil and air"
_KINDS = {"meshes": "meshes", "bearings": "bearings", "seals": "seals"}
_ZERO = 273.15

Sums = dict[str, float]


def heat_balance(design: Design) -> Picture | None:
    """A row for each operation point: heat in, heat out, and the oil against what it bears."""
    balances = [(point, flows.heat_balance(design, point)) for point in design.points]
    known = [(point, each) for point, each in balances if not isinstance(each, Unknown)]
    if not known:
        return None
    return _Balance(design, known).picture()


def _summed(heats: Iterable[flows.Heat]) -> Sums:
    """Heat by kind of part; what is alone of its kind under its own name."""
    sums: Sums = {}
    for each in heats:
        kind = _KINDS.get(each.name.partition(".")[0], each.name)
        if each.name.endswith((" churning", " windage")):
            kind = _GEARS
        sums[kind] = sums.get(kind, 0.0) + each.watts
    return sums


class _Balance:
    """The picture in the making: bars of one scale in columns, temperatures at the right."""

    def __init__(self, design: Design, known: list[tuple[Subject, flows.HeatBalance]]) -> None:
        name = identifier("heat-balance", design.subjects.ratio_set)
        self.drawing = Drawing(name, "Heat into the oil and out of it on the hot day")
        self.points = [shortened(point.name, _LEFT - 8.0) for point, _ in known]
        self.sources = [_summed(each.sources) for _, each in known]
        self.sinks = [_summed(each.sinks) for _, each in known]
        self.oil = [each.oil_temperature - _ZERO for _, each in known]
        limit = design.measure("oil_temperature_limit", design.subjects.the("lubrication"))
        self.limit = limit.number - _ZERO if isinstance(limit, Known) else None
        self.bottom = _TOP + _ROW * len(known)

    def picture(self) -> Picture:
        """Draw it."""
        drawing = self.drawing
        into, out = (
            list(dict.fromkeys(kind for each in sums for kind in each))
            for sums in (self.sources, self.sinks)
        )
        width = (_WARMTH - 24.0 - _LEFT) / (len(into) + len(out))
        most = max(abs(each) for sums in (*self.sources, *self.sinks) for each in sums.values())
        scale = (width - 10.0) / (most or 1.0)
        for row, name in enumerate(self.points):
            y = _TOP + _ROW * row
            drawing.path([(0.0, y), (WIDTH, y)], colour="rule", width=0.7)
            drawing.text(2.0, y + 22.0, name)
        self._columns("into", into, self.sources, _LEFT, width, scale)
        self._columns("out", out, self.sinks, _LEFT + width * len(into), width, scale)
        self._temperatures()
        drawing.text(_LEFT, 14.0, "Into the oil, W", bold=True)
        drawing.text(_LEFT + width * len(into), 14.0, "Out of it, W (−: into it)", bold=True)
        drawing.text(_WARMTH, 14.0, "The oil, °C", bold=True)
        drawing.height = self.bottom + 26.0
        return drawing.picture(self._words())

    def _columns(
        self, key: str, kinds: list[str], rows: list[Sums], left: float, width: float, scale: float
    ) -> None:
        drawing = self.drawing
        for column, kind in enumerate(kinds):
            x = left + width * column
            for line, word in enumerate(_lines(kind)):
                drawing.text(x, 30.0 + 12.0 * line, shortened(word, width), colour="faint")
            drawing.path([(x, _TOP), (x, self.bottom)], colour="rule", width=1.0)
            for row, sums in enumerate(rows):
                watts = sums.get(kind)
                if watts is None:
                    continue
                y = _TOP + _ROW * row
                drawing.text(x + 3.0, y + 15.0, tick_text(round(watts)))
                bar = (x, y + 20.0, abs(watts) * scale, 9.0)
                colour = "series-1" if key == "out" else "series-2"
                name = f"{key}-{column}-{row}"
                if watts >= 0.0:
                    drawing.box(*bar, fill=colour, key=name)
                else:
                    right, low = x + bar[2], bar[1] + bar[3]
                    corners = [(x, bar[1]), (right, bar[1]), (right, low), (x, low)]
                    drawing.path(corners, colour=colour, width=1.0, closed=True, key=name)

    def _temperatures(self) -> None:
        drawing = self.drawing
        ends = [*self.oil, *([self.limit] if self.limit is not None else [])]
        axis = Axis(min(ends) - 12.0, max(ends) + 12.0, _WARMTH, _RIGHT)
        drawing.across(axis, self.bottom, "", 4)
        if self.limit is not None:
            x = axis.at(self.limit)
            foot = [(x, _TOP - 12.0), (x, self.bottom)]
            drawing.path(foot, colour="warning", width=1.5, dashes="8 3 2 3", key="limit")
            text = f"bears {tick_text(round(self.limit, 1))}"
            drawing.text(x, _TOP - 16.0, text, colour="warning", anchor="middle")
        for row, oil in enumerate(self.oil):
            x, y = axis.at(oil), _TOP + _ROW * (row + 0.5)
            over = self.limit is not None and oil > self.limit
            shape, colour = ("triangle", "warning") if over else ("disc", "ink")
            drawing.path([(axis.start, y), (x, y)], colour="faint", width=1.0)
            with drawing.group(f"oil-{row}"):
                drawing.mark(shape, x, y, colour=colour)
            drawing.text(x, y - 8.0, tick_text(round(oil, 1)), anchor="middle", over=True)

    def _words(self) -> str:
        said = []
        for name, into, out, oil in zip(
            self.points, self.sources, self.sinks, self.oil, strict=True
        ):
            said.append(
                f"{name}: oil at {show(oil + _ZERO, 'K')}; in {_listed(into)}; out {_listed(out)}."
            )
        if self.limit is not None:
            said.append(f"The oil and all it wets bear {show(self.limit + _ZERO, 'K')}.")
        return " ".join(said)


def _lines(kind: str) -> tuple[str, ...]:
    """A heading on two lines where it has several words."""
    first, _, rest = kind.partition(" ")
    if kind == _GEARS:
        return "gears in", "oil, air"
    return (first, rest) if rest else (first,)


def _listed(sums: Sums) -> str:
    return ", ".join(f"{kind} {each:.0f} W" for kind, each in sums.items())
