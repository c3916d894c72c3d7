"""Many specs: one after the other or in several processes, with the same output."""

import gc
import sys
from collections.abc import Iterator, Sequence

import click

from checker.cli.formats import Piece, Work

_FEW = 3
"""So many reviews leave less behind than looking for it costs."""


def pieces_of(work: Work, specs: Sequence[str], jobs: int) -> list[Piece]:
    """Review each spec, with a bar on a terminal, where there is somebody to wait.

    Args:
        work: what is asked of each.
        specs: the files, in order.
        jobs: processes to share them between.
    """
    if len(specs) > _FEW:
        gc.enable()
    quiet = len(specs) == 1 or sys.stderr is None or not sys.stderr.isatty()
    with click.progressbar(
        _made(work, specs, min(jobs, len(specs))),
        length=len(specs),
        label="Reviewing",
        file=sys.stderr,
        hidden=quiet,
    ) as bar:
        return list(bar)


def _made(work: Work, specs: Sequence[str], jobs: int) -> Iterator[Piece]:
    if jobs > 1:
        from checker.cli.processes import alongside

        yield from alongside(work, specs, jobs)
        return
    for spec in specs:
        yield work.piece(work.result(spec))
