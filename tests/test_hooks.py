"""The definition of the pre-commit hook: it parses, and its entry runs on names of files."""

import re
import shlex
from pathlib import Path

import pytest
import yaml

from checker import cli

ROOT = Path(__file__).parents[1]
TANSY = ROOT / "examples" / "tansy.yaml"


@pytest.fixture(scope="module")
def hook():
    (only,) = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    return only


def test_it_says_what_a_hook_must(hook):
    assert {"id", "name", "entry", "language", "files"} <= set(hook)
    assert hook["language"] == "python"
    assert hook["require_serial"] is True


@pytest.mark.parametrize(
    ("file", "is_spec"),
    [
        ("drives/marram.yaml", True),
        ("aircraft/drive/marram.yml", True),
        (".pre-commit-config.yaml", False),
        ("drives/marram.remarks", False),
        ("overdrives/marram.yaml", False),
    ],
)
def test_it_takes_specs_only(hook, file, is_spec):
    assert bool(re.search(hook["files"], file)) is is_spec


def test_its_entry_runs_on_names_of_files(hook, capsys, tmp_path):
    program, *arguments = shlex.split(hook["entry"])
    assert program == "thrustline"
    bad = tmp_path / "bad.yaml"
    bad.write_text("thrustline: 2\n", encoding="utf-8")
    assert cli.run([*arguments, str(TANSY)]) == 0
    assert cli.run([*arguments, str(TANSY), str(bad)]) == 2
    assert str(bad) in capsys.readouterr().err
