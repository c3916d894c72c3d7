"""Flanks, circles and contact of the close-up, by hand formulas and shapely on the drawn points."""

from math import acos, atan2, cos, degrees, hypot, pi, sin, sqrt, tan

import pytest
from shapely.geometry import Point, Polygon

from checker.report.pictures.mesh_close_up import mesh_close_up

MESHES = [(name, mesh) for name in ("marram", "tansy", "sorrel") for mesh in ("first", "second")]


@pytest.fixture
def drawn(drawn_example, read):
    def drawing(name, mesh):
        design = drawn_example(name)
        return design, read(mesh_close_up(design, design.subjects.the("mesh", mesh)))

    return drawing


def stated(design, mesh):
    """Figures of a pair straight from the spec, and what the text books make of them [m, rad]."""
    part = design.subjects.spec.meshes[mesh]
    gears = [design.subjects.spec.gears[each] for each in (part.driver, part.driven)]
    module, angle = gears[0].module.value, gears[0].pressure_angle.value
    helix = 0.0 if gears[0].helix == "none" else gears[0].helix.angle.value
    transverse = atan2(tan(angle), cos(helix))
    bases = [0.5 * gear.teeth * module / cos(helix) * cos(transverse) for gear in gears]
    return gears, part.centre_distance.value, bases, module, helix, transverse


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_circles_have_the_radii_of_the_spec(name, mesh, drawn):
    design, picture = drawn(name, mesh)
    gears, distance, bases, *_ = stated(design, mesh)
    scale = picture.metres_for_pixel
    teeth = sum(gear.teeth for gear in gears)
    for role, gear, base in zip(("driver", "driven"), gears, bases, strict=True):
        for kind, radius in (
            ("base", base),
            ("tip", 0.5 * gear.tip_diameter.value),
            ("root", 0.5 * gear.root_diameter.value),
            ("pitch", distance * gear.teeth / teeth),
        ):
            drawn_radius = picture.circle(f"{role}-{kind}")[2] * scale
            assert drawn_radius == pytest.approx(radius, rel=2e-4)


@pytest.mark.parametrize(("name", "mesh"), MESHES)
@pytest.mark.parametrize("role", ["driver", "driven"])
def test_flank_points_satisfy_the_involute_equation(name, mesh, role, drawn):
    """Along a flank the polar angle turns by the change of tan α − α, with cos α = r_b / r."""
    _, picture = drawn(name, mesh)
    x, y, base = picture.circle(f"{role}-base")
    root, tip = (picture.circle(f"{role}-{kind}")[2] for kind in ("root", "tip"))
    flanks = runs(picture.points(role), (x, y), max(base, root) + 1.0, tip)
    assert len(flanks) >= 8
    for flank in flanks:
        turned = []
        for px, py in flank:
            radius = hypot(px - x, py - y)
            angle = acos(min(1.0, base / radius))
            turned.append((atan2(py - y, px - x), tan(angle) - angle, radius))
        start, involute, _ = turned[0]
        turns = [(polar - start + pi) % (2 * pi) - pi for polar, *_ in turned]
        sign = 1 if turns[-1] * (turned[-1][1] - involute) > 0 else -1
        for turn, (_, there, radius) in zip(turns, turned, strict=True):
            across = (turn - sign * (there - involute)) * radius
            assert abs(across) < 0.03  # pixels; coordinates have two decimals


