"""The drawings of the three examples, read back from their SVG."""

import re
from itertools import combinations
from math import hypot

import pytest

from checker.measures.design import Design
from checker.report.pictures.drawings import drawings
from checker.report.pictures.front_view import front_view, front_view_overlay
from checker.report.pictures.palette import DARK, LIGHT
from checker.report.pictures.side_view import side_view

EXAMPLES = ("marram", "tansy", "sorrel")
SVG = "{http://www.w3.org/2000/svg}"
LONGEST = "the second wheel on the lay shaft nearer the propeller side w"
HOSTILE = "<script>alert('&')</script>\x1b[2J\"]]>"


def boxes(root):
    """Boxes of all words by the estimate of 0.6 em for a character."""
    found = []
    for each in root.iter(f"{SVG}text"):
        size, x, y = (float(each.get(name)) for name in ("font-size", "x", "y"))
        wide = 0.6 * size * len(each.text)
        left = x - wide * {"middle": 0.5, "end": 1.0}.get(each.get("text-anchor"), 0.0)
        found.append((left, y - size, left + wide, y + 0.25 * size, each.text))
    return found


def overlaps(one, other):
    across = one[0] < other[2] and other[0] < one[2]
    return across and one[1] < other[3] and other[1] < one[3]


@pytest.mark.parametrize("name", EXAMPLES)
def test_examples_are_drawn_whole(name, drawn_example):
    names = [picture.name for picture in drawings(drawn_example(name))]
    assert names == ["front-view", "side-view", "mesh-1", "mesh-2"]
    assert not any("ot drawn" in each.describes for each in drawings(drawn_example(name)))


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_two_words_overlap_and_all_stand_on_the_sheet(name, drawn_example, read):
    for picture in drawings(drawn_example(name)):
        root = read(picture).root
        placed = boxes(root)
        clash = [(a[4], b[4]) for a, b in combinations(placed, 2) if overlaps(a, b)]
        assert clash == []
        width, height = float(root.get("width")), float(root.get("height"))
        assert [each for each in placed if each[0] < 0 or each[2] > width] == []
        assert [each for each in placed if each[1] < 0 or each[3] > height] == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_pictures_keep_the_contract(name, drawn_example, read):
    for picture in drawings(drawn_example(name)):
        root = read(picture).root
        assert root.get("role") == "img"
        ids = [each.get("id") for each in root.iter() if each.get("id")]
        assert len(ids) == len(set(ids))
        assert all(each.startswith(f"{picture.name}-") for each in ids)
        named = [
            root.find(f".//*[@id='{each}']").text for each in root.get("aria-labelledby").split()
        ]
        assert named == [picture.title, picture.describes]
        assert all(float(each.get("font-size")) >= 11 for each in root.iter(f"{SVG}text"))
        assert not any(each.get("style") for each in root.iter())
        for each in root.iter():
            for paint in (each.get("fill"), each.get("stroke")):
                assert (
                    paint is None
                    or paint == "none"
                    or re.fullmatch(
                        rf"var\(--({'|'.join(LIGHT)})\)|url\(#{picture.name}-[a-z]+\)", paint
                    )
                )


def test_both_palettes_name_the_same_colours():
    assert set(LIGHT) == set(DARK)


def test_drawing_twice_gives_the_same_bytes(drawn_example):
    assert drawings(drawn_example("sorrel")) == drawings(drawn_example("sorrel"))


# Centre distances and heights as the examples state them, in metres.
@pytest.mark.parametrize(
    ("name", "one", "other", "distance"),
    [
        ("marram", 1, 2, 0.08990),
        ("marram", 2, 3, 0.14210),
        ("tansy", 1, 2, 0.05340),
        ("tansy", 2, 3, 0.07090),
        ("sorrel", 1, 2, hypot(0.040, 0.071055)),
        ("sorrel", 2, 3, hypot(0.040, 0.154004 - 0.071055)),
    ],
)
def test_axes_stand_at_their_distance_by_the_scale_bar(
    name, one, other, distance, drawn_example, read
):
    drawn = read(front_view(drawn_example(name)))
    a, b = (drawn.circle(f"axis-{index}") for index in (one, other))
    drawn_distance = hypot(a[0] - b[0], a[1] - b[1]) * drawn.metres_for_pixel
    assert drawn_distance == pytest.approx(distance, abs=3e-5)


def test_oil_stands_at_its_level_above_the_case_bottom(drawn_example, read):
    drawn = read(front_view(drawn_example("tansy")))  # 16 mm over a bottom 96 mm below the axis
    level, bottom = (drawn.points(each)[0][1] for each in ("oil-level", "case-bottom"))
    axis = drawn.circle("axis-1")[1]
    assert (bottom - level) * drawn.metres_for_pixel == pytest.approx(0.016, abs=3e-5)
    assert (bottom - axis) * drawn.metres_for_pixel == pytest.approx(0.096, abs=3e-5)


def test_front_view_says_how_each_shaft_turns(drawn_example):
    words = front_view(drawn_example("marram")).describes  # the engine turns clockwise
    assert "flywheel, carrier, input; turns clockwise" in words
    assert "idler; turns anticlockwise" in words
    assert "prop; turns clockwise" in words


def test_shafts_without_a_centre_stand_in_line_and_say_so(edit, read):
    def change(fields):
        for shaft in fields["shafts"].values():
            shaft.pop("centre")

    picture = front_view(edit("sorrel", change))
    drawn = read(picture)
    assert "Shaft prop: centre not stated, drawn above lay at the centre distance." in (
        picture.describes
    )
    first, lay, prop = (drawn.circle(f"axis-{index}") for index in (1, 2, 3))
    assert first[0] == lay[0] == prop[0]
    assert (first[1] - lay[1]) * drawn.metres_for_pixel == pytest.approx(0.08154, abs=5e-5)


