"""A pair under a torque at a speed by AGMA 2001 and 908: the second opinion beside ISO."""

from functools import cached_property

from checker.known import Known, Value, assumed, compute
from checker.mechanics import (
    agma_geometry,
    agma_rating,
    flank_accuracy,
    involute,
    iso_bending,
    iso_contact,
    iso_load_factors,
    iso_materials,
    iso_root,
    tooth,
)
from checker.solve.iso_pair import IsoPair
from checker.solve.iso_tooth import Tooth

_SOURCE = "ANSI/AGMA 2001-D04 (from memory)"
_NO_SIZE = assumed(1.0, "1", "K_s", f"{_SOURCE}: 1 for well-made teeth of this size")
_ENCLOSURE = assumed(
    "commercial enclosed", "", "enclosure", "the coarser of the closed boxes of AGMA 2001-D04"
)
_CRITICAL = assumed(True, "", "critical service", "a propeller drive has no second gear train")
_ELASTIC = (
    assumed(206e9, "Pa", "E", "steel; AGMA rounds C_p up to 2300 √psi"),
    assumed(0.3, "1", "ν", "steel"),
)
_NO_HARDNESS_RATIO = Known(
    1.0, "1", "C_H", origin="both gears are hardened: no hardness ratio factor (AGMA 2001-D04)"
)
_SOFT = "through-hardened"


class AgmaPair:
    """What follows from the sizes of a pair alone: I, J, K_m.

    Attributes:
        rating: the pair, with its gears as ISO rates them.
    """

    def __init__(self, rating: IsoPair) -> None:
        self.rating = rating
        self._pair = rating.pair
        self._bending: dict[Tooth, Value] = {}
        self._flanks: dict[Tooth, tuple[Value, Value]] = {}
        self._roots: dict[Tooth, tuple[Value, Value]] = {}

    @cached_property
    def pinion_diameter(self) -> Value:
        """d_w1 [m]."""
        return self._pair.working_diameter(self.rating.by_size[0].wheel)

    @cached_property
    def sharing(self) -> Value:
        """m_N."""
        rating = self.rating
        return compute(
            agma_geometry.load_sharing_ratio,
            rating.contact_ratio,
            self._pair.overlap_ratio,
            self._pair.driver.base_helix_angle,
        )

    @cached_property
    def pitting_factor(self) -> Value:
        """I."""
        pair = self._pair
        pinion, wheel = (each.wheel for each in self.rating.by_size)
        curvature = compute(
            agma_geometry.pinion_curvature,
            pinion.active_tip_diameter(),
            pinion.base_diameter,
            wheel.active_tip_diameter(),
            pair.centre_distance(),
            pinion.base_pitch,
            pinion.is_spur,
        )
        return compute(
            agma_geometry.pitting_factor,
            pair.working_pressure_angle(),
            curvature,
            pair.centre_distance(),
            self.pinion_diameter,
            self.sharing,
        )

    def bending_factor(self, tooth_: Tooth) -> Value:
        """J of one gear."""
        if tooth_ not in self._bending:
            self._bending[tooth_] = self._bending_factor(tooth_)
        return self._bending[tooth_]

    def _bending_factor(self, tooth_: Tooth) -> Value:
        wheel, rating = tooth_.wheel, self.rating
        teeth, alpha, dedendum, edge, _ = tooth_.root
        point = compute(
            iso_root.load_point_diameter,
            teeth,
            alpha,
            wheel.active_tip_diameter(),
            wheel.reference_diameter,
            wheel.normal_module,
            compute(
                agma_geometry.loading_contact_ratio, rating.virtual_contact_ratio, wheel.is_spur
            ),
        )
        thinning = compute(tooth.in_modules, wheel.thickness_reduction(), wheel.normal_module)
        root = (teeth, alpha, dedendum, edge, wheel.profile_shift, thinning, point)
        form = compute(
            agma_geometry.tooth_form_factor,
            *root,
            wheel.helix_angle,
            wheel.base_helix_angle,
            self._pair.working_pressure_angle(),
        )
        return compute(
            agma_geometry.bending_factor,
            form,
            compute(agma_geometry.stress_concentration, *root),
            self.sharing,
        )

    @cached_property
    def load_distribution(self) -> Value:
        """K_m."""
        return compute(
            agma_rating.load_distribution,
            self._pair.common_face_width,
            self.pinion_diameter,
            _ENCLOSURE,
        )

    def contact_allowable(self, tooth_: Tooth) -> tuple[Value, Value]:
        """s_ac [Pa] and C_H of one gear."""
        if tooth_ not in self._flanks:
            self._flanks[tooth_] = self._contact_allowable(tooth_), self._hardness_ratio(tooth_)
        return self._flanks[tooth_]

    def bending_allowable(self, tooth_: Tooth) -> tuple[Value, Value]:
        """s_at [Pa] of one gear and the factor for bending both ways."""
        if tooth_ not in self._roots:
            reversal = compute(iso_bending.reversal_factor, tooth_.is_idler)
            self._roots[tooth_] = self._bending_allowable(tooth_), reversal
        return self._roots[tooth_]

    @staticmethod
    def _contact_allowable(tooth_: Tooth) -> Value:
        material = tooth_.material
        return compute(
            agma_rating.allowable_contact,
            material.treatment,
            compute(agma_rating.metallurgical_grade, material.quality),
            compute(iso_materials.brinell_of_vickers, material.surface),
        )

    @staticmethod
    def _bending_allowable(tooth_: Tooth) -> Value:
        material = tooth_.material
        return compute(
            agma_rating.allowable_bending,
            material.root_treatment,
            compute(agma_rating.metallurgical_grade, material.quality),
            compute(iso_materials.brinell_of_vickers, material.root),
            compute(iso_materials.brinell_of_vickers, material.core),
        )

    def _hardness_ratio(self, tooth_: Tooth) -> Value:
        pinion, wheel = self.rating.by_size
        treatments = [each.material.treatment for each in (pinion, wheel)]
        soft = [isinstance(each, Known) and each.value == _SOFT for each in treatments]
        if tooth_ is pinion or not all(soft):
            return _NO_HARDNESS_RATIO
        return compute(
            agma_rating.hardness_ratio_factor,
            compute(iso_materials.brinell_of_vickers, pinion.material.surface),
            compute(iso_materials.brinell_of_vickers, wheel.material.surface),
            compute(agma_rating.gear_ratio, pinion.wheel.teeth, wheel.wheel.teeth),
        )


