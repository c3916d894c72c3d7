"""The hottest that the oil gets: stated, or computed for the hot day where that is more."""

from checker.known import Value
from checker.measures.bounded import largest
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.spec.subject import Subject


@varying_measure("lubrication", "K", "oil, stated or of the hot day, whichever is the hotter")
def hotter_oil(design: Design, lubrication: Subject, point: Subject) -> Value:
    """T of a point, the higher of stated and hot day [K]; at best the one that is known."""
    return largest(
        [
            point.given("oil_temperature", "T_oil"),
            design.measure("hot_day_temperature", lubrication, point),
        ]
    )


@measure("lubrication", "K", "hottest oil, stated or of the hot day")
def hottest_oil(design: Design, lubrication: Subject) -> Value:
    """T, the highest over all points, stated and of the hot day [K]; at best what is known."""
    return largest(
        [
            design.measure("hottest_oil_temperature", lubrication),
            design.greatest("hot_day_temperature", lubrication),
        ]
    )
