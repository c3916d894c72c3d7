"""``thrustline rulebook``: what the rules say, and why."""

import click

from checker.cli.files import write_file
from checker.cli.options import A_FILE
from checker.cli.output import terminal, write
from checker.report import status


def _rule_ids(context: click.Context, parameter: click.Parameter, begun: str) -> list[str]:
    """Ids of rules, for the shell to complete."""
    from checker.review.rulebook import shipped_rulebook

    return [rule.id for rule in shipped_rulebook().rules if rule.id.startswith(begun)]


@click.command(short_help="List the rules, or print one in full.")
@click.argument("rule", required=False, shell_complete=_rule_ids)
@click.option(
    "--report", metavar="FILE", type=A_FILE, help="Write all rules as an HTML handbook instead."
)
def command(rule: str | None, report: str | None) -> int:
    """List the rules by family, or print one RULE in full."""
    from checker.report.rulebook_sheet import rule_in_full, rulebook_list
    from checker.review.rulebook import shipped_rulebook

    book = shipped_rulebook()
    if report is not None:
        if rule is not None:
            raise click.UsageError("The handbook holds every rule: leave out RULE.")
        from checker.report.html.handbook import html_handbook

        write_file(report, html_handbook(book))
        return status.CLEAR
    width, colour = terminal()
    if rule is None:
        write(rulebook_list(book, width=width, colour=colour))
        return status.CLEAR
    found = book.rule(rule)
    if found is None:
        from difflib import get_close_matches

        near = get_close_matches(rule, [each.id for each in book.rules], n=3, cutoff=0.4)
        hint = f" Near it: {', '.join(near)}." if near else ""
        raise click.UsageError(f"There is no rule {rule!r}.{hint}")
    write(rule_in_full(found, width=width, colour=colour))
    return status.CLEAR
