"""Families of oil by what their name promises: typical figures for an oil whose data are not given.

Typical figures are where a review starts, never a limit. Take the low viscosities for the film,
the high ones for a cold start; both ends are pairs, of one oil at 40 and at 100 °C.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from checker.mechanics.equation import equation
from checker.mechanics.oil import CENTISTOKES

Additives = Literal["none", "anti-wear", "EP"]
Base = Literal["mineral", "PAO", "PAG", "ester"]
Resistance = Literal["good", "limited", "poor"]
ColdLimit = Literal["pumping", "150 Pa·s", "pour point", "low-temperature viscosity"]
How = Literal["seen", "memory", "derived"]

_ZERO_CELSIUS = 273.15


@dataclass(frozen=True, slots=True)
class Chemistry:
    """What the base oil and its additives do to the parts and to other oils.

    Attributes:
        base: base oil.
        additives: wear protection; ``EP`` is sulphur-phosphorus, ``None`` differs by maker.
        gl5: API GL-5, about twice the EP treatment of GL-4.
        friction_modified: ``None`` where it is often so: ask.
        one_way_clutch: whether a one-way clutch grips in it; a clutch maker's list overrules it.
        yellow_metal: how bronze and brass bear it.
        elastomers: resistance of seal materials (names of ISO 1629) by chemistry alone: their
            temperature range holds besides.
        with_engine_oil: sharing a sump, drain or vent with engine oil: ``same`` class, ``own kind``
            with oil of its own family only, ``no`` since the additives clash, ``never`` since the
            base oils part.
        source: where the judgements come from.
    """

    base: Base
    additives: Additives | None
    gl5: bool
    friction_modified: bool | None
    one_way_clutch: Literal["ok", "ask", "no"]
    yellow_metal: Literal["ok", "caution"]
    elastomers: Mapping[str, Resistance]
    with_engine_oil: Literal["same", "own kind", "no", "never"]
    source: str


@dataclass(frozen=True, slots=True)
class OilFamily:
    """Typical figures of a family of oils.

    Attributes:
        name: the name the trade gives it.
        viscosity_40_low: lowest viscosity at 40 °C, m2/s.
        viscosity_40_high: highest viscosity at 40 °C, m2/s.
        viscosity_100_low: lowest viscosity at 100 °C, m2/s.
        viscosity_100_high: highest viscosity at 100 °C, m2/s.
        density_15: density at 15 °C, kg/m3.
        cold_limit: temperature below which it may not flow, K.
        cold_limit_kind: what sets the cold limit.
        chemistry: what it does to parts and other oils.
        source: where the viscosities and the cold limit come from; densities are from memory.
        how_viscosity_40: how the viscosity at 40 °C is known.
        how_viscosity_100: how the viscosity at 100 °C is known.
        how_cold_limit: how the cold limit is known.
    """

    name: str
    viscosity_40_low: float
    viscosity_40_high: float
    viscosity_100_low: float
    viscosity_100_high: float
    density_15: float
    cold_limit: float
    cold_limit_kind: ColdLimit
    chemistry: Chemistry
    source: str
    how_viscosity_40: How
    how_viscosity_100: How
    how_cold_limit: How


def _elastomers(
    nbr: Resistance, hnbr: Resistance, acm: Resistance, fkm: Resistance, vmq: Resistance
) -> Mapping[str, Resistance]:
    return MappingProxyType(
        {
            **{"NBR": nbr, "HNBR": hnbr, "ACM": acm, "FKM": fkm, "VMQ": vmq},
            # EPDM and natural rubber swell and soften in any hydrocarbon oil; polyurethane bears
            # it, but not for long when it is hot or wet (both from memory).
            **{"EPDM": "poor", "natural rubber": "poor", "polyurethane": "limited"},
        }
    )


# The Tribology Handbook B23 (seen) calls NBR, ACM and FKM excellent and silicone fair in mineral
# oil; HNBR as NBR. With EP additives silicone is poor and NBR limited (from memory).
_IN_MINERAL = _elastomers("good", "good", "good", "good", "limited")
_IN_EP = _elastomers("limited", "good", "good", "good", "poor")
_IN_PAO = _elastomers("limited", "limited", "good", "good", "limited")  # shrinks NBR
_IN_PAG = _elastomers("limited", "limited", "limited", "good", "limited")

_CELSIUS_FOR_LONG: Mapping[Base, float] = MappingProxyType(
    {"mineral": 110.0, "PAO": 130.0, "PAG": 130.0, "ester": 150.0}
)

_CLUTCH = "one-way clutches: two lubrication pages of a clutch maker (seen); "

# fmt: off
_ENGINE_PLAIN = Chemistry(
    "mineral", "anti-wear", False, False, "ok", "ok", _IN_MINERAL, "same",
    _CLUTCH + "detergent and zinc anti-wear additives (from memory)",
)
_ENGINE_MULTIGRADE = Chemistry(
    "mineral", "anti-wear", False, None, "ask", "ok", _IN_MINERAL, "same",
    "often friction-modified: JASO T 903 class MA or the clutch maker decides (seen)",
)
# Shares a sump with an aviation engine oil of its own kind only: ash in the combustion chamber.
_AVIATION = Chemistry(
    "mineral", "none", False, False, "ask", "ok", _IN_MINERAL, "own kind",
    "ashless dispersant or straight, no EP (from memory); one-way clutches likely, not read",
)
_GEAR_GL5 = Chemistry(
    "mineral", "EP", True, None, "no", "caution", _IN_EP, "no",
    _CLUTCH + "the rest from memory",
)
_GEAR_GL5_SYNTHETIC = Chemistry(
    "PAO", "EP", True, None, "no", "caution", _IN_EP, "no",
    _CLUTCH + "base PAO with ester or deeply refined mineral oil; the rest from memory",
)
_GEAR_GL4 = Chemistry(
    "mineral", "EP", False, None, "no", "ok", _IN_EP, "no",
    _CLUTCH + "about half the EP additive of GL-5 (seen); the rest from memory",
)
_CIRCULATING = Chemistry(
    "mineral", "none", False, False, "ok", "ok", _IN_MINERAL, "no",
    _CLUTCH + "rust and oxidation inhibitors only (from memory)",
)
_INDUSTRIAL_EP = Chemistry(
    "mineral", "EP", False, False, "no", "caution", _IN_EP, "no",
    _CLUTCH + "yellow metal: ask for ASTM D130; the rest from memory",
)
_PAO = Chemistry(
    "PAO", None, False, None, "ask", "caution", _IN_PAO, "no",
    "the base mixes with mineral oil (seen), the additives may not; the rest from memory",
)
_PAG = Chemistry(
    "PAG", "anti-wear", False, None, "ask", "ok", _IN_PAG, "never",
    "must not be mixed (seen); attacks some paints; the rest from memory",
)
_ATF = Chemistry(
    "mineral", "anti-wear", False, True, "ok", "ok", _IN_MINERAL, "no",
    _CLUTCH + "allowed by name although friction-modified; the rest from memory",
)
_ATF_LOW = Chemistry(
    "mineral", "anti-wear", False, True, "ask", "ok", _IN_MINERAL, "no",
    "one-way clutches: the maker decides; from memory",
)


def _family(
    name: str,
    at_40: tuple[float, float],
    at_100: tuple[float, float],
    density_15: float,
    cold: tuple[float, ColdLimit],
    chemistry: Chemistry,
    source: str,
    *how: How,
) -> OilFamily:
    """One row of the table below, from the units of the trade: mm2/s, kg/m3, °C."""
    return OilFamily(
        name,
        at_40[0] * CENTISTOKES, at_40[1] * CENTISTOKES,
        at_100[0] * CENTISTOKES, at_100[1] * CENTISTOKES,
        density_15, cold[0] + _ZERO_CELSIUS, cold[1], chemistry, source, *how,
    )


_J300 = "ν100 and cold limit: SAE J300, January 2015; ν40 from memory"
_J300_MONOGRADE = "ν100: SAE J300, January 2015; pour point and ν40 from memory"
_J300_AVIATION = (
    "ν100: SAE J300, January 2015; ν40 from it at an index of 100; pour point from memory"
)
_J306 = "ν100 and cold limit: SAE J306, February 2019; ν40 from memory"
_ISO_95 = "ν40: ISO 3448; ν100 from it at an index of 95; pour point from memory"
_ISO_150 = "ν40: ISO 3448; ν100 from it at an index of 150; pour point from memory"
_ISO_200 = "ν40: ISO 3448; ν100 from it at an index of 200; pour point from memory"
_ATF_SOURCE = "ν100 near 7.4 mm²/s: SAE papers (abstracts seen); the rest from memory"

_ISO: tuple[How, How, How] = ("seen", "derived", "memory")
_SAE: tuple[How, How, How] = ("memory", "seen", "seen")

_FAMILIES = (
    _family("engine SAE 30", (90, 110), (9.3, 12.5), 890, (-20, "pour point"),
            _ENGINE_PLAIN, _J300_MONOGRADE, "memory", "seen", "memory"),
    _family("engine 5W-30", (60, 70), (9.3, 12.5), 858, (-35, "pumping"),
            _ENGINE_MULTIGRADE, _J300, *_SAE),
    _family("engine 10W-40", (90, 110), (12.5, 16.3), 872, (-30, "pumping"),
            _ENGINE_MULTIGRADE, _J300, *_SAE),
    _family("engine 15W-40", (90, 110), (12.5, 16.3), 875, (-25, "pumping"),
            _ENGINE_MULTIGRADE, _J300, *_SAE),
    _family("aviation SAE 50", (169.2, 263.2), (16.3, 21.9), 888, (-10, "pour point"),
            _AVIATION, _J300_AVIATION, "derived", "seen", "memory"),
    _family("gear 75W-90 GL-5", (95, 120), (13.5, 18.5), 870, (-40, "150 Pa·s"),
            _GEAR_GL5_SYNTHETIC, _J306, *_SAE),
    _family("gear 80W-90 GL-5", (130, 200), (13.5, 18.5), 895, (-26, "150 Pa·s"),
            _GEAR_GL5, _J306, *_SAE),
    _family("gear 75W-80 GL-4", (50, 90), (8.5, 11.0), 875, (-40, "150 Pa·s"),
            _GEAR_GL4, _J306, *_SAE),
    _family("circulating VG 68", (61.2, 74.8), (7.97, 9.09), 875, (-18, "pour point"),
            _CIRCULATING, _ISO_95, *_ISO),
    _family("circulating VG 100", (90, 110), (10.3, 11.8), 880, (-15, "pour point"),
            _CIRCULATING, _ISO_95, *_ISO),
    _family("circulating VG 150", (135, 165), (13.55, 15.51), 886, (-12, "pour point"),
            _CIRCULATING, _ISO_95, *_ISO),
    _family("circulating VG 220", (198, 242), (17.49, 19.96), 892, (-9, "pour point"),
            _CIRCULATING, _ISO_95, *_ISO),
    _family("industrial EP VG 100", (90, 110), (10.3, 11.8), 885, (-15, "pour point"),
            _INDUSTRIAL_EP, _ISO_95, *_ISO),
    _family("industrial EP VG 150", (135, 165), (13.55, 15.51), 890, (-12, "pour point"),
            _INDUSTRIAL_EP, _ISO_95, *_ISO),
    _family("industrial EP VG 220", (198, 242), (17.49, 19.96), 895, (-9, "pour point"),
            _INDUSTRIAL_EP, _ISO_95, *_ISO),
    _family("PAO VG 100", (90, 110), (13.4, 15.59), 848, (-45, "pour point"),
            _PAO, _ISO_150, *_ISO),
    _family("PAO VG 150", (135, 165), (18.13, 21.01), 852, (-40, "pour point"),
            _PAO, _ISO_150, *_ISO),
    _family("PAO VG 220", (198, 242), (24.0, 27.78), 857, (-35, "pour point"),
            _PAO, _ISO_150, *_ISO),
    _family("PAG VG 150", (135, 165), (22.89, 26.81), 1025, (-33, "pour point"),
            _PAG, _ISO_200, *_ISO),
    _family("PAG VG 220", (198, 242), (30.96, 36.24), 1030, (-30, "pour point"),
            _PAG, _ISO_200, *_ISO),
    _family("ATF conventional", (33, 38), (7.0, 7.6), 860, (-40, "low-temperature viscosity"),
            _ATF, _ATF_SOURCE, "memory", "seen", "memory"),
    _family("ATF low viscosity", (24, 30), (5.0, 6.0), 840, (-40, "low-temperature viscosity"),
            _ATF_LOW, "from memory", "memory", "memory", "memory"),
)
# fmt: on

_BY_NAME: Mapping[str, OilFamily] = MappingProxyType({each.name: each for each in _FAMILIES})
FAMILY_NAMES: tuple[str, ...] = tuple(_BY_NAME)


def family(name: str) -> OilFamily:
    """Return the oil family of that name.

    Raises:
        KeyError: no family has the name; ``FAMILY_NAMES`` lists them.
    """
    return _BY_NAME[name]


@equation(
    "T_max",
    "T_max = 110 °C mineral, 130 °C PAO and PAG, 150 °C ester",
    unit="K",
    source="common practice, no source: oxidation about doubles with each 10 K",
    base="base []",
)
def highest_oil_temperature(base: Base) -> float:
    """Bulk temperature ``T_max`` that an oil of this base bears for long, in K.

    Valid for oil changed in time; the additives may end sooner. Source: common practice.
    """
    return _CELSIUS_FOR_LONG[base] + _ZERO_CELSIUS
