"""Formats, older reports and many files on the command line: the same bytes however shared out."""

import datetime
import io
import json
import os
import pickle
import shlex
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path
from xml.etree import ElementTree

import pytest

from checker import cli
from checker.cli.formats import FORMATS, Work
from checker.report import results
from checker.report.since import old_report
from checker.review.rulebook import shipped_rulebook

ROOT = Path(__file__).parents[2]
SPEC = ROOT / "tests" / "report" / "sheet_spec.yaml"
ON = ("--on", "2026-06-01")


def run(*arguments) -> int:
    return cli.run([str(each) for each in arguments])


def command_of(*arguments) -> list[str]:
    return [sys.executable, "-m", "checker", *map(str, arguments)]


@pytest.fixture
def specs(tmp_path, monkeypatch) -> list[str]:
    """Names of specs: two that are read, one that is none, one that is missing."""
    monkeypatch.chdir(tmp_path)
    shutil.copy(SPEC, "first.yaml")
    text = SPEC.read_text(encoding="utf-8")
    Path("second.yaml").write_text(text.replace("power: 52 kW", "power: 45 kW"), encoding="utf-8")
    Path("bad.yaml").write_text(text.replace("50 kW", "50 kw"), encoding="utf-8")
    return ["first.yaml", "bad.yaml", "second.yaml", "missing.yaml", "first.yaml"]


@pytest.mark.parametrize("form", FORMATS)
def test_processes_give_the_same_bytes_in_the_same_order(specs, capsys, form):
    asked = ("review", *ON, "--format", form, *specs)
    alone = (run(*asked), capsys.readouterr())
    shared = (run(*asked, "--jobs", 3), capsys.readouterr())
    assert shared == alone
    assert alone[0] == 2
    assert alone[1].out
    assert len(alone[1].err.splitlines()) == 2


def test_formats_hold_every_file(specs, capsys):
    run("review", *ON, "--format", "sarif", *specs)
    (sarif,) = json.loads(capsys.readouterr().out)["runs"]
    uris = [each["location"]["uri"] for each in sarif["artifacts"]]
    assert uris == list(dict.fromkeys(specs))
    assert sarif["invocations"][0]["exitCode"] == 2
    run("review", *ON, "--format", "junit", *specs)
    suites = ElementTree.fromstring(capsys.readouterr().out.encode())
    assert [each.get("name") for each in suites] == specs


@pytest.mark.parametrize("form", FORMATS)
def test_since_an_older_report_only_what_is_worse_counts(specs, capsys, form):
    first = specs[0]
    assert run("review", *ON, "--format", "json", first) == 1
    Path("old.json").write_text(capsys.readouterr().out, encoding="utf-8")
    text = Path(first).read_text(encoding="utf-8")
    Path("worse.yaml").write_text(text.replace("clearance: 180", "clearance: 90"), encoding="utf-8")
    asked = ("review", *ON, "--format", form, "--stop-at", "advisory", "--since", "old.json")
    assert run(*asked, first) == 0
    capsys.readouterr()
    assert run(*asked, "worse.yaml") == 1
    out, err = capsys.readouterr()
    assert "old.json" in out or form == "sarif"
    assert err == ""


@pytest.mark.parametrize("form", FORMATS)
def test_other_rules_than_in_the_older_report_are_said(specs, capsys, form):
    run("review", *ON, "--format", "json", specs[0])
    data = json.loads(capsys.readouterr().out)
    data["rulebook"]["sha256"] = "0" * 64
    Path("old.json").write_text(json.dumps(data), encoding="utf-8")
    run("review", *ON, "--format", form, "--since", "old.json", specs[0])
    out, err = capsys.readouterr()
    told = "old.json was held against other rules"
    assert told in " ".join(out.split())
    assert (told in err) is (form != "terminal")


