"""What each mesh may carry by both standards, how long each gear lasts, and what limits first."""

from collections.abc import Sequence
from dataclasses import dataclass

from checker.known import Known, Unknown, Value, compute
from checker.measures.design import Design
from checker.measures.gear_limits import size_at_limit
from checker.mechanics import kinematics
from checker.report import words
from checker.review.rulebook import Rulebook
from checker.solve.gear_limit import Limit, Minima
from checker.text import plain

_RESTORING = (
    ("Face width", "face_width"),
    ("Module", "module"),
    ("Hardness", "material.surface_hardness"),
    ("Helix", "helix.angle"),
)


@dataclass(frozen=True, slots=True)
class PowerRow:
    """A loaded mesh at an operation point.

    Attributes:
        mesh: its name.
        point: name of the operation point.
        iso: power that it may carry by ISO 6336.
        agma: power that it may carry by AGMA 2001.
        ratio: the first over the second.
        in_hand: the first over the power of the point.
    """

    mesh: str
    point: str
    iso: Value
    agma: Value
    ratio: Value
    in_hand: Value


@dataclass(frozen=True, slots=True)
class LifeRow:
    """Running time of a gear to the stated chance of failure."""

    gear: str
    pitting: Value
    breakage: Value


def power_rows(design: Design) -> list[PowerRow]:
    """Every mesh at every operation point at which it is known to carry torque."""
    rows = []
    for mesh in design.subjects.all("mesh"):
        for point in design.points:
            carries = design.measure("carries_torque", mesh, point)
            if isinstance(carries, Unknown) or not carries.value:
                continue
            iso, agma, ratio = (
                design.measure(name, mesh, point)
                for name in ("permissible_power", "permissible_power_agma", "standards_ratio")
            )
            in_hand = compute(kinematics.quotient, iso, point.given("power", "P"))
            rows.append(PowerRow(mesh.name, point.name, iso, agma, ratio, in_hand))
    return rows


def least_in_hand(rows: list[PowerRow]) -> list[PowerRow]:
    """Of each mesh the row with the least power in hand, where that is known."""
    least: dict[str, tuple[float, PowerRow]] = {}
    for row in rows:
        if not isinstance(row.in_hand, Known):
            continue
        number = row.in_hand.number
        if row.mesh not in least or number < least[row.mesh][0]:
            least[row.mesh] = number, row
    return [row for _, row in least.values()]


def life_rows(design: Design) -> list[LifeRow]:
    """Every gear with the hours to pitting and to a broken tooth under the whole spectrum."""
    return [
        LifeRow(
            gear.name, design.measure("pitting_life", gear), design.measure("bending_life", gear)
        )
        for gear in design.subjects.all("gear")
    ]


def failing_share_text(design: Design) -> str:
    """The chance of failure for which the lives are meant, as it follows their heading."""
    chance = design.subjects.the("drive").given("failure_probability", "q")
    return f", until {100.0 * chance.number:g} % fail" if isinstance(chance, Known) else ""


def worst_of_each(ranking: Sequence[Limit]) -> list[Limit]:
    """Of each flank and root the place in the ranking at which it limits the most."""
    worst: dict[tuple[str, str, str], Limit] = {}
    for limit in ranking:
        worst.setdefault((limit.mesh, limit.gear, limit.mode), limit)
    return list(worst.values())


def restoring(design: Design, book: Rulebook, ranking: Sequence[Limit]) -> list[tuple[str, str]]:
    """Rows of label and text: the first limit, and what alone would restore a gear.

    That gear is the one farthest below its least safety; without such a gear nothing is restored.
    """
    rows = []
    power = design.measure("power_at_first_limit", design.subjects.the("drive"))
    if isinstance(power, Known):
        text = plain(f"{ranking[0].text}, reached at {words.value_text(power)}")
        rows.append(("First limit", text))
    minima = Minima(_least_allowed(book, "contact_safety"), _least_allowed(book, "bending_safety"))
    short = minima.first(ranking)
    if minima.in_hand(short) >= 1.0:
        return rows
    rows.append(("To restore", plain(f"{short.text}, to a safety of {minima.of(short):g}")))
    for label, field in _RESTORING:
        needed = size_at_limit(design, field, minima)
        if isinstance(needed, Known):
            rows.append((label, f"{words.value_text(needed)} alone would restore it"))
        else:
            rows.append((label, words.prose(needed.because or "its size is not stated")))
    return rows


def _least_allowed(book: Rulebook, measure: str) -> float:
    """The safety below which a rule of the rulebook warns; 1 where none does."""
    limits = [rule.limits.get("warning") for rule in book.rules if rule.measure == measure]
    return max((each.low for each in limits if each and each.low is not None), default=1.0)
