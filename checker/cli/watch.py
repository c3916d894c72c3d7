"""Review again whenever a file changes."""

import os
import time
from collections.abc import Callable, Sequence

_INTERVAL = 0.4
_State = tuple[int, int, int] | None


def watch(
    needed: Sequence[str],
    beside: Sequence[str],
    look: Callable[[], bool],
    *,
    wait: Callable[[float], None] = time.sleep,
    stat: Callable[[str], os.stat_result] = os.stat,
) -> None:
    """Look at once and after each change, until ``look`` says that nobody reads any more.

    A change counts when it has settled for one interval, so that a file is not read half written.
    A needed file that is missing, as for a moment while an editor replaces it, is waited for.

    Args:
        needed: files without which there is nothing to look at.
        beside: files that may come and go.
        look: what to do; false ends the watch.
        wait: how to let time pass.
        stat: how to ask for the state of a file.
    """
    files = [*needed, *beside]

    def states() -> list[_State]:
        return [_state(file, stat) for file in files]

    seen = states()
    while look():
        latest = seen
        while True:
            wait(_INTERVAL)
            before, latest = latest, states()
            if latest == before != seen and None not in latest[: len(needed)]:
                break
        seen = latest


def _state(file: str, stat: Callable[[str], os.stat_result]) -> _State:
    """What changes with a file, ``None`` where it is not there."""
    try:
        found = stat(file)
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino
