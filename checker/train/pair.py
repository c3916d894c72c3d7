"""Geometry of two gears in mesh, each value with its derivation, worked out once."""

from collections.abc import Callable
from functools import cached_property, wraps
from typing import Any, Concatenate, Literal, ParamSpec, TypeVar

from checker.known import Known, Unknown, Value, compute
from checker.mechanics import backlash, involute, rack, tooth
from checker.spec.fields import NONE
from checker.spec.subject import Subject

End = Literal["value", "low", "high"]
"""A stated size as it stands, or the low or high end of its tolerance."""

_OTHER_END: dict[End, End] = {"value": "value", "low": "high", "high": "low"}

Asked = ParamSpec("Asked")
Holder = TypeVar("Holder", "Wheel", "Pair")
Answer = TypeVar("Answer")


def _once(
    method: Callable[Concatenate[Holder, Asked], Answer],
) -> Callable[Concatenate[Holder, Asked], Answer]:
    """Work out a method once for each set of arguments; its object keeps the answers."""
    name = method.__name__

    @wraps(method)
    def answer(holder: Holder, /, *args: Asked.args, **kwargs: Asked.kwargs) -> Answer:
        key = (name, args, *kwargs.items())
        if key not in holder.answers:
            holder.answers[key] = method(holder, *args, **kwargs)
        kept: Answer = holder.answers[key]
        return kept

    return answer


_NO_TOOL = "without the tool it is not known where the involutes start"


