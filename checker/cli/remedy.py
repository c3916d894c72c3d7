"""``thrustline remedy``: the smallest change that clears a finding."""

import datetime
import gc
import sys
from typing import TYPE_CHECKING

import click

from checker.cli.options import A_FILE, book_of, house_rulebook, on_date
from checker.cli.output import say, terminal, write
from checker.report import status
from checker.text import plain

if TYPE_CHECKING:
    from checker.review.finding import Finding
    from checker.review.remedy import Remedy
    from checker.review.review import Review


@click.command(short_help="The smallest change of one number that clears a finding.")
@click.argument("spec", metavar="SPEC", type=A_FILE)
@click.argument("finding", required=False, metavar="[RULE[@PART]]")
@on_date
@house_rulebook
def command(spec: str, finding: str | None, on: datetime.date, rulebook: str | None) -> int:
    """Say which single change of a stated number of SPEC would clear a finding.

    Without RULE it takes the gravest finding that falls short. Of a rule that is open on several
    parts it takes the gravest, unless a PART is named. The spec itself is not changed.
    """
    from checker.report.remedy_sheet import remedy_sheet, to_state_sheet
    from checker.report.results import review_of
    from checker.review.remedy import is_remediable

    gc.enable()  # many reviews in a row leave much behind
    review = review_of(spec, book_of(rulebook), on)
    chosen = _chosen(review, finding)
    if chosen is None:
        say(f"{spec}: nothing falls short, so there is nothing to clear")
        return status.CLEAR
    width, colour = terminal()
    if chosen.outcome == "not shown":
        write(to_state_sheet(review, chosen, width=width, colour=colour))
    else:
        found = _found(review, chosen) if is_remediable(chosen) else []
        write(remedy_sheet(review, chosen, found, width=width, colour=colour))
    return status.CLEAR


def _chosen(review: "Review", asked: str | None) -> "Finding | None":
    """The finding asked for, the gravest of several; ``None`` where nothing falls short."""
    if asked is None:
        return next((each for each in review.findings if each.outcome == "falls short"), None)
    rule, _, part = asked.partition("@")
    of_rule = [each for each in review.open_findings if each.rule.id == rule]
    found = [each for each in of_rule if part in ("", each.subject.address, each.subject.label)]
    if not found:
        if of_rule:
            parts = ", ".join(dict.fromkeys(each.subject.address for each in of_rule))
            raise click.UsageError(
                plain(f"{rule} is not open at {part!r}; it is open at: {parts}.")
            )
        raise click.UsageError(plain(f"No open finding of a rule {rule!r}."))
    return found[0]


def _found(review: "Review", finding: "Finding") -> "list[Remedy]":
    """The remedies, with a bar on a terminal, where there is somebody to wait."""
    from checker.review.remedy import remedies

    quiet = sys.stderr is None or not sys.stderr.isatty()
    with click.progressbar(
        length=100, label="Trying changes", file=sys.stderr, hidden=quiet
    ) as bar:

        def progress(done: int, of: int) -> None:
            bar.update(100 * done // of - bar.pos)

        return remedies(review, finding, progress)
