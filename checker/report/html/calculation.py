"""Every step of every calculation of a page, each once and numbered, so that numbers link to it."""

from dataclasses import dataclass

from checker.known import Assumption, Known, Path, Unknown, Value
from checker.mechanics.equation import Equation
from checker.report import words
from checker.report.html.lines import line_link
from checker.spec.document import Document

_Key = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A value as it is shown, with a link to where it comes from.

    Attributes:
        text: the value in words.
        href: its step, or its line of the spec; empty where there is neither.
    """

    text: str
    href: str = ""


@dataclass(frozen=True, slots=True)
class Input:
    """A value that goes into a step.

    Attributes:
        symbol: under which the formula takes it.
        text: the value in words.
        href: its step, or its line of the spec.
        where: that step or line in words.
    """

    symbol: str
    text: str
    href: str
    where: str


@dataclass(frozen=True, slots=True)
class Step:
    """A step of a calculation.

    Attributes:
        number: by which the page knows it.
        symbol: of the result.
        result: the value in words.
        formula: empty where it follows from no equation.
        source: of the formula or of the value.
        inputs: what goes in.
        line: where the spec states it, 0 if it does not.
        assumed: whether the value is an assumption.
        answers: the measures of parts that it is the value of.
    """

    number: int
    symbol: str
    result: str
    formula: str
    source: str
    inputs: tuple[Input, ...]
    line: int
    assumed: bool
    answers: list[str]


class Calculations:
    """Numbers the steps as they are asked for; what says the same is one step.

    A value that the spec states is no step: it links to its line.
    """

    def __init__(self, document: Document) -> None:
        self._document = document
        self._numbers: dict[int, int] = {}  # of a value, by identity; 0 for a stated one
        self._alike: dict[_Key, int] = {}
        self._lines: dict[Path, int] = {}
        self._kept: list[Known] = []  # an identity is good only for as long as its value lives
        self.steps: list[Step] = []

    def figure(self, value: Value, answers: str = "") -> Figure:
        """A value as it is shown.

        Args:
            value: the value; a dash stands for an unknown one.
            answers: the measure of a part that it is the value of, to stand with its step.
        """
        if isinstance(value, Unknown):
            return Figure("–")
        number = self._number(value)
        if answers and number and answers not in self.steps[number - 1].answers:
            self.steps[number - 1].answers.append(answers)
        return Figure(words.value_text(value), self._href(value, number))

    def href(self, value: Known, answers: str = "") -> str:
        """Where a value comes from, as a link."""
        return self.figure(value, answers).href

    def place_href(self, path: Path) -> str:
        """The line of the spec at which a path stands, as a link."""
        return line_link(self._line(path))

    def _number(self, value: Known) -> int:
        """The step of a value, after all the steps that lead to it; 0 for a stated value."""
        if id(value) not in self._numbers:
            self._kept.append(value)
            for known in value.chain():
                if id(known) not in self._numbers:
                    self._numbers[id(known)] = self._step(known)
        return self._numbers[id(value)]

    def _step(self, known: Known) -> int:
        if known.path is not None and not known.inputs and known.origin is None:
            return 0
        key = (
            known.symbol,
            repr(known.value),
            known.unit,
            known.path,
            known.origin,
            *(
                (self._numbers[id(each)], each.symbol, repr(each.value), each.path)
                for each in known.inputs
            ),
        )
        if key not in self._alike:
            self._alike[key] = len(self.steps) + 1
            self.steps.append(self._written(known, len(self.steps) + 1))
        return self._alike[key]

    def _written(self, known: Known, number: int) -> Step:
        origin = known.origin
        symbols = [each.symbol for each in known.inputs]
        formula, source = "", words.prose(origin) if isinstance(origin, str) else ""
        if isinstance(origin, Equation):
            formula, source = origin.text, words.prose(origin.source)
            if len(origin.arguments) == len(symbols):
                symbols = [symbol for symbol, _ in origin.arguments]
        return Step(
            number,
            known.symbol or "value",
            words.value_text(known),
            formula,
            source,
            tuple(
                self._input(each, symbol)
                for each, symbol in zip(known.inputs, symbols, strict=True)
            ),
            self._line(known.path) if known.path is not None else 0,
            isinstance(origin, Assumption),
            [],
        )

    def _input(self, known: Known, symbol: str) -> Input:
        number = self._numbers[id(known)]
        there = f", there {known.symbol}" if known.symbol not in ("", symbol) else ""
        where = f"step {number}{there}" if number else f"line {self._line(known.path or ())}"
        return Input(symbol, words.value_text(known), self._href(known, number), where)

    def _href(self, known: Known, number: int) -> str:
        return f"#s{number}" if number else self.place_href(known.path or ())

    def _line(self, path: Path) -> int:
        if path not in self._lines:
            self._lines[path] = self._document.place(path).line
        return self._lines[path]
