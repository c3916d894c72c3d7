"""``thrustline review``: the main job."""

import datetime
from typing import TYPE_CHECKING

import click

from checker.cli.options import book_of, house_rulebook, on_date, stop_at_level
from checker.cli.output import complain, say, terminal, write
from checker.report import status
from checker.spec.problem import SpecUnreadable

if TYPE_CHECKING:
    from checker.report.results import Result
    from checker.review.rule import Level
    from checker.review.rulebook import Rulebook


@click.command()
@click.argument("specs", nargs=-1, required=True, metavar="SPEC...")
@on_date
@click.option(
    "--format",
    "form",
    type=click.Choice(["terminal", "json"]),
    default="terminal",
    help="A sheet to read, or JSON with every outcome.",
)
@stop_at_level
@house_rulebook
@click.option("--report", metavar="FILE", help="Also write the review of one SPEC as an HTML page.")
@click.option("--all", "everything", is_flag=True, help="Also list what meets or does not apply.")
def command(
    specs: tuple[str, ...],
    on: datetime.date,
    form: str,
    stop_at: "Level",
    rulebook: str | None,
    report: str | None,
    everything: bool,
) -> int:
    """Review each SPEC and print what the rules found; - is standard input."""
    from checker.report.results import STANDARD_INPUT, result_of, status_of

    if specs.count(STANDARD_INPUT) > 1:
        raise click.UsageError("Standard input can be read only once.")
    if report is not None and len(specs) > 1:
        raise click.UsageError("A report holds one spec: give each its own --report.")
    book = book_of(rulebook)
    results = [result_of(spec, book, on) for spec in specs]
    if form == "json":
        write(_as_json(results, book, on))
    else:
        write(_as_sheets(results, everything))
    _complain_of(results)
    if report is not None:
        _write_report(report, results[0])
    return status.worst(status_of(result, stop_at) for result in results)


def _as_json(results: "list[Result]", book: "Rulebook", on: datetime.date) -> str:
    from checker.report.json_report import entry, json_report

    return json_report([entry(result) for result in results], book, on.isoformat())


def _as_sheets(results: "list[Result]", everything: bool) -> str:
    from checker.report.terminal import review_sheet
    from checker.review.review import Review

    width, colour = terminal()
    sheets = [
        review_sheet(result, width=width, colour=colour, everything=everything)
        for result in results
        if isinstance(result, Review)
    ]
    return "\n\n".join(sheets)


def _write_report(file: str, result: "Result") -> None:
    """Write the page; what is no review has been complained of and leaves the file as it was."""
    from checker.cli.files import write_file
    from checker.report.html.report import html_report
    from checker.report.pictures.charts import charts
    from checker.review.review import Review

    if isinstance(result, Review):
        designs = result.designs.values()
        pictures = tuple(each for design in designs for each in charts(result, design))
        write_file(file, html_report(result, pictures))


def _complain_of(results: "list[Result]") -> None:
    from checker.report.results import Failed

    for result in results:
        if isinstance(result, SpecUnreadable):
            complain(result)
        elif isinstance(result, Failed):
            say(f"{result.file}: internal error: {result.fault}")
