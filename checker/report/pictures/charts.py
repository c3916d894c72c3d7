"""The charts of a review, in the order in which they stand in its report."""

from checker.known import Known
from checker.measures.design import Design
from checker.report.pictures.heat import heat_balance
from checker.report.pictures.interference import interference_diagram
from checker.report.pictures.margins import margins
from checker.report.pictures.paths import vent_and_oil_paths
from checker.report.pictures.picture import Picture
from checker.report.pictures.shaft import greatest_point, shaft_diagrams
from checker.report.pictures.vibration import vibratory_torque
from checker.review.review import Review
from checker.spec.subject import Subject


def charts(review: Review, design: Design) -> tuple[Picture, ...]:
    """Every chart of a design for which the spec states enough.

    What is of the review as a whole comes with its first design.

    Args:
        review: the review.
        design: its design with one ratio set.
    """
    is_first = design is next(iter(review.designs.values()))
    made = (
        margins(review) if is_first else None,
        interference_diagram(design),
        vibratory_torque(design),
        *_shafts(design),
        heat_balance(design),
        _paths(design),
    )
    return tuple(each for each in made if each is not None)


def _shafts(design: Design) -> list[Picture | None]:
    """Each shaft at the operation point at which it bends the most."""
    worst = [(shaft, greatest_point(design, shaft)) for shaft in design.subjects.all("shaft")]
    return [shaft_diagrams(design, shaft, point) for shaft, point in worst if point is not None]


def _paths(design: Design) -> Picture | None:
    """Vent and oil at the point of the most power for which the vent is known, if there is one."""
    points = sorted(design.points, key=_power, reverse=True)
    made = (vent_and_oil_paths(design, point) for point in points)
    return next((each for each in made if each is not None), None)


def _power(point: Subject) -> float:
    power = point.given("power")
    return power.number if isinstance(power, Known) else 0.0
