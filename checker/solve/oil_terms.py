"""Heat as a function of the oil temperature: a formula some of whose arguments the oil gives.

The same term gives the number while a balance is sought and the derivation once it is found.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import IntEnum
from typing import Any

from checker.known import Known, Unknown, Value, compute, merged
from checker.mechanics import heat, oil


class Oil(IntEnum):
    """What depends on the oil temperature."""

    TEMPERATURE = 0
    VISCOSITY = 1
    DYNAMIC_VISCOSITY = 2
    DENSITY = 3
    HEAT_CAPACITY = 4


@dataclass(frozen=True, slots=True)
class Loaded:
    """An argument that grows with the power through the drive."""

    known: Known


class Term:
    """A formula and its arguments.

    Attributes:
        formula: a formula of the mechanics that gives a heat or a part of one.
        arguments: values, places for what the oil gives, or further terms.
    """

    __slots__ = ("_fixed", "_inner", "_loaded", "_oil", "arguments", "formula")

    def __init__(
        self, formula: Callable[..., Any], arguments: "tuple[Known | Oil | Loaded | Term, ...]"
    ) -> None:
        self.formula = formula
        self.arguments = arguments
        # Sorted by kind once, as a balance asks for the number many times.
        numbered = tuple(enumerate(arguments))
        self._fixed = [each.value if isinstance(each, Known) else 0.0 for each in arguments]
        self._oil = [(place, each) for place, each in numbered if isinstance(each, Oil)]
        self._loaded = [
            (place, each.known.number) for place, each in numbered if isinstance(each, Loaded)
        ]
        self._inner = [(place, each) for place, each in numbered if isinstance(each, Term)]

    def at(self, state: Mapping[Oil, float], load: float = 1.0) -> float:
        """The number in a state of the oil, with the power through the drive scaled."""
        values = list(self._fixed)
        for place, part in self._oil:
            values[place] = state[part]
        for place, number in self._loaded:
            values[place] = number * load
        for place, inner in self._inner:
            values[place] = inner.at(state, load)
        heat_flow: float = self.formula(*values)
        return heat_flow

    def known(self, state: Mapping[Oil, Known]) -> Value:
        """The value with its derivation, in a state of the oil."""
        values: list[Value] = []
        for each in self.arguments:
            if isinstance(each, Known):
                values.append(each)
            elif isinstance(each, Oil):
                values.append(state[each])
            elif isinstance(each, Loaded):
                values.append(each.known)
            else:
                values.append(each.known(state))
        return compute(self.formula, *values)


def term(formula: Callable[..., Any], *arguments: "Value | Oil | Loaded | Term") -> Term | Unknown:
    """A term, or what is missing for it."""
    missing = [each for each in arguments if isinstance(each, Unknown)]
    if missing:
        return merged(missing)
    return Term(formula, tuple(each for each in arguments if not isinstance(each, Unknown)))


def loaded(value: Value) -> Loaded | Unknown:
    """A value that grows with the power through the drive."""
    return value if isinstance(value, Unknown) else Loaded(value)


@dataclass(frozen=True, slots=True)
class OilProperties:
    """What makes the state of an oil at any temperature."""

    viscosity_40: Known
    viscosity_100: Known
    density_15: Known

    def at(self, temperature: float) -> dict[Oil, float]:
        """The state at a temperature in K."""
        viscosity = oil.viscosity_at(
            temperature, self.viscosity_40.number, self.viscosity_100.number
        )
        density = oil.density(self.density_15.number, temperature)
        return {
            Oil.TEMPERATURE: temperature,
            Oil.VISCOSITY: viscosity,
            Oil.DYNAMIC_VISCOSITY: viscosity * density,
            Oil.DENSITY: density,
            Oil.HEAT_CAPACITY: heat.oil_heat_capacity(self.density_15.number, temperature),
        }

    def known(self, temperature: Known) -> dict[Oil, Known] | Unknown:
        """The state at a temperature, with its derivation."""
        viscosity = compute(oil.viscosity_at, temperature, self.viscosity_40, self.viscosity_100)
        density = compute(oil.density, self.density_15, temperature)
        values = {
            Oil.TEMPERATURE: temperature,
            Oil.VISCOSITY: viscosity,
            Oil.DYNAMIC_VISCOSITY: compute(oil.dynamic_viscosity, viscosity, density),
            Oil.DENSITY: density,
            Oil.HEAT_CAPACITY: compute(heat.oil_heat_capacity, self.density_15, temperature),
        }
        known = {each: value for each, value in values.items() if isinstance(value, Known)}
        if len(known) < len(values):
            return merged([value for value in values.values() if isinstance(value, Unknown)])
        return known
