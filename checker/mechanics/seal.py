"""Radial lip seals: surface speed, the pressure and speed a lip bears, and what its shaft needs."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from checker.mechanics.equation import OutOfRange, equation

_ZERO_CELSIUS = 273.15

# Highest surface speed and the pressure a plain lip bears up to it: 7 psi to 1000 ft/min, 5 psi to
# 2000 ft/min, 3 psi above (US trade values, from memory). A supplier page (seen) gives 0.5 bar at
# low and 0.2 bar at high speed, which fits. The Tribology Handbook B23 (seen) is looser: 0.6 bar
# to 75 mm shaft diameter and 0.3 bar above, whatever the speed.
_PLAIN_LIP_STEPS = ((5.08, 48.0e3), (10.16, 34.0e3))
_PLAIN_LIP_FAST = 21.0e3

_PROFILE_LIP_SPEED = 5.0
_PROFILE_LIP_PRESSURE = 340.0e3


@dataclass(frozen=True, slots=True)
class LipMaterial:
    """What a seal lip of one elastomer bears.

    Attributes:
        name: short name of ISO 1629.
        speed: surface speed it bears with good lubrication, no pressure and low run-out, m/s.
        speed_at_most: the loosest figure found for that speed; equal to ``speed`` where there is
            only one, m/s.
        coldest: lowest temperature at which it still follows the shaft, K.
        hottest: highest temperature of the lip, K; the lip runs 20 to 50 K above the oil.
        speed_source: where the speeds come from.
        temperature_source: where the temperatures come from.
    """

    name: str
    speed: float
    speed_at_most: float
    coldest: float
    hottest: float
    speed_source: str
    temperature_source: str


_TIGHTER = "the tighter of The Tribology Handbook B23 and a supplier chart (both seen)"


def _lip(
    name: str, speeds: tuple[float, float], celsius: tuple[float, float], *sources: str
) -> LipMaterial:
    coldest, hottest = (limit + _ZERO_CELSIUS for limit in celsius)
    return LipMaterial(name, *speeds, coldest, hottest, *sources)


LIP_MATERIALS: Mapping[str, LipMaterial] = MappingProxyType(
    {
        material.name: material
        for material in (
            _lip(
                "NBR",
                (14.0, 15.0),
                (-40.0, 100.0),
                "14 m/s: DIN 3760 guide value (from memory); 15 m/s: The Tribology Handbook B23",
                _TIGHTER,
            ),
            _lip(
                "HNBR",
                (14.0, 14.0),
                (-30.0, 150.0),
                "taken as NBR; no source",
                "supplier chart (seen)",
            ),
            _lip("ACM", (18.0, 18.0), (-20.0, 130.0), "from memory", _TIGHTER),
            _lip("FKM", (38.0, 38.0), (-20.0, 200.0), "seal supplier page (seen)", _TIGHTER),
            _lip("VMQ", (38.0, 38.0), (-60.0, 200.0), "as FKM (from memory)", _TIGHTER),
        )
    }
)


@equation(
    "v",
    "v = ω d / 2",
    unit="m/s",
    source="Kinematics",
    angular_speed="ω [rad/s]",
    shaft_diameter="d [m]",
)
def lip_speed(angular_speed: float, shaft_diameter: float) -> float:
    """Surface speed ``v`` of a shaft under its seal lip, in m/s.

    ``angular_speed`` in rad/s relative to the lip, ``shaft_diameter`` in m. Valid for any value.
    Source: kinematics.
    """
    return angular_speed * shaft_diameter / 2.0


@equation(
    "h_lip",
    "h_lip = y - d/2 - y_b",
    unit="m",
    source="Plane geometry",
    axis="y [m]",
    diameter="d [m]",
    bottom="y_b [m]",
)
def lowest_place(axis: float, diameter: float, bottom: float) -> float:
    """Height ``h_lip`` of the lowest place under a lip over the case bottom, in m.

    ``axis`` of the shaft and ``bottom`` over one datum. Source: geometry.
    """
    return axis - diameter / 2.0 - bottom


@equation(
    "p_lip",
    "p_lip = 48 kPa for v ≤ 5.08 m/s, 34 kPa for v ≤ 10.16 m/s, else 21 kPa",
    unit="Pa",
    source="US trade steps of 7, 5 and 3 psi at 1000 and 2000 ft/min (from memory)",
    surface_speed="v [m/s]",
)
def plain_lip_pressure(surface_speed: float) -> float:
    """Pressure difference ``p_lip`` that a plain lip bears at a surface speed in m/s, in Pa.

    Valid for lips without pressure profile, pressed by oil or air from the side they face.
    Source: US trade values (from memory), matched by a supplier page that gives 0.5 bar at low
    and 0.2 bar at high speed.
    """
    for highest_speed, allowed in _PLAIN_LIP_STEPS:
        if surface_speed <= highest_speed:
            return allowed
    return _PLAIN_LIP_FAST


@equation(
    "p_lip",
    "p_lip = 340 kPa for v ≤ 5 m/s, else as a plain lip",
    unit="Pa",
    source="Bearing maker's seal page (seen): 0.34 MPa up to 5 m/s",
    surface_speed="v [m/s]",
)
def profile_lip_pressure(surface_speed: float) -> float:
    """Pressure difference ``p_lip`` that a lip with pressure profile bears, in Pa.

    Valid with axial retention on the low-pressure side. Above 5 m/s the source gives no figure
    and the profile earns nothing: the plain lip's steps hold. Source: a bearing maker's page.
    """
    if surface_speed <= _PROFILE_LIP_SPEED:
        return _PROFILE_LIP_PRESSURE
    return plain_lip_pressure(surface_speed)


@equation(
    "HRC_min",
    "HRC_min = 45, or 55 for v ≥ 4 m/s or with dirt",
    unit="1",
    source="Public data sheet for radial shaft seals (seen)",
    surface_speed="v [m/s]",
    dirt="dirt []",
)
def shaft_hardness(surface_speed: float, dirt: bool) -> float:
    """Rockwell C hardness ``HRC_min`` that a shaft needs under a lip, 0.3 mm deep.

    ``surface_speed`` in m/s; ``dirt`` says whether grit or water reaches the lip from outside.
    Valid for steel shafts. Source: a public data sheet; another maker allows soft shafts under
    5 m/s and asks 60 HRC only over 12 m/s.
    """
    return 55.0 if dirt or surface_speed >= 4.0 else 45.0


@equation(
    "Δp",
    "Δp = p_in - p_other",
    unit="Pa",
    source="Definition",
    inside="p_in [Pa]",
    other_side="p_other [Pa]",
)
def pressure_across(inside: float, other_side: float) -> float:
    """Pressure ``Δp`` across a seal, positive where the inside of the case is higher, in Pa.

    Both pressures over the local ambient, in Pa. Source: definition.
    """
    return inside - other_side


@equation(
    "r_p",
    "r_p = |Δp| / p_lip",
    unit="1",
    source="Definition",
    difference="Δp [Pa]",
    limit="p_lip [Pa]",
)
def pressure_share(difference: float, limit: float) -> float:
    """Pressure across a seal over what it bears, whatever its sense.

    ``difference`` and ``limit`` in Pa. Source: definition.

    Raises:
        OutOfRange: ``limit`` is not positive.
    """
    if limit <= 0.0:
        raise OutOfRange("the seal bears no pressure: its limit is not above zero")
    return abs(difference) / limit


@equation(
    "p_back",
    "p_back = -Δp for a lip that faces inside, Δp for one that faces outside, none below zero",
    unit="Pa",
    source="A lip is pressed on its shaft from the side it faces, and lifted from the other",
    difference="Δp [Pa]",
    lip_faces="lip []",
)
def pressure_behind_lip(difference: float, lip_faces: str) -> float:
    """Pressure ``p_back`` that lifts a lip off its shaft, in Pa.

    ``difference`` in Pa is positive where the inside is higher; ``lip_faces`` is inside, outside
    or both (two lips, of which one is always pressed on). Source: mechanics of radial lip seals.
    """
    if lip_faces == "both":
        return 0.0
    return max(-difference if lip_faces == "inside" else difference, 0.0)


@equation(
    "T_lip",
    "T_lip = T_oil + ΔT_lip",
    unit="K",
    source="Seal makers' guidance (seen): the lip runs 20 to 50 K over the oil",
    oil_temperature="T_oil [K]",
    lip_rise="ΔT_lip [ΔK]",
)
def lip_temperature(oil_temperature: float, lip_rise: float) -> float:
    """Temperature ``T_lip`` of a running seal lip, in K.

    ``oil_temperature`` in K, ``lip_rise`` of friction in K, 20 to 50. Source: seal makers.
    """
    return oil_temperature + lip_rise
