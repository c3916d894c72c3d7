"""Limit cases of the regulations and the propeller's own loads, as forces and couples on its shaft.

Frame of a drive: x along the shafts from engine to propeller, right and up across it, seen towards
the propeller. A couple in a plane is positive where it turns the shaft's slope dv/dx up in it.
"""

import math
from dataclasses import dataclass

from checker.mechanics.equation import OutOfRange, equation

GRAVITY = 9.80665
_CS_23 = "EASA CS 23.371(a)(2), amendment not stated in the copy read"
_AMC = "EASA AMC 23.371, amendment not stated in the copy read"
_TWO_BLADES = 2
# Slope of lift over angle of attack in radians, of a blade section below stall.
THIN_AEROFOIL_LIFT_SLOPE = math.tau


@dataclass(frozen=True, slots=True)
class GyroscopicCase:
    """Rates and load factor of CS 23.371(a)(2), and of 14 CFR 23.371(a)(2) before Amdt 23-64.

    Attributes:
        yaw_rate: about the vertical axis [rad/s].
        pitch_rate: about the lateral axis [rad/s].
        load_factor: normal to the flight path.
    """

    yaw_rate: float
    pitch_rate: float
    load_factor: float


CS_23_371 = GyroscopicCase(2.5, 1.0, 2.5)
GYROSCOPIC_SOURCE = f"{_CS_23}; 14 CFR 23.371(a)(2) before Amdt 23-64 has the same (from memory)"
# Share of the limit loads of flight condition A that goes with the limit torque of each rating.
TAKE_OFF_SHARE, MAXIMUM_CONTINUOUS_SHARE = 0.75, 1.0
ENGINE_TORQUE_SOURCE = (
    "CS 22.361(a)(1) and (2), UK CAA ORS9 Decision No. 1; "
    "14 CFR 23.361(a)(1) and (2) before Amdt 23-64 has the same"
)
SIDE_LOAD_FACTOR = 1.33  # CS-VLA 363, amendment not stated in the copy read


@equation(
    "M_up",
    "M_up = −k_b s I ω ω_yaw",
    unit="N m",
    source=f"{_AMC}; sense from H × Ω, derived",
    inertia="I [kg m2]",
    angular_speed="ω [rad/s]",
    sense="s [1]",
    yaw_rate="ω_yaw [rad/s]",
    blades="N [1]",
)
def couple_of_yaw(
    inertia: float, angular_speed: float, sense: int, yaw_rate: float, blades: int
) -> float:
    """Couple of a yawing propeller on its shaft, in the vertical plane; k_b is 2 for two blades.

    Raises:
        OutOfRange: fewer than two blades.
    """
    return -_doubled(blades) * sense * inertia * angular_speed * yaw_rate


@equation(
    "M_right",
    "M_right = k_b s I ω ω_pitch",
    unit="N m",
    source=f"{_AMC}; sense from H × Ω, derived",
    inertia="I [kg m2]",
    angular_speed="ω [rad/s]",
    sense="s [1]",
    pitch_rate="ω_pitch [rad/s]",
    blades="N [1]",
)
def couple_of_pitch(
    inertia: float, angular_speed: float, sense: int, pitch_rate: float, blades: int
) -> float:
    """Couple of a pitching propeller on its shaft, in the horizontal plane; k_b as in yaw.

    Raises:
        OutOfRange: fewer than two blades.
    """
    return _doubled(blades) * sense * inertia * angular_speed * pitch_rate


def _doubled(blades: int) -> int:
    if blades < _TWO_BLADES:
        raise OutOfRange("blades: AMC 23.371 covers two and more")
    return 2 if blades == _TWO_BLADES else 1


@equation(
    "M_1P",
    "M_1P = Δ F r / 2, twice that for two blades; r = 0.7 D/2",
    unit="N m",
    source="derived: N blades of thrust F/N (1 ± Δ) at r; 0.7 of the radius from memory",
    variation="Δ [1]",
    thrust="F [N]",
    diameter="D [m]",
    blades="N [1]",
)
def yawed_flow_moment(variation: float, thrust: float, diameter: float, blades: int) -> float:
    """Hub moment of a propeller in yawed flow, whose blade thrust swings by ±Δ in each turn.

    Steady for three and more blades; with two it swings between zero and twice the value.

    Raises:
        OutOfRange: fewer than two blades.
    """
    return _doubled(blades) * variation * abs(thrust) * 0.7 * diameter / 4.0


@equation(
    "v",
    "v = V sin ψ",
    unit="m/s",
    source="kinematics",
    airspeed="V [m/s]",
    inflow_angle="ψ [rad]",
)
def cross_flow(airspeed: float, inflow_angle: float) -> float:
    """Part of the airspeed that blows across the propeller, in its plane."""
    return airspeed * math.sin(inflow_angle)


