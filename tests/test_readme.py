"""What the README shows is true: commands, report, families. WRITE_GOLDEN=1 renews it."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
import yaml

import checker.cli
from checker.review.rulebook import shipped_rulebook
from checker.shipped import shipped

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
SHOWN_LINES = 44
CUT = "[...]"
WALK = re.compile(
    r'<!-- walk: (?P<lines>\d+) lines(?: after "(?P<after>[^"]+)")? -->\n'
    r"```\n\$ (?P<command>[^\n]+)\n(?P<output>.*?)```\n",
    re.DOTALL,
)
REPORT = re.compile(
    r"(<!-- report: thrustline (.*), (\d+) columns -->\n```\n)(.*?)(```\n)", re.DOTALL
)
FAMILIES = re.compile(r"(<!-- families -->\n\n)((?:\|[^\n]*\n)*)")


def held(text: str, start: int, end: int, true: str) -> None:
    """The stretch of the README is what it should be; renewed on demand."""
    if os.environ.get("WRITE_GOLDEN"):
        README.write_text(text[:start] + true + text[end:], encoding="utf-8")
    else:
        assert text[start:end] == true


def test_the_report_is_a_real_one(capfd, monkeypatch):
    text = README.read_text(encoding="utf-8")
    found = REPORT.search(text)
    monkeypatch.chdir(ROOT)
    monkeypatch.setenv("COLUMNS", found[3])
    monkeypatch.setenv("NO_COLOR", "1")
    checker.cli.run(found[2].split())
    lines = capfd.readouterr().out.splitlines()[:SHOWN_LINES]
    held(text, *found.span(4), "\n".join(lines).rstrip() + "\n")


def test_the_walk_runs_as_it_is_written(tmp_path):
    (tmp_path / "examples").symlink_to(ROOT / "examples")
    (tmp_path / "thrustline").write_text(f'#!/bin/sh\nexec {sys.executable} -m checker "$@"\n')
    (tmp_path / "thrustline").chmod(0o755)
    environment = {
        **os.environ,
        "PATH": f"{tmp_path}:{os.environ['PATH']}",
        "PYTHONPATH": str(ROOT),
        "COLUMNS": "92",
        "NO_COLOR": "1",
    }
    text = README.read_text(encoding="utf-8")
    steps = list(WALK.finditer(text))
    assert len(steps) >= 10
    told = text
    for step in steps:
        done = subprocess.run(
            ["bash", "-c", step["command"]],
            cwd=tmp_path,
            env=environment,
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.stderr == "", step["command"]
        assert done.returncode in (0, 1), step["command"]
        start, end = step.span("output")
        told = f"{told[: len(told) - len(text) + start]}{shown(step, done.stdout)}{text[end:]}"
    held(text, 0, len(text), told)
    assert (tmp_path / "mine.html").read_text().startswith("<!doctype html>")
    assert "Ben Ode" in (tmp_path / "mine.signoff").read_text()


def shown(step, printed):
    """As much of an output as the README shows."""
    lines = printed.splitlines()
    first = next(i for i, line in enumerate(lines) if line.startswith(step["after"] or ""))
    kept = lines[first : first + int(step["lines"])]
    before = [CUT] if first else []
    after = [CUT] if first + len(kept) < len(lines) else []
    return "".join(f"{line}\n" for line in (*before, *kept, *after))


def test_the_families_are_those_of_the_rulebook():
    text = README.read_text(encoding="utf-8")
    rules = shipped_rulebook().rules
    rows = ["| family | rules | about |", "| --- | --- | --- |"]
    for file in sorted(shipped("rules").glob("*.yaml")):
        about = yaml.safe_load(file.read_text(encoding="utf-8"))["about"]
        count = sum(rule.family == file.stem for rule in rules)
        rows.append(f"| {file.stem} | {count} | {' '.join(about.split())} |")
    held(text, *FAMILIES.search(text).span(2), "\n".join(rows) + "\n")


def test_the_readme_says_what_is_not_judged():
    text = README.read_text(encoding="utf-8")
    headings = re.findall(r"^## (.*)$", text, re.MULTILINE)
    assert {"What it does not judge", "Cautions", "What the rules look at"} <= set(headings)


def test_the_test_command_is_what_ci_runs():
    text = README.read_text(encoding="utf-8")
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    commands = re.findall(r"^    (.*(?:pip install|pytest).*)$", text, re.MULTILINE)
    assert len(commands) == 2
    install, test = commands
    assert script.rstrip().endswith(test)
    assert "-c constraints.lock -e '.[test]'" in install
    assert "-c constraints.lock -e '.[test]'" in script


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md"])
def test_paths_named_in_the_documents_exist(name):
    text = (ROOT / name).read_text(encoding="utf-8")
    paths = re.findall(r"`((?:checker|examples|tests|rules)/[\w/.-]+)`", text)
    assert paths
    assert [path for path in paths if not (ROOT / path).exists()] == []


def test_the_house_rulebook_shown_is_read(tmp_path):
    from checker.review.rulebook import with_house_rules

    text = README.read_text(encoding="utf-8")
    shown = re.search(r"```yaml\n(thrustline_rulebook.*?)```", text, re.DOTALL)[1]
    file = tmp_path / "shop.yaml"
    file.write_text(shown, encoding="utf-8")
    changes = with_house_rules(shipped_rulebook(), file).changes
    assert [(change.rule, change.looser) for change in changes] == [
        ("gears.contact-ratio-spur", False)
    ]
