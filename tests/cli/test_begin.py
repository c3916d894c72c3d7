"""``begin`` as a command: flags, questions, and what is there already."""

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from checker import cli

ROOT = Path(__file__).parents[2]
NEEDED = ("--name", "Heron", "--arrangement", "idler", "--form", "spur")


@pytest.fixture(autouse=True)
def nobody(monkeypatch):
    with open(os.devnull) as nothing:
        monkeypatch.setattr("sys.stdin", nothing)
        yield


def run(*arguments) -> int:
    return cli.run([*map(str, arguments)])


def test_flags_alone_write_a_spec_and_say_what_is_next(tmp_path, capsys):
    file = tmp_path / "heron.yaml"
    assert run("begin", file, *NEEDED, "--ratio", "2.2") == 0
    out = capsys.readouterr().out
    assert out.split()[:2] == ["Written:", str(file)]
    assert "Find out and state next" in out
    assert run("review", file) == 1


@pytest.mark.parametrize(
    ("flags", "told"),
    [
        ((), "Nobody is there to ask: give --name, --arrangement, --form."),
        (NEEDED[:2], "give --arrangement, --form."),
        ((*NEEDED, "--power", "60"), "the unit is missing"),
        ((*NEEDED, "--power", "0 kW"), "is not above zero"),
        ((*NEEDED, "--speed", "3 kW"), "of another kind"),
        ((*NEEDED, "--ratio", "0.4"), "--ratio"),
        ((*NEEDED, "--clutch", "magic"), "--clutch"),
    ],
)
def test_what_is_wrong_is_told_and_nothing_is_written(tmp_path, capsys, flags, told):
    file = tmp_path / "heron.yaml"
    assert run("begin", file, *flags) == 3
    assert told in " ".join(capsys.readouterr().err.split())
    assert not file.exists()


def test_a_file_that_is_there_is_kept(tmp_path, capsys):
    file = tmp_path / "heron.yaml"
    file.write_text("mine")
    assert run("begin", file, *NEEDED) == 3
    assert "is there already" in capsys.readouterr().err
    assert file.read_text() == "mine"
    assert run("begin", file, *NEEDED, "--force") == 0
    assert "drive:" in file.read_text()


def test_a_place_that_takes_no_file_is_one_line(tmp_path, capsys):
    assert run("begin", tmp_path / "none" / "heron.yaml", *NEEDED) == 4
    assert "cannot be written" in capsys.readouterr().err


def asked(file, *lines):
    """Answer the questions on a terminal; what came out, and the exit status."""
    leader, follower = pty.openpty()
    command = [sys.executable, "-m", "checker", "begin", str(file)]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    process = subprocess.Popen(
        command, stdin=follower, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=environment
    )
    os.close(follower)
    os.write(leader, "".join(f"{line}\n" for line in lines).encode())
    out, err = process.communicate(timeout=60)
    os.close(leader)
    return process.returncode, out.decode(), err.decode()


def test_questions_on_a_terminal(tmp_path):
    file = tmp_path / "heron.yaml"
    answers = (
        "Heron",
        "compound",
        "helical",
        "2.4",
        "",
        "",
        "5",
        "60 kW",
        "",
        "none",
        "sprag",
        "",
        "",
    )
    status, out, err = asked(file, *answers)
    assert status == 0
    assert "the unit is missing" in err  # of the power, which was then asked for again
    text = file.read_text()
    assert "power: 60 kW" in text
    assert "cylinders: unknown" in text
    assert "kind: sprag" in text
    assert "Find out and state next" in out
