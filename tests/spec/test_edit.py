"""A spec with other values is the same spec in everything else."""

import json
from decimal import Decimal

import pytest

from checker.spec.document import read_document
from checker.spec.edit import field_named, value_at, with_values, written

TEXT = """\
thrustline: 1
rim: &rim {width: 10 mm}
gears:
  a: {teeth: 24, rim: *rim, backlash: 0.10 +/- 0.02 mm}
  b: {teeth: 60, rim: *rim}
operation:
  - {name: climb, power: 50 kW}
  - {name: cruise, power: 40 kW, note: 'Größe "x"'}
"""


@pytest.fixture
def document():
    return read_document(TEXT.encode(), "drive.yaml")


@pytest.mark.parametrize(
    ("stated", "number", "unit", "at"),
    [
        ("76.20 +/- 0.02 mm", "76.20", "mm", "77.5 +/- 0.02 mm"),
        ("20 +0.1/-0.05 deg", "20", "deg", "77.5 +0.1/-0.05 deg"),
        ("48.0 +0/-0.1 mm", "48.0", "mm", "77.5 +0/-0.1 mm"),
        ("-3 ± 1 °C", "-3", "degC", "77.5 ± 1 °C"),
        ("40kW", "40", "kW", "77.5kW"),
        ("2e3 N m", "2e3", "Nm", "77.5 N m"),
        ("7 %", "7", "%", "77.5 %"),
        (24, "24", "", 77.5),
        (0.08, "0.08", "", 77.5),
    ],
)
def test_a_number_keeps_its_tolerance_and_unit(stated, number, unit, at):
    found = written(stated)
    assert (found.number, found.unit) == (Decimal(number), unit)
    assert found.at(Decimal("77.5")) == at


@pytest.mark.parametrize("stated", ["none", "steel", True, None, ["1 mm"], {"a": 1}])
def test_what_is_no_number(stated):
    assert written(stated) is None


def test_counts_stay_counts():
    assert written(24).is_whole
    assert not written(0.5).is_whole
    assert not written("24 mm").is_whole
    assert repr(written(24).at(Decimal("30"))) == "30"


def test_only_the_value_named_is_another(document):
    changes = {
        ("gears", "a", "teeth"): 25,
        ("operation", 1, "power"): "41 kW",
        ("gears", "a", "rim", "width"): "12 mm",
        ("gears", "b", "module"): "3 mm",
    }
    again = read_document(with_values(document, changes), "drive.yaml")
    assert all(value_at(again, path) == value for path, value in changes.items())
    assert value_at(again, ("gears", "b", "rim", "width")) == "10 mm"  # an alias of the same
    for path in changes:
        assert path[0] in again.data
    undone = {path: value_at(document, path) for path in list(changes)[:3]}
    back = read_document(with_values(again, undone), "drive.yaml").data
    del back["gears"]["b"]["module"]
    assert json.dumps(back) == json.dumps(document.data)
    assert value_at(document, ("gears", "a", "teeth")) == 24  # the spec itself is as it was


def test_fields_are_found_by_name_and_number(document):
    assert field_named(document, "operation.cruise.power") == ("operation", 1, "power")
    assert field_named(document, "operation.0") == ("operation", 0)
    assert field_named(document, "gears.c.teeth") is None
