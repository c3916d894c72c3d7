"""Names that must be found elsewhere in a spec, and statements that must agree with another."""

import pytest

from checker.spec.loading import load_spec
from checker.spec.problem import SpecUnreadable

SOUND = """\
thrustline: 1
drive: {name: Test}
engine:
  drives: input
  cylinders: 4
  cycle: four-stroke
  firing_intervals: [180 deg, 180 deg, 180 deg, 180 deg]
shafts: {input: {}, prop: {}}
gears: {pinion: {shaft: input}, wheel: {shaft: prop}}
meshes:
  first: {driver: pinion, driven: wheel, ratio_set: swappable}
bearings: {rear: {shaft: prop}}
joints: {flange: {shaft: prop, to: propeller}}
seals: {front: {shaft: prop}}
damper: none
clutch: {between: [input, prop], outer: prop}
lubrication:
  paths:
    - {from: pump, to: first}
    - {from: wheel, to: rear}
    - {from: engine gallery, to: clutch}
    - {from: sump, to: reservoir}
    - {from: unknown, to: unknown}
propeller: {shaft: prop}
records:
  single_failures:
    - {part: shafts.prop}
    - {part: clutch}
    - {part: joints.flange}
  retention:
    - {part: joints.flange bolts}
  evidence:
    - {part: shafts.input}
"""


def told(*changes: tuple[str, str], more: str = "") -> list[tuple[str, str]]:
    """Path and text of every problem of the sound spec with some replacements."""
    text = SOUND
    for before, after in changes:
        assert before in text
        text = text.replace(before, after, 1)
    try:
        load_spec((text + more).encode(), "drive.yaml")
    except SpecUnreadable as unreadable:
        lines = str(unreadable).splitlines()
        return [
            (".".join(map(str, each.path)), line)
            for each, line in zip(unreadable.problems, lines, strict=True)
        ]
    return []


def test_a_spec_whose_names_are_all_found_is_read():
    assert told() == []


@pytest.mark.parametrize(
    ("before", "after", "path", "words"),
    [
        ("to: rear}", "to: raer}", "lubrication.paths.1.to", "did you mean 'rear'?"),
        ("to: first}", "to: damper}", "lubrication.paths.0.to", "there is no mesh, bearing"),
        ("to: first}", "to: wheel}", "lubrication.paths.0.to", "there is no mesh, bearing"),
        ("from: wheel", "from: weel", "lubrication.paths.1.from", "did you mean 'wheel'?"),
        ("from: pump", "from: pmup", "lubrication.paths.0.from", "did you mean 'pump'?"),
        ("to: clutch}", "to: none}", "lubrication.paths.2.to", "this says nothing"),
        ("part: shafts.prop", "part: shafts.porp", "records.single_failures.0.part",
         "did you mean 'shafts.prop'?"),
        ("part: shafts.prop", "part: prop", "records.single_failures.0.part",
         "with its section, such as meshes.first"),
        ("part: clutch", "part: damper", "records.single_failures.1.part", "there is no part"),
        ("flange bolts", "flnge bolts", "records.retention.0.part",
         "did you mean 'joints.flange'?"),
        ("part: shafts.input", "part: shafts.inputs", "records.evidence.0.part",
         "did you mean 'shafts.input'?"),
        ("part: clutch", "part: ratio_sets.high", "records.single_failures.1.part",
         "there is no part"),
        ("outer: prop", "outer: porp", "clutch.outer", "did you mean 'prop'?"),
        ("[input, prop]", "[input, porp]", "clutch.between.1", "did you mean 'prop'?"),
        ("{shaft: prop, to: propeller}", "{shaft: prop, to: props}", "joints.flange.to",
         "there is no shaft"),
        ("driven: wheel", "driven: pinion", "meshes.first.driven", "cannot mesh with itself"),
    ],
)  # fmt: skip
def test_a_name_that_refers_to_nothing_is_told(before, after, path, words):
    lines = [line for where, line in told((before, after)) if where == path]
    assert len(lines) == 1
    assert words in lines[0]


def test_a_coupling_that_is_left_out_may_still_be_named():
    assert told(("damper: none\n", ""), ("part: clutch", "part: damper")) == []


def test_rule_and_part_of_a_deviation_are_not_looked_up():
    written = """\
deviations:
  - {rule: no.such-rule, part: meshes.third, reason: Shown by test, by: T. Wendover,
     date: 2026-01-01, expires: 2026-12-31}
"""
    assert told(more=written) == []


def test_names_are_looked_up_whatever_else_is_wrong():
    found = told(
        ("cylinders: 4", "cylinders: many"),
        ("gears: {pinion: {shaft: input}", "gears: {pinion: 3"),
        ("bearings: {rear: {shaft: prop}}", "bearings: [rear]"),
        ("outer: prop", "outer: porp, between: [a]"),
        ("part: shafts.prop", "part: [shafts.prop]"),
        ("driven: wheel", "driven: weel"),
    )
    assert [path for path, _ in found] == [
        "engine.cylinders",
        "gears.pinion",
        "meshes.first.driven",
        "bearings",
        "clutch.outer",
        "clutch.between",
        "lubrication.paths.1.to",
        "records.single_failures.0.part",
    ]


