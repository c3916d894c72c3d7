"""Whatever is wrong with a spec: one message per problem, each with its place."""

import datetime
from pathlib import Path

import jsonschema
import pydantic
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
        ("power: 40 kW", "power: -40 kW", "-40 kW", "operation.0.power",
         "a power of at least 0 kW, or unknown"),
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
        ("thrustline: 1", "thrustline: 1.0", "1.0", "thrustline", "expected 1,"),
        ("thrustline: 1", "thrustline: '1'", "'1'", "thrustline", "expected 1,"),
        ("thrustline: 1", "thrustline: unknown", "unknown", "thrustline", "expected 1,"),
        ("thrustline: 1", "thrustline: true", "true", "thrustline", "expected 1,"),
        ("thrustline: 1", "version: 1", "version", "", "no version"),
        ("name: cruise,", "name: cruise, altitude: 1000 furlong,", "1000 furlong",
         "operation.0.altitude", "mm, cm, m"),
        ("  prop: {}", "  prop: {}\n  spare: {}", "{}\ngears", "shafts.spare", "nobody drives"),
        ("  input: {}", "  7: {}\n  input: {}", "7:", "shafts.7", "begins with a letter"),
        ("{shaft: prop, teeth: 60", "{shaft: unknown, teeth: 60", "unknown",
         "gears.wheel.shaft", "found 'unknown'; expected a name; it cannot be unknown"),
        ("{shaft: prop, teeth: 60", "{shaft: ' ', teeth: 60", "' '", "gears.wheel.shaft",
         "this says nothing; found ' '; expected a name"),
        ("propeller: {shaft: prop}", "propeller: unknown", "unknown", "propeller",
         "a mapping of fields; it cannot be unknown"),
        ("{driver: pinion, driven: wheel", "{driver: pinion, driven: pinion", "pinion, centre",
         "meshes.first.driven", "a gear cannot mesh with itself"),
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


def test_problems_of_the_text_of_the_fields_and_of_names_come_together():
    text = (
        SOUND.replace("{drives: input,", "{drives: input, output_damped: no,")
        .replace("power: 40 kW", "power: 40")
        .replace("driven: wheel", "driven: weel")
        .replace("  prop: {}", "  prop: {}\n  7: {}")
        .replace("propeller: {shaft: prop}", "propeller: {shaft: prp, blades: }")
    )
    assert [".".join(map(str, each.path)) for each in problems(text)] == [
        "engine.output_damped",
        "operation.0.power",
        "shafts.7",
        "meshes.first.driven",
        "propeller.shaft",
        "propeller.blades",
    ]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("drives: input", "drives: no"),  # a name that is also looked up
        ("name: Test", "name: "),  # a required text
        ("teeth: 24", "teeth: 0x18"),  # a number
        ("thrustline: 1", "thrustline: 01"),
        ("thrustline: 1", "thrustline: 1\non: {a: 1}"),  # no field of a spec either
        ("helix: none}\n  wheel", "helix: *x}\n  wheel"),
    ],
)
def test_what_cannot_be_read_is_told_once(before, after):
    assert before in SOUND
    assert len(problems(SOUND.replace(before, after, 1))) == 1


def test_without_its_version_a_spec_is_still_judged():
    found = problems(SOUND.replace("thrustline: 1\n", "").replace("teeth: 24", "teeth: 2"))
    assert [each.message for each in found] == ["no version", "out of range"]


def test_a_spec_of_another_version_is_not_judged():
    found = problems(
        SOUND.replace("thrustline: 1", "thrustline: 2").replace("teeth: 24", "teeth: 2")
    )
    assert [each.message for each in found] == ["unknown version"]


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
            if not inner.get("description"):
                yield f"{path}.{name}"

    document = schema()
    missing = list(undescribed(document, "Spec"))
    for name, node in document["$defs"].items():
        missing += undescribed(node, name)
    assert missing == []


VALIDATOR = jsonschema.Draft202012Validator(schema())


def test_the_schema_agrees_with_the_reader():
    VALIDATOR.check_schema(schema())
    assert list(VALIDATOR.iter_errors(yaml.safe_load(SOUND))) == []
    wrong = yaml.safe_load(SOUND.replace("teeth: 24", "teeth: many"))
    assert [list(error.absolute_path) for error in VALIDATOR.iter_errors(wrong)] == [
        ["gears", "pinion", "teeth"]
    ]


EXAMPLE = Path(__file__).parents[2] / "examples" / "marram.yaml"
FULL = read_document(EXAMPLE.read_bytes(), EXAMPLE.name).data


def places_in(data, path=()):
    """The path of every value of plain data."""
    yield path
    if isinstance(data, (dict, list)):
        for step, inner in data.items() if isinstance(data, dict) else enumerate(data):
            yield from places_in(inner, (*path, step))


def with_value(data, path, value):
    """Plain data with one value in place of another."""
    if not path:
        return value
    copied = data.copy()
    copied[path[0]] = with_value(data[path[0]], path[1:], value)
    return copied


PLACES = [path for path in places_in(FULL) if path]
# One place of each kind: parts of one section and entries of one list are alike.
NAMED = {"shafts", "gears", "meshes", "bearings", "joints", "seals"}
KINDS = {
    tuple(
        0 if isinstance(step, int) or (at == 1 and path[0] in NAMED) else step
        for at, step in enumerate(path)
    ): path
    for path in PLACES
}


@pytest.mark.parametrize("word", ["unknown", "none"])
def test_schema_and_reader_agree_on_the_words_of_the_format(word):
    disagreeing = []
    for path in KINDS.values():
        section = {path[0]: FULL[path[0]]}
        data = with_value(yaml.safe_load(SOUND) | section, path, word)
        try:
            Spec.model_validate(data)
            taken = True
        except pydantic.ValidationError:
            taken = False
        if taken != VALIDATOR.is_valid(data):
            disagreeing.append(path)
    assert disagreeing == []


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


@settings(max_examples=60, deadline=None)
@given(path=st.sampled_from(PLACES), value=PLAIN | st.sampled_from(["unknown", "none", " "]))
def test_no_value_at_any_place_gives_a_traceback(path, value):
    data = with_value(FULL, path, value)
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
    for example in examples:
        data = read_document(example.read_bytes(), example.name).data
        assert list(VALIDATOR.iter_errors(data)) == [], example.name
