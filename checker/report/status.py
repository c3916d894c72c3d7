"""Exit statuses of the command line."""

from collections.abc import Iterable

CLEAR = 0
FINDINGS = 1
UNREADABLE = 2
USAGE = 3
BROKEN = 4
INTERRUPTED = 130
"""What a shell gives for Ctrl-C."""

_WORST_FIRST = (BROKEN, UNREADABLE, USAGE, FINDINGS, CLEAR)


def worst(statuses: Iterable[int]) -> int:
    """The gravest of several statuses: a broken rule hides more than an unread file."""
    return min(statuses, key=_WORST_FIRST.index)