class Wheel:
    """One gear: what its designer states, and what follows for the gear alone."""

    def __init__(self, subject: Subject) -> None:
        self.subject = subject
        self.answers: dict[tuple[Any, ...], Any] = {}

    @cached_property
    def teeth(self) -> Value:
        """z, number of teeth."""
        return self.subject.given("teeth", "z")

    @cached_property
    def normal_module(self) -> Value:
        """m_n, normal module [m]."""
        return self.subject.given("module", "m_n")

    @cached_property
    def normal_pressure_angle(self) -> Value:
        """α_n, normal pressure angle [rad]."""
        return self.subject.given("pressure_angle", "α_n")

    @cached_property
    def is_spur(self) -> Value:
        """Whether the gear is a spur gear."""
        helix = self.subject.raw("helix")
        place = self.subject.place("helix")
        if helix is None:
            return Unknown((place,))
        if helix == NONE:
            return Known(True, "", "spur gear", path=place)
        angle = self.helix_angle
        if isinstance(angle, Unknown):
            return angle
        return Known(angle.value == 0.0, "", "spur gear", inputs=(angle,))

    @cached_property
    def helix_angle(self) -> Value:
        """β, helix angle at the reference circle [rad]; zero for a spur gear."""
        if self.subject.raw("helix") == NONE:
            return Known(0.0, "rad", "β", path=self.subject.place("helix"))
        return self.subject.given("helix.angle", "β")

    @cached_property
    def hand(self) -> Value:
        """Hand of the helix: +1 right, -1 left; without effect on a spur gear."""
        if self.subject.raw("helix") == NONE:
            return Known(1, "1", "hand", origin="a spur gear has no hand: any does")
        stated = self.subject.given("helix.hand", "hand")
        if isinstance(stated, Unknown):
            return stated
        return Known(1 if stated.value == "right" else -1, "1", "hand", path=stated.path)

    @cached_property
    def profile_shift(self) -> Value:
        """x, profile shift coefficient."""
        return self.subject.given("profile_shift", "x")

    @_once
    def thickness_reduction(self, at: End = "value") -> Value:
        """ΔE_sn, what the teeth are thinned by for backlash [m]."""
        return self.subject.given("thickness_allowance", "ΔE_sn", at)

    @cached_property
    def face_width(self) -> Value:
        """b, face width [m]."""
        return self.subject.given("face_width", "b")

    @cached_property
    def transverse_module(self) -> Value:
        """m_t, transverse module [m]."""
        return compute(tooth.transverse_module, self.normal_module, self.helix_angle)

    @cached_property
    def transverse_pressure_angle(self) -> Value:
        """α_t, transverse pressure angle [rad]."""
        return compute(
            tooth.transverse_pressure_angle, self.normal_pressure_angle, self.helix_angle
        )

    @cached_property
    def base_helix_angle(self) -> Value:
        """β_b, helix angle on the base cylinder [rad]."""
        return compute(tooth.base_helix_angle, self.helix_angle, self.transverse_pressure_angle)

    @cached_property
    def reference_diameter(self) -> Value:
        """d, reference diameter [m]."""
        return compute(tooth.reference_diameter, self.teeth, self.normal_module, self.helix_angle)

    @cached_property
    def base_diameter(self) -> Value:
        """d_b, base diameter [m]."""
        return compute(tooth.base_diameter, self.reference_diameter, self.transverse_pressure_angle)

    @cached_property
    def base_pitch(self) -> Value:
        """p_bt, transverse base pitch [m]."""
        return compute(
            tooth.transverse_base_pitch, self.transverse_module, self.transverse_pressure_angle
        )

    @_once
    def tip_diameter(self, at: End = "value") -> Value:
        """d_a, tip diameter [m]."""
        return self.subject.given("tip_diameter", "d_a", at)

    @_once
    def active_tip_diameter(self, at: End = "value") -> Value:
        """d_Na, diameter at which the flank ends at the tip chamfer [m]."""
        return compute(
            tooth.active_tip_diameter,
            self.tip_diameter(at),
            self.subject.given("tip_chamfer", "h_K"),
        )

    @_once
    def generating_profile_shift(self, at: End = "value") -> Value:
        """x_E, profile shift at which the tool stood; low where the teeth are thinned the most."""
        return compute(
            rack.generating_profile_shift,
            self.profile_shift,
            self.thickness_reduction(_OTHER_END[at]),
            self.normal_module,
            self.normal_pressure_angle,
        )

    @_once
    def root_diameter(self, at: End = "value") -> Value:
        """d_f, root diameter [m]: as stated, or as the stated tool leaves it."""
        stated = self.subject.given("root_diameter", "d_f", at)
        if isinstance(stated, Known):
            return stated
        computed = self.tooled_root_diameter(at)
        return computed if isinstance(computed, Known) else stated

    @_once
    def tooled_root_diameter(self, at: End = "value") -> Value:
        """d_f, root diameter that the stated tool leaves [m]."""
        return compute(
            rack.root_diameter,
            self.reference_diameter,
            self.normal_module,
            self.subject.given("basic_rack.dedendum", "h_fP*"),
            self.generating_profile_shift(at),
        )

    @_once
    def root_form_diameter(self, at: End = "value") -> Value:
        """d_Ff, diameter at which root fillet and involute meet [m]."""
        return compute(
            rack.root_form_diameter,
            self.reference_diameter,
            self.normal_module,
            self.normal_pressure_angle,
            self.helix_angle,
            self.subject.given("basic_rack.dedendum", "h_fP*"),
            self.subject.given("basic_rack.root_radius", "ρ_fP*"),
            self.generating_profile_shift(at),
        )

    @_once
    def undercut_margin(self, at: End = "value") -> Value:
        """Δx, profile shift in hand against undercut."""
        form_dedendum = compute(
            rack.form_dedendum_factor,
            self.subject.given("basic_rack.dedendum", "h_fP*"),
            self.subject.given("basic_rack.root_radius", "ρ_fP*"),
            self.normal_pressure_angle,
        )
        least = compute(
            rack.minimum_profile_shift,
            form_dedendum,
            self.teeth,
            self.transverse_pressure_angle,
            self.helix_angle,
        )
        return compute(rack.undercut_margin, self.generating_profile_shift(at), least)

    @_once
    def transverse_thickness(self, thinning: End = "value") -> Value:
        """s_t, tooth thickness at the reference circle [m], at an end of the thinning."""
        normal = compute(
            tooth.normal_tooth_thickness,
            self.normal_module,
            self.normal_pressure_angle,
            self.profile_shift,
            self.thickness_reduction(thinning),
        )
        return compute(tooth.transverse_tooth_thickness, normal, self.helix_angle)

    def thickness_at(self, diameter: Value, thinning: End = "value") -> Value:
        """s_yt, transverse tooth thickness at a diameter [m]."""
        return compute(
            tooth.tooth_thickness_at_diameter,
            self.transverse_thickness(thinning),
            self.reference_diameter,
            self.base_diameter,
            diameter,
        )


