"""``thrustline derive``: the whole calculation of one value."""

import datetime

import click

from checker.cli.options import A_FILE
from checker.cli.output import terminal, write
from checker.report import status
from checker.text import plain


@click.command(short_help="Print the whole calculation of one value.")
@click.argument("spec", metavar="SPEC", type=A_FILE)
@click.argument("target", metavar="PART.MEASURE")
@click.option("--point", metavar="NAME", help="Operation point; all of them if left out.")
def command(spec: str, target: str, point: str | None) -> int:
    """Print how a measure of a part is calculated, such as meshes.first.circular_backlash."""
    from checker.report.derivation import derivation_sheets
    from checker.report.inquiry import NothingSuch, inquiries
    from checker.report.results import review_of
    from checker.review.rulebook import Rulebook

    solved = review_of(spec, Rulebook(()), datetime.date.today())
    try:
        answers = [
            answer
            for design in solved.designs.values()
            for answer in inquiries(design, target, point)
        ]
    except NothingSuch as nothing:
        raise click.UsageError(plain(str(nothing))) from None
    width, colour = terminal()
    write(derivation_sheets(answers, solved.loaded.document, width=width, colour=colour))
    return status.CLEAR if all(answer.is_shown for answer in answers) else status.FINDINGS
