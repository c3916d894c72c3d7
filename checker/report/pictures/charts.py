"""The charts of a review, in the order in which they stand in its report."""

from collections.abc import Callable

from checker.known import Known
from checker.measures.design import Design
from checker.report.fault import fault_text
from checker.report.pictures.bearing import bearing_loads
from checker.report.pictures.chart import Drawing, identifier
from checker.report.pictures.heat import heat_balance
from checker.report.pictures.interference import interference_diagram
from checker.report.pictures.margins import margins
from checker.report.pictures.paths import vent_and_oil_paths
from checker.report.pictures.picture import Picture
from checker.report.pictures.shaft import greatest_point, shaft_diagrams
from checker.report.pictures.vibration import vibratory_torque
from checker.review.review import Review
from checker.spec.subject import Subject

Make = Callable[[], Picture | None]


def charts(review: Review, design: Design) -> tuple[Picture, ...]:
    """Every chart of a design for which the spec states enough.

    What is of the review as a whole comes with its first design.

    Args:
        review: the review.
        design: its design with one ratio set.
    """
    makes: list[tuple[str, Make]] = []
    if design is next(iter(review.designs.values())):
        makes.append(("margins", lambda: margins(review)))
    makes += [
        ("interference", lambda: interference_diagram(design)),
        ("vibratory-torque", lambda: vibratory_torque(design)),
        *_shafts(design),
        ("bearing-loads", lambda: bearing_loads(design)),
        ("heat-balance", lambda: heat_balance(design)),
        ("vent-and-oil", lambda: _paths(design)),
    ]
    made = (_made(identifier(name, design.subjects.ratio_set), make) for name, make in makes)
    return tuple(each for each in made if each is not None)


def _made(name: str, make: Make) -> Picture | None:
    try:
        return make()
    except Exception as error:  # the rules report what is broken; the other pictures stand
        return _not_drawn(name, error)


def _not_drawn(name: str, error: Exception) -> Picture:
    """A picture that says that there is none."""
    drawing = Drawing(name, f"Not drawn: {name}", 40.0)
    said = f"This picture could not be drawn: {fault_text(error)}"
    drawing.text(2.0, 24.0, "This picture could not be drawn; the words say why.", colour="broken")
    return drawing.picture(said)


def _shafts(design: Design) -> list[tuple[str, Make]]:
    """Each shaft at the operation point at which it bends the most."""

    def make(shaft: Subject) -> Picture | None:
        point = greatest_point(design, shaft)
        return None if point is None else shaft_diagrams(design, shaft, point)

    return [
        (f"shaft-{shaft.name}", lambda shaft=shaft: make(shaft))  # type: ignore[misc]
        for shaft in design.subjects.all("shaft")
    ]


def _paths(design: Design) -> Picture | None:
    """Vent and oil at the point of the most power for which one of them is known."""
    points = sorted(design.points, key=_power, reverse=True)
    made = (vent_and_oil_paths(design, point) for point in points)
    return next((each for each in made if each is not None), None)


def _power(point: Subject) -> float:
    power = point.given("power")
    return power.number if isinstance(power, Known) else 0.0
