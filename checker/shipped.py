"""Where the rulebook and the examples lie, installed or in a checkout."""

from pathlib import Path

_HERE = Path(__file__).parent


def shipped(folder: str) -> Path:
    """The folder of shipped data: inside the installed package, or beside it in a checkout."""
    installed = _HERE / folder
    return installed if installed.is_dir() else _HERE.parent / folder
