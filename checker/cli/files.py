"""Files that are written whole or not at all."""

import os
import stat
import tempfile
from contextlib import suppress
from pathlib import Path

from checker.report.fault import reason_of


class Unwritten(Exception):
    """A file that could not be written; what stood there before stands there still."""


def write_file(name: str, text: str) -> None:
    """Write a file whole: it appears complete under its name, or not at all.

    It is written beside its place and moved there, so that a full disk or an interruption leaves
    what was there before. What is no regular file, such as a pipe, is written to as it is.

    Args:
        name: path of the file; an existing one is replaced and keeps its permissions.
        text: what stands in it, written in UTF-8.

    Raises:
        Unwritten: the system does not let it be written.
    """
    try:
        place = Path(os.path.realpath(name))
        if place.exists() and not place.is_file() and not place.is_dir():
            place.write_text(text, encoding="utf-8")
        else:
            _replace(place, text.encode())
    except OSError as error:
        raise Unwritten(f"{name}: the file cannot be written: {reason_of(error)}") from None


def _replace(place: Path, content: bytes) -> None:
    handle, beside = tempfile.mkstemp(prefix=f".{place.name}.", dir=place.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(beside, _mode(place))
        os.replace(beside, place)
    except BaseException:  # an interruption, too, leaves nothing behind
        with suppress(OSError):
            os.unlink(beside)
        raise


def _mode(place: Path) -> int:
    """The permissions of the file that is replaced, or those of a new one."""
    with suppress(OSError):
        return stat.S_IMODE(place.stat().st_mode)
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
