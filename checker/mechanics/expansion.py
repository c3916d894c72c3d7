"""Room for oil to grow into: the air over the oil of a gear case or tank."""

from checker.mechanics.equation import OutOfRange, equation


@equation(
    "V_air",
    "V_air = V - V_oil",
    unit="m3",
    source="Definition",
    capacity="V [m3]",
    fill="V_oil [m3]",
)
def air_volume(capacity: float, fill: float) -> float:
    """Air ``V_air`` over the oil, in m3.

    ``capacity`` is the volume that oil and air share, ``fill`` the oil (m3). Source: definition.

    Raises:
        OutOfRange: ``fill`` exceeds the capacity.
    """
    if fill > capacity:
        raise OutOfRange(
            f"the oil fill of {fill * 1e3:.4g} L is more than the capacity of"
            f" {capacity * 1e3:.4g} L"
        )
    return capacity - fill


@equation(
    "q_air",
    "q_air = (V - V_oil) / V",
    unit="1",
    source="Definition; 14 CFR 27.1013(c) counts the expansion space over the capacity",
    capacity="V [m3]",
    fill="V_oil [m3]",
)
def air_share(capacity: float, fill: float) -> float:
    """Air ``q_air`` over the oil as a fraction of the capacity; volumes in m3.

    Negative where the fill exceeds the capacity. Source: definition.

    Raises:
        OutOfRange: ``capacity`` is not positive.
    """
    if capacity <= 0.0:
        raise OutOfRange(f"a capacity of {capacity * 1e3:.4g} L holds nothing")
    return (capacity - fill) / capacity


@equation(
    "e_req",
    "e_req = ε + a",
    unit="1",
    source="Thermal growth and entrained air side by side; SAE 460209 gives 6 to 20 % air",
    oil_growth="ε [1]",
    entrained_air="a [1]",
)
def expansion_space_required(oil_growth: float, entrained_air: float) -> float:
    """Expansion space ``e_req`` that oil needs over its cold fill, as a fraction of the fill.

    ``oil_growth`` from the fill to the hottest temperature and ``entrained_air``, both as
    fractions of the fill. Valid for small fractions, whose product is left out. Source: volume
    balance; SAE 460209 for the air that gear trains entrain.
    """
    return oil_growth + entrained_air


@equation(
    "e",
    "e = (V - V_oil) / V_oil",
    unit="1",
    source="Definition",
    capacity="V [m3]",
    fill="V_oil [m3]",
)
def expansion_space(capacity: float, fill: float) -> float:
    """Expansion space ``e`` over the cold fill, as a fraction of the fill; volumes in m3.

    Valid for any fill; negative where it exceeds the capacity. Source: definition.

    Raises:
        OutOfRange: ``fill`` is not positive.
    """
    if fill <= 0.0:
        raise OutOfRange(f"an oil fill of {fill * 1e3:.4g} L is no oil")
    return (capacity - fill) / fill
