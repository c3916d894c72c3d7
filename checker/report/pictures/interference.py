"""Orders of excitation against natural frequencies: where the drive resonates."""

import math

from checker.known import Unknown
from checker.measures.design import Design
from checker.report.pictures.chart import (
    TEXT,
    WIDTH,
    Axis,
    Drawing,
    identifier,
    rows_apart,
    shortened,
    text_width,
)
from checker.report.pictures.picture import Picture
from checker.train.barred_ranges import BarredRanges
from checker.train.resonance import COUNTS_ABOVE, Crossing, Resonances, mode_words
from checker.train.torsional_survey import TorsionalSurvey

RPM = 60.0 / math.tau
_LEFT, _RIGHT, _FIELD = 52.0, 634.0, 340.0
_NAMED = 12
_LINE = 16.0


def interference_diagram(design: Design) -> Picture | None:
    """Order lines over crankshaft speed, bands of natural frequency, crossings, barred speeds."""
    resonances, barred = design.resonances, design.barred
    if isinstance(resonances, Unknown) or isinstance(barred, Unknown):
        return None
    name = identifier("interference", design.subjects.ratio_set)
    drawing = Drawing(name, "Orders against natural frequencies")
    return _Diagram(resonances, barred, drawing).picture()


class _Diagram:
    """The diagram in the making, from the operation points above to the crossings below."""

    def __init__(self, resonances: Resonances, barred: BarredRanges, drawing: Drawing) -> None:
        self.resonances = resonances
        self.barred = barred
        self.survey: TorsionalSurvey = resonances.survey
        self.drawing = drawing
        self.crossings = resonances.listed()
        self.orders = sorted({(each.order, each.of_blades) for each in self.crossings})
        within = [each for each in self.crossings if each.speeds[1] >= self.survey.idle]
        below = [each for each in self.crossings if each.speeds[1] < self.survey.idle]
        self.below = below
        strong = self._strong(within)
        self.leading = {(each.order, each.of_blades) for each in (*strong, *self._strong(below))}
        self.numbered = strong[:_NAMED]
        low, high = self.survey.modes[0].frequency, self.survey.modes[-1].frequency
        top = max([each for each, _ in self.orders], default=1.0) * self.survey.top / math.tau * 1.2
        self.bands = [
            (mode, float(low[mode]), float(high[mode]))
            for mode in range(1, len(low))
            if low[mode] <= top
        ]
        bottom = min([each[1] for each in self.bands] + [top / 20.0]) / 1.6
        points = sorted(self.survey.points.items(), key=lambda each: self.survey.speed[each[1]])
        self.points = [(each, float(self.survey.speed[index])) for each, index in points]
        self.x = Axis(0.0, self.survey.top * RPM, _LEFT, _RIGHT)
        self.rows = self._rows()
        start = 30.0 + 14.0 * (max(self.rows, default=0) + 1)
        self.y = Axis(bottom, top, start + _FIELD, start, logarithmic=True)

    def _strong(self, crossings: list[Crossing]) -> list[Crossing]:
        """Those of more than a tenth of the largest, or of the full mean torque; that first."""
        ordered = sorted(crossings, key=lambda each: -each.torque)
        if not ordered:
            return []
        least = COUNTS_ABOVE.number * min(ordered[0].torque, self.survey.excitation.full)
        return [each for each in ordered if each.torque >= least]

    def _rows(self) -> list[int]:
        spans = []
        for name, speed in self.points:
            half = text_width(shortened(name, 90.0)) / 2.0
            middle = self.x.at(speed * RPM)
            spans.append((middle - half, middle + half))
        return rows_apart(spans)

    def picture(self) -> Picture:
        """Draw it."""
        drawing = self.drawing
        with drawing.group("ranges"):
            self._ranges()
        drawing.upright(self.y, _LEFT, _RIGHT, "Hz")
        drawing.across(self.x, self.y.start, "rpm")
        with drawing.group("points"):
            self._points()
        with drawing.group("bands"):
            self._bands()
        with drawing.group("orders"):
            self._orders()
        with drawing.group("crossings"):
            self._crossings()
        drawing.height = self._key(self.y.start + 42.0)
        return drawing.picture(self._words())

    def _ranges(self) -> None:
        drawing, field = self.drawing, self.y.start - self.y.end
        idle = self.x.at(self.survey.idle * RPM)
        drawing.box(_LEFT, self.y.end, idle - _LEFT, field, fill="panel", key="below-idle")
        barred = self.barred.proved
        if not barred:
            return
        hatching = drawing.hatching("hatching", "rule")
        for index, (low, high) in enumerate(barred):
            start, end = (self.x.at(each * RPM) for each in (low, high))
            width = max(end - start, 2.0)
            drawing.box(start, self.y.end, width, field, fill=hatching, key=f"barred-{index}")
            for x in (start, start + width):
                drawing.path([(x, self.y.end), (x, self.y.start)], colour="warning", width=1.0)

    def _points(self) -> None:
        for (name, speed), row in zip(self.points, self.rows, strict=True):
            x = self.x.at(speed * RPM)
            y = self.y.end - 10.0 - 14.0 * row
            foot = [(x, y + 3.0), (x, self.y.start)]
            self.drawing.path(foot, colour="faint", width=1.0, dashes="2 3")
            self.drawing.text(x, y, shortened(name, 90.0), anchor="middle", over=True)

    def _bands(self) -> None:
        drawing = self.drawing
        for mode, low, high in self.bands:
            bottom, top = self.y.at(low), self.y.at(high)
            if bottom - top < 2.0:
                bottom, top = (bottom + top) / 2.0 + 1.0, (bottom + top) / 2.0 - 1.0
            corners = [(_LEFT, bottom), (_RIGHT, bottom), (_RIGHT, top), (_LEFT, top)]
            drawing.path(
                corners, colour="series-1", width=0.8, closed=True, fill="steel", key=f"mode-{mode}"
            )

    def _orders(self) -> None:
        drawing = self.drawing
        for order, of_blades in self.orders:
            slowest = self.y.low * math.tau / order
            steps = [slowest + (self.survey.top - slowest) * (i / 60.0) ** 2 for i in range(61)]
            line = [(self.x.at(w * RPM), self.y.at(order * w / math.tau)) for w in steps]
            leads = (order, of_blades) in self.leading
            drawing.path(
                line,
                colour="ink" if leads else "faint",
                width=1.3 if leads else 0.5,
                dashes="" if leads else "5 3",
                key=f"{'blades' if of_blades else 'order'}-{_order(order)}",
            )
        self._order_names()
        feet = [self.y.at(low) for _, low, _ in self.bands]
        places = []
        for (_, low, high), foot in zip(self.bands, feet, strict=True):
            crowded = any(0.0 < foot - other < 16.0 for other in feet)
            places.append(self.y.at(low) + 13.0 if crowded else self.y.at(high) - 5.0)
        columns = rows_apart([(-y, 11.0 - y) for y in places], gap=2.0)
        for (mode, low, high), y, column in zip(self.bands, places, columns, strict=True):
            text = f"mode {mode}: {_span(low, high, 'Hz')}"
            drawing.text(_LEFT + 4.0 + 150.0 * column, y, text, over=True)

    def _order_names(self) -> None:
        """The orders that lead, beside the ends of their lines, moved down where they touch."""
        y = 0.0
        for order, of_blades in sorted(self.leading, reverse=True):
            y = max(y + TEXT, self.y.at(order * self.survey.top / math.tau) + 4.0)
            words = f"blades {order:.3g}" if of_blades else f"order {order:g}"
            self.drawing.text(_RIGHT + 6.0, y, words, size=TEXT)

    def _crossings(self) -> None:
        drawing = self.drawing
        for each in self.crossings:
            middle = sum(each.speeds) / 2.0
            x = self.x.at(middle * RPM)
            y = self.y.at(each.order * middle / math.tau)
            ends = [(self.x.at(w * RPM), self.y.at(each.order * w / math.tau)) for w in each.speeds]
            drawing.path(ends, colour="series-2", width=4.0)
            if each in self.numbered:
                drawing.mark("disc", x, y, colour="series-2", size=8.0)
                number = str(self.numbered.index(each) + 1)
                drawing.text(x, y + 4.0, number, colour="ground", anchor="middle", bold=True)
            else:
                drawing.mark("ring", x, y, colour="series-2", size=3.0)

    def _key(self, y: float) -> float:
        """What the marks mean, line by line; the height that is used up."""
        drawing = self.drawing
        for index, each in enumerate(self.numbered, 1):
            drawing.mark("disc", _LEFT + 4.0, y - 4.0, colour="series-2", size=7.0)
            drawing.text(_LEFT + 4.0, y, str(index), colour="ground", anchor="middle", bold=True)
            words = self.resonances.crossing_words(each)
            drawing.text(_LEFT + 18.0, y, shortened(words, WIDTH - _LEFT - 18.0))
            y += _LINE
        if self.below:
            drawing.mark("ring", _LEFT + 4.0, y - 4.0, colour="series-2", size=3.0)
            worst = self.resonances.crossing_words(max(self.below, key=lambda each: each.torque))
            words = f"{len(self.below)} below idle, the largest: {worst}"
            drawing.text(_LEFT + 18.0, y, shortened(words, WIDTH - _LEFT - 18.0))
            y += _LINE
        lines = self._ranges_words()
        weak = len(self.orders) - len(self.leading)
        if weak:
            lines.append(
                f"Thin broken lines: {weak} orders that nowhere reach a tenth of the largest "
                "torque, above idle or below."
            )
        if len(self.survey.model.states) > 1:
            lines.append("Bands reach from the hot, soft damper to the cold, stiff one.")
        for line in lines:
            drawing.text(_LEFT, y, shortened(line, WIDTH - _LEFT))
            y += _LINE
        return y

    def _ranges_words(self) -> list[str]:
        barred = self.barred.proved
        missing = self.barred.missing is not None
        more = ["More may be barred: an allowable torque is missing."] if missing else []
        if not barred:
            return more or ["No speed between idle and the top is barred."]
        spans = ", ".join(_span(low * RPM, high * RPM, "rpm") for low, high in barred)
        return [f"Hatched: barred, {spans}", *more]

    def _words(self) -> str:
        survey = self.survey
        said = [
            f"Crankshaft speeds from idle, {survey.idle * RPM:.0f} rpm, "
            f"to {survey.top * RPM:.0f} rpm."
        ]
        for mode, low, high in self.bands:
            modes = survey.modes[survey.model.running]
            words = mode_words(survey.model, modes, mode)
            said.append(f"Mode {mode} at {_span(low, high, 'Hz')}: {words}.")
        said += [f"{self.resonances.crossing_words(each)}." for each in self._by_speed()]
        said += [f"{name} at {speed * RPM:.0f} rpm." for name, speed in self.points]
        return " ".join([*said, *(f"{each.rstrip('.')}." for each in self._ranges_words())])

    def _by_speed(self) -> list[Crossing]:
        return sorted(self.crossings, key=lambda each: each.speeds)


def _span(low: float, high: float, unit: str) -> str:
    """Two ends as they are read, one where they look alike."""
    digits = 1 if unit == "Hz" and high < 1000.0 else 0
    first, last = f"{low:.{digits}f}", f"{high:.{digits}f}"
    return f"{first} {unit}" if first == last else f"{first} to {last} {unit}"


def _order(order: float) -> str:
    return f"{order:g}".replace(".", "-")
