"""Files are written whole or not at all."""

import os
import stat

import pytest

from checker.cli.files import Unwritten, write_file


def test_a_file_is_written_whole(tmp_path):
    write_file(str(tmp_path / "report.html"), "täglich\n")
    assert (tmp_path / "report.html").read_bytes() == "täglich\n".encode()
    assert os.listdir(tmp_path) == ["report.html"]


def test_a_new_file_has_the_permissions_of_any_new_file(tmp_path):
    (tmp_path / "plain").write_text("")
    write_file(str(tmp_path / "new"), "")
    assert (tmp_path / "new").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_a_replaced_file_keeps_its_permissions_and_its_link(tmp_path):
    file, link = tmp_path / "file", tmp_path / "link"
    file.write_text("old")
    file.chmod(0o640)
    link.symlink_to(file)
    write_file(str(link), "new")
    assert link.is_symlink()
    assert file.read_text() == "new"
    assert stat.S_IMODE(file.stat().st_mode) == 0o640


@pytest.mark.parametrize("error", [OSError(28, "No space left on device"), KeyboardInterrupt()])
def test_what_was_there_stands_when_writing_fails(tmp_path, monkeypatch, error):
    file = tmp_path / "report.html"
    file.write_text("old")

    def fail(_):
        raise error

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises((Unwritten, KeyboardInterrupt)):
        write_file(str(file), "new")
    assert file.read_text() == "old"
    assert os.listdir(tmp_path) == ["report.html"]


@pytest.mark.parametrize("name", ["", "missing/report.html"])
def test_a_place_that_takes_no_file_is_one_line(tmp_path, name):
    with pytest.raises(Unwritten, match="the file cannot be written: "):
        write_file(str(tmp_path / name), "text")


def test_a_pipe_is_written_to(tmp_path):
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)
    write_file(str(pipe), "text")
    assert os.read(reader, 10) == b"text"
    os.close(reader)
