"""Options that several commands share."""

import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from checker.review.rulebook import Rulebook


A_FILE = click.Path()
"""An argument that a shell completes with names of files; nothing is checked here."""


def _day(context: click.Context, parameter: click.Parameter, text: str | None) -> datetime.date:
    if text is None:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise click.BadParameter(f"{text!r} is not a date such as 2026-05-31") from None


on_date = click.option(
    "--on", callback=_day, metavar="DATE", help="Date of the review; today if left out."
)

house_rulebook = click.option(
    "--rulebook", metavar="FILE", type=A_FILE, help="House rulebook on top of the shipped one."
)

stop_at_level = click.option(
    "--stop-at",
    type=click.Choice(["warning", "caution", "advisory"]),
    default="caution",
    help="Lowest level whose open findings give exit status 1; caution if left out.",
)


def book_of(house: str | None) -> "Rulebook":
    """The shipped rulebook, with the house rulebook on top of it if one is named.

    Raises:
        SpecUnreadable: the house rulebook cannot be read.
    """
    from checker.report.fault import Unopened
    from checker.review.rulebook import shipped_rulebook, with_house_rules

    if house is None:
        return shipped_rulebook()
    try:
        return with_house_rules(shipped_rulebook(), Path(house))
    except OSError as error:
        raise Unopened.because_of(house, error) from None
