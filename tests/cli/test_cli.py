"""The command line: exit statuses, several files, standard input, colour, closed pipes."""

import datetime
import io
import json
import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from checker import __version__, cli
from checker.measures.registry import Measure, measures
from checker.report import results, status
from checker.review.rulebook import Rulebook, rules_of
from checker.spec.document import read_document

ROOT = Path(__file__).parents[2]
SPEC = Path(__file__).parents[1] / "report" / "sheet_spec.yaml"
RULES_FILE = SPEC.with_name("sheet_rules.yaml")
ON = ("--on", "2026-06-01")

RULES = b"""
family: trial
about: Rules of the tests.
rules:
  - id: trial.oil
    title: The oil stays cool
    looks_at: point
    measure: oil_temperature
    limits: {LEVEL: {at_most: LIMIT}}
    why: Hot oil ages.
    remedy: Cool it.
    sources: [{kind: practice, cite: "common practice, no source"}]
    wrong_when: none known
  - id: trial.mass
    title: The mass of the propeller is stated
    looks_at: propeller
    measure: mass
    limits: {MASS: {at_least: 1 kg}}
    why: It loads the bearings.
    remedy: State it.
    sources: [{kind: practice, cite: "common practice, no source"}]
    wrong_when: none known
"""


@pytest.fixture
def rules(monkeypatch):
    """Put a small rulebook in the place of the shipped one."""

    def put(level="advisory", limit="200 degC", mass="advisory"):
        text = RULES.replace(b"LEVEL", level.encode()).replace(b"LIMIT", limit.encode())
        document = read_document(text.replace(b"MASS", mass.encode()), "trial.yaml")
        book = Rulebook(tuple(rules_of(document, "trial")))
        monkeypatch.setattr("checker.review.rulebook.shipped_rulebook", lambda: book)
        return book

    return put


@pytest.fixture
def failing(rules, monkeypatch):
    """A rulebook with a rule that breaks."""
    book = rules()
    broken = Measure("mass", "propeller", "kg", "", False, "", lambda *_: 1 / 0)
    monkeypatch.setitem(measures(), ("propeller", "mass"), broken)
    return book


@pytest.fixture
def unreadable(tmp_path):
    file = tmp_path / "bad.yaml"
    file.write_bytes(SPEC.read_bytes().replace(b"50 kW", b"50 kw"))
    return str(file)


def run(*arguments) -> int:
    return cli.run([str(each) for each in arguments])


def started(*arguments, **settings) -> subprocess.CompletedProcess:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **settings.pop("env", {})}
    command = [sys.executable, "-m", "checker", *map(str, arguments)]
    return subprocess.run(command, env=environment, capture_output=True, check=False, **settings)


@pytest.mark.parametrize(
    ("level", "limit", "mass", "stop_at", "expected"),
    [
        ("warning", "200 degC", "advisory", None, 0),
        ("advisory", "90 degC", "advisory", None, 0),
        ("advisory", "90 degC", "advisory", "advisory", 1),
        ("caution", "90 degC", "advisory", None, 1),
        ("caution", "90 degC", "advisory", "warning", 0),
        ("warning", "90 degC", "advisory", "warning", 1),
        ("advisory", "200 degC", "caution", None, 1),  # not shown counts at its level
    ],
)
def test_status_tells_what_is_open(rules, capsys, level, limit, mass, stop_at, expected):
    rules(level, limit, mass)
    chosen = ("--stop-at", stop_at) if stop_at else ()
    assert run("review", SPEC, *ON, *chosen) == expected
    assert "Design review: Sheet" in capsys.readouterr().out


def test_unreadable_spec_is_told_by_place(rules, capsys, unreadable):
    rules()
    assert run("review", unreadable) == 2
    out, err = capsys.readouterr()
    assert out == ""
    (line,) = err.splitlines()
    assert line.startswith(f"{unreadable}:9:31: engine.maximum_continuous.power: ")
    assert "; found " in line
    assert "; expected " in line


@pytest.mark.parametrize(
    ("name", "reason"), [("missing.yaml", "no such file or directory"), (".", "is a directory")]
)
def test_file_that_cannot_be_opened_is_one_line(rules, capsys, tmp_path, name, reason):
    rules()
    file = tmp_path / name
    assert run("review", file) == 2
    assert capsys.readouterr().err == f"{file}: the file cannot be opened: {reason}\n"


def test_file_without_permission_is_one_line(rules, capsys, monkeypatch):
    rules()

    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("builtins.open", refuse)
    assert run("review", "some.yaml") == 2
    told = "some.yaml: the file cannot be opened: permission denied\n"
    assert capsys.readouterr().err == told


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((), "Commands:"),
        (("review",), "Missing argument"),
        (("review", SPEC, "--on", "tomorrow"), "'tomorrow' is not a date such as 2026-05-31"),
        (("review", SPEC, "--stop-at", "never"), "--stop-at"),
        (("review", SPEC, "--format", "xml"), "--format"),
        (("review", "-", "-"), "can be read only once"),
        (("examine", SPEC), "No such command"),
        (("derive", SPEC, "shafts.input.torqe"), "Near it: torque"),
        (("rulebook", "trial.oyl"), "Near it: trial.oil"),
        (("schema", "drive"), "'drive' is not one of"),
    ],
)
def test_wrong_usage(rules, capsys, arguments, message):
    rules()
    assert run(*arguments) == 3
    out, err = capsys.readouterr()
    assert message in err
    assert out == ""


