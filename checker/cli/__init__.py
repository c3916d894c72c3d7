"""The command line: arguments in, exit status out.

Each command is a module of its own, loaded when it is called; imports that only one format needs
stand inside it. So each starts fast.
"""

import gc
import importlib
import sys
from collections.abc import Sequence
from typing import NoReturn

import click

from checker import __version__
from checker.cli.files import Unwritten
from checker.cli.output import complain, drop_output, say, tell
from checker.report import status
from checker.report.fault import fault_text, reason_of
from checker.spec.problem import SpecUnreadable


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
        say("thrustline: standard output is closed")
        return status.BROKEN
    try:
        return int(thrustline.main(list(arguments), "thrustline", standalone_mode=False))
    except click.ClickException as wrong:
        tell(wrong.show)
        return status.USAGE
    except (click.Abort, KeyboardInterrupt):
        return status.INTERRUPTED
    except SpecUnreadable as unreadable:
        complain(unreadable)
        return status.UNREADABLE
    except Exception as error:
        say(f"thrustline: {_fault(error)}")
        return status.BROKEN


def _fault(error: Exception) -> str:
    """What keeps the program from its work: output that goes nowhere, or an error of its own."""
    if isinstance(error, Unwritten):
        return str(error)
    if isinstance(error, OSError) and error.filename is None:  # an error in reading names its file
        drop_output()
        return f"the output could not be written: {reason_of(error)}"
    return f"internal error: {fault_text(error)}"


class Commands(click.Group):
    """The commands by name, each loaded from its module when it is wanted."""

    NAMES = (
        "begin",
        "review",
        "compare",
        "vary",
        "remedy",
        "signoff",
        "first-run",
        "derive",
        "rulebook",
        "schema",
    )

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The names, in the order of the work."""
        return list(self.NAMES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of that name."""
        if cmd_name not in self.NAMES:
            return None
        command: click.Command = importlib.import_module(
            f"checker.cli.{cmd_name.replace('-', '_')}"
        ).command
        command.name = cmd_name
        return command


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
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
