"""Several processes that review specs; only ``review --jobs`` loads this."""

import gc
import multiprocessing
import signal
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager

from checker.cli.formats import Piece, Work

_HELD: list[Work] = []
"""In a process of its own: what is asked of every spec."""


def alongside(work: Work, specs: Sequence[str], jobs: int) -> Iterator[Piece]:
    """The pieces in the order of the specs, whichever is ready first.

    Args:
        work: what is asked of each spec.
        specs: the files, in order.
        jobs: processes to share them between.
    """
    from checker.report.results import STANDARD_INPUT

    with _Processes(work, min(jobs, len(specs))) as processes:
        # Standard input belongs to this process.
        futures = [None if spec == STANDARD_INPUT else processes.begin(spec) for spec in specs]
        for spec, future in zip(specs, futures, strict=True):
            if future is None:
                yield work.piece(work.result(spec))
                continue
            try:
                piece = future.result()
            except BrokenProcessPool:  # one that dies takes the others and what waits with it
                processes.end()
                piece = _on_its_own(work, spec)
            yield piece


def _on_its_own(work: Work, spec: str) -> Piece:
    """The piece of a spec that has a process for itself, so that its death is its own."""
    from checker.report.results import Failed, file_name

    with _Processes(work, 1) as process:
        try:
            return process.begin(spec).result()
        except BrokenProcessPool:
            return work.piece(Failed(file_name(spec), "the process that reviewed it was ended"))


class _Processes:
    """Processes that are ended, whatever happens, before this one goes on."""

    def __init__(self, work: Work, count: int) -> None:
        self._pool = ProcessPoolExecutor(count, initializer=_hold, initargs=(work,))

    def __enter__(self) -> "_Processes":
        return self

    def __exit__(self, kind: type[BaseException] | None, *_: object) -> None:
        if kind is not None:
            for process in multiprocessing.active_children():
                process.terminate()
        self.end()

    def end(self) -> None:
        """Begin nothing more, and wait for what runs."""
        self._pool.shutdown(wait=True, cancel_futures=True)

    def begin(self, spec: str) -> "Future[Piece]":
        """Have a spec reviewed, by a process that is begun now if need be."""
        with _interrupt_held_back():
            return self._pool.submit(_piece_of, spec)


@contextmanager
def _interrupt_held_back() -> Iterator[None]:
    """Keep Ctrl-C from every process begun in here; this one hears of it afterwards.

    A terminal sends it to all of them, but it is for this one to end the others.
    """
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _hold(work: Work) -> None:
    """Make a process ready."""
    gc.enable()  # many reviews in a row leave much behind
    _HELD.append(work)


def _piece_of(spec: str) -> Piece:
    (work,) = _HELD
    return work.piece(work.result(spec))
