"""What each mesh may carry by both standards, and how long each gear lasts."""

from dataclasses import dataclass

from checker.known import Known, Unknown, Value, compute
from checker.measures.design import Design
from checker.mechanics import kinematics


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
