"""The torque that swings in each joint over speed, beside what it carries and what it bears."""

import math

from checker.known import Unknown
from checker.measures.design import Design
from checker.report.pictures.chart import (
    WIDTH,
    Axis,
    Drawing,
    Point,
    identifier,
    reach,
    shortened,
    thinned,
)
from checker.report.pictures.interference import RPM
from checker.report.pictures.picture import Picture
from checker.spec.units import show
from checker.train.barred_ranges import BarredRanges
from checker.train.torsional_survey import SPEEDS, TorsionalSurvey, runs

_KINDS = ("damper", "clutch", "mesh")
_ACROSS, _DOWN = 364.0, 190.0
_LEFT, _FIELD, _HEIGHT = 54.0, 282.0, 116.0
_NEAR = 2.5
_LIMIT_WORDS = {"peak": "bears at most", "swing": "may swing by"}


def vibratory_torque(design: Design) -> Picture | None:
    """A field for damper, clutch and each mesh: mean and alternating torque, and allowables."""
    survey, barred = design.survey, design.barred
    if isinstance(survey, Unknown) or isinstance(barred, Unknown):
        return None
    joints = [index for index, node in enumerate(survey.model.nodes) if node.kind in _KINDS]
    if not joints:
        return None
    drawing = Drawing(
        identifier("vibratory-torque", design.subjects.ratio_set),
        "Torque that swings in the joints",
    )
    limits = _least_allowed(barred)
    words = [
        f"Torques at each part's own speed, from {survey.idle * RPM:.0f} rpm of the crankshaft."
    ]
    for place, joint in enumerate(joints):
        left, top = _ACROSS * (place % 2) + _LEFT, _DOWN * (place // 2) + 34.0
        own = [(on, each) for (index, on), each in limits.items() if index == joint]
        field = _Field(drawing, survey, joint, own, (left, top))
        with drawing.group(f"joint-{joint}"):
            words.append(field.draw())
    if barred.missing is not None:
        words.append("What some of the joints bear is not shown.")
    drawing.height = _key(drawing, _DOWN * ((len(joints) + 1) // 2) + 16.0)
    return drawing.picture(" ".join(words))


def _least_allowed(barred: BarredRanges) -> dict[tuple[int, str], float]:
    """The least torque allowed in each joint, of its swing and of its peak [N m]."""
    found: dict[tuple[int, str], float] = {}
    for each in barred.limits:
        if each.allowed is None or each.kind == "shaft":
            continue
        for joint in each.nodes:
            key = joint, str(each.on)
            found[key] = min(each.allowed, found.get(key, math.inf))
    return found


class _Field:
    """The field of one joint, in its own torque [N m]."""

    def __init__(
        self,
        drawing: Drawing,
        survey: TorsionalSurvey,
        joint: int,
        limits: list[tuple[str, float]],
        corner: Point,
    ) -> None:
        self.drawing, self.survey, self.joint = drawing, survey, joint
        self.node = survey.model.nodes[joint]
        ratio = self.node.ratio.number
        up, down = survey.worst
        self.mean = [float(each) * ratio for each in survey.carried[joint]]
        self.high = [
            each + float(more) * ratio for each, more in zip(self.mean, up[joint], strict=True)
        ]
        self.low = [
            each + float(less) * ratio for each, less in zip(self.mean, down[joint], strict=True)
        ]
        self.swing = [float(each) * ratio for each in survey.alternating[joint]]
        self.limits = [(kind, limit * ratio) for kind, limit in limits]
        left, top = corner
        self.x = Axis(survey.idle * RPM, survey.top * RPM, left, left + _FIELD)
        shown = [*self.high, *self.low, *self.swing]
        most = max(map(abs, shown))
        self.near = [(kind, each) for kind, each in self.limits if each <= _NEAR * most]
        low, high = reach([*shown, *(each for _, each in self.near)])
        self.y = Axis(low, high, top + _HEIGHT, top)

    def draw(self) -> str:
        """Draw the field; the words that say the same."""
        drawing, x, y = self.drawing, self.x, self.y
        most = show(float(f"{max(self.swing[:SPEEDS]):.3g}"), "N m")
        drawing.text(x.start, y.end - 20.0, shortened(self.node.joint_words, 150.0), bold=True)
        drawing.text(x.end, y.end - 20.0, f"swings by {most} at most", anchor="end")
        reversed_ = self._reversal()
        drawing.upright(y, x.start, x.end, "N m", 5, key=f"y-{self.joint}")
        self._band()
        self._line(self.mean, "mean", "ink", 1.4, "7 4")
        self._line(self.swing, "alternating", "series-2", 2.0)
        for index in self.survey.points.values():
            spot = x.at(float(self.survey.speed[index]) * RPM), y.at(self.swing[index])
            drawing.mark("diamond", *spot, colour="series-2", size=3.2)
        beyond = self._limits()
        drawing.across(x, y.start, "rpm", 4, key=f"x-{self.joint}")
        return " ".join([self._figures(), *beyond, *reversed_])

    def _line(
        self, values: list[float], key: str, colour: str, width: float, dashes: str = ""
    ) -> None:
        points = self._points(values)
        name = f"{key}-{self.joint}"
        self.drawing.path(points, colour=colour, width=width, dashes=dashes, key=name)

    def _points(self, values: list[float]) -> list[Point]:
        pairs = zip(self.survey.speed[:SPEEDS], values[:SPEEDS], strict=True)
        return thinned([(self.x.at(float(speed) * RPM), self.y.at(each)) for speed, each in pairs])

    def _band(self) -> None:
        outline = [*self._points(self.high), *reversed(self._points(self.low))]
        self.drawing.path(
            outline, colour="faint", width=0.7, closed=True, fill="steel", key=f"band-{self.joint}"
        )

    def _limits(self) -> list[str]:
        """Allowables as lines; those far above the field in words."""
        drawing, words = self.drawing, []
        right, top = self.x.end, self.y.end - 6.0
        for kind, limit in self.limits:
            text = f"{_LIMIT_WORDS[kind]} {show(limit, 'N m')}"
            words.append(f"It {text}.")
            if (kind, limit) in self.near:
                y = self.y.at(limit)
                ends = [(self.x.start, y), (right, y)]
                key = f"{kind}-{self.joint}"
                drawing.path(ends, colour="warning", width=1.4, dashes="8 3 2 3", key=key)
                y += -4.0 if kind == "peak" else 13.0
                drawing.text(right - 2.0, y, text, colour="warning", anchor="end", over=True)
            else:
                drawing.text(right, top, f"{text} ↑", colour="warning", anchor="end")
                top -= 13.0
        return words

    def _reversal(self) -> list[str]:
        """Hatched where the torque of teeth or clutch changes its sign."""
        if self.node.kind == "damper" or not self.node.on_path:
            return []
        least = self.survey.least[self.joint, :SPEEDS]
        spans = runs(least < 0.0, self.survey.speed[:SPEEDS])
        if not spans:
            return ["It never changes its sign."]
        hatching = self.drawing.hatching(f"hatching-{self.joint}", "rule")
        words = []
        for low, high in spans:
            start, end = self.x.at(low * RPM), self.x.at(high * RPM)
            self.drawing.box(start, self.y.end, end - start, _HEIGHT, fill=hatching)
            words.append(f"from {low * RPM:.0f} to {high * RPM:.0f} rpm")
        where = self.x.start + 4.0
        self.drawing.text(where, self.y.end + 12.0, "reverses where hatched", over=True)
        return [f"It changes its sign {' and '.join(words)}."]

    def _figures(self) -> str:
        worst = max(range(SPEEDS), key=lambda index: self.swing[index])
        speed = float(self.survey.speed[worst]) * RPM
        mean = show(max(map(abs, self.mean)), "N m")
        words = self.node.joint_words
        swing = show(self.swing[worst], "N m")
        return (
            f"{words[0].upper()}{words[1:]}: swings by {swing} at most, at {speed:.0f} rpm; "
            f"mean up to {mean}."
        )


def _key(drawing: Drawing, y: float) -> float:
    """What lines and fillings mean; the height that is used up."""
    x = _LEFT
    for words, colour, dashes, width in (
        ("mean, along the propeller law", "ink", "7 4", 1.4),
        ("alternating, the worst damper state", "series-2", "", 2.0),
        ("allowable", "warning", "8 3 2 3", 1.4),
    ):
        drawing.path([(x, y - 4.0), (x + 28.0, y - 4.0)], colour=colour, dashes=dashes, width=width)
        drawing.text(x + 34.0, y, words)
        x += 52.0 + 5.4 * len(words)
    y += 18.0
    drawing.box(_LEFT, y - 9.0, 28.0, 9.0, fill="steel")
    drawing.text(_LEFT + 34.0, y, "from lowest to highest over a cycle")
    drawing.mark("diamond", _LEFT + 262.0, y - 4.0, colour="series-2", size=3.2)
    drawing.text(_LEFT + 274.0, y, "alternating at an operation point as stated")
    drawing.text(WIDTH - 4.0, y, "hatched: torque reverses", anchor="end")
    return y + 12.0
