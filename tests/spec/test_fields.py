"""What a single field takes: texts that say something, and numbers that a thing can have."""

import pytest
import yaml

from checker.spec.loading import load_spec
from checker.spec.problem import SpecUnreadable

SOUND = """\
thrustline: 1
drive: {name: Test}
engine: {drives: input}
operation: [{name: cruise}]
shafts: {input: {}, prop: {}}
gears: {pinion: {shaft: input}, wheel: {shaft: prop}}
meshes: {first: {driver: pinion, driven: wheel}}
bearings: {rear: {shaft: prop}}
joints: {flange: {shaft: prop, to: propeller}}
seals: {front: {shaft: prop}}
damper: {between: [input, prop]}
clutch: {between: [input, prop]}
lubrication: {oil: {}}
vent: {path: [{}]}
propeller: {shaft: prop}
records: {single_failures: [{part: clutch}], preflight_checks: [Oil level]}
deviations:
  - {rule: train.ratio-as-stated, part: drive, reason: Shown by test, by: T. Wendover,
     date: "2026-01-01", expires: "2026-12-31"}
"""


def spec_with(field: str, value: object):
    """The sound spec with one field set, or what is wrong with it."""
    data = yaml.safe_load(SOUND)
    *way, last = [int(step) if step.isdigit() else step for step in field.split(".")]
    inner = data
    for step in way:
        inner = inner[step] if isinstance(inner, list) else inner.setdefault(step, {})
    inner[last] = value
    return load_spec(yaml.safe_dump(data).encode(), "drive.yaml").spec


def refusal(field: str, value: object) -> str:
    with pytest.raises(SpecUnreadable) as caught:
        spec_with(field, value)
    assert [".".join(map(str, each.path)) for each in caught.value.problems] == [field]
    return str(caught.value)


NOTHING = [
    "none",
    "None",
    " none ",
    "no",
    "n/a",
    "N/A",
    "-",
    "?",
    "tbd",
    "TODO",
    "",
    "   ",
    "Unknown",
]
TEXTS = [
    "drive.purpose",
    "propeller.inertia_evidence",
    "propeller.vibration_evidence",
    "clutch.friction_evidence",
    "clutch.failure_evidence.locked.evidence",
    "clutch.failure_evidence.slip.detected_by",
    "records.drawn_by",
    "deviations.0.mitigation",
]
REQUIRED = [
    "drive.name",
    "operation.0.name",
    "gears.pinion.shaft",
    "meshes.first.driver",
    "damper.between.0",
    "deviations.0.rule",
    "deviations.0.part",
    "deviations.0.reason",
    "deviations.0.by",
    "records.single_failures.0.part",
    "records.preflight_checks.0",
]


@pytest.mark.parametrize("word", NOTHING)
@pytest.mark.parametrize("field", [TEXTS[1], REQUIRED[-5]])
def test_a_text_that_says_nothing_is_refused(field, word):
    assert "this says nothing" in refusal(field, word)


@pytest.mark.parametrize("field", [*TEXTS, *REQUIRED])
def test_none_and_blanks_say_nothing_in_any_text(field):
    for word in ("none", " "):
        assert "this says nothing" in refusal(field, word)


@pytest.mark.parametrize("field", TEXTS)
def test_a_text_that_is_not_required_may_be_unknown(field):
    assert "expected a text that says something, or unknown" in refusal(field, "none")
    assert spec_with(field, "unknown")
    assert spec_with(field, "No wear found, see report R-07")


@pytest.mark.parametrize("field", REQUIRED)
def test_a_required_text_cannot_be_unknown(field):
    assert "it cannot be unknown" in refusal(field, "unknown")


@pytest.mark.parametrize(
    "field", ["clutch.failure_evidence.slip.mitigation", "joints.flange.locking"]
)
def test_none_is_an_answer_where_it_is_documented(field):
    spec = spec_with(field, " None")
    found = {
        "mitigation": lambda: spec.clutch.failure_evidence.slip.mitigation,
        "locking": lambda: spec.joints["flange"].locking,
    }
    assert found[field.rpartition(".")[2]]() == "none"
    assert "a text that says something, none, or unknown" in refusal(field, "tbd")