class Pair:
    """Two gears in mesh; module, pressure angle and helix of the driver serve for both.

    An ``at`` is the end of the tolerance of the centre distance.
    """

    def __init__(self, subject: Subject, driver: Wheel, driven: Wheel) -> None:
        self.subject = subject
        self.driver = driver
        self.driven = driven
        self.answers: dict[tuple[Any, ...], Any] = {}

    @_once
    def centre_distance(self, at: End = "value") -> Value:
        """a_w, working centre distance [m]."""
        return self.subject.given("centre_distance", "a_w", at)

    @cached_property
    def reference_centre_distance(self) -> Value:
        """a, reference centre distance [m]."""
        return compute(
            involute.reference_centre_distance,
            self.driver.normal_module,
            self.driver.teeth,
            self.driven.teeth,
            self.driver.helix_angle,
        )

    @_once
    def working_pressure_angle(self, at: End = "value") -> Value:
        """α_wt, working pressure angle at the stated centre distance [rad]."""
        return self.pressure_angle_at(self.centre_distance(at))

    def pressure_angle_at(self, centre_distance: Value) -> Value:
        """α_wt, working pressure angle at a centre distance [rad]."""
        return compute(
            involute.working_pressure_angle,
            self.reference_centre_distance,
            self.driver.transverse_pressure_angle,
            centre_distance,
        )

    @_once
    def working_diameter(self, wheel: Wheel, at: End = "value") -> Value:
        """d_w, working pitch diameter of one of the two gears [m]."""
        mate = self.mate(wheel)
        return compute(
            involute.working_pitch_diameter, wheel.teeth, mate.teeth, self.centre_distance(at)
        )

    @_once
    def working_helix_angle(self, wheel: Wheel) -> Value:
        """β_w, helix angle of one of the two gears at its working circle [rad]."""
        return compute(
            tooth.helix_angle_at_diameter,
            wheel.helix_angle,
            wheel.reference_diameter,
            self.working_diameter(wheel),
        )

    def mate(self, wheel: Wheel) -> Wheel:
        """The other gear."""
        return self.driven if wheel is self.driver else self.driver

    @cached_property
    def common_face_width(self) -> Value:
        """b, face width over which both gears meet [m]."""
        return compute(
            involute.common_face_width,
            self.driver.face_width,
            self.driver.subject.given("station", "x₁"),
            self.driven.face_width,
            self.driven.subject.given("station", "x₂"),
        )

    @_once
    def transverse_contact_ratio(self, *, worst: bool = False) -> Value:
        """ε_α, transverse contact ratio; without the tools, at best that of involutes to the base.

        At the worst corner of tolerances the centres stand farthest apart, the tips end lowest
        and the root fillets reach highest.
        """
        centre: End = "high" if worst else "value"
        return self.contact_ratio_at(self.centre_distance(centre), centre)

    def contact_ratio_at(self, centre_distance: Value, end: End) -> Value:
        """ε_α at a centre distance, with the roots at an end of tolerance, tips at the other.

        Where the tool is not stated the involutes may at best reach down to the base circles.
        """
        starts = {wheel: wheel.root_form_diameter(end) for wheel in (self.driver, self.driven)}
        ratio = self._contact_ratio(starts, centre_distance, end)
        if isinstance(ratio, Known) or ratio.because:
            return ratio
        bases = {wheel: wheel.base_diameter for wheel in (self.driver, self.driven)}
        best = self._contact_ratio(bases, centre_distance, end)
        return Unknown(ratio.missing, _NO_TOOL, best if isinstance(best, Known) else None)

    def _contact_ratio(self, starts: dict[Wheel, Value], centre_distance: Value, end: End) -> Value:
        """ε_α with the involutes of each gear starting at given diameters."""
        paths = [
            self._path_to_tip(wheel, starts[self.mate(wheel)], centre_distance, end)
            for wheel in (self.driver, self.driven)
        ]
        return compute(involute.transverse_contact_ratio, *paths, self.driver.base_pitch)

    def addendum_path(self, wheel: Wheel) -> Value:
        """g_a, length of contact from the pitch point to the tip of one of the gears [m]."""
        start = self.mate(wheel).root_form_diameter()
        return self._path_to_tip(wheel, start, self.centre_distance(), "value")

    def _path_to_tip(
        self, wheel: Wheel, mates_start: Value, centre_distance: Value, end: End
    ) -> Value:
        return compute(
            involute.addendum_path,
            wheel.active_tip_diameter(_OTHER_END[end]),
            wheel.base_diameter,
            mates_start,
            self.mate(wheel).base_diameter,
            centre_distance,
            self.pressure_angle_at(centre_distance),
        )

    @cached_property
    def overlap_ratio(self) -> Value:
        """ε_β, overlap ratio over the common face width."""
        return compute(
            involute.overlap_ratio,
            self.common_face_width,
            self.driver.helix_angle,
            self.driver.normal_module,
        )

    @_once
    def circular_backlash(self, at: End = "value") -> Value:
        """j_wt, circular backlash from tooth thickness and centre distance [m].

        At an end of its range centre distance and thinning of both gears stand at that end.
        """
        driver_pitch = self.working_diameter(self.driver, at)
        return compute(
            backlash.circular_backlash,
            driver_pitch,
            self.driver.teeth,
            self.driver.thickness_at(driver_pitch, at),
            self.driven.thickness_at(self.working_diameter(self.driven, at), at),
        )

    @_once
    def normal_backlash(self, at: End = "value") -> Value:
        """j_bn, normal backlash [m], with the ends of ``circular_backlash``."""
        return compute(
            backlash.normal_backlash,
            self.circular_backlash(at),
            self.working_pressure_angle(at),
            self.driver.base_helix_angle,
        )
