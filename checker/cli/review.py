"""``thrustline review``: the main job."""

import datetime
import gc
import os
from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

import click

from checker.cli.formats import FORMATS, Work, worst_of
from checker.cli.options import A_FILE, book_of, house_rulebook, on_date, stop_at_level
from checker.cli.output import complain, say, terminal, write
from checker.report import status
from checker.spec.problem import SpecUnreadable

if TYPE_CHECKING:
    from checker.report.results import Result
    from checker.report.since import OldReport
    from checker.review.rule import Level

_MOST_JOBS = 64


@click.command(short_help="Review specs and print what the rules found.")
@click.argument("specs", nargs=-1, required=True, metavar="SPEC...", type=A_FILE)
@on_date
@click.option(
    "--format",
    "form",
    type=click.Choice(FORMATS),
    default="terminal",
    help="A sheet to read, JSON with every outcome, SARIF 2.1.0 or JUnit XML.",
)
@stop_at_level
@click.option(
    "--since",
    metavar="OLD.json",
    type=A_FILE,
    help="An older JSON report: only what is worse now counts for the exit status.",
)
@house_rulebook
@click.option(
    "--report",
    metavar="FILE",
    type=A_FILE,
    help="Also write the review of one SPEC as an HTML page.",
)
@click.option("--all", "everything", is_flag=True, help="Also list what meets or does not apply.")
@click.option(
    "--jobs",
    type=click.IntRange(0, _MOST_JOBS),
    default=1,
    help="Processes to share the specs between; 0 for one a processor, 1 if left out.",
)
@click.option("--watch", "watches", is_flag=True, help="Review again when a file changes.")
def command(
    specs: tuple[str, ...],
    on: datetime.date,
    form: str,
    stop_at: "Level",
    since: str | None,
    rulebook: str | None,
    report: str | None,
    everything: bool,
    jobs: int,
    watches: bool,
) -> int:
    """Review each SPEC and print what the rules found; - is standard input."""
    _refuse(specs, form, report, watches)

    def review() -> _Reviewed:
        width, colour = terminal()
        book, old = book_of(rulebook), _old(since)
        alone = len(specs) == 1
        work = Work(form, book, on, stop_at, everything, old, alone, width, colour)
        return _review(work, specs, jobs or os.cpu_count() or 1, report)

    if watches:
        return _watch(specs, rulebook, review)
    return review().status


class _Reviewed(NamedTuple):
    """The exit status of a review, and whether somebody still reads what is printed."""

    status: int
    is_read: bool


def _refuse(specs: tuple[str, ...], form: str, report: str | None, watches: bool) -> None:
    """Refuse what does not go together.

    Raises:
        UsageError: saying what.
    """
    from checker.report.results import STANDARD_INPUT

    if specs.count(STANDARD_INPUT) > 1:
        raise click.UsageError("Standard input can be read only once.")
    if report is not None and len(specs) > 1:
        raise click.UsageError("A report holds one spec: give each its own --report.")
    if watches and STANDARD_INPUT in specs:
        raise click.UsageError("Standard input does not change: --watch takes files.")
    if watches and form != "terminal":
        raise click.UsageError("--watch prints sheets: leave out --format.")


def _old(since: str | None) -> "OldReport | None":
    if since is None:
        return None
    from checker.report.since import old_report

    return old_report(since)


def _review(work: Work, specs: tuple[str, ...], jobs: int, report: str | None) -> _Reviewed:
    """Review, print, say what could not be read, and write the page."""
    result = None
    if report is not None:
        result = work.result(specs[0])
        pieces = [work.piece(result)]
    else:
        from checker.cli.many import pieces_of

        pieces = pieces_of(work, specs, jobs)
    is_read = write(work.output(pieces))
    for line in (line for piece in pieces for line in piece.complaints):
        say(line)
    if work.old is not None and work.form != "terminal":
        for sentence in work.old.differences(work.book):
            say(sentence)
    if report is not None and result is not None:
        _write_report(report, result)
    return _Reviewed(worst_of(pieces), is_read)


def _watch(specs: tuple[str, ...], rulebook: str | None, review: Callable[[], _Reviewed]) -> int:
    """Review again and again; the status is that of the last review."""
    from checker.cli.watch import watch
    from checker.report.beside import remarks_file, sign_off_file

    gc.enable()  # many reviews in a row leave much behind
    last = _Reviewed(status.CLEAR, True)

    def look() -> bool:
        nonlocal last
        click.clear()
        try:
            last = review()
        except SpecUnreadable as unreadable:  # the house rulebook, or the older report
            complain(unreadable)
        say("Waiting for a change; Ctrl-C ends it.")
        return last.is_read

    needed = [*specs, *([rulebook] if rulebook is not None else [])]
    beside = [name(spec) for spec in specs for name in (remarks_file, sign_off_file)]
    watch(needed, beside, look)
    return last.status


def _write_report(file: str, result: "Result") -> None:
    """Write the page; what is no review has been complained of and leaves the file as it was."""
    from checker.cli.files import write_file
    from checker.report.html.report import html_report
    from checker.report.pictures.charts import charts
    from checker.report.pictures.drawings import drawings
    from checker.review.review import Review

    if isinstance(result, Review):
        pictures = tuple(
            each
            for design in result.designs.values()
            for each in (*drawings(design), *charts(result, design))
        )
        write_file(file, html_report(result, pictures))
