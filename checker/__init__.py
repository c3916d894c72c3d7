"""Thrustline: rule-based design review for propeller speed-reduction drives."""

__version__ = "0.1.0"