@pytest.mark.parametrize("odd", ["[]", "{a: 1}", "3", "true", "''", "[[pinion]]"])
def test_a_lookup_passes_over_what_is_no_name(odd):
    for before in (
        "driver: pinion",
        "driven: wheel",
        "drives: input",
        "from: pump",
        "part: clutch",
        "outer: prop",
        "cycle: four-stroke",
        "name: Test",
        "ratio_set: swappable",
    ):
        field = before.partition(":")[0]
        assert len(told((before, f"{field}: {odd}"))) == 1
    assert told(("driver: pinion, driven: wheel", f"driver: {odd}, driven: {odd}"))


SET = "ratio_sets: {high: {gears: {%s: {teeth: 30}}}}\n"


def test_a_ratio_set_that_changes_a_gear_of_a_fixed_mesh_is_told():
    ((path, line),) = told(("swappable", "fixed"), more=SET % "wheel")
    assert path == "ratio_sets.high.gears.wheel"
    assert "a gear of a fixed mesh" in line
    assert "meshes.first.ratio_set: fixed" in line


@pytest.mark.parametrize("mesh", ["swappable", "unknown"])
def test_a_ratio_set_may_change_any_other_gear(mesh):
    assert told(("swappable", mesh), more=SET % "wheel") == []
    assert told(("swappable", mesh)) == []


@pytest.mark.parametrize(
    ("cycle", "cylinders", "intervals", "words"),
    [
        # One firing for each cylinder in a cycle of two turns, or of one turn.
        ("four-stroke", "4", "180 deg, 180 deg, 180 deg, 180 deg", None),
        ("four-stroke", "3", "240 deg, 240 deg, 240 deg", None),
        ("four-stroke", "2", "360 deg, 360 deg", None),
        ("two-stroke", "2", "180 deg, 180 deg", None),
        ("two-stroke", "2", "0 deg, 360 deg", None),
        ("four-stroke", "7", ", ".join(["102.9 deg"] * 7), None),
        ("unknown", "4", "90 deg, 90 deg, 90 deg, 90 deg", None),
        ("four-stroke", "unknown", "360 deg, 360 deg", None),
        ("four-stroke", "2", "180 deg, 180 deg", "360 deg in all; expected 720 deg"),
        ("two-stroke", "2", "360 deg, 360 deg", "720 deg in all; expected 360 deg"),
        ("four-stroke", "3", "240 deg, 240 deg, 238 deg", "718 deg in all"),
        ("four-stroke", "4", "360 deg, 360 deg", "not as many firing intervals as cylinders"),
    ],
)
def test_firing_intervals_fill_the_cycle_and_are_as_many_as_cylinders(
    cycle, cylinders, intervals, words
):
    found = told(
        ("cylinders: 4", f"cylinders: {cylinders}"),
        ("cycle: four-stroke", f"cycle: {cycle}"),
        ("[180 deg, 180 deg, 180 deg, 180 deg]", f"[{intervals}]"),
    )
    assert [path for path, _ in found] == ["engine.firing_intervals"] * (words is not None)
    assert all(words in line for _, line in found)


@pytest.mark.parametrize("interval", ["unknown", "-180 deg", "180", "many"])
def test_a_firing_interval_is_an_angle(interval):
    found = told(("[180 deg", f"[{interval}"))
    assert [path for path, _ in found if path.endswith(".0")] == ["engine.firing_intervals.0"]
    assert "or unknown" not in found[-1][1]


@pytest.mark.parametrize(
    ("kind", "more", "paths"),
    [
        ("elastomer", "hot_stiffness: 2 N m/rad, cold_stiffness: 3 N m/rad, elastomer: NBR", []),
        ("elastomer", "damping_coefficient: 3 N m s/rad", ["damping_coefficient"]),
        ("elastomer", "elastomer: none", ["elastomer"]),
        ("steel spring", "elastomer: none, relative_damping: 0.5, hot_stiffness: unknown", []),
        ("steel spring", "elastomer: NBR", ["elastomer"]),
        ("steel spring", "elastomer: unknown, cold_stiffness: 3 N m/rad", ["cold_stiffness"]),
        ("steel spring", "hot_stiffness: 3 N m/rad", ["hot_stiffness"]),
        ("steel spring", "hot_relative_damping: 0.5", ["hot_relative_damping"]),
        ("steel spring", "damping_coefficient: 3 N m s/rad", ["damping_coefficient"]),
        ("viscous", "damping_coefficient: 3 N m s/rad, elastomer: none", []),
        ("viscous", "relative_damping: 0.5", ["relative_damping"]),
        ("viscous", "hot_stiffness: 3 N m/rad", ["hot_stiffness"]),
        ("unknown", "hot_stiffness: 3 N m/rad, damping_coefficient: 3 N m s/rad", []),
    ],
)
def test_a_damper_states_nothing_that_its_kind_has_no_use_for(kind, more, paths):
    damper = f"damper: {{kind: {kind}, between: [input, prop], {more}}}"
    found = told(("damper: none", damper), ("clutch: {between: [input, prop], outer: prop}", ""))
    strange = [(path, line) for path, line in found if path.startswith("damper.")]
    assert [path for path, _ in strange] == [f"damper.{path}" for path in paths]
    for path, line in strange:
        column = damper.index(path.removeprefix("damper.") + ":") + 1
        assert line.startswith("drive.yaml:15:")
        assert kind in line or "elastomer" in path
        assert "elastomer" in path or line.startswith(f"drive.yaml:15:{column}:")