@equation(
    "M_1P",
    "M_1P = v (F / ω + ρ a N c w D² / 32), twice that for two blades",
    unit="N m",
    source="derived: small changes of speed at blade elements, cos φ taken as 1",
    cross_flow="v [m/s]",
    thrust="F [N]",
    angular_speed="ω [rad/s]",
    through_disc="w [m/s]",
    chord="c [m]",
    lift_slope="a [1]",
    density="ρ [kg/m3]",
    diameter="D [m]",
    blades="N [1]",
)
def inflow_moment(
    cross_flow: float,
    thrust: float,
    angular_speed: float,
    through_disc: float,
    chord: float,
    lift_slope: float,
    density: float,
    diameter: float,
    blades: int,
) -> float:
    """Hub moment of a propeller whose blades meet a cross flow v once a turn: an upper bound.

    A section of a blade at radius r and azimuth θ moves at U = ω r + v sin θ through air that
    passes the disc at w; W² = U² + w², tan φ = w/U. Its thrust per length at the angle of attack α
    is t = ½ ρ c a W² α cos φ. A change of U alters W by cos φ and α by sin φ / W of it:

        dt/dU = ½ ρ c a (W α (1 + cos² φ) + w cos φ) = t (1 + cos² φ)/U + ½ ρ c a w cos φ

    so that it no longer matters how the thrust is spread over the radius. With cos φ ≤ 1, the
    moment of a blade swings by v ∫ r dt/dU dr ≤ v (2 F/(N ω) + ½ ρ c a w R²/2); N blades keep N/2
    of it, steady for three and more, between zero and twice that with two. The chord c at two
    thirds of the radius gives ∫ c r dr from axis to tip of every blade of straight taper.

    Not counted, and on the safe side: the hub without lift, the wake that answers the change of
    lift (NACA Report 820, summary: a yawed propeller is a fin of aspect ratio about 8, which takes
    a fifth off thin aerofoil theory). Not counted, and not on the safe side: the wake blown aside,
    which makes a moment in the other plane, below a fifth of this one from 30 m/s upwards; drag
    and swirl. Valid below stall, for v far below ω r of the working part of the blade.

    Raises:
        OutOfRange: fewer than two blades, or a propeller that stands still.
    """
    if angular_speed <= 0.0:
        raise OutOfRange("angular speed must be above zero: the propeller stands still")
    by_thrust = abs(thrust) / angular_speed
    by_chord = density * lift_slope * blades * chord * through_disc * diameter**2 / 32.0
    return _doubled(blades) * cross_flow * (by_thrust + by_chord)


@equation(
    "n",
    "n = q_A n_A",
    unit="1",
    source=ENGINE_TORQUE_SOURCE,
    limit_load_factor="n_A [1]",
    share="q_A [1]",
)
def load_factor_of_torque_case(limit_load_factor: float, share: float) -> float:
    """Load factor that goes with the limit torque of a rating, of that of flight condition A."""
    return share * limit_load_factor


@equation(
    "W",
    "W = n m g",
    unit="N",
    source="definition",
    mass="m [kg]",
    load_factor="n [1]",
)
def weight(mass: float, load_factor: float) -> float:
    """Weight of a mass under a load factor, downwards."""
    return load_factor * mass * GRAVITY


@equation(
    "F_u",
    "F_u = U ω²",
    unit="N",
    source="kinematics",
    unbalance="U [kg m]",
    angular_speed="ω [rad/s]",
)
def unbalance_force(unbalance: float, angular_speed: float) -> float:
    """Force that turns with an unbalance (mass times radius)."""
    return unbalance * angular_speed**2


@equation(
    "T_rev",
    "T_rev = −i T_drag",
    unit="N m",
    source="statics, lossless: the propeller turns a dead engine through a locked drive",
    drag="T_drag [N m]",
    ratio="i [1]",
)
def reverse_torque(drag: float, ratio: float) -> float:
    """Torque of a shaft when the propeller turns the dead engine."""
    return -ratio * drag


@equation(
    "T_kick",
    "T_kick = −2 T_gas",
    unit="N m",
    source="derived: a torque put on at once and kept winds two masses on a spring up to at most "
    "twice itself; without damping",
    gas="T_gas [N m]",
)
def kick_back_torque(gas: float) -> float:
    """Torque at the crankshaft of a drive whose engine fires too early and turns back.

    The drive gets 2 J/(J + J_e) of the torque of the gas, J what turns behind the crankshaft and
    J_e the engine; twice is the bound for a propeller that is heavy against it. Of a clutch that
    does not let go, or of a drive without one.
    """
    return -2.0 * gas


@equation(
    "|T|/T_peak",
    "|T| / T_peak",
    unit="1",
    source="definition",
    torque="T [N m]",
    peak="T_peak [N m]",
)
def sudden_share(torque: float, peak: float) -> float:
    """A sudden torque either way over the peak torque of operation.

    Raises:
        OutOfRange: no peak torque.
    """
    if peak <= 0.0:
        raise OutOfRange("peak must be above zero: no torque passes in operation")
    return abs(torque) / peak


@equation(
    "T_stop",
    "T_stop = ω √(c J)",
    unit="N m",
    source="derived: kinetic energy of J goes into the spring c, without damping or stops",
    angular_speed="ω [rad/s]",
    stiffness="c [N m/rad]",
    inertia="J [kg m2]",
)
def stopping_torque(angular_speed: float, stiffness: float, inertia: float) -> float:
    """Torque in a coupling whose engine side stops dead while the propeller turns.

    All reduced to one shaft. An upper bound: no engine stops in no time.
    """
    return angular_speed * math.sqrt(stiffness * inertia)


@equation(
    "n_W",
    "n_W = 1.33, or n/3 where that is more",
    unit="1",
    source="CS-VLA 363 and 14 CFR 25.363(a), Amdt 25-91",
    load_factor="n [1]",
)
def side_load_factor(load_factor: float) -> float:
    """Sideways load factor on the engine mount with the drive; taken on its own."""
    return max(SIDE_LOAD_FACTOR, load_factor / 3.0)


@equation(
    "Δ",
    "Δ = |k N / (i j h_1) − 1|",
    unit="1",
    source="orders of one turn of the crank: k N / i of the blades, j h_1 of the firing",
    blades="N [1]",
    multiple="k [1]",
    ratio="i [1]",
    firings="h_1 [1]",
    order="j [1]",
)
def order_distance(blades: int, multiple: int, ratio: float, firings: float, order: int) -> float:
    """How far a blade order stands from a firing order, relative to it."""
    return abs(multiple * blades / (ratio * order * firings) - 1.0)
