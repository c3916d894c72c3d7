"""How cold the drive is when it is started."""

from checker.known import Value, compute
from checker.mechanics import housing
from checker.spec.subject import Subjects


def coldest(subjects: Subjects) -> Value:
    """The lowest temperature of the standing drive, or of the cold start if that is lower [K]."""
    soaked = subjects.the("housing").given("cold_soak_temperature", "θ_soak")
    lubrication = subjects.the("lubrication")
    if lubrication.raw("cold_start_temperature") is None:
        return soaked
    return compute(housing.colder, soaked, lubrication.given("cold_start_temperature", "θ_start"))
