"""Speed range of a torsional survey, separation from resonance, barred ranges."""

import math

from checker.mechanics.equation import OutOfRange, equation


@equation(
    "ω_max",
    "ω_max = max(1.10 ω_MC, 1.03 ω_TO)",
    unit="rad/s",
    source="14 CFR 33.43(a), GPO editions of 2003 and 2007",
    continuous="ω_MC [rad/s]",
    take_off="ω_TO [rad/s]",
)
def survey_upper_speed(continuous: float, take_off: float) -> float:
    """Highest speed of a torsional survey [rad/s], which begins at idle.

    Source: 14 CFR 33.43(a).
    """
    return max(1.10 * continuous, 1.03 * take_off)


@equation(
    "s",
    "s = |f − f_n| / f_n, zero between f_n of the hot and of the cold coupling",
    unit="1",
    source="separation on frequency, as API 617 has it (seen quoted in a symposium paper)",
    excitation="f [Hz]",
    lowest="f_n,low [Hz]",
    highest="f_n,high [Hz]",
)
def separation(excitation: float, lowest: float, highest: float) -> float:
    """How far an excitation [Hz] stays from a natural frequency that lies between two ends [Hz].

    Source: API 617 as quoted in a symposium paper.

    Raises:
        OutOfRange: the ends are not above zero and in order.
    """
    if not 0.0 < lowest <= highest:
        raise OutOfRange("lowest must be above zero and not above highest")
    if excitation < lowest:
        return (lowest - excitation) / lowest
    if excitation > highest:
        return (excitation - highest) / highest
    return 0.0


@equation(
    "n_low/n_c",
    "n_low/n_c = 16 / (18 − λ)",
    unit="1",
    source="IACS UR M68, older revisions (from memory); its scope leaves out gearing",
    speed_ratio="λ [1]",
)
def marine_lower_limit(speed_ratio: float) -> float:
    """Lower end of a marine barred range over the critical speed; λ is critical over rated speed.

    For comparison only: the rule leaves out gearing.

    Source: IACS UR M68, older revisions (from memory).

    Raises:
        OutOfRange: λ of 0.8 and more, where the rule allows no barred range.
    """
    return 16.0 / (18.0 - _barrable(speed_ratio))


@equation(
    "n_high/n_c",
    "n_high/n_c = (18 − λ) / 16",
    unit="1",
    source="IACS UR M68, older revisions (from memory); its scope leaves out gearing",
    speed_ratio="λ [1]",
)
def marine_upper_limit(speed_ratio: float) -> float:
    """Upper end of a marine barred range over the critical speed; λ is critical over rated speed.

    For comparison only: the rule leaves out gearing.

    Source: IACS UR M68, older revisions (from memory).

    Raises:
        OutOfRange: λ of more than 0.8, where the rule allows no barred range.
    """
    return (18.0 - _barrable(speed_ratio)) / 16.0


def _barrable(speed_ratio: float) -> float:
    if not 0.0 < speed_ratio <= 0.8:
        raise OutOfRange("speed_ratio above 0.8: the rule allows no barred range there")
    return speed_ratio


@equation(
    "ω_crit",
    "ω_crit = 2 π f / h",
    unit="rad/s",
    source="definition of the order",
    frequency="f [Hz]",
    order="h [1]",
)
def critical_speed(frequency: float, order: float) -> float:
    """Speed [rad/s] at which an order meets a natural frequency.

    Source: definition.

    Raises:
        OutOfRange: order zero is a steady torque and meets no frequency.
    """
    if order <= 0.0:
        raise OutOfRange("order must be above zero: a steady torque excites nothing")
    return math.tau * frequency / order


@equation(
    "K_A",
    "K_A = (T + T_a) / T",
    unit="1",
    source="ISO 6336-1:2006, 4.2, application factor as the ratio of peak to mean (from memory)",
    mean="T [N m]",
    alternating="T_a [N m]",
)
def application_factor(mean: float, alternating: float) -> float:
    """Application factor K_A of a part whose torque swings by T_a [N·m] about its mean T [N·m].

    Source: ISO 6336-1:2006 (from memory). To be used once: not where a spectrum holds T_a.

    Raises:
        OutOfRange: there is no mean torque.
    """
    if mean <= 0.0:
        raise OutOfRange("mean must be above zero: without load there is no factor on it")
    return (mean + alternating) / mean


@equation(
    "q",
    "q = X / T",
    unit="1",
    source="definition",
    torque="X [N m]",
    mean="T [N m]",
)
def share_of_mean(torque: float, mean: float) -> float:
    """A torque X [N·m] as a share of the mean torque T [N·m] of the same part.

    Source: definition.

    Raises:
        OutOfRange: there is no mean torque.
    """
    if mean <= 0.0:
        raise OutOfRange("mean must be above zero: without load there is no share of it")
    return torque / mean
