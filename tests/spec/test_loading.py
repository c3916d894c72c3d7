"""Whatever is wrong with a spec: one message per problem, each with its place."""

import datetime
from pathlib import Path

import jsonschema
import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.review.review import review_spec
from checker.review.rulebook import Rulebook
from checker.spec.document import read_document
from checker.spec.loading import load_spec
from checker.spec.model import Spec, schema
from checker.spec.problem import SpecUnreadable

SOUND = """\
thrustline: 1
drive: {name: Test}
engine: {drives: input, internal_reduction: none}
operation:
  - {name: cruise, engine_speed: 5000 rpm, power: 40 kW}
shafts:
  input: {}
  prop: {}
gears:
  pinion: {shaft: input, teeth: 24, module: 3 mm, helix: none}
  wheel: {shaft: prop, teeth: 60, module: 3 mm, helix: none}
meshes:
  first: {driver: pinion, driven: wheel, centre_distance: 126 +/- 0.02 mm}
propeller: {shaft: prop}
"""


def problems(text: str):
    with pytest.raises(SpecUnreadable) as caught:
        load_spec(text.encode(), "drive.yaml")
    return caught.value.problems


def test_a_sound_spec_is_read():
    loaded = load_spec(SOUND.encode(), "drive.yaml")
    assert loaded.spec.gears["pinion"].teeth == 24
    assert loaded.spec.meshes["first"].centre_distance.high == pytest.approx(0.12602)
    assert loaded.document.place(("gears", "wheel", "teeth")) == (11, 31)


@pytest.mark.parametrize(
    ("before", "after", "pointed_at", "path", "words"),
    [
        ("teeth: 24", "teeth: 24.5", "24.5", "gears.pinion.teeth", "a whole number"),
        ("teeth: 24", "teeth: 2", "2, module", "gears.pinion.teeth", "from 5 to 1000"),
        ("teeth: 24, module: 3 mm", "teeth: 24, module: 3", "3, helix", "gears.pinion.module",
         "with its unit"),
        ("power: 40 kW", "power: 40 kg", "40 kg", "operation.0.power", "kW, W, hp, PS"),
        ("power: 40 kW", "power: 40", "40}", "operation.0.power", "with its unit"),
        ("power: 40 kW", "power: -40 kW", "-40 kW", "operation.0.power", "not negative"),
        ("helix: none}\nmeshes", "helix: straight}\nmeshes", "straight", "gears.wheel.helix",
         "none or unknown"),
        ("teeth: 60,", "teeth: 60, modul: 3 mm,", "modul:", "gears.wheel.modul",
         "did you mean 'module'?"),
        ("driver: pinion", "driver: pinon", "pinon,", "meshes.first.driver",
         "did you mean 'pinion'?"),
        ("shaft: prop, teeth", "shaft: propp, teeth", "propp", "gears.wheel.shaft",
         "did you mean 'prop'?"),
        ("propeller: {shaft: prop}", "propeller: {shaft: nose}", "nose", "propeller.shaft",
         "the name of a shaft"),
        ("drives: input,", "drives: crank,", "crank", "engine.drives", "the name of a shaft"),
        ("{name: Test}", "{revision: A}", "drive:", "drive", "field 'name' is missing"),
        ("thrustline: 1", "thrustline: 2", "2", "thrustline", "unknown version"),
        ("thrustline: 1", "version: 1", "version", "", "no version"),
        ("name: cruise,", "name: cruise, altitude: 1000 furlong,", "1000 furlong",
         "operation.0.altitude", "mm, cm, m"),
        ("  prop: {}", "  prop: {}\n  spare: {}", "{}\ngears", "shafts.spare", "nobody drives"),
        ("  input: {}", "  'in.put': {}", "'in.put'", "shafts.in.put", "not a name"),
        ("  prop: {}", "  prop: {}\n  engine: {}", "engine: {}", "shafts.engine",
         "reserved name"),
        ("meshes:", "  third: {shaft: prop}\n  fourth: {shaft: prop}\nmeshes:\n"
         "  loop: {driver: third, driven: fourth}", "{driver: third", "meshes.loop",
         "joins a shaft to itself"),
        ("meshes:", "  third: {shaft: input}\n  fourth: {shaft: prop}\nmeshes:\n"
         "  loop: {driver: third, driven: fourth}", "{driver: pinion", "meshes.first",
         "closes on itself"),
        ("{driver: pinion, driven: wheel", "{driver: wheel, driven: pinion", "{driver: wheel",
         "meshes.first", "points back at the engine"),
    ],
)  # fmt: skip
def test_each_fault_has_a_place_and_says_what_is_expected(before, after, pointed_at, path, words):
    assert before in SOUND
    text = SOUND.replace(before, after, 1)
    with pytest.raises(SpecUnreadable) as caught:
        review_spec(text.encode(), "drive.yaml", Rulebook(()), datetime.date(2026, 6, 1))
    named = [each for each in caught.value.problems if ".".join(map(str, each.path)) == path]
    above = text[: text.index(pointed_at)]
    place = (above.count("\n") + 1, len(above) - above.rfind("\n"))
    assert [(each.line, each.column) for each in named] == [place]
    assert words in str(caught.value)


