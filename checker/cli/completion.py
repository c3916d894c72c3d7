"""``thrustline completion``: help for the shell."""

import click

from checker.cli.output import write
from checker.report import status


@click.command(short_help="Print what lets a shell complete commands.")
@click.argument("shell", type=click.Choice(["bash", "zsh", "fish"]))
def command(shell: str) -> int:
    """Print a script that lets SHELL complete commands, options, files and ids of rules.

    \b
      bash: thrustline completion bash > ~/.thrustline.bash
            and in ~/.bashrc: source ~/.thrustline.bash
      zsh:  thrustline completion zsh > ~/.thrustline.zsh
            and in ~/.zshrc: source ~/.thrustline.zsh
      fish: thrustline completion fish > ~/.config/fish/completions/thrustline.fish
    """
    from click.shell_completion import get_completion_class

    found = get_completion_class(shell)
    assert found is not None
    program = click.get_current_context().find_root().command
    write(f"{found(program, {}, 'thrustline', '_THRUSTLINE_COMPLETE').source()}\n")
    return status.CLEAR
