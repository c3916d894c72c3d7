"""Gear steels by heat treatment and quality: what their flanks and roots stand (ISO 6336-5).

Each row of the tables is a stress in MPa as a line over the surface hardness in HV, with the range
of hardness it holds for. Quality ML asks least of steel and heat treatment, MQ what a good maker
meets, ME what is worth its cost for a high demand. The figures are from memory; the text was not
read.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from checker.mechanics.equation import OutOfRange, equation

_PART_5 = "ISO 6336-5:2003, allowable stress numbers (from memory)"
_CONVERSION = (
    "fit to the hardness tables of ISO 18265, within 1.5 % from 30 to 60 HRC (from memory)"
)


@dataclass(frozen=True, slots=True)
class Strength:
    """A limit as a line over hardness: ``slope * HV + constant``, in MPa."""

    slope: float
    constant: float
    softest: float
    hardest: float


_QUALITIES = ("ML", "MQ", "ME")

# Alloyed wrought steel through-hardened (V), case-carburised (Eh), flame or induction hardened with
# the root hardened (IF), through-hardening steel nitrided (the lower of the two nitrided kinds).
_CONTACT: Mapping[str, tuple[Strength, Strength, Strength]] = MappingProxyType(
    {
        "through-hardened": (
            Strength(1.313, 188.0, 200.0, 360.0),
            Strength(1.313, 373.0, 200.0, 360.0),
            Strength(2.213, 260.0, 200.0, 390.0),
        ),
        "case-carburised": (
            Strength(0.0, 1300.0, 600.0, 800.0),
            Strength(0.0, 1500.0, 650.0, 800.0),
            Strength(0.0, 1650.0, 650.0, 800.0),
        ),
        "induction-hardened": (
            Strength(0.740, 602.0, 485.0, 615.0),
            Strength(0.541, 882.0, 500.0, 615.0),
            Strength(0.505, 1013.0, 500.0, 615.0),
        ),
        "nitrided": (
            Strength(0.0, 788.0, 450.0, 650.0),
            Strength(0.0, 998.0, 450.0, 650.0),
            Strength(0.0, 1217.0, 450.0, 650.0),
        ),
    }
)
_BENDING: Mapping[str, tuple[Strength, Strength, Strength]] = MappingProxyType(
    {
        "through-hardened": (
            Strength(0.423, 104.0, 200.0, 360.0),
            Strength(0.425, 187.0, 200.0, 360.0),
            Strength(0.358, 231.0, 200.0, 390.0),
        ),
        "case-carburised": (
            Strength(0.0, 312.0, 600.0, 800.0),
            Strength(0.0, 425.0, 650.0, 800.0),
            Strength(0.0, 525.0, 650.0, 800.0),
        ),
        "induction-hardened": (
            Strength(0.305, 76.0, 485.0, 615.0),
            Strength(0.138, 290.0, 500.0, 570.0),
            Strength(0.271, 237.0, 500.0, 615.0),
        ),
        "nitrided": (
            Strength(0.0, 258.0, 450.0, 650.0),
            Strength(0.0, 363.0, 450.0, 650.0),
            Strength(0.0, 432.0, 450.0, 650.0),
        ),
    }
)
# The core at which MQ roots reach the higher of their limits, and the softest core of each quality
# of case-carburised steel: 21, 25 and 30 HRC.
_HARD_CORE_ROCKWELL = 30.0
_HARD_CORE_LIMIT = 500.0
_SOFTEST_CORE = (21.0, 25.0, 30.0)
_CONVERSION_ERROR = 0.985  # a core stated in another scale is not turned away by the fit alone
_UNHARDENED = "through-hardened"


@equation(
    "HV",
    "HV = (223 HRC + 14 500) / (100 − HRC)",
    unit="HV",
    source=_CONVERSION,
    rockwell="HRC [HRC]",
)
def vickers_of_rockwell(rockwell: float) -> float:
    """Vickers hardness of a Rockwell C hardness, from 20 to 68 HRC.

    Raises:
        OutOfRange: ``rockwell`` is outside that range.
    """
    if not 20.0 <= rockwell <= 68.0:
        raise OutOfRange(f"rockwell: {rockwell:g} HRC is outside 20 to 68")
    return (223.0 * rockwell + 14500.0) / (100.0 - rockwell)


@equation(
    "HV",
    "HV = HB / 0.95",
    unit="HV",
    source=_CONVERSION,
    brinell="HB [HB]",
)
def vickers_of_brinell(brinell: float) -> float:
    """Vickers hardness of a Brinell hardness, up to 450 HB.

    Raises:
        OutOfRange: ``brinell`` is above 450.
    """
    if brinell > 450.0:
        raise OutOfRange(f"brinell: {brinell:g} HB is above 450, where the ball flattens")
    return brinell / 0.95


@equation(
    "HB",
    "HB = 0.95 HV",
    unit="HB",
    source=_CONVERSION,
    vickers="HV [HV]",
)
def brinell_of_vickers(vickers: float) -> float:
    """Brinell hardness of a Vickers hardness."""
    return 0.95 * vickers


def _on_line(
    table: Mapping[str, tuple[Strength, Strength, Strength]],
    treatment: str,
    quality: str,
    vickers: float,
) -> float:
    line = table[treatment][_QUALITIES.index(quality)]
    if vickers < line.softest:
        raise OutOfRange(
            f"surface hardness: {vickers:.0f} HV is below the {line.softest:.0f} HV from which"
            f" {treatment} steel of quality {quality} is rated"
        )
    return 1e6 * (line.constant + line.slope * min(vickers, line.hardest))


@equation(
    "σ_Hlim",
    "σ_Hlim of treatment and quality: Eh 1300, 1500, 1650 MPa; V 1.313 HV + 188, + 373,"
    " 2.213 HV + 260; IF 0.740 HV + 602, 0.541 HV + 882, 0.505 HV + 1013; nitrided 788, 998, 1217",
    unit="Pa",
    source=_PART_5,
    treatment="treatment []",
    quality="quality []",
    vickers="HV [HV]",
)
def contact_limit(treatment: str, quality: str, vickers: float) -> float:
    """Contact stress [Pa] that 99 of 100 gears stand at the reference number of load cycles.

    Harder than the range of the table counts as its end.

    Raises:
        OutOfRange: ``vickers`` is below the range of the table.
    """
    return _on_line(_CONTACT, treatment, quality, vickers)


@equation(
    "σ_Flim",
    "σ_Flim of treatment and quality: Eh 312, 425 (500 with a core from 30 HRC), 525 MPa;"
    " V 0.423 HV + 104, 0.425 HV + 187, 0.358 HV + 231; IF 0.305 HV + 76, 0.138 HV + 290,"
    " 0.271 HV + 237; nitrided 258, 363, 432; core of Eh from 21, 25, 30 HRC",
    unit="Pa",
    source=_PART_5,
    treatment="treatment []",
    quality="quality []",
    vickers="HV [HV]",
    core_vickers="HV_core [HV]",
)
def bending_limit(treatment: str, quality: str, vickers: float, core_vickers: float) -> float:
    """Nominal root stress [Pa] that 99 of 100 gears stand at the reference number of load cycles.

    The middle limit of case-carburised MQ, 461 MPa, rests on a hardenability that is not stated.

    Raises:
        OutOfRange: ``vickers`` is below the range of the table, or the core of case-carburised
            steel is softer than its quality asks for.
    """
    limit = _on_line(_BENDING, treatment, quality, vickers)
    if treatment != "case-carburised":
        return limit
    softest = _SOFTEST_CORE[_QUALITIES.index(quality)]
    if not _reaches(core_vickers, softest):
        raise OutOfRange(
            f"core hardness: {core_vickers:.0f} HV is below the {softest:.0f} HRC from which"
            f" {treatment} steel of quality {quality} is rated"
        )
    if quality == "MQ" and _reaches(core_vickers, _HARD_CORE_ROCKWELL):
        return 1e6 * _HARD_CORE_LIMIT
    return limit


def _reaches(vickers: float, rockwell: float) -> bool:
    return vickers >= _CONVERSION_ERROR * vickers_of_rockwell(rockwell)


@equation(
    "treatment of root",
    "as the flanks; through-hardened where induction hardening leaves the root out",
    unit="",
    source=_PART_5,
    treatment="treatment []",
    root_hardened="root hardened []",
)
def treatment_of_root(treatment: str, root_hardened: bool) -> str:
    """Heat treatment that the root has had."""
    return treatment if root_hardened else _UNHARDENED


@equation(
    "HV_root",
    "HV_root = HV hardened, HV_core where the hardening leaves the root out",
    unit="HV",
    source=_PART_5,
    vickers="HV [HV]",
    core_vickers="HV_core [HV]",
    root_hardened="root hardened []",
)
def hardness_of_root(vickers: float, core_vickers: float, root_hardened: bool) -> float:
    """Vickers hardness of the root."""
    return vickers if root_hardened else core_vickers


@equation(
    "σ_0.2",
    "σ_0.2 = 0.8 · 3.3 HB, in MPa",
    unit="Pa",
    source="common estimate of steel strength from hardness, no source",
    core_vickers="HV_core [HV]",
)
def proof_stress(core_vickers: float) -> float:
    """Proof stress of a through-hardened steel, estimated from its hardness [Pa]."""
    return 0.8 * 3.3e6 * brinell_of_vickers(core_vickers)


@equation(
    "ΔHV",
    "ΔHV = (HV_pinion − HV_wheel) / 100",
    unit="1",
    source="definition",
    pinion="HV_pinion [HV]",
    wheel="HV_wheel [HV]",
)
def hardness_lead(pinion: float, wheel: float) -> float:
    """How much harder the pinion is than its wheel, in hundreds of Vickers."""
    return 0.01 * (pinion - wheel)
