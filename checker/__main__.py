"""``python -m checker`` is the command ``thrustline``."""

from checker.cli import main

main()
