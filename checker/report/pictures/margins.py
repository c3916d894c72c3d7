"""Every judgement of a review in one picture: how far inside or outside its limit."""

from collections.abc import Callable, Sequence
from itertools import groupby

from checker.report import words
from checker.report.pictures.chart import (
    WIDTH,
    Axis,
    Drawing,
    reach,
    rows_apart,
    shortened,
    tick_text,
)
from checker.report.pictures.picture import Picture
from checker.review.finding import Finding
from checker.review.review import Review

_SHAPES = {"warning": "triangle", "caution": "square", "advisory": "disc"}
_COLUMNS = ((112.0, "meets"), (150.0, "falls short"), (204.0, "not shown"))
_EDGE, _LEFT, _RIGHT, _SAID = 2.0, 222.0, 474.0, 486.0
_ROW = 21.0
_LANES = (0.0, -5.5, 5.5)
_TICKS = (-4.0, -1.0, -0.3, 0.0, 0.3, 1.0, 4.0)
_KELVIN = ("K", "ΔK")

Scale = Callable[[float], float]


def margins(review: Review) -> Picture | None:
    """A row for each family of rules, a mark for each judgement with a margin."""
    found = [each for each in review.findings if each.outcome != "does not apply"]
    if not found:
        return None
    drawing = Drawing("margins", "How far each judgement is from its limit")
    order = list(dict.fromkeys(rule.family for rule in review.book.rules))
    found.sort(key=lambda each: order.index(each.rule.family))
    relative = [each for each in found if words.margin_is_relative(each)]
    kelvin = [each for each in found if _in_kelvin(each)]
    y = _relative(drawing, found, relative)
    if kelvin:
        y = _by_kelvin(drawing, kelvin, y + 44.0)
    drawing.height = _key(drawing, y + 46.0, len(found) - len(relative) - len(kelvin))
    return drawing.picture(_words(found, relative, kelvin))


def _in_kelvin(finding: Finding) -> bool:
    limit = finding.limit
    return limit is not None and finding.margin is not None and limit.unit in _KELVIN


def _relative(drawing: Drawing, found: list[Finding], relative: list[Finding]) -> float:
    """The rows of relative margins with the counts of all outcomes; the height used up."""
    for x, title in _COLUMNS:
        for line, word in enumerate(title.split(" ")):
            y = 14.0 + 12.0 * (line + (" " not in title))
            drawing.text(x, y, word, colour="faint", anchor="end")
    drawing.text(_SAID, 26.0, "nearest to or farthest beyond its limit", colour="faint")
    places = [_squeezed(each.margin or 0.0) for each in relative]
    axis = Axis(min([-0.2, *(each - 0.04 for each in places)]), 1.0, _LEFT, _RIGHT)
    rows = [(family, list(each)) for family, each in groupby(found, lambda one: one.rule.family)]
    bottom = 36.0 + _ROW * len(rows)
    drawing.text(axis.at(0.0), 26.0, "limit", anchor="middle", bold=True)
    ticks = [each for each in _TICKS if axis.low <= _squeezed(each)]
    with drawing.group("relative"):
        for tick in ticks:
            x = axis.at(_squeezed(tick))
            bold = tick == 0.0
            drawing.path(
                [(x, 32.0), (x, bottom)],
                colour="ink" if bold else "rule",
                width=1.4 if bold else 0.7,
            )
            drawing.text(x, bottom + 15.0, tick_text(100.0 * tick), colour="faint", anchor="middle")
        drawing.text(_SAID, bottom + 15.0, "% of the limit", colour="faint")
        for index, (family, judged) in enumerate(rows):
            y = 36.0 + _ROW * (index + 0.5)
            _counts(drawing, family, judged, y + 4.0)
            shown = [each for each in judged if words.margin_is_relative(each)]
            _marks(drawing, shown, lambda each: axis.at(_squeezed(each)), y)
    return bottom


def _squeezed(margin: float) -> float:
    """A margin on a scale on which even what is boundless has a place: m / (1 + |m|)."""
    return margin / (1.0 + abs(margin))


def _counts(drawing: Drawing, family: str, judged: list[Finding], y: float) -> None:
    drawing.text(_EDGE, y, shortened(family, 84.0))
    for x, outcome in _COLUMNS:
        count = sum(each.outcome == outcome for each in judged)
        if count:
            bold = outcome == "falls short"
            drawing.text(
                x, y, str(count), anchor="end", bold=bold, colour="ink" if bold else "faint"
            )


