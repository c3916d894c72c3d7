"""What formulas print of themselves: spelled units, matching arguments, sources."""

import importlib
import inspect
import pkgutil

import pytest

import checker.mechanics
from checker.mechanics.equation import _EQUATIONS, equation, equation_of
from checker.spec.units import DIMENSIONS

for module in pkgutil.iter_modules(checker.mechanics.__path__):
    importlib.import_module(f"checker.mechanics.{module.name}")

DERIVED = {"", "1/K", "1/Pa", "1/s", "J/K", "J/kg K", "W/K", "W/m K", "K/s", "N/m2", "kg/m", "√Pa"}
DERIVED |= {"N m2", "rad/N m", "m/N"}
SPELLED = {dimension.si for dimension in DIMENSIONS.values()} | DERIVED
FORMULAS = sorted(_EQUATIONS.items(), key=lambda each: f"{each[0].__module__}.{each[0].__name__}")


@pytest.mark.parametrize(
    ("formula", "printed"), FORMULAS, ids=[f"{f.__module__}.{f.__name__}" for f, _ in FORMULAS]
)
def test_units_are_spelled_one_way(formula, printed):
    units = {printed.unit, *(unit for _, unit in printed.arguments)}
    assert units <= SPELLED


@pytest.mark.parametrize(
    ("formula", "printed"), FORMULAS, ids=[f"{f.__module__}.{f.__name__}" for f, _ in FORMULAS]
)
def test_every_formula_has_text_source_and_docstring(formula, printed):
    assert printed.symbol
    assert printed.text
    assert len(printed.source) > 8
    assert len(inspect.getdoc(formula) or "") > 20


def test_arguments_must_match_the_signature():
    with pytest.raises(TypeError, match="do not match"):

        @equation("y", "y = x", unit="1", source="definition", wrong="x [1]")
        def same(right: float) -> float:
            return right


def test_argument_symbols_and_units_are_split():
    @equation("y", "y = T", unit="N m", source="definition", torque="T₁ [N m]")
    def same(torque: float) -> float:
        return torque

    assert equation_of(same).arguments == (("T₁", "N m"),)
