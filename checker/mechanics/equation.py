"""What a formula says of itself, so that a derivation shows what was really computed."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

Formula = TypeVar("Formula", bound=Callable[..., Any])


class OutOfRange(ValueError):
    """The arguments lie where the formula has no meaning.

    The message names the quantity in words and units that a builder uses.
    """


@dataclass(frozen=True, slots=True)
class Equation:
    """The printed side of a formula: result, text, source and the symbol of each argument.

    Attributes:
        symbol: symbol of the result, as the standard writes it.
        text: the formula in those symbols.
        unit: SI unit of the result (``"1"`` for a pure number).
        source: standard or handbook, edition and clause; "from memory" where no text was read.
        arguments: symbol and SI unit of each argument, in the order of the signature.
    """

    symbol: str
    text: str
    unit: str
    source: str
    arguments: tuple[tuple[str, str], ...]


_EQUATIONS: dict[Callable[..., Any], Equation] = {}


def equation(
    symbol: str, text: str, *, unit: str, source: str, **arguments: str
) -> Callable[[Formula], Formula]:
    """Attach the printed form to a formula function.

    ``arguments`` gives ``name="symbol [unit]"`` for each parameter, in the order of the signature.
    """
    names = tuple(arguments)
    spelled = tuple(_symbol_and_unit(text_) for text_ in arguments.values())

    def attach(formula: Formula) -> Formula:
        code = formula.__code__
        if code.co_varnames[: code.co_argcount] != names:
            raise TypeError(f"{formula.__name__}: arguments {names} do not match its signature")
        _EQUATIONS[formula] = Equation(symbol, text, unit, source, spelled)
        return formula

    return attach


def equation_of(formula: Callable[..., Any]) -> Equation:
    """Return the printed form of a formula.

    Raises:
        KeyError: the function carries no equation.
    """
    return _EQUATIONS[formula]


def _symbol_and_unit(text: str) -> tuple[str, str]:
    symbol, _, unit = text.partition(" [")
    return symbol, unit.removesuffix("]")
