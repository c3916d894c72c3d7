"""Where words go: standard output for what was asked, standard error for complaints."""

import os
import shutil
import sys
from collections.abc import Callable
from contextlib import suppress

from checker.spec.problem import SpecUnreadable
from checker.text import plain


def terminal() -> tuple[int, bool]:
    """Width of the terminal, and whether it takes colour; 80 columns and none for a pipe."""
    dumb = os.environ.get("TERM", "") in ("dumb", "unknown")
    colour = sys.stdout.isatty() and not os.environ.get("NO_COLOR") and not dumb
    return shutil.get_terminal_size((80, 24)).columns, colour


def write(text: str) -> bool:
    """Write to standard output; a reader that has gone away is none of our concern.

    Returns:
        Whether somebody still reads.
    """
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        drop_output()
        return False
    return True


def drop_output() -> None:
    """Lead standard output nowhere: what is left in it would raise again at the very end."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def complain(unreadable: SpecUnreadable) -> None:
    """Say on standard error what keeps a file from being read, one problem a line."""
    for line in str(unreadable).split("\n"):
        say(line)


def say(message: str) -> None:
    """Say one line on standard error."""
    tell(lambda: print(plain(message), file=sys.stderr))


def tell(speak: Callable[[], None]) -> None:
    """Write to standard error; where that is closed or full, there is nobody to tell."""
    if sys.stderr is not None:
        with suppress(OSError):
            speak()
