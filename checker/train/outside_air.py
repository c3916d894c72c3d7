"""The outside air of an operation point."""

from checker.known import Known, Unknown, Value, assumed, compute
from checker.mechanics import air
from checker.spec.subject import Subject

_STANDARD_DAY = "the standard day, where no air temperature is stated"


def air_temperature(point: Subject) -> Value:
    """Air temperature of a point [K]; of the standard day where only the altitude is stated."""
    given = point.given("air_temperature", "T")
    altitude = point.given("altitude", "z")
    if isinstance(given, Known) or isinstance(altitude, Unknown):
        return given
    return compute(air.temperature, altitude, assumed(0.0, "ΔK", "ΔT", _STANDARD_DAY))


def air_density(point: Subject) -> Value:
    """Density of the air of a point [kg/m3]."""
    altitude = point.given("altitude", "z")
    return compute(air.density, compute(air.pressure, altitude), air_temperature(point))
