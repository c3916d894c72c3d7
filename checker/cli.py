"""The command line: arguments in, exit status out.

Imports that only one command or format needs stand inside it, so that each starts fast.
"""

import datetime
import gc
import os
import shutil
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from checker import __version__
from checker.report import status
from checker.report.fault import fault_text, reason_of
from checker.spec.problem import SpecUnreadable
from checker.text import plain

if TYPE_CHECKING:
    from checker.report.results import Result
    from checker.review.rule import Level
    from checker.review.rulebook import Rulebook


def main() -> NoReturn:
    """Run the command line and leave with its exit status."""
    gc.disable()  # a short run has no garbage worth collecting; looking for it costs a tenth of it
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")  # for a stream that is not in UTF-8
    sys.exit(run(sys.argv[1:]))


def run(arguments: Sequence[str]) -> int:
    """Run the command line.

    Args:
        arguments: what stands behind the name of the program.

    Returns:
        The exit status.
    """
    if sys.stdout is None:
        _say("thrustline: standard output is closed")
        return status.BROKEN
    try:
        return int(thrustline.main(list(arguments), "thrustline", standalone_mode=False))
    except click.ClickException as wrong:
        _tell(wrong.show)
        return status.USAGE
    except (click.Abort, KeyboardInterrupt):
        return status.INTERRUPTED
    except SpecUnreadable as unreadable:
        _complain(unreadable)
        return status.UNREADABLE
    except Exception as error:
        _say(f"thrustline: {_fault(error)}")
        return status.BROKEN


def _fault(error: Exception) -> str:
    """What keeps the program from its work: output that goes nowhere, or an error of its own."""
    if isinstance(error, OSError) and error.filename is None:  # an error in reading names its file
        _drop_output()
        return f"the output could not be written: {reason_of(error)}"
    return f"internal error: {fault_text(error)}"


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, message="thrustline %(version)s")
def thrustline() -> None:
    """Review the design of a propeller speed-reduction drive against a rulebook.

    \b
    Exit status:
      0  no open finding, shown or not shown, at or above the level of --stop-at
      1  findings
      2  a spec, or the house rulebook, could not be read
      3  wrong usage
      4  a broken rule, an internal error, or the output could not be written
    130  interrupted, as by Ctrl-C
    Of several specs the gravest status counts, in the order 4, 2, 3, 1, 0.
    """


def _day(context: click.Context, parameter: click.Parameter, text: str | None) -> datetime.date:
    if text is None:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise click.BadParameter(f"{text!r} is not a date such as 2026-05-31") from None


@thrustline.command()
@click.argument("specs", nargs=-1, required=True, metavar="SPEC...")
@click.option("--on", callback=_day, metavar="DATE", help="Date of the review; today if left out.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["terminal", "json"]),
    default="terminal",
    help="A sheet to read, or JSON with every outcome.",
)
@click.option(
    "--stop-at",
    type=click.Choice(["warning", "caution", "advisory"]),
    default="caution",
    help="Lowest level whose open findings give exit status 1; caution if left out.",
)
@click.option("--rulebook", metavar="FILE", help="House rulebook on top of the shipped one.")
@click.option("--all", "everything", is_flag=True, help="Also list what meets or does not apply.")
def review(
    specs: tuple[str, ...],
    on: datetime.date,
    form: str,
    stop_at: "Level",
    rulebook: str | None,
    everything: bool,
) -> int:
    """Review each SPEC and print what the rules found; - is standard input."""
    from checker.report.results import STANDARD_INPUT, result_of, status_of

    if specs.count(STANDARD_INPUT) > 1:
        raise click.UsageError("Standard input can be read only once.")
    book = _book(rulebook)
    results = [result_of(spec, book, on) for spec in specs]
    if form == "json":
        _write(_as_json(results, book, on))
    else:
        _write(_as_sheets(results, everything))
    _complain_of(results)
    return status.worst(status_of(result, stop_at) for result in results)


