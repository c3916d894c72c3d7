"""What each kind of bearing can carry by its construction, and which way.

The kinds have the names that a spec gives them. Whether a bearing as built in stops its shaft also
depends on the shoulders and retainers beside it.
"""

from dataclasses import dataclass
from enum import Enum

from checker.mechanics.equation import equation

_PRACTICE = "common practice, no source"


class Axial(Enum):
    """The ways in which a bearing carries axial force."""

    NONE = "none"
    ONE_WAY = "one way"
    BOTH_WAYS = "both ways"


@dataclass(frozen=True, slots=True)
class BearingKind:
    """What one kind of bearing carries.

    Attributes:
        name: the kind, as a spec names it.
        radial: whether it carries radial force.
        axial: which ways it carries axial force.
        source: where that is known from.
        axial_rating_needed: its axial load is limited by sliding ribs or faces, not by fatigue, so
            that it counts only with a rating stated by its maker.
        needs_partner: radial force drives it apart, so that it works only against a second bearing.
        remark: what else limits it.
    """

    name: str
    radial: bool
    axial: Axial
    source: str
    axial_rating_needed: bool = False
    needs_partner: bool = False
    remark: str = ""


_KINDS = (
    BearingKind(
        "deep groove ball",
        radial=True,
        axial=Axial.BOTH_WAYS,
        source="bearing maker's catalogue page, trade source",
        remark="pure axial load at most 0.5 of the static rating, 0.25 in light series",
    ),
    BearingKind(
        "angular contact ball",
        radial=True,
        axial=Axial.ONE_WAY,
        source="bearing engineering article on single-row angular contact bearings, trade source",
        needs_partner=True,
    ),
    BearingKind(
        "double-row angular contact ball",
        radial=True,
        axial=Axial.BOTH_WAYS,
        source=_PRACTICE,
        remark="with filling slots on one side only away from the slots",
    ),
    BearingKind(
        "four-point contact ball",
        radial=True,
        axial=Axial.BOTH_WAYS,
        source=_PRACTICE,
        remark="axial load must prevail; beside a radial bearing it is fitted radially free",
    ),
    BearingKind(
        "self-aligning ball",
        radial=True,
        axial=Axial.BOTH_WAYS,
        source=_PRACTICE,
        remark="small axial loads only",
    ),
    BearingKind("cylindrical roller N", radial=True, axial=Axial.NONE, source=_PRACTICE),
    BearingKind("cylindrical roller NU", radial=True, axial=Axial.NONE, source=_PRACTICE),
    BearingKind(
        "cylindrical roller NJ",
        radial=True,
        axial=Axial.ONE_WAY,
        source=_PRACTICE,
        axial_rating_needed=True,
        remark="the axial load slides on the ribs and needs radial load and oil with it",
    ),
    BearingKind(
        "cylindrical roller NUP",
        radial=True,
        axial=Axial.BOTH_WAYS,
        source=_PRACTICE,
        axial_rating_needed=True,
        remark="the axial load slides on the ribs and needs radial load and oil with it",
    ),
    BearingKind("needle roller", radial=True, axial=Axial.NONE, source=_PRACTICE),
    BearingKind("toroidal roller", radial=True, axial=Axial.NONE, source=_PRACTICE),
    BearingKind(
        "tapered roller",
        radial=True,
        axial=Axial.ONE_WAY,
        source=_PRACTICE,
        needs_partner=True,
    ),
    BearingKind("spherical roller", radial=True, axial=Axial.BOTH_WAYS, source=_PRACTICE),
    BearingKind(
        "thrust ball",
        radial=False,
        axial=Axial.ONE_WAY,
        source=_PRACTICE,
        remark="needs a least axial load at speed",
    ),
    BearingKind(
        "double-direction thrust ball",
        radial=False,
        axial=Axial.BOTH_WAYS,
        source=_PRACTICE,
        remark="needs a least axial load at speed",
    ),
    BearingKind(
        "thrust roller",
        radial=False,
        axial=Axial.ONE_WAY,
        source=_PRACTICE,
        remark="with needles or cylindrical rollers; needs a least axial load at speed",
    ),
    BearingKind(
        "plain",
        radial=True,
        axial=Axial.NONE,
        source=_PRACTICE,
        remark="with a thrust face it carries axial force one way",
    ),
)

BEARING_KINDS = {kind.name: kind for kind in _KINDS}

# A matched set of bearings that each carry one way. Source: common practice, no source.
SET_AXIAL = {
    "back-to-back": Axial.BOTH_WAYS,
    "face-to-face": Axial.BOTH_WAYS,
    "tandem": Axial.ONE_WAY,
}


@equation(
    "F_a,set",
    "F_a,set = N F_a,max",
    unit="N",
    source=_PRACTICE,
    axial_rating="F_a,max [N]",
    members="N [1]",
)
def tandem_axial_rating(axial_rating: float, members: int) -> float:
    """Axial load [N] of a matched tandem set, whose bearings share it, from the rating of one."""
    return axial_rating * members
