"""A pair as ISO 6336 rates it: all that follows from its sizes alone, whatever the load."""

from collections.abc import Callable
from functools import cached_property

from checker.known import Known, Value, assumed, compute
from checker.mechanics import (
    flank_accuracy,
    involute,
    iso_bending,
    iso_contact,
    iso_life,
    iso_load_factors,
    iso_root,
    mesh_stiffness,
    tooth,
)
from checker.solve.iso_tooth import Tooth
from checker.train.pair import Pair

Misalignment = Callable[[Pair, Value], Value]
"""Misalignment of a pair's flanks from shafts, bearings and case [m], by load per face width."""

_STEEL = (
    assumed(206e9, "Pa", "E", "steel, ISO 6336-2:2006 (from memory)"),
    assumed(0.3, "1", "ν", "steel, ISO 6336-2:2006 (from memory)"),
)


class IsoPair:
    """A pair as ISO 6336 rates it.

    Attributes:
        pair: its geometry, at nominal sizes.
        viscosity_40: ν at 40 °C of the oil, thin end [m2/s].
        reliability: Y_Z, factor on all limits.
        misalignment: what shafts, bearings and case do to the flanks.
        teeth: the driver's and the driven gear's.
    """

    def __init__(
        self,
        pair: Pair,
        viscosity_40: Value,
        reliability: Value,
        misalignment: Misalignment,
        idlers: tuple[Value, Value],
    ) -> None:
        self.pair = pair
        self.viscosity_40 = viscosity_40
        self.reliability = reliability
        self.misalignment = misalignment
        self.idlers = idlers
        self.teeth = (
            Tooth(self, pair.driver, is_idler=idlers[0]),
            Tooth(self, pair.driven, is_idler=idlers[1]),
        )

    def of(self, pair: Pair) -> "IsoPair":
        """The rating of the same mesh with other sizes."""
        return IsoPair(pair, self.viscosity_40, self.reliability, self.misalignment, self.idlers)

    def tooth(self, gear: str) -> Tooth:
        """The gear of that name."""
        return next(each for each in self.teeth if each.wheel.subject.name == gear)

    def mate(self, tooth_: Tooth) -> Tooth:
        """The other gear."""
        return self.teeth[1] if tooth_ is self.teeth[0] else self.teeth[0]

    @cached_property
    def by_size(self) -> tuple[Tooth, Tooth]:
        """Pinion and wheel."""
        first, second = self.teeth
        counts = [each.wheel.teeth for each in self.teeth]
        known = [each.number for each in counts if isinstance(each, Known)]
        return (second, first) if len(known) == 2 and known[1] < known[0] else (first, second)

    @cached_property
    def contact_ratio(self) -> Value:
        """ε_α at nominal sizes."""
        return self.pair.transverse_contact_ratio()

    @cached_property
    def total_contact_ratio(self) -> Value:
        """ε_γ."""
        return compute(involute.total_contact_ratio, self.contact_ratio, self.pair.overlap_ratio)

    @cached_property
    def virtual_contact_ratio(self) -> Value:
        """ε_αn."""
        return compute(
            iso_root.virtual_contact_ratio,
            self.contact_ratio,
            self.pair.driver.base_helix_angle,
        )

    @cached_property
    def roughness(self) -> tuple[Value, Value]:
        """Rz of both flanks [m]."""
        first, second = (
            compute(iso_life.mean_peak_to_valley, each.material.flank_roughness)
            for each in self.teeth
        )
        return first, second

    @cached_property
    def curvature(self) -> Value:
        """ρ_red at the pitch point [m]."""
        pair = self.pair
        return compute(
            iso_life.pitch_point_curvature,
            pair.driver.base_diameter,
            pair.driven.base_diameter,
            pair.working_pressure_angle(),
        )

    @cached_property
    def contact_ratio_factor(self) -> Value:
        """Z_ε."""
        return compute(
            iso_contact.contact_ratio_factor, self.contact_ratio, self.pair.overlap_ratio
        )

    @cached_property
    def contact_factors(self) -> tuple[Value, Value, Value, Value]:
        """Z_H, Z_E, Z_ε, Z_β."""
        wheel = self.pair.driver
        zone = compute(
            iso_contact.zone_factor,
            wheel.base_helix_angle,
            self.pair.working_pressure_angle(),
            wheel.transverse_pressure_angle,
        )
        return (
            zone,
            compute(iso_contact.elasticity_factor, *_STEEL, *_STEEL),
            self.contact_ratio_factor,
            compute(iso_contact.helix_factor, wheel.helix_angle),
        )

    @cached_property
    def helix_factor(self) -> Value:
        """Y_β."""
        return compute(
            iso_bending.helix_factor, self.pair.overlap_ratio, self.pair.driver.helix_angle
        )

    @cached_property
    def stiffness(self) -> Value:
        """c' at 100 N/mm and more [N/m2]."""
        pinion, wheel = (each.wheel for each in self.by_size)
        return compute(
            mesh_stiffness.single_stiffness,
            self.by_size[0].virtual_teeth,
            self.by_size[1].virtual_teeth,
            pinion.profile_shift,
            wheel.profile_shift,
            pinion.subject.given("basic_rack.dedendum", "h_fP*"),
            pinion.normal_pressure_angle,
            pinion.helix_angle,
        )

    @cached_property
    def reduced_mass(self) -> Value:
        """m_red [kg/m]."""
        pair = self.pair
        return compute(
            iso_load_factors.reduced_mass,
            pair.driver.subject.given("inertia", "J_1"),
            pair.driver.base_diameter,
            pair.driven.subject.given("inertia", "J_2"),
            pair.driven.base_diameter,
            pair.common_face_width,
        )

    @cached_property
    def tip_relief(self) -> Value:
        """C_ay [m]."""
        limits = (each.material.contact_limit for each in self.teeth)
        return compute(iso_load_factors.tip_relief_by_running_in, *limits)

    @cached_property
    def grade(self) -> Value:
        """Grade of the coarser gear."""
        first, second = (each.material.grade for each in self.teeth)
        return compute(flank_accuracy.coarser_grade, first, second)

    @cached_property
    def pitch_deviation(self) -> Value:
        """f_pb [m]."""
        tolerances = (
            compute(
                flank_accuracy.single_pitch_tolerance,
                each.wheel.reference_diameter,
                each.wheel.normal_module,
                each.material.grade,
            )
            for each in self.teeth
        )
        return compute(
            flank_accuracy.base_pitch_deviation,
            *tolerances,
            self.pair.driver.transverse_pressure_angle,
        )

    @cached_property
    def profile_deviation(self) -> Value:
        """f_fα [m]."""
        tolerances = (
            compute(
                flank_accuracy.profile_form_tolerance,
                each.wheel.normal_module,
                each.material.grade,
            )
            for each in self.teeth
        )
        return compute(flank_accuracy.profile_deviation, *tolerances)

    @cached_property
    def helix_deviation(self) -> Value:
        """f_ma [m]."""
        slopes = (
            compute(
                flank_accuracy.helix_slope_tolerance,
                each.wheel.reference_diameter,
                self.pair.common_face_width,
                each.material.grade,
            )
            for each in self.teeth
        )
        return compute(flank_accuracy.manufacturing_misalignment, *slopes)

    @cached_property
    def least_height(self) -> Value:
        """h of the lower tooth [m]."""
        first, second = (each.height for each in self.teeth)
        return compute(tooth.lesser_length, first, second)
