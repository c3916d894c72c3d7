"""Watching: again after each change that has settled, and never while a file is missing."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from checker import cli
from checker.cli.watch import watch

ROOT = Path(__file__).parents[2]
SPEC = ROOT / "tests" / "report" / "sheet_spec.yaml"


def run(*arguments) -> int:
    return cli.run([str(each) for each in arguments])


def looks_at(history: list[dict[str, int]], needed=("spec",), beside=("remarks",)) -> list[int]:
    """The moments at which it looks, while the files go through a history of their states."""
    moment = 0
    looked: list[int] = []

    def wait(_: float) -> None:
        nonlocal moment
        moment += 1
        if moment == len(history):
            raise KeyboardInterrupt

    def stat(file: str) -> os.stat_result:
        if file not in history[moment]:
            raise FileNotFoundError(file)
        changed = history[moment][file]
        return os.stat_result((0, changed, 0, 0, 0, 0, 0, changed, changed, changed))

    def look() -> bool:
        looked.append(moment)
        return True

    with pytest.raises(KeyboardInterrupt):
        watch(needed, beside, look, wait=wait, stat=stat)
    return looked


A, B, C = {"spec": 1}, {"spec": 2}, {"spec": 3}


@pytest.mark.parametrize(
    ("history", "looked"),
    [
        ([A, A, A, A], [0]),
        ([A, A, B, B, B], [0, 3]),  # settled one interval after the change
        ([A, B, C, C, C], [0, 3]),  # not half written
        ([A, {}, {}, {}, B, B, B], [0, 5]),  # away while an editor replaces it
        ([A, {}, A, A, A], [0]),  # back as it was
        ([{}, {}, A, A, A], [0, 3]),
        ([A, {**A, "remarks": 1}, {**A, "remarks": 1}, A, A, A], [0, 2, 4]),  # comes and goes
        ([A, B, B, A, A, A], [0, 2, 4]),
    ],
)
def test_it_looks_after_each_change_that_has_settled(history, looked):
    assert looks_at(history) == looked


def test_it_watches_every_file():
    both = {"spec": 1, "house": 1}
    changed = {"spec": 1, "house": 2}
    assert looks_at([both, changed, changed], needed=("spec", "house")) == [0, 2]


def test_it_ends_when_nobody_reads():
    watch(["spec"], [], lambda: False, wait=lambda _: pytest.fail("it goes on"))


@pytest.fixture
def two_looks(monkeypatch):
    """Let a watch look twice, the second time after a change of ours; keep what it watches."""
    seen = {}

    def put(change):
        def instead(needed, beside, look):
            seen.update(needed=list(needed), beside=list(beside))
            look()
            change()
            look()
            raise KeyboardInterrupt

        monkeypatch.setattr("checker.cli.watch.watch", instead)
        return seen

    return put


def test_a_watched_review_is_made_again(tmp_path, capsys, two_looks):
    spec, house = tmp_path / "a.yaml", tmp_path / "house.yaml"
    spec.write_bytes(SPEC.read_bytes())
    house.write_text("thrustline_rulebook: 1\nname: Shop\n", encoding="utf-8")
    seen = two_looks(lambda: spec.write_bytes(SPEC.read_bytes().replace(b"Sheet", b"Other")))
    assert run("review", spec, "--watch", "--rulebook", house) == 130
    out, err = capsys.readouterr()
    assert out.index("Design review: Sheet") < out.index("Design review: Other")
    assert err.splitlines().count("Waiting for a change; Ctrl-C ends it.") == 2
    assert seen["needed"] == [str(spec), str(house)]
    assert seen["beside"] == [str(tmp_path / "a.remarks"), str(tmp_path / "a.signoff")]


def test_an_unreadable_rulebook_is_waited_for(tmp_path, capsys, two_looks):
    house = tmp_path / "house.yaml"
    house.write_text("thrustline_rulebook: 1\n", encoding="utf-8")
    two_looks(lambda: house.write_text("thrustline_rulebook: 1\nname: Shop\n", encoding="utf-8"))
    assert run("review", SPEC, "--watch", "--rulebook", house) == 130
    out, err = capsys.readouterr()
    assert out.count("Design review: Sheet") == 1
    assert err.startswith(f"{house}:1:1: ")


@pytest.mark.parametrize(
    ("arguments", "message"),
    [(("-",), "--watch takes files"), ((SPEC, "--format", "json"), "leave out --format")],
)
def test_what_cannot_be_watched_is_wrong_usage(capsys, arguments, message):
    assert run("review", "--watch", *arguments) == 3
    assert message in capsys.readouterr().err


def test_interrupt_ends_a_watch(tmp_path, listening):
    spec = tmp_path / "a.yaml"
    spec.write_bytes(SPEC.read_bytes())
    command = [sys.executable, "-m", "checker", "review", str(spec), "--watch"]
    with subprocess.Popen(
        command,
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stderr.readline() == "Waiting for a change; Ctrl-C ends it.\n"
        spec.write_bytes(SPEC.read_bytes().replace(b"50 kW", b"50 kw"))
        assert process.stderr.readline().startswith(f"{spec}:9:31: ")
        process.send_signal(signal.SIGINT)
        process.communicate(timeout=60)
    assert process.returncode == 130


def test_a_watch_ends_when_its_reader_has_gone():
    command = [sys.executable, "-m", "checker", "review", str(SPEC), "--watch"]
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        command, cwd=ROOT, stdout=writing, stderr=subprocess.PIPE, check=False, timeout=60
    )
    os.close(writing)
    assert done.returncode == 1
