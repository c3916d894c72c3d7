"""Which pictures of a report show what a finding is about."""

from collections.abc import Sequence

from checker.report.pictures.picture import Picture
from checker.review.finding import Finding

_OIL = ("vent-and-oil",)
_SHOWN = {
    "aeration": _OIL,
    "bearings": ("side-view", "bearing-loads"),
    "breathing": _OIL,
    "clutch": ("vibratory-torque",),
    "damper": ("vibratory-torque",),
    "fits": ("side-view",),
    "gears": ("mesh",),
    "heat": ("heat-balance",),
    "loads": ("bearing-loads",),
    "oil": _OIL,
    "rating": ("mesh",),
    "shafts": ("shaft",),
    "supply": _OIL,
    "torsion": ("interference", "vibratory-torque"),
    "train": ("front-view",),
    "vent": _OIL,
}
"""Beginnings of the names of the pictures that show what the rules of a family look at."""


def pictures_of(finding: Finding, pictures: Sequence[Picture]) -> list[Picture]:
    """The pictures of a finding; where some of them name its part, these alone.

    Args:
        finding: the finding.
        pictures: the pictures of the report.
    """
    beginnings = _SHOWN.get(finding.rule.family, ())
    found = [each for each in pictures if each.name.startswith(beginnings)] if beginnings else []
    name = finding.subject.name
    own = [each for each in found if name and name in each.title.replace(":", " ").split()]
    return own or found
