"""Oil coolers by effectiveness and number of transfer units, taken as counterflow."""

import math

from checker.mechanics.equation import OutOfRange, equation


@equation(
    "C",
    "C = ρ c_p Q",
    unit="W/K",
    source="Definition",
    density="ρ [kg/m3]",
    heat_capacity="c_p [J/kg K]",
    flow="Q [m3/s]",
)
def capacity_rate(density: float, heat_capacity: float, flow: float) -> float:
    """Capacity rate ``C`` of a stream, in W/K."""
    return density * heat_capacity * flow


@equation(
    "ε",
    "ε = (1 - exp(-NTU(1 - C_r)))/(1 - C_r exp(-NTU(1 - C_r))), NTU/(1 + NTU) for C_r = 1",
    unit="1",
    source="Counterflow exchanger, effectiveness-NTU (handbooks)",
    transfer_units="NTU [1]",
    capacity_ratio="C_r [1]",
)
def effectiveness(transfer_units: float, capacity_ratio: float) -> float:
    """Effectiveness ``ε`` of a counterflow cooler. Source: handbook form.

    Raises:
        OutOfRange: ``transfer_units`` is negative or ``capacity_ratio`` outside 0 to 1.
    """
    if transfer_units < 0.0 or not 0.0 <= capacity_ratio <= 1.0:
        raise OutOfRange("transfer_units must not be negative, capacity_ratio within 0 to 1")
    if 1.0 - capacity_ratio < 1.0e-6:
        return transfer_units / (1.0 + transfer_units)
    decay = math.exp(-transfer_units * (1.0 - capacity_ratio))
    return (1.0 - decay) / (1.0 - capacity_ratio * decay)


@equation(
    "NTU",
    "NTU = ln((1 - ε C_r)/(1 - ε))/(1 - C_r), ε/(1 - ε) for C_r = 1",
    unit="1",
    source="Counterflow exchanger, effectiveness-NTU (handbooks)",
    effectiveness="ε [1]",
    capacity_ratio="C_r [1]",
)
def transfer_units(effectiveness: float, capacity_ratio: float) -> float:
    """Number of transfer units ``NTU`` for an effectiveness of a counterflow cooler.

    Raises:
        OutOfRange: ``effectiveness`` is not within 0 to below 1: no size reaches it.
    """
    if not 0.0 <= effectiveness < 1.0:
        raise OutOfRange(f"effectiveness {effectiveness:.3g}: no size of cooler reaches it")
    if 1.0 - capacity_ratio < 1.0e-6:
        return effectiveness / (1.0 - effectiveness)
    inner = (1.0 - effectiveness * capacity_ratio) / (1.0 - effectiveness)
    return math.log(inner) / (1.0 - capacity_ratio)


@equation(
    "UA",
    "UA = NTU C_min, NTU of ε = P/(C_min ΔT), counterflow",
    unit="W/K",
    source="Effectiveness-NTU at the stated rating",
    rating="P [W]",
    difference="ΔT [ΔK]",
    oil_rate="C_oil [W/K]",
    coolant_rate="C_c [W/K]",
)
def cooler_conductance(
    rating: float, difference: float, oil_rate: float, coolant_rate: float
) -> float:
    """Conductance ``UA`` of a cooler from its rating, in W/K.

    ``difference`` of the two inlets at the rating in K, capacity rates in W/K.

    Raises:
        OutOfRange: the rating is more than its streams can carry at that difference.
    """
    least, most = sorted((oil_rate, coolant_rate))
    if least <= 0.0 or difference <= 0.0:
        raise OutOfRange("the streams or the difference of the cooler's rating are nothing")
    share = rating / (least * difference)
    if share >= 1.0:
        raise OutOfRange(
            f"rating {rating:g} W: the streams carry {least * difference:.0f} W at most"
        )
    return transfer_units(share, least / most) * least


@equation(
    "Φ_c",
    "Φ_c = ε C_min (T_oil - T_c), ε of NTU = UA/C_min, counterflow",
    unit="W",
    source="Effectiveness-NTU (handbooks)",
    conductance="UA [W/K]",
    oil_rate="C_oil [W/K]",
    coolant_rate="C_c [W/K]",
    oil_temperature="T_oil [K]",
    coolant_temperature="T_c [K]",
)
def cooler_flow(
    conductance: float,
    oil_rate: float,
    coolant_rate: float,
    oil_temperature: float,
    coolant_temperature: float,
) -> float:
    """Heat ``Φ_c`` that a cooler takes from the oil, in W; 0 where a stream stands still.

    SI arguments, both temperatures at the inlets.
    """
    least, most = sorted((oil_rate, coolant_rate))
    if least <= 0.0:
        return 0.0
    share = effectiveness(conductance / least, least / most)
    return share * least * (oil_temperature - coolant_temperature)


@equation(
    "UA/UA_0",
    "UA_need/UA, UA_need = NTU C_min, NTU of ε = Φ_need/(C_min (T_lim - T_c)), counterflow",
    unit="1",
    source="Effectiveness-NTU (handbooks)",
    needed="Φ_need [W]",
    conductance="UA [W/K]",
    oil_rate="C_oil [W/K]",
    coolant_rate="C_c [W/K]",
    limit="T_lim [K]",
    coolant_temperature="T_c [K]",
)
def cooler_size_needed(
    needed: float,
    conductance: float,
    oil_rate: float,
    coolant_rate: float,
    limit: float,
    coolant_temperature: float,
) -> float:
    """Conductance that a cooler needs to carry a heat at the limit, over that which it has.

    0 where nothing is left for it to carry. SI arguments.

    Raises:
        OutOfRange: no size carries it: the streams are too small or the coolant too warm; or
            the present cooler carries nothing.
    """
    if needed <= 0.0:
        return 0.0
    if conductance <= 0.0:
        raise OutOfRange("conductance: the cooler that is there carries nothing")
    least, most = sorted((oil_rate, coolant_rate))
    head = least * (limit - coolant_temperature)
    if head <= needed:
        raise OutOfRange(
            f"needed {needed:.0f} W: at this point the streams of the cooler carry "
            f"{max(head, 0.0):.0f} W at most, whatever its size"
        )
    return transfer_units(needed / head, least / most) * least / conductance


@equation(
    "Φ_c",
    "Φ_c = x Φ, x = (T_oil - T_th)/8 K within 0 and 1",
    unit="W",
    source="A wax thermostat opens over about 8 K (from memory)",
    flow="Φ [W]",
    oil_temperature="T_oil [K]",
    opening_temperature="T_th [K]",
)
def behind_thermostat(flow: float, oil_temperature: float, opening_temperature: float) -> float:
    """Heat ``Φ_c`` of a cooler that a thermostat opens, in W."""
    return flow * min(max((oil_temperature - opening_temperature) / 8.0, 0.0), 1.0)
