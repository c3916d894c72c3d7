"""``thrustline compare``: what a revision changed."""

import datetime
from typing import TYPE_CHECKING

import click

from checker.cli.files import write_file
from checker.cli.options import book_of, house_rulebook, on_date, stop_at_level
from checker.cli.output import terminal, write
from checker.report import status

if TYPE_CHECKING:
    from checker.review.rule import Level


@click.command(short_help="What a revision of a spec changed.")
@click.argument("old", metavar="OLD")
@click.argument("new", metavar="NEW")
@on_date
@stop_at_level
@house_rulebook
@click.option("--report", metavar="FILE", help="Also write the comparison as an HTML page.")
@click.option("--all", "everything", is_flag=True, help="Also list every margin that moved.")
def command(
    old: str,
    new: str,
    on: datetime.date,
    stop_at: "Level",
    rulebook: str | None,
    report: str | None,
    everything: bool,
) -> int:
    """Review OLD and NEW by the same rules and print what appeared, cleared or moved.

    Exit status 1 means that something open at or above the level of --stop-at appeared or became
    worse; what stood before does not count.
    """
    from checker.report.changes_sheet import changes_sheet
    from checker.report.results import STANDARD_INPUT, review_of
    from checker.review.changes import changes

    if old == new == STANDARD_INPUT:
        raise click.UsageError("Standard input can be read only once.")
    book = book_of(rulebook)
    found = changes(review_of(old, book, on), review_of(new, book, on))
    if report is not None:
        from checker.report.html.compare import html_compare

        write_file(report, html_compare(found))
    width, colour = terminal()
    write(changes_sheet(found, width=width, colour=colour, everything=everything))
    if found.old.has_broken or found.new.has_broken:
        return status.BROKEN
    return status.FINDINGS if found.worsens(stop_at) else status.CLEAR