def test_what_is_not_stated_is_said_and_not_drawn(edit):
    def change(fields):
        fields["gears"]["pinion"].pop("tip_diameter")
        fields["bearings"]["prop_thrust"].pop("station")
        fields["shafts"]["idler"].pop("sections")
        fields.pop("housing")
        fields["clutch"].pop("inner_race_radius")
        fields["engine"].pop("rotation")

    front, side, first, second = drawings(edit("marram", change))
    assert "gears.pinion.tip_diameter not stated" in front.describes
    assert "the case bottom is not stated" in front.describes
    assert "sense not stated" in front.describes
    assert "Not drawn: bearing prop_thrust, bearings.prop_thrust.station" in side.describes
    assert "Not drawn: shaft idler, sections not stated" in side.describes
    assert "Not drawn: clutch, its station is not stated" in side.describes
    assert "is not drawn: gears.pinion.tip_diameter not stated" in first.describes
    assert "drawn clockwise" in second.describes


def test_a_bare_drive_is_still_a_picture(edit, read):
    def change(fields):
        keep = {"gears": ("shaft",), "meshes": ("driver", "driven"), "shafts": ()}
        for section, names in keep.items():
            for name, part in fields[section].items():
                fields[section][name] = {each: part[each] for each in names}
        for section in ("bearings", "joints", "housing", "lubrication", "operation", "seals"):
            fields.pop(section)
        fields["records"] = {}

    for picture in drawings(edit("tansy", change)):
        assert "not stated" in picture.describes
        assert read(picture).root.get("role") == "img"


def renamed(node, kind, old, new):
    """A spec with one part of another name, wherever it is named."""
    if isinstance(node, dict):
        return {
            new if key == old else key: renamed(value, kind, old, new)
            for key, value in node.items()
        }
    if isinstance(node, list):
        return [renamed(value, kind, old, new) for value in node]
    return {old: new, f"{kind}.{old}": f"{kind}.{new}"}.get(node, node)


@pytest.mark.parametrize(
    ("kind", "old"),
    [("shafts", "lay"), ("gears", "prop_wheel"), ("meshes", "second"), ("bearings", "lay_rear")],
)
def test_the_longest_names_still_fit(kind, old, edit, read):
    def change(fields):
        fields.update(renamed(fields, kind, old, LONGEST))

    for picture in drawings(edit("tansy", change)):
        placed = boxes(read(picture).root)
        assert [each for each in placed if each[2] > 720] == []
        assert [(a[4], b[4]) for a, b in combinations(placed, 2) if overlaps(a, b)] == []


def test_hostile_text_of_a_spec_stays_text(edit, read):
    def change(fields):
        fields["operation"][2]["name"] = HOSTILE

    pictures = drawings(edit("marram", change))
    side = pictures[1]
    assert "<script>alert('&')</script>\\x1b[2J" in side.describes
    for picture in pictures:
        assert not list(read(picture).root.iter(f"{SVG}script"))
        assert "<script" not in picture.svg
        assert "\x1b" not in picture.svg + picture.describes


def test_thrusts_in_the_side_view_by_hand(drawn_example):
    words = side_view(drawn_example("marram")).describes
    # 60 kW at 6000 rpm is T = 95.493 N m; d = 27 x 2.5 mm / cos(18 deg); tan(beta_w) / d_w =
    # tan(18 deg) / d, so F_x = 2 T tan(18 deg) / d = 2 x 95.493 x sin(18 deg) / 0.0675 = 874.3 N
    assert "pinion 874.3 N towards the propeller at take-off" in words
    assert "prop_gear 874.3 N towards the engine at take-off" in words
    assert "propeller 1520 N towards the propeller at take-off" in words


def test_spur_gears_have_no_thrust(drawn_example):
    assert "Axial thrust: propeller 1030 N" in side_view(drawn_example("tansy")).describes


def test_overlay_says_what_moved_and_changed(drawn_example, edit, read):
    def change(fields):
        fields["shafts"]["prop"]["centre"]["up"] = "235 mm"
        fields["gears"]["prop_gear"]["tip_diameter"] = "182 mm"

    old = drawn_example("marram")
    picture = front_view_overlay(old, edit("marram", change))
    assert "prop: moved by 3 mm, prop_gear: tip ⌀ 182 mm, was 181.1 mm" in picture.describes
    assert "idler: as before" in picture.describes
    dashed = [each for each in read(picture).root.iter() if each.get("stroke-dasharray") == "5 4"]
    assert len(dashed) == 7  # tip and pitch circles of three gears; the idler has two pitch circles


def test_overlay_of_different_drives_names_what_is_gone(drawn_example):
    picture = front_view_overlay(drawn_example("marram"), drawn_example("tansy"))
    assert "idler: only in the old" in picture.describes
    assert "lay: new" in picture.describes


def test_pictures_of_ratio_sets_are_named_apart(edit):
    def change(fields):
        fields["ratio_sets"] = {
            "climb": {"ratio": 2.4, "gears": {}},
            "cruise": {"ratio": 2.3, "gears": {"prop_wheel": {"teeth": 37}}},
        }
        for mesh in fields["meshes"].values():
            mesh["ratio_set"] = "swappable"

    design = edit("tansy", change)
    cruise = Design(design.subjects.spec, design.train, "cruise")
    both = [*drawings(design), *drawings(cruise)]
    assert len({picture.name for picture in both}) == len(both) == 8
    assert "prop_wheel: 37 teeth" in drawings(cruise)[0].describes
    assert drawings(cruise)[0].title.endswith("ratio set cruise")
