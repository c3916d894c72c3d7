"""What a gear is made of, as its rating asks for it, whichever scale its hardness is stated in."""

from functools import cached_property

from checker.known import Known, Unknown, Value, compute
from checker.mechanics import flank_accuracy, iso_materials
from checker.spec.subject import Subject

_HARDENED_IN_PLACES = "induction-hardened"


def vickers(hardness: Value) -> Value:
    """A hardness on the Vickers scale."""
    if isinstance(hardness, Unknown) or hardness.unit == "HV":
        return hardness
    if hardness.unit == "HRC":
        return compute(iso_materials.vickers_of_rockwell, hardness)
    return compute(iso_materials.vickers_of_brinell, hardness)


class Material:
    """Steel and surface of one gear, at the soft end of its hardness."""

    def __init__(self, gear: Subject) -> None:
        self._gear = gear

    @cached_property
    def treatment(self) -> Value:
        """Heat treatment."""
        return self._gear.given("material.treatment", "treatment")

    @cached_property
    def quality(self) -> Value:
        """Material quality of ISO 6336-5."""
        return self._gear.given("material.quality", "quality")

    @cached_property
    def surface(self) -> Value:
        """HV of the flanks."""
        return vickers(self._gear.given("material.surface_hardness", "H", "low"))

    @cached_property
    def core(self) -> Value:
        """HV of the core."""
        return vickers(self._gear.given("material.core_hardness", "H_core", "low"))

    @cached_property
    def root_treatment(self) -> Value:
        """Heat treatment of the root: induction hardening may leave it out."""
        if not self._root_may_be_soft:
            return self.treatment
        return compute(iso_materials.treatment_of_root, self.treatment, self._root_hardened)

    @cached_property
    def root(self) -> Value:
        """HV of the root."""
        if not self._root_may_be_soft:
            return self.surface
        return compute(iso_materials.hardness_of_root, self.surface, self.core, self._root_hardened)

    @property
    def _root_may_be_soft(self) -> bool:
        treatment = self.treatment
        return isinstance(treatment, Known) and treatment.value == _HARDENED_IN_PLACES

    @property
    def _root_hardened(self) -> Value:
        return self._gear.given("material.root_hardened", "root hardened")

    @cached_property
    def contact_limit(self) -> Value:
        """σ_Hlim [Pa]."""
        return compute(iso_materials.contact_limit, self.treatment, self.quality, self.surface)

    @cached_property
    def bending_limit(self) -> Value:
        """σ_Flim [Pa]."""
        return compute(
            iso_materials.bending_limit, self.root_treatment, self.quality, self.root, self.core
        )

    @cached_property
    def proof_stress(self) -> Value:
        """σ_0.2 of the core [Pa]."""
        return compute(iso_materials.proof_stress, self.core)

    @cached_property
    def flank_roughness(self) -> Value:
        """Ra of the flanks [m]."""
        return self._gear.given("flank_roughness", "Ra")

    @cached_property
    def root_roughness(self) -> Value:
        """Ra of the fillets [m]."""
        return self._gear.given("root_roughness", "Ra_root")

    @cached_property
    def grade(self) -> Value:
        """Accuracy grade on the ISO scale."""
        return compute(
            flank_accuracy.iso_grade,
            self._gear.given("accuracy.standard"),
            self._gear.given("accuracy.grade"),
        )


NO_PART_OF_METHOD_B = Known(
    1.0,
    "1",
    "Y_ε",
    origin="method B puts the load at the outer point of single contact, so Y_ε is not applied; "
    "0.25 + 0.75/ε_αn belongs to load at the tip (ISO 6336-3:2006, from memory)",
)