def test_all_problems_are_named_in_one_go():
    text = (
        SOUND.replace("teeth: 24", "teeth: many")
        .replace("40 kW", "40")
        .replace("{shaft: prop}", "{shaft: prop, bladez: 3}")
    )
    found = problems(text)
    assert [".".join(map(str, each.path)) for each in found] == [
        "operation.0.power",
        "gears.pinion.teeth",
        "propeller.bladez",
    ]


def test_unknown_is_legal_wherever_a_value_is():
    text = SOUND.replace("teeth: 24", "teeth: unknown").replace("40 kW", "unknown")
    text += "clutch: unknown\nlubrication: unknown\ndeviations: unknown\n"
    spec = load_spec(text.encode(), "drive.yaml").spec
    assert spec.clutch is None
    assert spec.lubrication is None
    assert spec.deviations == []
    assert spec.gears["pinion"].teeth is None
    assert spec.operation[0].power is None


def test_an_unknown_field_stays_unknown_even_if_it_says_so():
    assert (
        "unknown field"
        in problems(SOUND.replace("{shaft: prop}", "{shaft: prop, x: unknown}"))[0].message
    )


def test_two_points_may_not_share_a_name():
    text = SOUND.replace("40 kW}", "40 kW}\n  - {name: cruise}")
    assert "share a name" in problems(text)[0].message


def test_a_gear_that_meshes_with_nothing_is_named():
    text = SOUND.replace("meshes:", "  spare: {shaft: prop}\nmeshes:")
    assert problems(text)[0].path == ("gears", "spare")


def test_every_field_of_the_schema_is_described():
    def undescribed(node, path):
        for name, inner in node.get("properties", {}).items():
            reference = inner.get("$ref") or inner.get("items", {}).get("$ref")
            if not inner.get("description") and not reference:
                yield f"{path}.{name}"

    document = schema()
    missing = list(undescribed(document, "Spec"))
    for name, node in document["$defs"].items():
        missing += undescribed(node, name)
    assert missing == []


def test_the_schema_agrees_with_the_reader():
    validator = jsonschema.Draft202012Validator(schema())
    validator.check_schema(schema())
    assert list(validator.iter_errors(yaml.safe_load(SOUND))) == []
    wrong = yaml.safe_load(SOUND.replace("teeth: 24", "teeth: many"))
    assert [list(error.absolute_path) for error in validator.iter_errors(wrong)] == [
        ["gears", "pinion", "teeth"]
    ]


PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=12),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3)
    ),
    max_leaves=8,
)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(field=st.sampled_from(sorted(Spec.model_fields)), value=PLAIN)
def test_no_value_of_a_section_gives_a_traceback(field, value):
    data = yaml.safe_load(SOUND)
    data[field] = value
    try:
        load_spec(yaml.safe_dump(data, allow_unicode=True).encode(), "drive.yaml")
    except SpecUnreadable as unreadable:
        assert unreadable.problems
        assert all(each.line >= 1 for each in unreadable.problems)


LINES = SOUND.splitlines()


@settings(max_examples=150, deadline=None)
@given(
    line=st.integers(0, len(LINES) - 1),
    column=st.integers(0, 60),
    inserted=st.text(max_size=6),
    removed=st.integers(0, 8),
)
def test_no_slip_of_the_pen_gives_a_traceback(line, column, inserted, removed):
    lines = list(LINES)
    lines[line] = lines[line][:column] + inserted + lines[line][column + removed :]
    try:
        load_spec("\n".join(lines).encode("utf-8", "surrogatepass"), "drive.yaml")
    except SpecUnreadable as unreadable:
        assert "drive.yaml:" in str(unreadable)


def test_shipped_examples_satisfy_the_schema():
    examples = sorted((Path(__file__).parents[2] / "examples").glob("*.yaml"))
    validator = jsonschema.Draft202012Validator(schema())
    for example in examples:
        data = read_document(example.read_bytes(), example.name).data
        assert list(validator.iter_errors(data)) == [], example.name