def test_broken_rule(failing, capsys):
    assert run("review", SPEC, *ON) == 4
    assert "ZeroDivisionError" in capsys.readouterr().out


def test_internal_error_is_one_line_and_spares_the_other_files(rules, capsys, monkeypatch):
    rules()
    review_spec = results.review_spec

    def fails_once(source, name, book, on):
        if name == str(SPEC):
            return review_spec(source, name, book, on)
        raise KeyError("gear\x1b[2J")

    monkeypatch.setattr(results, "review_spec", fails_once)
    assert run("review", RULES_FILE, SPEC) == 4
    out, err = capsys.readouterr()
    assert "Design review: Sheet" in out
    assert err.startswith(f"{RULES_FILE}: internal error: KeyError: 'gear\\x1b[2J' (")
    assert err.count("\n") == 1


def test_fault_outside_a_review_is_an_internal_error(capsys, monkeypatch):
    def fails():
        raise RuntimeError("no rulebook")

    monkeypatch.setattr("checker.review.rulebook.shipped_rulebook", fails)
    assert run("rulebook") == 4
    assert capsys.readouterr().err.startswith("thrustline: internal error: RuntimeError: no rule")


@pytest.mark.parametrize(
    ("statuses", "gravest"),
    [((0, 1), 1), ((1, 2, 0), 2), ((2, 4, 1), 4), ((3, 1), 3), ((2, 3), 2), ((0, 0), 0)],
)
def test_gravest_status_counts(statuses, gravest):
    assert status.worst(statuses) == gravest


def test_several_files(rules, capsys, unreadable):
    rules()
    assert run("review", SPEC, unreadable, SPEC, *ON) == 2
    out, err = capsys.readouterr()
    assert out.count("Design review: Sheet") == 2
    assert err.count("\n") == 1
    assert run("review", SPEC, unreadable, SPEC, *ON, "--format", "json") == 2
    out, err = capsys.readouterr()
    states = [each["state"] for each in json.loads(out)["reviews"]]
    assert states == ["reviewed", "unreadable", "reviewed"]
    assert err.count("\n") == 1


def test_standard_input(rules, capsys, monkeypatch):
    rules()
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(SPEC.read_bytes())))
    assert run("review", "-", *ON) == 0
    assert "Spec        standard input, sha256" in capsys.readouterr().out


COMMANDS = [
    ("review", SPEC),
    ("review", SPEC, "--format", "json"),
    ("derive", SPEC, "drive.ratio"),
    ("schema",),
    ("--help",),
]


def in_shell(arguments, redirection) -> subprocess.CompletedProcess:
    command = [sys.executable, "-m", "checker", *map(str, arguments)]
    line = f"{shlex.join(command)} {redirection}"
    return subprocess.run(line, shell=True, cwd=ROOT, capture_output=True, check=False)


@pytest.mark.parametrize("arguments", COMMANDS)
@pytest.mark.parametrize(
    ("redirection", "reason"),
    [
        (">&-", b"standard output is closed"),
        ("> /dev/full", b"the output could not be written: no space left on device"),
    ],
)
def test_output_that_goes_nowhere_is_one_line(arguments, redirection, reason):
    done = in_shell(arguments, redirection)
    assert (done.returncode, done.stderr) == (4, b"thrustline: " + reason + b"\n")


def test_closed_standard_input_is_one_line():
    done = in_shell(("review", "-"), "<&-")
    assert (done.returncode, done.stdout) == (2, b"")
    assert done.stderr == b"standard input: it is closed\n"


@pytest.mark.parametrize("redirection", ["2>&-", "2> /dev/full"])
@pytest.mark.parametrize(
    ("arguments", "expected"), [(("review", "missing.yaml"), 2), (("examine", SPEC), 3)]
)
def test_the_status_tells_where_messages_go_nowhere(arguments, expected, redirection):
    done = in_shell(arguments, redirection)
    assert (done.returncode, done.stdout) == (expected, b"")


def test_date_defaults_to_today(rules, capsys):
    rules()
    run("review", SPEC, "--format", "json")
    today = datetime.date.today().isoformat()
    assert json.loads(capsys.readouterr().out)["on"] <= today


@pytest.mark.parametrize(
    ("settings", "coloured"),
    [
        ({"TERM": "xterm"}, True),
        ({"TERM": "xterm", "NO_COLOR": ""}, True),  # no-color.org: only where it is not empty
        ({"TERM": "xterm", "NO_COLOR": "1"}, False),
        ({"TERM": "dumb"}, False),
    ],
)
def test_colour_on_a_terminal(rules, capsys, monkeypatch, settings, coloured):
    rules()
    monkeypatch.delenv("NO_COLOR", raising=False)
    for name, value in settings.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
    run("review", SPEC, *ON)
    assert ("\x1b[" in capsys.readouterr().out) is coloured


