"""The steady oil temperature: where all that the drive loses also leaves it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from checker.known import Known, Unknown, Value
from checker.mechanics.equation import OutOfRange, equation, equation_of
from checker.solve.oil_terms import Oil, OilProperties, Term
from checker.solve.root import Root, bracketed_root

_COLDEST, _HOTTEST = 243.15, 473.15  # K: beyond, the oil is taken as it is there
_NOWHERE = 3000.0  # K: what balances only above is not cooled at all
_LIKELY_RISE = 120.0  # K over the coldest sink: a first bracket that most drives settle in
_CLOSE = 1.0e-10  # of the losses
DAY = 86_400.0  # s


@equation(
    "T_oil",
    "T_oil where Σ P_loss(T_oil) = Σ Φ(T_oil), found by a bracketed root; the rest is the residual",
    unit="K",
    source="Steady heat balance of the oil",
    trial="T [K]",
    losses="Σ P_loss [W]",
    rejected="Σ Φ [W]",
    residual="Σ P_loss - Σ Φ [W]",
)
def balanced_temperature(trial: float, losses: float, rejected: float, residual: float) -> float:
    """Steady oil temperature ``T_oil``, in K: the trial at which heat in and out are equal."""
    return trial


@equation("Σ", "Σ = sum of its parts", unit="W", source="Definition", parts="P_i [W]")
def heat_sum(parts: tuple[float, ...]) -> float:
    """Sum of several heats, in W; negative parts count as such."""
    return sum(parts)


@equation(
    "P_lim",
    "P_lim = x P, x where Σ P_loss(T_lim, x P) = Σ Φ(T_lim), found by a bracketed root",
    unit="W",
    source="Heat balance of the oil at its limit, at the speed of the point",
    power="P [W]",
    factor="x [1]",
)
def limiting_power(power: float, factor: float) -> float:
    """Power ``P_lim`` at which the oil settles at its limit, in W."""
    return power * factor


@dataclass(frozen=True, slots=True)
class HeatModel:
    """Heat into and out of the oil of a drive in one steady state.

    Attributes:
        oil: what makes the state of the oil.
        losses: heat that goes in, by name.
        sinks: heat that goes out, by name; negative where it comes in.
        reference: lowest temperature of all that the oil gives heat to [K].
    """

    oil: OilProperties
    losses: Mapping[str, Term]
    sinks: Mapping[str, Term]
    reference: float
    _states: dict[float, dict[Oil, float]] = field(default_factory=dict)

    def state(self, temperature: float) -> dict[Oil, float]:
        """State of the oil, its properties held at the ends of their range."""
        if temperature not in self._states:
            within = min(max(temperature, _COLDEST), _HOTTEST)
            self._states[temperature] = {
                **self.oil.at(within),
                Oil.TEMPERATURE: temperature,
            }
        return self._states[temperature]

    def lost(self, temperature: float, load: float = 1.0) -> float:
        """Σ P_loss at an oil temperature [W]."""
        state = self.state(temperature)
        return sum(each.at(state, load) for each in self.losses.values())

    def rejected(self, temperature: float) -> float:
        """Σ Φ at an oil temperature [W]."""
        state = self.state(temperature)
        return sum(each.at(state) for each in self.sinks.values())

    def net(self, temperature: float, load: float = 1.0) -> float:
        """Heat that stays in the oil [W]."""
        return self.lost(temperature, load) - self.rejected(temperature)

    def settle(self) -> Root | None:
        """The steady temperature; ``None`` where nothing cools the drive."""
        likely = self.reference + _LIKELY_RISE
        low, high = self.reference, likely
        if self.net(likely) > 0.0:
            if self.net(_NOWHERE) > 0.0:
                return None
            low, high = likely, _NOWHERE
        tolerance = _CLOSE * max(self.lost(high), 1.0)
        return bracketed_root(self.net, low, high, tolerance=tolerance)

    def power_factor(self, limit: float, most: float) -> float:
        """Times the power of the point at which the oil settles at a limit; 0 if idle is too hot.

        Args:
            limit: the temperature [K].
            most: a factor beyond which nobody asks; returned where even that is borne.
        """
        if self.net(limit, 0.0) >= 0.0:
            return 0.0
        if self.net(limit, most) <= 0.0:
            return most
        tolerance = _CLOSE * max(self.lost(limit), 1.0)
        return bracketed_root(
            lambda factor: self.net(limit, factor), 0.0, most, tolerance=tolerance
        ).value

    def warm_up(self, start: float, end: float, content: float, steps: int = 12) -> float:
        """Time from a start to an end temperature [s], a day where it never gets there.

        Simpson's rule of C dT/(net heat) over the temperature, as the net heat falls smoothly.

        Args:
            start: temperature at the start [K].
            end: temperature wanted [K].
            content: heat content of the drive [J/K].
            steps: even number of stretches.
        """
        if end <= start:
            return 0.0
        width = (end - start) / steps
        nets = [self.net(start + width * index) for index in range(steps + 1)]
        if min(nets) <= 0.0:
            return DAY
        weights = [1.0, *([4.0, 2.0] * (steps // 2))[:-1], 1.0]
        time = sum(weight / net for weight, net in zip(weights, nets, strict=True))
        return min(content * time * width / 3.0, DAY)

    def breakdown(self, trial: Known) -> dict[str, Known] | Unknown:
        """Every loss and sink with its derivation at an oil temperature, by name."""
        states = self.oil.known(trial)
        if isinstance(states, Unknown):
            return states
        found: dict[str, Known] = {}
        for name, each in (*self.losses.items(), *self.sinks.items()):
            value = each.known(states)
            if isinstance(value, Unknown):
                return value
            part, _, _ = name.partition(" ")
            found[name] = value.named(f"{value.symbol} ({part})")
        return found

    def steady(self) -> Value:
        """The steady oil temperature with its derivation [K]."""
        try:
            root = self.settle()
        except OutOfRange as outside:
            return Unknown(because=str(outside))
        if root is None:
            return Unknown(because="nothing that is stated cools the drive")
        trial = Known(
            root.value, "K", "T", origin=f"bracketed root, {root.steps} steps after its two ends"
        )
        residual = Known(root.residual, "W", "residual", origin="Σ P_loss - Σ Φ at the root")
        if not _COLDEST <= root.value <= _HOTTEST:
            origin = "the oil is taken as it is at the end of its range"
            return Known(root.value, "K", "T_oil", origin=origin, inputs=(trial, residual))
        parts = self.breakdown(trial)
        if isinstance(parts, Unknown):
            return parts
        lost = added(tuple(parts[name] for name in self.losses), "Σ P_loss")
        rejected = added(tuple(parts[name] for name in self.sinks), "Σ Φ")
        return Known(
            balanced_temperature(root.value, lost.number, rejected.number, root.residual),
            "K",
            "T_oil",
            origin=equation_of(balanced_temperature),
            inputs=(trial, lost, rejected, residual),
        )


def added(parts: tuple[Known, ...], symbol: str) -> Known:
    """The sum of heats, with its parts."""
    total = heat_sum(tuple(part.number for part in parts))
    return Known(total, "W", symbol, origin=equation_of(heat_sum), inputs=parts)
