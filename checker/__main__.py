"""``python -m checker`` is the command ``thrustline``."""

import sys


def main() -> None:
    """Run the command line; Ctrl-C ends it quietly also while its modules are still imported."""
    try:
        from checker import cli

        cli.main()
    except KeyboardInterrupt:
        sys.exit(130)


if __name__ == "__main__":
    main()