def test_no_colour_in_a_pipe(rules, capsys, monkeypatch):
    rules()
    monkeypatch.setenv("FORCE_COLOR", "1")
    run("review", SPEC, *ON)
    assert "\x1b" not in capsys.readouterr().out


@pytest.mark.parametrize("width", [60, 132])
def test_width_of_the_terminal(rules, capsys, monkeypatch, width):
    rules()
    monkeypatch.setenv("COLUMNS", str(width))
    run("rulebook", "trial.oil")
    run("review", SPEC, *ON)
    lengths = [len(line) for line in capsys.readouterr().out.splitlines()]
    assert width - 30 < max(lengths) <= width


def test_house_rulebook(rules, capsys, tmp_path):
    rules("caution", "200 degC")
    house = tmp_path / "shop.yaml"
    house.write_text(
        "thrustline_rulebook: 1\nname: Shop\n"
        "limits: [{rule: trial.oil, limits: {caution: {at_most: 100 degC}}}]\n"
    )
    assert run("review", SPEC, *ON, "--rulebook", house) == 1
    assert "trial.oil, caution: at most 200 degC becomes at most 100 degC, tighter" in (
        capsys.readouterr().out
    )
    house.write_text("thrustline_rulebook: 1\n")
    assert run("review", SPEC, "--rulebook", house) == 2
    assert capsys.readouterr().err.startswith(f"{house}:1:1: ")
    assert run("review", SPEC, "--rulebook", tmp_path / "none.yaml") == 2
    assert "cannot be opened" in capsys.readouterr().err


@pytest.mark.parametrize("of", ["spec", "report", "rulebook"])
def test_schemas_are_schemas(capsys, of):
    assert run("schema", of) == 0
    document = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator.check_schema(document)
    assert document["title"].startswith("Thrustline ")


def test_derive(rules, capsys):
    rules()
    assert run("derive", SPEC, "shafts.prop.speed", "--point", "cruise") == 0
    assert capsys.readouterr().out.startswith("shafts.prop.speed at cruise = 2000 rpm\n")
    assert run("derive", SPEC, "gears.pinion.face_width") == 1
    assert "State " in capsys.readouterr().out
    assert run("derive", "missing.yaml", "gears.pinion.teeth") == 2


def test_rulebook_lists_what_is_in_force(rules, capsys):
    rules()
    assert run("rulebook") == 0
    assert capsys.readouterr().out.startswith("Rulebook of 2 rules\n\ntrial\n  trial.oil (adv")


def test_interrupt_ends_quietly(rules, capsys, monkeypatch):
    rules()

    def interrupt(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("checker.report.results.review_spec", interrupt)
    assert run("review", SPEC) == 130
    assert capsys.readouterr().err.strip() == ""


def test_interrupt_ends_quietly_while_modules_are_imported():
    code = (
        "import sys\n"
        "class Interrupted:\n"
        "    def find_spec(self, name, *_):\n"
        "        if name == 'click':\n"
        "            raise KeyboardInterrupt\n"
        "sys.meta_path.insert(0, Interrupted())\n"
        "from checker.__main__ import main\n"
        "main()\n"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (130, b"")


def test_help_tells_every_status(capsys):
    run("--help")
    told = capsys.readouterr().out
    statuses = [value for name, value in vars(status).items() if name.isupper() and name[0] != "_"]
    assert len(statuses) == 6
    assert all(re.search(rf"^ +{each}  ", told, re.MULTILINE) for each in statuses)


def test_version():
    done = started("--version")
    assert (done.returncode, done.stdout.decode()) == (0, f"thrustline {__version__}\n")


@pytest.mark.parametrize("form", ["terminal", "json"])
def test_closed_pipe_ends_quietly(form):
    command = [sys.executable, "-m", "checker", "review", str(SPEC), "--format", form]
    reading, writing = os.pipe()
    os.close(reading)
    with subprocess.Popen(command, cwd=ROOT, stdout=writing, stderr=subprocess.PIPE) as process:
        os.close(writing)
        _, err = process.communicate()
    assert (process.returncode, err) == (1, b"")


def test_the_same_bytes_whatever_the_hash_seed():
    outputs = {
        started("review", SPEC, *ON, "--format", "json", env={"PYTHONHASHSEED": seed}).stdout
        for seed in ("0", "1", "4242")
    }
    assert len(outputs) == 1
    assert b"Sheet" in outputs.pop()


def test_a_stream_that_is_not_unicode_still_gets_everything():
    done = started("derive", SPEC, "shafts.prop.speed", env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0
    assert rb"\u03c9" in done.stdout


def test_json_needs_no_terminal_and_no_schema_library():
    code = (
        "import sys; from checker.cli import run; "
        f"run(['review', {str(SPEC)!r}, '--format', 'json']); "
        "slow = {'rich', 'jsonschema', 'numpy', 'jinja2'} & set(sys.modules); "
        "sys.exit(', '.join(slow) or 0)"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr
