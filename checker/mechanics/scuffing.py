"""Scuffing by flash temperature: contact temperature along the path against that of the oil's test.

After ISO/TS 6336-20 (flash temperature method) and AGMA 925-A03, both from memory. The load stage
that an oil reached in the gear test gives the temperature at which it lets go of gears.
"""

from functools import lru_cache
from math import cos, pi, sin, sqrt, tan

from checker.mechanics.equation import OutOfRange, equation

_FLASH = "ISO/TS 6336-20:2017, flash temperature method (from memory)"
_AGMA_925 = "AGMA 925-A03 (from memory)"
_ZERO_CELSIUS = 273.15
_STEEL = 13.6e3  # N/(m s^0.5 K), thermal contact coefficient of gear steel
_STEPS = 24


@equation(
    "μ_m",
    "μ_m = 0.060 (w_Bt/(v_Σ ρ_red))^0.2 η^−0.05 X ((Ra_1 + Ra_2)/2)^0.25, v_Σ = 2 v sin α_wt to"
    " 50 m/s; w in N/mm, ρ in mm, η in mPa s, Ra in µm; X 1 mineral, 0.8 PAO, 0.7 PAG, 1.3 ester",
    unit="1",
    source=_FLASH,
    load="w_Bt [N/m]",
    pitch_line_speed="v [m/s]",
    working_pressure_angle="α_wt [rad]",
    curvature="ρ_red [m]",
    viscosity="η [Pa s]",
    roughness_1="Ra_1 [m]",
    roughness_2="Ra_2 [m]",
    base="base []",
)
def mean_friction(
    load: float,
    pitch_line_speed: float,
    working_pressure_angle: float,
    curvature: float,
    viscosity: float,
    roughness_1: float,
    roughness_2: float,
    base: str,
) -> float:
    """Mean coefficient of friction of the mesh.

    Raises:
        OutOfRange: the gears stand still.
    """
    if pitch_line_speed <= 0.0:
        raise OutOfRange("pitch_line_speed: the gears stand still")
    lubricant = {"mineral": 1.0, "PAO": 0.8, "PAG": 0.7, "ester": 1.3}[base]
    rolling = 2.0 * min(50.0, pitch_line_speed) * sin(working_pressure_angle)
    loading = (load / 1e3) / (rolling * curvature * 1e3)
    rough = (0.5e6 * (roughness_1 + roughness_2)) ** 0.25
    return float(0.060 * loading**0.2 * (viscosity * 1e3) ** -0.05 * lubricant * rough)


@equation(
    "X_Γ",
    "X_Γ: ⅓ to ⅔ where two spur pairs share, 1 where one carries all; helical with ε_β ≥ 1: 1/ε_α,"
    " 1.3/ε_α at the ends; between by ε_β",
    unit="1",
    source=_FLASH + ", unmodified teeth, grade 7 or better",
    place="Γ* [1]",
    transverse_contact_ratio="ε_α [1]",
    overlap_ratio="ε_β [1]",
)
def load_share(place: float, transverse_contact_ratio: float, overlap_ratio: float) -> float:
    """Share of the load at a place on the path, from 0 at its start to 1 at its end."""
    along = place * transverse_contact_ratio
    before = transverse_contact_ratio - 1.0
    if before >= 1.0:
        # More than two pairs: the share rises and falls between a third and a half.
        spur = 1.0 / 3.0 + (0.5 - 1.0 / 3.0) * min(1.0, 2.0 * min(place, 1.0 - place))
    elif along <= before:
        spur = (1.0 + along / before) / 3.0
    elif along >= 1.0:
        spur = (1.0 + (transverse_contact_ratio - along) / before) / 3.0
    else:
        spur = 1.0
    near_end = min(place, 1.0 - place) * transverse_contact_ratio
    buttress = 1.0 + 0.3 * max(0.0, 1.0 - near_end / 0.2)
    helical = buttress / transverse_contact_ratio
    weight = min(1.0, overlap_ratio)
    return spur + weight * (helical - spur)


@equation(
    "Θ_fl",
    "Θ_fl = 0.80 μ X_Γ w |v_1 − v_2| / (B_M √b_H (√v_1 + √v_2)), B_M = 13.6 N/(mm s^½ K), b_H half"
    " width of the contact",
    unit="ΔK",
    source=_AGMA_925,
    friction="μ [1]",
    load="X_Γ w [N/m]",
    half_width="b_H [m]",
    rolling_speed_1="v_1 [m/s]",
    rolling_speed_2="v_2 [m/s]",
)
def flash_temperature(
    friction: float,
    load: float,
    half_width: float,
    rolling_speed_1: float,
    rolling_speed_2: float,
) -> float:
    """Rise of the contact over the bulk of the teeth at one place of the path [K].

    Raises:
        OutOfRange: a flank stands still there.
    """
    if rolling_speed_1 <= 0.0 or rolling_speed_2 <= 0.0:
        raise OutOfRange("rolling_speed: the place lies at a base circle")
    sliding = abs(rolling_speed_1 - rolling_speed_2)
    sharing = sqrt(rolling_speed_1) + sqrt(rolling_speed_2)
    return 0.80 * friction * load * sliding / (_STEEL * sqrt(half_width) * sharing)


_PATH = {
    "friction": "μ [1]",
    "load": "w_Bn [N/m]",
    "speed_1": "ω_1 [rad/s]",
    "speed_2": "ω_2 [rad/s]",
    "base_diameter_1": "d_b1 [m]",
    "base_diameter_2": "d_b2 [m]",
    "working_pressure_angle": "α_wt [rad]",
    "base_helix_angle": "β_b [rad]",
    "path_at_tip_1": "g_a1 [m]",
    "path_at_tip_2": "g_a2 [m]",
    "transverse_contact_ratio": "ε_α [1]",
    "overlap_ratio": "ε_β [1]",
}


@lru_cache(maxsize=64)
def flash_temperatures(
    friction: float,
    load: float,
    speed_1: float,
    speed_2: float,
    base_diameter_1: float,
    base_diameter_2: float,
    working_pressure_angle: float,
    base_helix_angle: float,
    path_at_tip_1: float,
    path_at_tip_2: float,
    transverse_contact_ratio: float,
    overlap_ratio: float,
) -> tuple[float, ...]:
    """Flash temperatures at even steps along the path, from the root of gear 1 to its tip [K].

    The load is normal to the flanks, per face width. Steel on steel.

    Raises:
        OutOfRange: the path reaches a base circle.
    """
    modulus = 206e9 / (2.0 * (1.0 - 0.3**2))
    pitch_1 = 0.5 * base_diameter_1 * tan(working_pressure_angle)
    pitch_2 = 0.5 * base_diameter_2 * tan(working_pressure_angle)
    length = path_at_tip_1 + path_at_tip_2
    rises = []
    for step in range(_STEPS + 1):
        place = step / _STEPS
        from_pitch = place * length - path_at_tip_2
        rho_1, rho_2 = pitch_1 + from_pitch, pitch_2 - from_pitch
        if rho_1 <= 0.0 or rho_2 <= 0.0:
            raise OutOfRange("path_at_tip: the path of contact reaches a base circle")
        share = load_share(place, transverse_contact_ratio, overlap_ratio) * load
        normal_curvature = rho_1 * rho_2 / ((rho_1 + rho_2) * cos(base_helix_angle))
        half_width = sqrt(4.0 * share * normal_curvature / (pi * modulus))
        rises.append(
            flash_temperature(friction, share, half_width, rho_1 * speed_1, rho_2 * speed_2)
        )
    return tuple(rises)


@equation(
    "Θ_fl,max",
    "Θ_fl,max = max Θ_fl(Γ) over even steps along the path of contact",
    unit="ΔK",
    source=_AGMA_925 + ", with the half width b_H of Hertz",
    **_PATH,
)
def greatest_flash_temperature(
    friction: float,
    load: float,
    speed_1: float,
    speed_2: float,
    base_diameter_1: float,
    base_diameter_2: float,
    working_pressure_angle: float,
    base_helix_angle: float,
    path_at_tip_1: float,
    path_at_tip_2: float,
    transverse_contact_ratio: float,
    overlap_ratio: float,
) -> float:
    """Greatest flash temperature of the path [K].

    Raises:
        OutOfRange: the path reaches a base circle.
    """
    return max(
        flash_temperatures(
            friction,
            load,
            speed_1,
            speed_2,
            base_diameter_1,
            base_diameter_2,
            working_pressure_angle,
            base_helix_angle,
            path_at_tip_1,
            path_at_tip_2,
            transverse_contact_ratio,
            overlap_ratio,
        )
    )