@pytest.mark.parametrize(
    ("field", "inside", "outside", "expected"),
    [
        # What any reader refuses: common practice, no source.
        ("clutch.friction_coefficient", [0.001, 0.085, 1.5], [0, 1.6], "from 0.001 to 1.5"),
        ("joints.flange.friction_coefficient", [0.12], [12], "from 0.001 to 1.5"),
        ("housing.mounting.bolts", [1], [0], "from 1 to"),
        ("housing.mounting.friction_coefficient", [0.15], [0], "from 0.001 to 1.5"),
        ("housing.thermostat", ["75 degC", "none"], ["-91 degC"], "or unknown"),
        ("vent.path.0.loss_coefficient", [0, 40], [-1], "from 0 to 1000"),
        ("gears.pinion.profile_shift", [-2, 0.5, 2], [-2.1, 25], "from -2 to 2"),
        ("damper.relative_damping", [0, 1.1, 10], [-0.1, 11], "from 0 to 10"),
        ("clutch.service_factor", [1, 1.5], [0.5], "from 1 to 10"),
        ("clutch.race_hardness", ["60 HRC", "72 HRC", "1500 HV", "800 HB"], ["73 HRC", "0 HRC"],
         "a Rockwell C hardness above 0 HRC and at most 72 HRC"),
        ("clutch.race_hardness", ["700 HV"], ["1501 HV", "-1 HV"], "at most 1500 HV"),
        ("clutch.race_hardness", ["300 HB"], ["801 HB"], "at most 800 HB"),
        ("operation.0.oil_temperature", ["-90 degC", "400 degC", "200 degF"],
         ["-91 degC", "401 degC", "1000 degF"],
         "a temperature of at least -90 degC and at most 400 degC, or unknown"),
        ("damper.highest_temperature", ["-100 degC", "1500 degC"], ["-101 degC", "1501 degC"],
         "at least -100 degC and at most 1500 degC"),
        ("gears.pinion.helix.angle", ["0 deg", "59.9 deg"], ["-18 deg", "60 deg"],
         "an angle of at least 0 deg and below 60 deg"),
        ("gears.pinion.pressure_angle", ["5 deg", "20 deg", "45 deg"], ["4.9 deg", "90 deg"],
         "an angle of at least 5 deg and at most 45 deg"),
        ("bearings.rear.contact_angle", ["0 deg", "90 deg"], ["-1 deg", "91 deg"],
         "an angle of at least 0 deg and at most 90 deg"),
        ("lubrication.oil.density_15", ["500 kg/m3", "0.88 g/cm3", "1500 kg/m3"],
         ["88 kg/m3", "8800 kg/m3"], "a density of at least 500 kg/m3 and at most 1500 kg/m3"),
        ("meshes.first.backlash", ["0 mm", "0.2 mm"], ["-0.1 mm"], "a length of at least 0 mm"),
        ("bearings.rear.dynamic_rating", ["1 kN"], ["0 kN", "-1 kN"], "a force above 0 N"),
        ("bearings.rear.static_rating", ["1 kN"], ["0 kN"], "a force above 0 N"),
        ("bearings.rear.axial_rating", ["1 kN"], ["0 kN"], "a force above 0 N"),
        ("gears.pinion.teeth", [5], [4], "from 5 to 1000"),
        ("operation.0.share", ["100 %", 1], ["101 %", -0.1], "a ratio of at least 0 % and at most"),
        ("operation.0.thrust", ["-900 N"], [], ""),
    ],
)  # fmt: skip
def test_a_value_that_the_thing_cannot_have_is_refused(field, inside, outside, expected):
    for value in inside:
        assert spec_with(field, value)
    for value in outside:
        told = refusal(field, value)
        assert "out of range" in told
        assert expected in told


@pytest.mark.parametrize("date", ["2026-02-30", "20260531", "2026-W22-7", "31.5.2026", 20260531])
def test_a_date_is_written_in_one_way(date):
    assert "expected a date such as 2026-05-31" in refusal("deviations.0.date", date)


def test_an_approved_oil_is_one_of_the_families():
    assert spec_with("clutch.approved_oils", [{"oil": "circulating VG 100"}])
    with pytest.raises(SpecUnreadable, match="did you mean 'circulating VG 100'"):
        spec_with("clutch.approved_oils", [{"oil": "circulating vg 100"}])
