"""The first-run card as a command."""

import shutil
from pathlib import Path

import pytest

from checker import cli

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def spec(tmp_path):
    return Path(shutil.copy(EXAMPLES / "tansy.yaml", tmp_path))


def test_the_card_is_printed_and_written(spec, tmp_path, capsys):
    page = tmp_path / "card.html"
    assert cli.run(["first-run", str(spec), "--report", str(page)]) == 0
    assert capsys.readouterr().out.startswith("First run: Tansy")
    assert page.read_text().startswith("<!doctype html>")


def test_a_drive_on_hold_gets_none(tmp_path, capsys):
    page = tmp_path / "card.html"
    held = EXAMPLES / "tansy-troubled.yaml"
    assert cli.run(["first-run", str(held), "--report", str(page)]) == 1
    out, err = capsys.readouterr()
    assert out == ""
    assert "no card: the disposition is hold" in err
    assert not page.exists()