@equation(
    "Θ_flm",
    "Θ_flm = (1/g_α) ∫ Θ_fl(Γ) dΓ along the path of contact, by the trapezoidal rule",
    unit="ΔK",
    source=_FLASH,
    **_PATH,
)
def mean_flash_temperature(
    friction: float,
    load: float,
    speed_1: float,
    speed_2: float,
    base_diameter_1: float,
    base_diameter_2: float,
    working_pressure_angle: float,
    base_helix_angle: float,
    path_at_tip_1: float,
    path_at_tip_2: float,
    transverse_contact_ratio: float,
    overlap_ratio: float,
) -> float:
    """Mean flash temperature of the path [K].

    Raises:
        OutOfRange: the path reaches a base circle.
    """
    rises = flash_temperatures(
        friction,
        load,
        speed_1,
        speed_2,
        base_diameter_1,
        base_diameter_2,
        working_pressure_angle,
        base_helix_angle,
        path_at_tip_1,
        path_at_tip_2,
        transverse_contact_ratio,
        overlap_ratio,
    )
    return (sum(rises) - 0.5 * (rises[0] + rises[-1])) / _STEPS


@equation(
    "Θ_M",
    "Θ_M = Θ_oil + 0.47 X_S X_mp Θ_flm, X_S 1 jet, 1.2 splash and drip; X_mp = (1 + n_mesh)/2",
    unit="K",
    source=_FLASH,
    oil_temperature="Θ_oil [K]",
    oiling="oiling []",
    meshes="n_mesh [1]",
    mean_flash="Θ_flm [ΔK]",
)
def bulk_temperature(oil_temperature: float, oiling: str, meshes: int, mean_flash: float) -> float:
    """Temperature of the teeth before they meet [K]."""
    wetting = 1.0 if oiling == "jet" else 1.2
    return oil_temperature + 0.47 * wetting * 0.5 * (1.0 + meshes) * mean_flash


@equation(
    "Θ_S",
    "Θ_S = 80 °C + (0.85 + 1.4 X_W) X_L S_FZG², X_L 1 mineral, 0.8 PAO, 0.7 PAG, 1.3 ester",
    unit="K",
    source="ISO/TR 13989-1:2000, scuffing temperature from the gear test A/8.3/90 (from memory)",
    load_stage="S_FZG [1]",
    structure_factor="X_W [1]",
    base="base []",
)
def scuffing_temperature(load_stage: int, structure_factor: float, base: str) -> float:
    """Contact temperature at which this oil lets gears scuff [K].

    Raises:
        OutOfRange: ``load_stage`` is outside 1 to 14.
    """
    if not 1 <= load_stage <= 14:
        raise OutOfRange(f"load_stage {load_stage} is outside 1 to 14")
    lubricant = {"mineral": 1.0, "PAO": 0.8, "PAG": 0.7, "ester": 1.3}[base]
    rise = (0.85 + 1.4 * structure_factor) * lubricant * load_stage**2
    return 80.0 + rise + _ZERO_CELSIUS


@equation(
    "X_W",
    "X_W = 1 through-hardened, induction-hardened and case-carburised with usual austenite;"
    " 1.5 nitrided; the lower of both gears",
    unit="1",
    source=_FLASH,
    treatment_1="treatment 1 []",
    treatment_2="treatment 2 []",
)
def structure_factor(treatment_1: str, treatment_2: str) -> float:
    """Structure factor: how the steel of the flanks takes to the oil."""
    return 1.5 if treatment_1 == treatment_2 == "nitrided" else 1.0


@equation(
    "S_B",
    "S_B = (Θ_S − Θ_oil) / (Θ_M + Θ_fl,max − Θ_oil)",
    unit="1",
    source=_FLASH,
    scuffing_temperature="Θ_S [K]",
    oil_temperature="Θ_oil [K]",
    bulk_temperature="Θ_M [K]",
    flash_temperature="Θ_fl,max [ΔK]",
)
def scuffing_safety(
    scuffing_temperature: float,
    oil_temperature: float,
    bulk_temperature: float,
    flash_temperature: float,
) -> float:
    """Rise over the oil that scuffs over the rise that is there.

    Raises:
        OutOfRange: the contact is no hotter than the oil.
    """
    rise = bulk_temperature + flash_temperature - oil_temperature
    if rise <= 0.0:
        raise OutOfRange("flash_temperature: the contact is no hotter than the oil")
    return (scuffing_temperature - oil_temperature) / rise
