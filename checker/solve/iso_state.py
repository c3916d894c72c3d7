"""A pair under a torque at a speed: load factors, stresses, safety and damage by ISO 6336."""

from functools import cached_property

from checker.known import Known, Value, compute
from checker.mechanics import (
    flank_accuracy,
    involute,
    iso_bending,
    iso_contact,
    iso_face_load,
    iso_life,
    iso_load_factors,
    kinematics,
    mesh_stiffness,
    miner,
)
from checker.solve.gear_material import NO_PART_OF_METHOD_B
from checker.solve.iso_pair import IsoPair
from checker.solve.iso_tooth import Tooth
from checker.train.pair import Pair


class IsoState:
    """A pair under a torque at a speed.

    Attributes:
        rating: the pair.
        torque: at the driver [N m].
        speed: of the driver [rad/s].
        application: K_A.
        static: a single overload: the peak holds all that K_A and K_v stand for.
    """

    def __init__(
        self,
        rating: IsoPair,
        torque: Value,
        speed: Value,
        application: Value,
        *,
        static: bool = False,
    ) -> None:
        self.rating = rating
        self.application = application
        self.static = static
        self.torque = torque
        self.speed = speed
        self._flanks: dict[Tooth, Value] = {}
        self._roots: dict[Tooth, Value] = {}
        self._lines: dict[Tooth, tuple[Value, Value, Value]] = {}

    def at_load(self, times: float) -> "IsoState":
        """The same pair under a multiple of the torque."""
        if times == 1.0:
            return self
        load = Known(times, "1", "k", origin="a multiple of the stated load")
        torque = compute(kinematics.multiplied_torque, self.torque, load)
        return IsoState(self.rating, torque, self.speed, self.application, static=self.static)

    def with_pair(self, pair: Pair) -> "IsoState":
        """The same load on the pair with other sizes."""
        return IsoState(
            self.rating.of(pair),
            self.torque,
            self.speed,
            self.application,
            static=self.static,
        )

    @cached_property
    def force(self) -> Value:
        """F_t at the reference circle [N]."""
        return compute(
            iso_load_factors.nominal_force,
            self.torque,
            self.rating.pair.driver.reference_diameter,
        )

    @cached_property
    def pitch_line_speed(self) -> Value:
        """v [m/s]."""
        pair = self.rating.pair
        return compute(involute.pitch_line_velocity, self.speed, pair.working_diameter(pair.driver))

    @cached_property
    def line_load(self) -> Value:
        """w_m with K_A [N/m]."""
        return compute(
            iso_load_factors.line_load,
            self.force,
            self.application,
            self.rating.pair.common_face_width,
        )

    @cached_property
    def _single_stiffness(self) -> Value:
        return compute(iso_load_factors.stiffness_under_load, self.rating.stiffness, self.line_load)

    @cached_property
    def _mesh_stiffness(self) -> Value:
        return compute(
            mesh_stiffness.mesh_stiffness, self._single_stiffness, self.rating.contact_ratio
        )

    @cached_property
    def _run_in(self) -> tuple[Value, ...]:
        """What running-in depends on: treatment and σ_Hlim of both gears, speed."""
        first, second = (each.material for each in self.rating.teeth)
        return (
            first.treatment,
            first.contact_limit,
            second.treatment,
            second.contact_limit,
            self.pitch_line_speed,
        )

    @cached_property
    def _pitch_error(self) -> Value:
        return compute(
            flank_accuracy.effective_profile_deviation, self.rating.pitch_deviation, *self._run_in
        )

    @cached_property
    def dynamic_factor(self) -> Value:
        """K_v."""
        if self.static:
            return Known(1.0, "1", "K_v", origin="a single overload has no mesh vibration")
        rating, load = self.rating, self.line_load
        stiffness = self._single_stiffness
        form_error = compute(
            flank_accuracy.effective_profile_deviation, rating.profile_deviation, *self._run_in
        )
        driver = rating.pair.driver
        return compute(
            iso_load_factors.dynamic_factor,
            compute(
                iso_load_factors.resonance_ratio,
                self.speed,
                driver.teeth,
                rating.reduced_mass,
                self._mesh_stiffness,
            ),
            rating.total_contact_ratio,
            compute(iso_load_factors.deviation_parameter, stiffness, self._pitch_error, load),
            compute(iso_load_factors.deviation_parameter, stiffness, form_error, load),
            compute(
                iso_load_factors.relief_parameter,
                stiffness,
                rating.tip_relief,
                load,
                rating.grade,
            ),
            load,
        )

    @cached_property
    def _dynamic_load(self) -> Value:
        return compute(iso_load_factors.load_with_factor, self.line_load, self.dynamic_factor)

    @cached_property
    def face_factor(self) -> Value:
        """K_Hβ."""
        rating = self.rating
        misalignment = compute(
            iso_face_load.initial_misalignment,
            rating.misalignment(rating.pair, self._dynamic_load),
            rating.helix_deviation,
        )
        return compute(
            iso_face_load.face_load_factor,
            compute(flank_accuracy.effective_misalignment, misalignment, *self._run_in),
            self._mesh_stiffness,
            self._dynamic_load,
        )

    @cached_property
    def face_factor_bending(self) -> Value:
        """K_Fβ."""
        return compute(
            iso_face_load.face_load_factor_bending,
            self.face_factor,
            self.rating.pair.common_face_width,
            self.rating.least_height,
        )

    @cached_property
    def _transverse_load(self) -> Value:
        return compute(iso_load_factors.load_with_factor, self._dynamic_load, self.face_factor)

    @cached_property
    def transverse_factor(self) -> Value:
        """K_Hα."""
        return compute(
            iso_load_factors.transverse_factor_contact,
            self.rating.total_contact_ratio,
            self.rating.contact_ratio,
            self.rating.contact_ratio_factor,
            self._mesh_stiffness,
            self._pitch_error,
            self._transverse_load,
        )

    @cached_property
    def transverse_factor_bending(self) -> Value:
        """K_Fα."""
        return compute(
            iso_load_factors.transverse_factor_bending,
            self.rating.total_contact_ratio,
            self.rating.contact_ratio,
            self._mesh_stiffness,
            self._pitch_error,
            self._transverse_load,
        )

    @cached_property
    def full_line_load(self) -> Value:
        """w_Bt, load per face width with every factor [N/m]."""
        return compute(
            iso_load_factors.load_with_factor, self._transverse_load, self.transverse_factor
        )

    @cached_property
    def _contact_stress(self) -> tuple[Value, Value]:
        """σ_H0 and K of both flanks."""
        pair = self.rating.pair
        nominal = compute(
            iso_contact.nominal_contact_stress,
            *self.rating.contact_factors,
            self.force,
            pair.driver.reference_diameter,
            pair.driven.reference_diameter,
            pair.common_face_width,
        )
        factor = compute(
            iso_load_factors.combined_load_factor,
            self.application,
            self.dynamic_factor,
            self.face_factor,
            self.transverse_factor,
        )
        return nominal, factor

    def contact_stress(self, tooth_: Tooth) -> Value:
        """σ_H of one gear [Pa]."""
        if tooth_ not in self._flanks:
            self._flanks[tooth_] = self._stress_of_flank(tooth_)
        return self._flanks[tooth_]

    def root_stress(self, tooth_: Tooth) -> Value:
        """σ_F of one gear [Pa]."""
        if tooth_ not in self._roots:
            self._roots[tooth_] = self._stress_of_root(tooth_)
        return self._roots[tooth_]

    def _stress_of_flank(self, tooth_: Tooth) -> Value:
        return compute(
            iso_contact.contact_stress, tooth_.single_contact_factor, *self._contact_stress
        )

    @cached_property
    def _bending_factor(self) -> Value:
        return compute(
            iso_load_factors.combined_load_factor,
            self.application,
            self.dynamic_factor,
            self.face_factor_bending,
            self.transverse_factor_bending,
        )

    def _stress_of_root(self, tooth_: Tooth) -> Value:
        rating = self.rating
        nominal = compute(
            iso_bending.nominal_root_stress,
            self.force,
            rating.pair.common_face_width,
            rating.pair.driver.normal_module,
            tooth_.form_factor,
            tooth_.stress_correction,
            NO_PART_OF_METHOD_B,
            rating.helix_factor,
            tooth_.rim_factor,
            tooth_.deep_tooth_factor,
        )
        return compute(iso_bending.root_stress, nominal, self._bending_factor)

    def contact_line(self, tooth_: Tooth) -> tuple[Value, Value, Value]:
        """Static strength, endurance and treatment: the life line of a flank."""
        if tooth_ not in self._lines:
            endurance = tooth_.contact_endurance(self.pitch_line_speed)
            self._lines[tooth_] = tooth_.contact_static, endurance, tooth_.material.treatment
        return self._lines[tooth_]

    @staticmethod
    def bending_line(tooth_: Tooth) -> tuple[Value, Value, Value]:
        """Static strength, endurance and treatment: the life line of a root."""
        return tooth_.bending_static, tooth_.bending_endurance, tooth_.material.root_treatment

    def contact_safety(self, tooth_: Tooth, cycles: Value) -> Value:
        """S_H for a number of load cycles."""
        strength = compute(iso_life.contact_strength, cycles, *self.contact_line(tooth_))
        return compute(iso_contact.safety_factor, strength, self.contact_stress(tooth_))

    def bending_safety(self, tooth_: Tooth, cycles: Value) -> Value:
        """S_F for a number of load cycles."""
        strength = compute(iso_life.bending_strength, cycles, *self.bending_line(tooth_))
        return compute(iso_contact.safety_factor, strength, self.root_stress(tooth_))

    def contact_damage(self, tooth_: Tooth, share: Value, speed: Value) -> Value:
        """Damage of a flank in each second of running [1/s]."""
        cycles = compute(
            iso_life.contact_cycles, self.contact_stress(tooth_), *self.contact_line(tooth_)
        )
        return compute(miner.damage_rate, share, speed, cycles)

    def bending_damage(self, tooth_: Tooth, share: Value, speed: Value) -> Value:
        """Damage of a root in each second of running [1/s]."""
        cycles = compute(
            iso_life.bending_cycles, self.root_stress(tooth_), *self.bending_line(tooth_)
        )
        return compute(miner.damage_rate, share, speed, cycles)
