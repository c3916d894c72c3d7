"""``thrustline first-run``: a card for the first run."""

import datetime

import click

from checker.cli.files import write_file
from checker.cli.options import book_of, house_rulebook, on_date
from checker.cli.output import say, terminal, write
from checker.report import status


@click.command(short_help="A card for the first run of a drive.")
@click.argument("spec", metavar="SPEC")
@on_date
@house_rulebook
@click.option("--report", metavar="FILE", help="Also write the card as an HTML page to print.")
def command(spec: str, on: datetime.date, rulebook: str | None, report: str | None) -> int:
    """Print what to check, which speeds to step through and when to stop.

    It is an aid to the builder's own plan. A drive on hold gets no card.
    """
    from checker.report.first_run_card import card_sheet, html_card
    from checker.report.results import review_of
    from checker.review.first_run import OnHold, first_run

    review = review_of(spec, book_of(rulebook), on)
    try:
        card = first_run(review)
    except OnHold as held:
        say(f"{spec}: no card: {held}")
        return status.BROKEN if review.has_broken else status.FINDINGS
    if report is not None:
        write_file(report, html_card(card))
    width, colour = terminal()
    write(card_sheet(card, width=width, colour=colour))
    return status.CLEAR
