"""Values that remember how they came about."""

import pytest

from checker.known import Known, Unknown, assumed, compute
from checker.mechanics import kinematics
from checker.mechanics.equation import OutOfRange, equation

SPEED = Known(100.0, "rad/s", "ω", path=("operation", 0, "engine_speed"))
Z1 = Known(20, "1", "z₁", path=("gears", "a", "teeth"))
Z2 = Known(40, "1", "z₂", path=("gears", "b", "teeth"))


def test_a_computed_value_keeps_formula_and_inputs():
    speed = compute(kinematics.driven_speed, SPEED, Z1, Z2)
    assert speed.value == 50.0
    assert speed.origin.text == "ω₂ = ω₁ z₁ / z₂"
    assert speed.inputs == (SPEED, Z1, Z2)
    assert [leaf.path for leaf in speed.leaves()] == [SPEED.path, Z1.path, Z2.path]


def test_everything_missing_is_named_once():
    missing = Unknown((("gears", "a", "teeth"),), "it was not measured")
    result = compute(kinematics.driven_speed, SPEED, missing, missing)
    assert result.missing == (("gears", "a", "teeth"),)
    assert result.because == "it was not measured"


def test_a_formula_without_meaning_gives_its_reason():
    result = compute(kinematics.reduced_speed, SPEED, Known(0.0, "1", "i"))
    assert isinstance(result, Unknown)
    assert "not above zero" in result.because


def test_a_fault_of_ours_is_not_hidden():
    @equation("y", "y = 1 / x", unit="1", source="definition", right="x [1]")
    def inverse(right: float) -> float:
        return 1 / right

    with pytest.raises(ZeroDivisionError):
        compute(inverse, Known(0.0, "1", "x"))


def test_out_of_range_is_a_value_error():
    assert issubclass(OutOfRange, ValueError)


def test_the_chain_holds_each_value_once_inputs_first():
    one = compute(kinematics.driven_speed, SPEED, Z1, Z2)
    two = compute(kinematics.speed_ratio, SPEED, one)
    assert two.chain() == [SPEED, Z1, Z2, one, two]


def test_a_chain_may_be_longer_than_the_stack_is_deep():
    total = Known(0.0, "1", "q")
    for _ in range(5000):
        total = compute(kinematics.sum_of_shares, total, Known(0.1, "1", "q"))
    chain = total.chain()
    assert len(chain) == 10_001
    numbers = {id(node): number for number, node in enumerate(chain)}
    assert all(numbers[id(inner)] < numbers[id(node)] for node in chain for inner in node.inputs)
    assert len(list(total.leaves())) == 5001


def test_a_new_name_keeps_the_origin():
    named = Z1.named("z")
    assert (named.symbol, named.path, named.value) == ("z", Z1.path, 20)


def test_text_is_not_a_number():
    with pytest.raises(TypeError, match="rotation is not a number"):
        _ = Known("clockwise", "", "rotation").number


def test_an_assumption_names_its_source():
    assert assumed(0.1, "1", "μ", "handbook, table 3").origin == "handbook, table 3"
