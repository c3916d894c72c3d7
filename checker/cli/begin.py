"""``thrustline begin``: a spec to begin with."""

import datetime
import os
import sys
from typing import TYPE_CHECKING, Any, cast

import click

from checker.cli.files import write_file
from checker.cli.options import A_FILE
from checker.cli.output import terminal, write
from checker.report import status

if TYPE_CHECKING:
    from checker.spec.beginning import Answers

_NOT_KNOWN = "Enter alone leaves it unknown."
_ARRANGEMENTS = ("single", "idler", "compound")
_FORMS = ("spur", "helical")
_CYCLES = ("four-stroke", "two-stroke")
_DAMPERS = ("elastomer", "steel spring", "viscous", "none")
_CLUTCHES = ("roller", "sprag", "none")


class _Measured(click.ParamType):  # type: ignore[type-arg]  # generic in new releases only
    """A quantity of one dimension, kept as it is written."""

    def __init__(self, dimension: str, example: str) -> None:
        self.dimension = dimension
        self.name = example

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> str:
        from checker.spec.quantity import QuantityError, parse_quantity

        try:
            quantity = parse_quantity(str(value), self.dimension)
        except QuantityError as error:
            self.fail(str(error), param, ctx)
        if quantity.value <= 0.0:
            self.fail(f"{value!r} is not above zero", param, ctx)
        return str(value)


_POWER = _Measured("power", "60 kW")
_SPEED = _Measured("angular_speed", "5500 rpm")
_LENGTH = _Measured("length", "1.8 m")
_RATIO = click.FloatRange(1.0, 10.0)
_CYLINDERS = click.IntRange(1, 12)
_BLADES = click.IntRange(2, 8)
_QUESTIONS: tuple[tuple[str, str, "click.ParamType[Any]", bool], ...] = (
    ("name", "Name of the drive", click.STRING, True),
    ("arrangement", "Gear train", click.Choice(_ARRANGEMENTS), True),
    ("form", "Teeth", click.Choice(_FORMS), True),
    ("ratio", "Engine speed over propeller speed wanted, such as 2.5", _RATIO, False),
    ("cylinders", "Cylinders of the engine", _CYLINDERS, False),
    ("cycle", "Its cycle", click.Choice(_CYCLES), False),
    ("power", "Take-off power, such as 60 kW or 80 hp", _POWER, False),
    ("speed", "Crankshaft speed there, such as 5500 rpm", _SPEED, False),
    ("damper", "Soft coupling or damper behind the engine", click.Choice(_DAMPERS), False),
    ("clutch", "One-way clutch", click.Choice(_CLUTCHES), False),
    ("blades", "Blades of the propeller", _BLADES, False),
    ("diameter", "Its diameter, such as 1.8 m", _LENGTH, False),
)


@click.command(short_help="Write a commented spec to begin with.")
@click.argument("file", metavar="FILE", type=A_FILE)
@click.option("--name", help="Name of the drive.")
@click.option("--arrangement", type=click.Choice(_ARRANGEMENTS), help="Kind of gear train.")
@click.option("--form", type=click.Choice(_FORMS), help="Form of the teeth.")
@click.option("--ratio", type=_RATIO, help="Engine speed over propeller speed wanted.")
@click.option("--cylinders", type=_CYLINDERS, help="Cylinders of the engine.")
@click.option("--cycle", type=click.Choice(_CYCLES), help="Its cycle.")
@click.option("--power", type=_POWER, help="Take-off power, such as '60 kW'.")
@click.option("--speed", type=_SPEED, help="Crankshaft speed there, such as '5500 rpm'.")
@click.option("--damper", type=click.Choice(_DAMPERS), help="Soft coupling behind the engine.")
@click.option("--clutch", type=click.Choice(_CLUTCHES), help="One-way clutch.")
@click.option("--blades", type=_BLADES, help="Blades of the propeller.")
@click.option("--diameter", type=_LENGTH, help="Its diameter, such as '1.8 m'.")
@click.option("--force", is_flag=True, help="Replace a file that is there.")
def command(file: str, force: bool, **given: object) -> int:
    """Write FILE, a spec of a drive of your arrangement, and say what to state next.

    On a terminal it asks for what is not given; elsewhere the name, the gear train and the teeth
    must be given. What nobody says stays unknown in the spec.
    """
    if os.path.lexists(file) and not force:
        raise click.UsageError(f"{file!r} is there already; --force replaces it.")
    answers = _answers(given)
    from checker.report.next_fields import next_fields_sheet
    from checker.report.results import review_of
    from checker.review.rulebook import shipped_rulebook
    from checker.spec.beginning import beginning

    write_file(file, beginning(answers))
    review = review_of(file, shipped_rulebook(), datetime.date.today())
    width, colour = terminal()
    write(next_fields_sheet(review, width=width, colour=colour))
    return status.CLEAR


def _answers(given: dict[str, object]) -> "Answers":
    """What was given, and on a terminal what is answered besides."""
    from checker.spec.beginning import Answers

    asked = [each for each in _QUESTIONS if given[each[0]] is None]
    needed = [name for name, _, _, is_needed in asked if is_needed]
    if sys.stdin is None or not sys.stdin.isatty():
        if needed:
            flags = ", ".join(f"--{name}" for name in needed)
            raise click.UsageError(f"Nobody is there to ask: give {flags}.")
        asked = []
    elif asked:
        click.echo(_NOT_KNOWN, err=True)
    for name, question, kind, is_needed in asked:
        given[name] = _ask(question, kind, needed=is_needed)
    return Answers(**cast("dict[str, Any]", {name: given[name] for name, *_ in _QUESTIONS}))


def _ask(question: str, kind: "click.ParamType[Any]", *, needed: bool) -> object:
    """One question; an empty answer to what is not needed is ``None``."""
    if needed:
        return click.prompt(question, type=kind, err=True)
    return click.prompt(
        question,
        type=kind,
        default="",
        show_default=False,
        err=True,
        value_proc=lambda text: kind(text) if text else None,
    )
