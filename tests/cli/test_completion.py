"""Completion in the shell: scripts, commands, files and ids of rules."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from checker import cli

ROOT = Path(__file__).parents[2]


def completed(*words: str) -> list[tuple[str, str]]:
    """Kind and value of what the shell is offered for the last of some words."""
    asked = {
        "_THRUSTLINE_COMPLETE": "bash_complete",
        "COMP_WORDS": " ".join(("thrustline", *words)),
        "COMP_CWORD": str(len(words)),
    }
    done = subprocess.run(
        [sys.executable, "-c", "from checker.__main__ import main; main()"],
        env={**os.environ, **asked, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=True,
    )
    return [tuple(line.split(",", 1)) for line in done.stdout.splitlines()]


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_a_script_for_each_shell(capsys, shell):
    assert cli.run(["completion", shell]) == 0
    script = capsys.readouterr().out
    assert f"_THRUSTLINE_COMPLETE={shell}_complete" in script
    program = shutil.which(shell)
    if program is not None:
        done = subprocess.run([program, "-n"], input=script.encode(), check=False)
        assert done.returncode == 0


def test_another_shell_is_wrong_usage(capsys):
    assert cli.run(["completion", "tcsh"]) == 3
    assert "'tcsh' is not one of" in capsys.readouterr().err


def test_ids_of_rules_are_completed():
    offered = [value for _, value in completed("rulebook", "gears.contact-r")]
    assert "gears.contact-ratio-spur" in offered
    assert all(value.startswith("gears.contact-r") for value in offered)


def test_commands_options_and_files_are_completed():
    assert [value for _, value in completed("comp")] == ["compare", "completion"]
    assert ("plain", "--since") in completed("review", "--si")
    assert ("plain", "sarif") in completed("review", "--format", "s")
    assert completed("review", "exa") == [("file", "exa")]