def test_a_wrong_older_report_is_one_message(specs, capsys):
    assert run("review", *ON, "--since", specs[0], specs[0]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("first.yaml: the file is no report written by 'thrustline review ")
    assert err.count("\n") == 1


def test_a_process_that_dies_costs_one_file(specs, capsys, monkeypatch):
    parent, review_spec = os.getpid(), results.review_spec

    def dies(source, name, book, on):
        if name == "second.yaml" and os.getpid() != parent:
            os._exit(9)
        return review_spec(source, name, book, on)

    monkeypatch.setattr(results, "review_spec", dies)
    assert run("review", *ON, "--format", "json", "--jobs", 2, *specs) == 4
    out, err = capsys.readouterr()
    states = [each["state"] for each in json.loads(out)["reviews"]]
    assert states == ["reviewed", "unreadable", "failed", "unreadable", "reviewed"]
    assert "second.yaml: internal error: the process that reviewed it was ended\n" in err


def test_work_and_pieces_go_from_one_process_to_another(specs, capsys):
    """Also where a process is begun afresh and not as a copy of this one."""
    run("review", *ON, "--format", "json", specs[0])
    Path("old.json").write_text(capsys.readouterr().out, encoding="utf-8")
    day, old = datetime.date(2026, 6, 1), old_report("old.json")
    for form in FORMATS:
        work = Work(form, shipped_rulebook(), day, "caution", True, old, True, 80, False)
        again = pickle.loads(pickle.dumps(work))
        pieces = [pickle.loads(pickle.dumps(again.piece(again.result(each)))) for each in specs]
        assert again.output(pieces) == work.output([work.piece(work.result(s)) for s in specs])


def test_standard_input_is_read_here(specs, capsys, monkeypatch):
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(SPEC.read_bytes())))
    assert run("review", *ON, "--format", "json", "--jobs", 2, specs[0], "-") == 1
    files = [each["file"] for each in json.loads(capsys.readouterr().out)["reviews"]]
    assert files == ["first.yaml", "standard input"]


@pytest.mark.parametrize("jobs", [1, 2])
def test_progress_is_shown_on_a_terminal_only(specs, capsys, monkeypatch, jobs):
    asked = ("review", *ON, "--format", "junit", "--jobs", jobs, specs[0], specs[2])
    run(*asked)
    quiet = capsys.readouterr()
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    run(*asked)
    told = capsys.readouterr()
    assert (quiet.err, told.out) == ("", quiet.out)
    assert "Reviewing" in told.err


def children_of(process: int) -> list[int]:
    file = Path(f"/proc/{process}/task/{process}/children")
    return [int(each) for each in file.read_text().split()] if file.exists() else []


def is_alive(process: int) -> bool:
    try:
        state = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0]
    except OSError:
        return False
    return state != "Z"


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="asks the kernel of Linux")
@pytest.mark.parametrize("to_all", [False, True])
def test_interrupt_ends_every_process(to_all, listening):
    spec = ROOT / "examples" / "tansy.yaml"
    with subprocess.Popen(
        command_of("review", "--jobs", 2, *[spec] * 60),
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
    ) as process:
        while process.poll() is None and len(children_of(process.pid)) < 2:
            time.sleep(0.01)
        children = children_of(process.pid)
        if to_all:  # as a terminal does
            os.killpg(process.pid, signal.SIGINT)
        else:
            process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)
    assert (process.returncode, out, err.strip()) == (130, b"", b"")
    assert len(children) == 2
    assert not any(map(is_alive, children))


@pytest.mark.parametrize("form", FORMATS)
def test_a_full_disk_and_a_closed_pipe_end_cleanly(form):
    command = shlex.join(command_of("review", "--jobs", 2, "--format", form, SPEC, SPEC))
    full = subprocess.run(
        f"{command} > /dev/full", shell=True, cwd=ROOT, capture_output=True, check=False
    )
    told = b"thrustline: the output could not be written: no space left on device\n"
    assert (full.returncode, full.stderr) == (4, told)
    reading, writing = os.pipe()
    os.close(reading)
    gone = subprocess.run(
        shlex.split(command), cwd=ROOT, stdout=writing, stderr=subprocess.PIPE, check=False
    )
    os.close(writing)
    assert (gone.returncode, gone.stderr) == (1, b"")


def test_the_help_of_the_program_cuts_no_sentence(capsys, monkeypatch):
    monkeypatch.setenv("COLUMNS", "80")
    run("--help")
    commands = capsys.readouterr().out.partition("Commands:\n")[2].splitlines()
    assert len(commands) == len(cli.Commands.NAMES)
    assert all(line.endswith(".") and "..." not in line for line in commands)
    assert max(map(len, commands)) <= 80