class AgmaState:
    """A pair under a torque at a speed.

    Attributes:
        sizes: the pair as AGMA sees it.
        rating: the pair as ISO does.
        torque: at the driver [N m].
        speed: of the driver [rad/s].
        overload: K_o, the application factor.
    """

    def __init__(self, sizes: AgmaPair, torque: Value, speed: Value, overload: Value) -> None:
        self.sizes = sizes
        self.rating = sizes.rating
        self.overload = overload
        self.torque = torque
        self.speed = speed
        self._pair = sizes.rating.pair

    @cached_property
    def force(self) -> Value:
        """F_t at the working circle [N]."""
        driver = self._pair.driver
        return compute(
            iso_load_factors.nominal_force, self.torque, self._pair.working_diameter(driver)
        )

    @cached_property
    def dynamic_factor(self) -> Value:
        """K_v."""
        return compute(
            agma_rating.dynamic_factor,
            compute(
                involute.pitch_line_velocity,
                self.speed,
                self._pair.working_diameter(self._pair.driver),
            ),
            compute(flank_accuracy.agma_quality, self.rating.grade),
        )

    @cached_property
    def _loaded(self) -> tuple[Value, ...]:
        return (
            self.force,
            self.overload,
            self.dynamic_factor,
            _NO_SIZE,
            self.sizes.load_distribution,
        )

    @cached_property
    def contact_stress(self) -> Value:
        """σ_c [Pa]; the same for both gears."""
        return compute(
            agma_rating.contact_stress,
            compute(iso_contact.elasticity_factor, *_ELASTIC, *_ELASTIC),
            *self._loaded,
            self.sizes.pinion_diameter,
            self._pair.common_face_width,
            self.sizes.pitting_factor,
        )

    def bending_stress(self, tooth_: Tooth) -> Value:
        """σ_t of one gear [Pa]."""
        return compute(
            agma_rating.bending_stress,
            *self._loaded,
            tooth_.rim_factor,
            self._pair.common_face_width,
            tooth_.wheel.transverse_module,
            self.sizes.bending_factor(tooth_),
        )

    def contact_safety(self, tooth_: Tooth, cycles: Value) -> Value:
        """S_H of one gear for a number of load cycles."""
        allowable, ratio = self.sizes.contact_allowable(tooth_)
        permitted = compute(
            agma_rating.permissible_stress,
            allowable,
            compute(agma_rating.cycle_factor_contact, cycles, tooth_.material.treatment, _CRITICAL),
            ratio,
            self.rating.reliability,
        )
        return compute(iso_contact.safety_factor, permitted, self.contact_stress)

    def bending_safety(self, tooth_: Tooth, cycles: Value) -> Value:
        """S_F of one gear for a number of load cycles; 0.7 where its teeth bend both ways."""
        allowable, reversal = self.sizes.bending_allowable(tooth_)
        permitted = compute(
            agma_rating.permissible_stress,
            allowable,
            compute(
                agma_rating.cycle_factor_bending,
                cycles,
                tooth_.material.root_treatment,
                _CRITICAL,
            ),
            reversal,
            self.rating.reliability,
        )
        return compute(iso_contact.safety_factor, permitted, self.bending_stress(tooth_))