def runs(points, centre, low, high):
    """Stretches of the outline that go up or down a flank, strictly between two radii."""
    found, current, last = [], [], None
    for point in points:
        radius = hypot(point[0] - centre[0], point[1] - centre[1])
        if low < radius <= high + 0.02 and (last is None or abs(radius - last) > 0.3):
            current.append(point)
        else:
            found.append(current)
            current = [point] if low < radius <= high + 0.02 else []
        last = radius
    return [each for each in found if len(each) >= 6]


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_teeth_touch_at_the_pitch_point_and_do_not_overlap(name, mesh, drawn):
    design, picture = drawn(name, mesh)
    driver, driven = (Polygon(picture.points(role)) for role in ("driver", "driven"))
    assert driver.is_valid
    assert driven.is_valid
    x, y, _ = picture.circle("pitch-point")
    assert driver.exterior.distance(Point(x, y)) < 0.02
    assert driven.exterior.distance(Point(x, y)) < 0.02
    tooth = (stated(design, mesh)[3] / picture.metres_for_pixel) ** 2  # a module squared
    assert driver.intersection(driven).area < 1e-3 * tooth


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_backlash_opens_behind_the_working_flanks(name, mesh, drawn):
    """The driver turned back by the backlash meets the other flanks; a little more and it digs in.

    Backlash at the working circle by pitch less both tooth thicknesses, by hand.
    """
    design, picture = drawn(name, mesh)
    gears, distance, bases, module, helix, transverse = stated(design, mesh)
    working = acos(sum(bases) / distance)
    radii = [distance * gear.teeth / sum(each.teeth for each in gears) for gear in gears]
    thick = []
    for gear, radius in zip(gears, radii, strict=True):
        normal = module * (pi / 2 + 2 * gear.profile_shift * tan(gear.pressure_angle.value))
        at_reference = (normal - gear.thickness_allowance.value) / cos(helix)
        half = at_reference / (gear.teeth * module / cos(helix))
        thick.append(2 * radius * (half + inv(transverse) - inv(working)))
    backlash = 2 * pi * radii[0] / gears[0].teeth - sum(thick)
    sense = 1 if design.motion.sense(gears[0].shaft).value > 0 else -1
    x, y, _ = picture.circle("driver-pitch")
    for extra, digs in ((-0.02, False), (0.02, True)):
        turn = -sense * backlash * (1 + extra * 10) / radii[0]
        turned = Polygon(rotated(picture.points("driver"), (x, y), turn))
        overlap = turned.intersection(Polygon(picture.points("driven"))).area
        assert (overlap > 1.0) is digs


def inv(angle):
    return tan(angle) - angle


def rotated(points, centre, turn):
    x, y = centre
    return [
        (
            x + (px - x) * cos(turn) - (py - y) * sin(turn),
            y + (px - x) * sin(turn) + (py - y) * cos(turn),
        )
        for px, py in points
    ]


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_contact_segment_lies_on_the_common_tangent_between_the_tips(name, mesh, drawn):
    design, picture = drawn(name, mesh)
    gears, distance, bases, *_ = stated(design, mesh)
    (ax, ay), (ex, ey) = picture.points("contact-segment")
    angle = atan2(ay - ey, abs(ex - ax))
    assert degrees(angle) == pytest.approx(degrees(acos(sum(bases) / distance)), abs=0.03)
    scale = picture.metres_for_pixel
    for (px, py), role, gear, base in (
        ((ex, ey), "driver", gears[0], bases[0]),
        ((ax, ay), "driven", gears[1], bases[1]),
    ):
        x, y, _ = picture.circle(f"{role}-pitch")
        active = 0.5 * gear.tip_diameter.value - gear.tip_chamfer.value
        reach = hypot(px - x, py - y) * scale
        assert reach <= active * (1 + 2e-4)  # at the tip's end of the flank, or before it
        # the line of action touches the base circle
        length = hypot(ex - ax, ey - ay)
        away = abs((ex - ax) * (y - ay) - (ey - ay) * (x - ax)) / length * scale
        assert away == pytest.approx(base, rel=5e-4)
        assert sqrt(reach**2 - base**2) > 0


def test_contact_ratio_in_words_by_hand(drawn):
    """Tansy's first mesh: contact from tip to tip over base pitches of pi m cos(20 deg)."""
    design, picture = drawn("tansy", "first")
    gears, distance, bases, module, _, transverse = stated(design, "first")
    tips = [0.5 * gear.tip_diameter.value - gear.tip_chamfer.value for gear in gears]
    rise = sum(sqrt(tip**2 - base**2) for tip, base in zip(tips, bases, strict=True))
    path = rise - distance * sin(acos(sum(bases) / distance))
    ratio = path / (pi * module * cos(transverse))
    assert f"Transverse contact ratio {ratio:.2f}" in picture.picture.describes
    assert "one pair of teeth touches always" in picture.picture.describes
