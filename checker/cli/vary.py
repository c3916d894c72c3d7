"""``thrustline vary``: what a stated value does to the review."""

import datetime
import gc
import sys
from typing import TYPE_CHECKING

import click

from checker.cli.options import A_FILE, book_of, house_rulebook, on_date
from checker.cli.output import terminal, write
from checker.report import status
from checker.text import plain

if TYPE_CHECKING:
    from checker.report.variation import Range, Step
    from checker.review.review import Review


@click.command(short_help="Walk one or two stated values over a range.")
@click.argument("spec", metavar="SPEC", type=A_FILE)
@click.argument("ranges", nargs=-1, required=True, metavar="FIELD=FROM..TO...")
@click.option(
    "--measure",
    "measures",
    multiple=True,
    metavar="PART.MEASURE[@POINT]",
    help="A measure to print at each step; can be given again.",
)
@click.option(
    "--steps", type=click.IntRange(2, 200), default=9, help="Values of each field; 9 if left out."
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["terminal", "csv"]),
    default="terminal",
    help="A table to read, or CSV with numbers in SI units.",
)
@click.option("--svg", metavar="FILE", help="Also draw the steps as curves, as an SVG picture.")
@on_date
@house_rulebook
def command(
    spec: str,
    ranges: tuple[str, ...],
    measures: tuple[str, ...],
    steps: int,
    form: str,
    svg: str | None,
    on: datetime.date,
    rulebook: str | None,
) -> int:
    """Review SPEC with other values of a field, such as operation.climb.power='40 kW..60 kW'.

    Two fields give every combination. The spec itself is not changed.
    """
    from checker.report.inquiry import NothingSuch
    from checker.report.results import review_of
    from checker.report.variation import NoRange, range_of
    from checker.report.variation_sheet import variation_csv, variation_sheet

    if len(ranges) > 2:
        raise click.UsageError("At most two fields can be varied at once.")
    gc.enable()  # many reviews in a row leave much behind
    review = review_of(spec, book_of(rulebook), on)
    try:
        walked = tuple(range_of(review.loaded.document, each, steps) for each in ranges)
        if len({each.path for each in walked}) < len(walked):
            raise NoRange("both ranges are of the same field")
        found = _walked(review, walked, measures)
    except (NoRange, NothingSuch) as wrong:
        raise click.UsageError(plain(str(wrong))) from None
    if form == "csv":
        write(variation_csv(walked, found))
    else:
        width, colour = terminal()
        write(variation_sheet(review, walked, found, width=width, colour=colour))
    if svg is not None:
        _draw(svg, review, walked, found)
    return status.CLEAR


def _draw(file: str, review: "Review", ranges: "tuple[Range, ...]", steps: "list[Step]") -> None:
    """The steps as a picture in a file of its own, on light ground."""
    from checker.cli.files import write_file
    from checker.report.pictures.chart import standalone
    from checker.report.pictures.palette import LIGHT
    from checker.report.pictures.variation import variation_picture

    name = review.loaded.document.name
    write_file(file, standalone(variation_picture(name, ranges, steps), LIGHT))


def _walked(
    review: "Review", ranges: "tuple[Range, ...]", measures: tuple[str, ...]
) -> "list[Step]":
    """Every step, with a bar on a terminal, where there is somebody to wait."""
    from checker.report.variation import varied

    total = 1
    for each in ranges:
        total *= len(each.values)
    quiet = sys.stderr is None or not sys.stderr.isatty()
    with click.progressbar(
        varied(review, ranges, measures),
        length=total,
        label="Reviewing",
        file=sys.stderr,
        hidden=quiet,
    ) as steps:
        return list(steps)