def _by_kelvin(drawing: Drawing, kelvin: list[Finding], top: float) -> float:
    """The rows of margins in kelvin; the height used up."""
    axis = Axis(*reach([each.margin or 0.0 for each in kelvin]), _LEFT, _RIGHT)
    rows = [(family, list(each)) for family, each in groupby(kelvin, lambda one: one.rule.family)]
    bottom = top + _ROW * len(rows)
    drawing.text(_EDGE, top - 6.0, "Temperatures, in kelvin", bold=True)
    with drawing.group("kelvin"):
        for tick in axis.ticks(6):
            x, bold = axis.at(tick), tick == 0.0
            colour, width = ("ink", 1.4) if bold else ("rule", 0.7)
            drawing.path([(x, top - 2.0), (x, bottom)], colour=colour, width=width)
            drawing.text(x, bottom + 15.0, tick_text(tick), colour="faint", anchor="middle")
        drawing.text(_SAID, bottom + 15.0, "K to the limit", colour="faint")
        for index, (family, judged) in enumerate(rows):
            y = top + _ROW * (index + 0.5)
            drawing.text(_EDGE, y + 4.0, shortened(family, 84.0))
            _marks(drawing, judged, axis.at, y)
    return bottom


def _marks(drawing: Drawing, judged: Sequence[Finding], at: Scale, y: float) -> None:
    """Marks of a row, those that fall short on top, and the worst of them in words."""
    ordered = sorted(judged, key=lambda each: each.margin or 0.0)
    places = [at(each.margin or 0.0) for each in ordered]
    lanes = rows_apart([(x - 3.0, x + 3.0) for x in places], gap=0.0)
    for finding, x, lane in reversed(list(zip(ordered, places, lanes, strict=True))):
        _mark(drawing, finding, x, y + _LANES[lane % len(_LANES)])
    if ordered:
        worst = ordered[0]
        text = f"{words.margin_text(worst)}: {words.part_text(worst)}"
        bold = worst.outcome == "falls short"
        drawing.text(_SAID, y + 4.0, shortened(text, WIDTH - _SAID), bold=bold)


def _mark(drawing: Drawing, finding: Finding, x: float, y: float) -> None:
    if finding.outcome == "deviation":
        drawing.mark("cross", x, y, colour="faint", size=3.0)
    elif finding.outcome == "falls short" and finding.level is not None:
        drawing.mark(_SHAPES[finding.level], x, y, colour=finding.level, size=4.0)
    else:
        drawing.mark("ring", x, y, colour="meets", size=2.4)


def _key(drawing: Drawing, y: float, without: int) -> float:
    """What the marks mean; the height that is used up."""
    x = 4.0
    for shape, colour, text in (
        ("triangle", "warning", "warning"),
        ("square", "caution", "caution"),
        ("disc", "advisory", "advisory"),
        ("ring", "meets", "meets its rule"),
        ("cross", "faint", "accepted deviation"),
    ):
        drawing.mark(shape, x, y - 4.0, colour=colour, size=2.4 if shape == "ring" else 4.0)
        drawing.text(x + 10.0, y, text)
        x += 32.0 + 5.6 * len(text)
    text = f"{words.counted(without, 'judgement')} with no such margin: in words, or not shown"
    drawing.text(_EDGE, y + 18.0, text, colour="faint")
    return y + 30.0


def _words(found: list[Finding], relative: list[Finding], kelvin: list[Finding]) -> str:
    said = [
        f"{words.counted(len(found), 'judgement')}, {len(relative)} with a relative margin, "
        f"{len(kelvin)} with one in kelvin."
    ]
    for family, each in groupby(found, lambda one: one.rule.family):
        judged = list(each)
        counts = ", ".join(
            f"{sum(one.outcome == outcome for one in judged)} {outcome}" for _, outcome in _COLUMNS
        )
        with_margin = [one for one in judged if one in relative or one in kelvin]
        line = f"{family}: {counts}"
        if with_margin:
            worst = min(with_margin, key=lambda one: one.margin or 0.0)
            line += f"; least in {words.part_text(worst)}, {words.margin_text(worst)}"
        said.append(f"{line}.")
    return " ".join(said)
