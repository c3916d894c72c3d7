"""Whether two gears belong together, and whether what is stated of a pair agrees with itself."""

from math import hypot

from checker.mechanics.equation import OutOfRange, equation


@equation(
    "Δφ",
    "Δφ = |φ_1 − φ_2|",
    unit="rad",
    source="definition",
    angle_1="φ_1 [rad]",
    angle_2="φ_2 [rad]",
)
def angle_difference(angle_1: float, angle_2: float) -> float:
    """How far two angles differ: the pressure angles or the helix angles of mates."""
    return abs(angle_1 - angle_2)


@equation(
    "opposed",
    "opposed = (hand_1 = −hand_2)",
    unit="",
    source="external gears on parallel shafts; ISO 21771:2007 (from memory)",
    hand_1="hand_1 [1]",
    hand_2="hand_2 [1]",
)
def hands_oppose(hand_1: int, hand_2: int) -> bool:
    """Whether one helix is right-hand and the other left-hand, as mates on parallel shafts ask."""
    return hand_1 == -hand_2


@equation(
    "q_1",
    "q_1 = (2 − ε) / ε, 0 from ε = 2 on, 1 up to ε = 1",
    unit="1",
    source="definition: length of the path of contact with one pair over the whole length",
    contact_ratio="ε [1]",
)
def single_pair_share(contact_ratio: float) -> float:
    """Part of the path of contact over which one pair of teeth carries the whole load.

    Of a path of ε base pitches, the first and the last ε − 1 are shared with a neighbour.

    Raises:
        OutOfRange: ``contact_ratio`` is not above zero: there is no path of contact.
    """
    if contact_ratio <= 0.0:
        raise OutOfRange(f"at a contact ratio of {contact_ratio:.4g} there is no path of contact")
    return min(1.0, max(0.0, (2.0 - contact_ratio) / contact_ratio))


@equation(
    "A",
    "A = √((x_1 − x_2)² + (y_1 − y_2)²)",
    unit="m",
    source="distance of two parallel axes",
    right_1="x_1 [m]",
    up_1="y_1 [m]",
    right_2="x_2 [m]",
    up_2="y_2 [m]",
)
def axis_distance(right_1: float, up_1: float, right_2: float, up_2: float) -> float:
    """Distance of two shaft axes by their places across the drive."""
    return hypot(right_1 - right_2, up_1 - up_2)


@equation(
    "j",
    "j = min(j_1, j_2)",
    unit="m",
    source="the worse of two figures for one backlash",
    one="j_1 [m]",
    other="j_2 [m]",
)
def smaller(one: float, other: float) -> float:
    """The smaller of two lengths."""
    return min(one, other)


@equation(
    "off",
    "off = max(0, low − X, X − high)",
    unit="m",
    source="definition",
    value="X [m]",
    low="low [m]",
    high="high [m]",
)
def outside_range(value: float, low: float, high: float) -> float:
    """How far a length lies outside a range; zero where the range holds it."""
    return max(0.0, low - value, value - high)


@equation(
    "gap",
    "gap = max(0, low_1 − high_2, low_2 − high_1)",
    unit="m",
    source="definition",
    low_1="low_1 [m]",
    high_1="high_1 [m]",
    low_2="low_2 [m]",
    high_2="high_2 [m]",
)
def gap_between_ranges(low_1: float, high_1: float, low_2: float, high_2: float) -> float:
    """How far two ranges of one length lie apart; zero where they touch or overlap."""
    return max(0.0, low_1 - high_2, low_2 - high_1)


@equation(
    "q_b",
    "q_b = b / min(b_1, b_2)",
    unit="1",
    source="definition",
    common_width="b [m]",
    face_width_1="b_1 [m]",
    face_width_2="b_2 [m]",
)
def face_overlap_share(common_width: float, face_width_1: float, face_width_2: float) -> float:
    """Part of the narrower face that meets the mate's."""
    return common_width / min(face_width_1, face_width_2)
