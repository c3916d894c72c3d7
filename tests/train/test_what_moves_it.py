"""What moves a resonance: each change is held against the drive built anew with it."""

import math

import pytest

from checker.train.resonance import Resonances
from tests.train.test_torsional_survey import RPM, STIFF, ask, design

BASE = {
    "damper.dynamic_stiffness": "7000 N m/rad",
    "shafts.in.inertia": "0.06 kg m2",
    "shafts.out.torsional_stiffness": STIFF,
    "operation.0": {"name": "cruise", "engine_speed": "3700 rpm", "power": "14 kW"},
}
FIELDS = {
    "damper stiffness": ("damper.dynamic_stiffness", 7000.0, "N m/rad"),
    "engine inertia": ("engine.inertia", 0.12, "kg m2"),
    "flywheel inertia (shaft in)": ("shafts.in.inertia", 0.06, "kg m2"),
    "propeller inertia": ("propeller.inertia", 0.65, "kg m2"),
}


def rebuilt(words, factor):
    """The drive with one thing changed in its spec."""
    if words == "speed":
        power = 14.0 * factor**3
        point = {"name": "cruise", "engine_speed": f"{3700 * factor!r} rpm", "power": f"{power} kW"}
        return design({**BASE, "operation.0": point})
    field, value, unit = FIELDS[words]
    return design({**BASE, field: f"{value * factor!r} {unit}"})


def test_each_change_clears_the_drive_built_with_it():
    solved = design(BASE)
    speed, mean = 3700 * RPM, 14e3 / (3700 * RPM)
    assert ask(solved, "drive", "separation", "cruise").number < 0.2
    changes = solved.movers.clearing(speed, mean, 0.2)
    assert len(changes) >= 2
    for words, factor in changes:
        assert ask(rebuilt(words, factor), "drive", "separation", "cruise").number >= 0.2 - 1e-6
        short = ask(rebuilt(words, factor**0.98), "drive", "separation", "cruise").number
        assert short < 0.2


@pytest.mark.parametrize("words", sorted(FIELDS))
def test_sensitivity_is_that_of_the_drive_built_anew(words):
    solved = design(BASE)
    moved = next(each for each in solved.movers.sensitivity() if each.words == words)
    before, after = (
        ask(each, "drive", "lowest_frequency").number for each in (solved, rebuilt(words, 1.1))
    )
    assert moved.change == pytest.approx(after / before - 1.0, abs=1e-7)
    cold = ask(rebuilt(words, 1.1), "drive", "lowest_frequency_cold").number
    assert moved.cold == pytest.approx(cold)


def test_idle_speed_has_its_own_entry():
    solved = design(BASE)
    last = solved.movers.sensitivity()[-1]
    assert (last.words, last.change) == ("idle speed", 0.0)
    assert last.idle == pytest.approx(1.1 * 1600 * math.tau / 60.0)
    words = ask(solved, "drive", "sensitivity").value
    assert "10 % more idle speed: +0.0 % on the lowest frequency, order 1 at idle at" in words
    assert "flywheel inertia (shaft in)" in words


def test_a_drive_without_damper_has_no_entry_for_it():
    solved = design({"damper": "none", "shafts.in": None, "engine.drives": "pinion"})
    words = [each.words for each in solved.movers.sensitivity()]
    assert "damper stiffness" not in words


def test_no_change_brings_another_speed_nearer_to_resonance():
    solved = design({**BASE, "engine.dwell_speeds": ["2900 rpm", "4700 rpm"]})
    movers = solved.movers
    assert [round(speed / RPM) for speed, _ in movers.held] == [3700, 1600, 1600, 2900, 4700]
    before = [movers.resonances.separation(*each)[0] for each in movers.held]
    changes = dict(movers.clearing(3700 * RPM, 14e3 / (3700 * RPM), 0.2))
    free = dict(design(BASE).movers.clearing(3700 * RPM, 14e3 / (3700 * RPM), 0.2))
    assert changes != free
    for part, words in movers.parts:
        if words in changes:
            changed = Resonances(movers.survey.changed(part, changes[words]))
            for each, was in zip(movers.held, before, strict=True):
                assert changed.separation(*each)[0] >= min(was, 0.2) - 1e-9


def test_a_speed_that_clears_lies_within_the_survey():
    survey = design(BASE).survey
    for words, factor in design(BASE).movers.clearing(3700 * RPM, 14e3 / (3700 * RPM), 0.2):
        if words == "speed":
            assert survey.idle <= 3700 * RPM * factor <= survey.top