def _as_json(results: "list[Result]", book: "Rulebook", on: datetime.date) -> str:
    from checker.report.json_report import entry, json_report

    return json_report([entry(result) for result in results], book, on.isoformat())


def _as_sheets(results: "list[Result]", everything: bool) -> str:
    from checker.report.terminal import review_sheet
    from checker.review.review import Review

    width, colour = _terminal()
    sheets = [
        review_sheet(result, width=width, colour=colour, everything=everything)
        for result in results
        if isinstance(result, Review)
    ]
    return "\n\n".join(sheets)


@thrustline.command()
@click.argument("spec", metavar="SPEC")
@click.argument("target", metavar="PART.MEASURE")
@click.option("--point", metavar="NAME", help="Operation point; all of them if left out.")
def derive(spec: str, target: str, point: str | None) -> int:
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
    width, colour = _terminal()
    _write(derivation_sheets(answers, solved.loaded.document, width=width, colour=colour))
    return status.CLEAR if all(answer.is_shown for answer in answers) else status.FINDINGS


@thrustline.command()
@click.argument("rule", required=False)
def rulebook(rule: str | None) -> int:
    """List the rules by family, or print one RULE in full."""
    from checker.report.rulebook_sheet import rule_in_full, rulebook_list
    from checker.review.rulebook import shipped_rulebook

    book = shipped_rulebook()
    width, colour = _terminal()
    if rule is None:
        _write(rulebook_list(book, width=width, colour=colour))
        return status.CLEAR
    found = book.rule(rule)
    if found is None:
        from difflib import get_close_matches

        near = get_close_matches(rule, [each.id for each in book.rules], n=3, cutoff=0.4)
        hint = f" Near it: {', '.join(near)}." if near else ""
        raise click.UsageError(f"There is no rule {rule!r}.{hint}")
    _write(rule_in_full(found, width=width, colour=colour))
    return status.CLEAR


@thrustline.command()
@click.argument("of", type=click.Choice(["spec", "report", "rulebook"]), default="spec")
def schema(of: str) -> int:
    """Print the JSON Schema of a spec, of the JSON report or of a house rulebook."""
    import json

    if of == "spec":
        from checker.spec.model import schema as document
    elif of == "report":
        from checker.report.json_schema import report_schema as document
    else:
        from checker.review.rulebook_schema import house_schema as document
    _write(json.dumps(document(), indent=2, ensure_ascii=False) + "\n")
    return status.CLEAR


def _book(house: str | None) -> "Rulebook":
    from checker.report.results import Unopened
    from checker.review.rulebook import shipped_rulebook, with_house_rules

    if house is None:
        return shipped_rulebook()
    try:
        return with_house_rules(shipped_rulebook(), Path(house))
    except OSError as error:
        raise Unopened.because_of(house, error) from None


def _terminal() -> tuple[int, bool]:
    """Width of the terminal, and whether it takes colour; 80 columns and none for a pipe."""
    dumb = os.environ.get("TERM", "") in ("dumb", "unknown")
    colour = sys.stdout.isatty() and not os.environ.get("NO_COLOR") and not dumb
    return shutil.get_terminal_size((80, 24)).columns, colour


def _complain(unreadable: SpecUnreadable) -> None:
    for line in str(unreadable).split("\n"):
        _say(line)


def _complain_of(results: "list[Result]") -> None:
    from checker.report.results import Failed

    for result in results:
        if isinstance(result, SpecUnreadable):
            _complain(result)
        elif isinstance(result, Failed):
            _say(f"{result.file}: internal error: {result.fault}")


def _say(message: str) -> None:
    _tell(lambda: print(plain(message), file=sys.stderr))


def _tell(write: Callable[[], None]) -> None:
    """Write to standard error; where that is closed or full, there is nobody to tell."""
    if sys.stderr is not None:
        with suppress(OSError):
            write()


def _write(text: str) -> None:
    """Write to standard output; a reader that has gone away is none of our concern."""
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        _drop_output()


def _drop_output() -> None:
    """Lead standard output nowhere: what is left in it would raise again at the very end."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
