"""``thrustline signoff``: a name under a review."""

import datetime
from typing import TYPE_CHECKING

import click

from checker.cli.files import write_file
from checker.cli.options import A_FILE, book_of, house_rulebook, on_date
from checker.cli.output import say, terminal, write
from checker.report import status

if TYPE_CHECKING:
    from checker.spec.sign_off import Signature


@click.command(short_help="Put a name under the review of a spec.")
@click.argument("spec", metavar="SPEC", type=A_FILE)
@click.option("--name", required=True, help="Who signs. A second person signs the same record.")
@click.option("--role", required=True, help="In which role, such as designer or reviewer.")
@on_date
@house_rulebook
@click.option("--afresh", is_flag=True, help="Begin a new record in place of the old one.")
def command(
    spec: str, name: str, role: str, on: datetime.date, rulebook: str | None, afresh: bool
) -> int:
    """Write a record beside SPEC, bound to its text, the rules and the version.

    It is refused while the disposition is hold or a rule is broken. It names everything that is
    open. Names are declared and not authenticated.
    """
    from checker.report.beside import sign_off_beside, sign_off_file
    from checker.report.results import STANDARD_INPUT, review_of
    from checker.report.sign_off_record import record_text, sign_off_sheet
    from checker.review.sign_off import Refused, signed

    if spec == STANDARD_INPUT:
        raise click.UsageError("A record stands beside a file; standard input is none.")
    signature = _signature(name, role, on)
    review = review_of(spec, book_of(rulebook), on)
    before = None if afresh else sign_off_beside(spec)
    file = sign_off_file(spec)
    try:
        record = signed(review, before, signature)
    except Refused as refused:
        say(f"{spec}: not signed: {refused}")
        return status.BROKEN if review.has_broken else status.FINDINGS
    write_file(file, record_text(record))
    width, colour = terminal()
    write(sign_off_sheet(record, file, width=width, colour=colour))
    return status.CLEAR


def _signature(name: str, role: str, on: datetime.date) -> "Signature":
    from pydantic import ValidationError

    from checker.spec.sign_off import Signature

    try:
        return Signature.model_validate({"name": name, "role": role, "date": on.isoformat()})
    except ValidationError as error:
        wrong = error.errors(include_url=False)[0]
        said = wrong["ctx"]
        option = f"--{wrong['loc'][0]}"
        raise click.BadParameter(
            f"{said['message']}; found {said['found']}; expected {said['expected']}",
            param_hint=option,
        ) from None
