"""Values that remember how they came about.

A measure is a graph of these: the leaves are what the spec states or a sourced assumption, the
inner nodes are formulas. The number and its derivation are made by the same call, so they cannot
differ. What cannot be computed is ``Unknown`` and names the spec fields that would show it.
"""

from collections.abc import Callable, Iterator
from typing import Any

from checker.mechanics.equation import Equation, OutOfRange, equation_of

Path = tuple[str | int, ...]
Plain = float | int | str | bool


class Assumption(str):
    """The source of a value that the spec does not state; the report lists it."""

    __slots__ = ()


class Detail(str):
    """Where words come from that a report prints beside the value they are an input of."""

    __slots__ = ()


class Known:
    """A value with its unit, its symbol and where it comes from.

    Attributes:
        value: SI number, text or truth.
        unit: SI unit of a number, ``"1"`` for a pure one, ``""`` for text and truths.
        symbol: symbol in formulas, or a short name.
        origin: the equation it was computed by, the source of an assumption, or a text that says
            what else it follows from; ``None`` for a value stated in the spec.
        inputs: the values that went in.
        path: the place of a stated value in the spec.
    """

    __slots__ = ("inputs", "origin", "path", "symbol", "unit", "value")

    def __init__(
        self,
        value: Plain,
        unit: str = "",
        symbol: str = "",
        *,
        origin: Equation | str | None = None,
        inputs: tuple["Known", ...] = (),
        path: Path | None = None,
    ) -> None:
        self.value = value
        self.unit = unit
        self.symbol = symbol
        self.origin = origin
        self.inputs = inputs
        self.path = path

    @property
    def number(self) -> float:
        """The value as a number.

        Raises:
            TypeError: it is text or a truth.
        """
        if isinstance(self.value, (str, bool)):
            raise TypeError(f"{self.symbol or 'value'} is not a number: {self.value!r}")
        return self.value

    def named(self, symbol: str) -> "Known":
        """The same value under another symbol."""
        return Known(
            self.value, self.unit, symbol, origin=self.origin, inputs=self.inputs, path=self.path
        )

    def leaves(self) -> Iterator["Known"]:
        """Every value without inputs in this derivation, each once, in order of use."""
        for node in self.chain():
            if not node.inputs:
                yield node

    def chain(self) -> list["Known"]:
        """Every node of the derivation, inputs before what is made of them, each once."""
        reached: set[int] = set()
        done: set[int] = set()
        ordered: list[Known] = []
        waiting = [self]
        while waiting:  # not by recursion: a sum over many operation points is a deep derivation
            node = waiting[-1]
            if id(node) not in reached and node.inputs:
                reached.add(id(node))
                waiting += [inner for inner in node.inputs[::-1] if id(inner) not in done]
                continue
            waiting.pop()
            if id(node) not in done:
                done.add(id(node))
                ordered.append(node)
        return ordered

    def __repr__(self) -> str:
        return f"Known({self.symbol or 'value'} = {self.value!r} {self.unit})"


class Unknown:
    """A value that cannot be shown.

    Attributes:
        missing: paths of the spec fields that would show it.
        because: what stands in the way, where it is not (only) a missing field.
        at_best: the best the value can be, where that much is known: enough to fall short on,
            never enough to meet.
    """

    __slots__ = ("at_best", "because", "missing")

    def __init__(
        self, missing: tuple[Path, ...] = (), because: str = "", at_best: Known | None = None
    ) -> None:
        self.missing = missing
        self.because = because
        self.at_best = at_best

    def __repr__(self) -> str:
        fields = ", ".join(".".join(map(str, path)) for path in self.missing)
        return f"Unknown({fields}{' because ' + self.because if self.because else ''})"


Value = Known | Unknown


def compute(formula: Callable[..., Any], *arguments: Value) -> Value:
    """Apply a formula of the mechanics to values; its equation becomes the derivation.

    An unknown argument makes the result unknown, and all that is missing is named. Where the
    formula has no meaning for the arguments, the result is unknown and says why.
    """
    values = []
    for argument in arguments:
        if isinstance(argument, Unknown):
            return merged([each for each in arguments if isinstance(each, Unknown)])
        values.append(argument.value)
    printed = equation_of(formula)
    try:
        value = formula(*values)
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    return Known(value, printed.unit, printed.symbol, origin=printed, inputs=arguments)  # type: ignore[arg-type]


def merged(unknown: list[Unknown]) -> Unknown:
    """One unknown that names everything the given ones miss."""
    missing = dict.fromkeys(path for each in unknown for path in each.missing)
    reasons = dict.fromkeys(each.because for each in unknown if each.because)
    return Unknown(tuple(missing), "; ".join(reasons))


def all_known(*values: Value) -> Unknown | None:
    """``None`` if every value is known, else one unknown that names all that is missing."""
    unknown = [value for value in values if isinstance(value, Unknown)]
    return merged(unknown) if unknown else None


def assumed(value: Plain, unit: str, symbol: str, source: str) -> Known:
    """A value that the spec does not state, taken from a source and listed as an assumption."""
    return Known(value, unit, symbol, origin=Assumption(source))
