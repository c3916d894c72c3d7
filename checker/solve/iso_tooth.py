"""One gear of a pair as ISO 6336 rates it: its root section, and what flank and root stand."""

from functools import cached_property
from typing import TYPE_CHECKING

from checker.known import Value, compute
from checker.mechanics import iso_bending, iso_contact, iso_life, iso_root, rack
from checker.solve.gear_material import Material
from checker.train.pair import Wheel

if TYPE_CHECKING:
    from checker.solve.iso_pair import IsoPair


class Tooth:
    """One gear of a pair: its root in the virtual spur gear, and what flank and root stand."""

    def __init__(self, rating: "IsoPair", wheel: Wheel, *, is_idler: Value) -> None:
        self.wheel = wheel
        self.material = Material(wheel.subject)
        self._rating = rating
        self.is_idler = is_idler

    @cached_property
    def virtual_teeth(self) -> Value:
        """z_n."""
        wheel = self.wheel
        return compute(
            iso_root.virtual_teeth, wheel.teeth, wheel.base_helix_angle, wheel.helix_angle
        )

    @cached_property
    def root(self) -> tuple[Value, ...]:
        """What the root section follows from: z_n, α_n, h_fP*, ρ_fP*, x_E."""
        wheel = self.wheel
        return (
            self.virtual_teeth,
            wheel.normal_pressure_angle,
            wheel.subject.given("basic_rack.dedendum", "h_fP*"),
            wheel.subject.given("basic_rack.root_radius", "ρ_fP*"),
            wheel.generating_profile_shift(),
        )

    @cached_property
    def _point(self) -> Value:
        wheel = self.wheel
        return compute(
            iso_root.load_point_diameter,
            self.virtual_teeth,
            wheel.normal_pressure_angle,
            wheel.active_tip_diameter(),
            wheel.reference_diameter,
            wheel.normal_module,
            self._rating.virtual_contact_ratio,
        )

    @cached_property
    def _chord(self) -> Value:
        return compute(iso_root.root_chord, *self.root)

    @cached_property
    def _arm(self) -> Value:
        return compute(iso_root.bending_arm, *self.root, self._point)

    @cached_property
    def notch(self) -> Value:
        """q_s, notch parameter of the root."""
        radius = compute(iso_root.root_fillet_radius, *self.root)
        return compute(iso_root.notch_parameter, self._chord, radius)

    @cached_property
    def form_factor(self) -> Value:
        """Y_F."""
        alpha = self.wheel.normal_pressure_angle
        direction = compute(
            iso_root.load_direction, self.virtual_teeth, alpha, self.root[4], self._point
        )
        return compute(iso_root.form_factor, self._arm, direction, self._chord, alpha)

    @cached_property
    def stress_correction(self) -> Value:
        """Y_S."""
        return compute(iso_root.stress_correction_factor, self._chord, self._arm, self.notch)

    @cached_property
    def height(self) -> Value:
        """h, height of the tooth from root to tip [m]."""
        return compute(rack.tooth_height, self.wheel.tip_diameter(), self.wheel.root_diameter())

    @cached_property
    def rim_factor(self) -> Value:
        """Y_B."""
        rim = self.wheel.subject.given("rim_thickness", "s_R")
        return compute(iso_bending.rim_factor, rim, self.height)

    @cached_property
    def single_contact_factor(self) -> Value:
        """Z_B of the pinion, Z_D of the wheel."""
        pair, wheel = self._rating.pair, self.wheel
        mate = pair.mate(wheel)
        ratio = compute(
            iso_contact.single_contact_ratio,
            pair.working_pressure_angle(),
            wheel.active_tip_diameter(),
            wheel.base_diameter,
            wheel.teeth,
            mate.active_tip_diameter(),
            mate.base_diameter,
            mate.teeth,
            self._rating.contact_ratio,
        )
        return compute(iso_contact.single_contact_factor, ratio, pair.overlap_ratio)

    @cached_property
    def hardening_factor(self) -> Value:
        """Z_W."""
        mate = self._rating.mate(self).material
        return compute(
            iso_life.hardening_factor,
            self.material.treatment,
            self.material.surface,
            mate.treatment,
            compute(iso_life.mean_peak_to_valley, mate.flank_roughness),
        )

    @cached_property
    def contact_static(self) -> Value:
        """σ_HG,stat [Pa]."""
        return compute(
            iso_contact.contact_static_strength,
            self.material.contact_limit,
            compute(iso_life.static_factor_contact, self.material.treatment),
            self.hardening_factor,
            self._rating.reliability,
        )

    @cached_property
    def bending_static(self) -> Value:
        """σ_FG,stat [Pa]."""
        material = self.material
        return compute(
            iso_bending.bending_static_strength,
            material.bending_limit,
            compute(iso_life.static_factor_bending, material.root_treatment),
            compute(
                iso_life.notch_sensitivity_static,
                self.stress_correction,
                material.root_treatment,
                material.proof_stress,
            ),
            self._rating.reliability,
        )

    @cached_property
    def bending_endurance(self) -> Value:
        """σ_FG [Pa]; 0.7 of it where the tooth bends both ways."""
        material = self.material
        roughness = compute(iso_life.mean_peak_to_valley, material.root_roughness)
        return compute(
            iso_bending.bending_endurance,
            material.bending_limit,
            compute(iso_bending.reversal_factor, self.is_idler),
            compute(
                iso_life.notch_sensitivity,
                self.notch,
                material.root_treatment,
                material.proof_stress,
            ),
            compute(iso_life.surface_factor, roughness, material.root_treatment),
            compute(
                iso_life.size_factor_bending, material.root_treatment, self.wheel.normal_module
            ),
            self._rating.reliability,
        )

    @cached_property
    def deep_tooth_factor(self) -> Value:
        """Y_DT."""
        return compute(
            iso_bending.deep_tooth_factor,
            self._rating.virtual_contact_ratio,
            self.material.grade,
        )

    @cached_property
    def _steady_factors(self) -> tuple[Value, Value, Value]:
        """Z_L, Z_R, Z_X."""
        rating, material = self._rating, self.material
        limit = material.contact_limit
        return (
            compute(iso_life.lubricant_factor, limit, rating.viscosity_40),
            compute(iso_life.roughness_factor, limit, *rating.roughness, rating.curvature),
            compute(iso_life.size_factor_contact, material.treatment, self.wheel.normal_module),
        )

    def contact_endurance(self, speed: Value) -> Value:
        """σ_HG at a pitch-line velocity [Pa]."""
        limit = self.material.contact_limit
        lubricant, roughness, size = self._steady_factors
        return compute(
            iso_contact.contact_endurance,
            limit,
            lubricant,
            compute(iso_life.velocity_factor, limit, speed),
            roughness,
            self.hardening_factor,
            size,
            self._rating.reliability,
        )
