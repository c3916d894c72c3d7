"""Short specs of trains for tests."""

import pytest
import yaml

from checker.measures.design import Design
from checker.spec.loading import load_spec
from checker.train.graph import build_train


def spec_of(*, gears, meshes, shafts=None, engine=None, propeller="out", **sections):
    """A spec from tables: gears as (shaft, teeth, module, helix), meshes as pairs of names."""
    names = dict.fromkeys(shaft for shaft, *_ in gears.values())
    data = {
        "thrustline": 1,
        "drive": {"name": "Test", "installation": "tractor"},
        "engine": {
            "drives": "in",
            "rotation": "clockwise",
            "internal_reduction": "none",
            **(engine or {}),
        },
        "operation": [{"name": "full", "engine_speed": "3600 rpm", "power": "60 kW"}],
        "shafts": {name: {} for name in [*(shafts or []), *names]},
        "gears": {
            name: {
                "shaft": shaft,
                "teeth": teeth,
                "module": module,
                "pressure_angle": "20 deg",
                "helix": "none"
                if helix is None
                else dict(zip(("angle", "hand"), helix, strict=True)),
            }
            for name, (shaft, teeth, module, helix) in gears.items()
        },
        "meshes": {
            name: {"driver": driver, "driven": driven, **more}
            for name, (driver, driven, more) in meshes.items()
        },
        "propeller": {"shaft": propeller},
        **sections,
    }
    return load_spec(yaml.safe_dump(data, sort_keys=False).encode(), "test.yaml").spec


def design_of(**tables):
    """The solved design of such a spec."""
    spec = spec_of(**tables)
    return Design(spec, build_train(spec))


@pytest.fixture
def make_spec():
    """Builds a spec from tables."""
    return spec_of


@pytest.fixture
def make_design():
    """Builds a solved design from tables."""
    return design_of
