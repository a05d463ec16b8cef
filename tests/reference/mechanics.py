"""The balance of both clutches by quadrature, differences and root finding, without the closed forms."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Callable

import numpy as np
from numpy.polynomial import Polynomial
from scipy.integrate import quad, solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, lsq_linear, minimize_scalar

from catalog import Points

SCAN_STEP_RPM = 10.0
RPM = math.pi / 30  # rad/s of one rpm
UPSHIFT, BACKSHIFT = -1, 1  # the sign of cam friction beside the helix angle


def root(function: Callable[[float], float], low: float, high: float) -> float:
    """Where a function crosses zero between two places, as closely as doubles allow."""
    return float(brentq(function, low, high, xtol=1e-15 * max(1.0, high), rtol=1e-14))


def maximum(function: Callable[[Any], Any], low: float, high: float, knots: list[float]) -> tuple[float, float]:
    """Place and height of the greatest value: tried densely, then narrowed around the best place."""
    tried = np.unique([*np.linspace(low, high, 801), *(k for k in knots if low < k < high)])
    heights = function(tried)
    best = int(np.argmax(heights))
    around = tried[max(best - 1, 0)], tried[min(best + 1, len(tried) - 1)]
    finer = minimize_scalar(lambda x: -float(function(x)), bounds=around, method="bounded", options={"xatol": 1e-13})
    narrowed = float(finer.x), -float(finer.fun)
    return max((float(tried[best]), float(heights[best])), narrowed, key=lambda place: place[1])


# Air, [ISO 2533], [SAE J1349], [ISO 1585]

def torque_factor(altitude: float, temperature: float | None, law: str) -> float:
    """Torque in this air over torque at sea level in standard air."""
    def correction(height: float, kelvin: float | None) -> float:
        standard = 288.15 - 0.0065 * height
        pressure = 101325 * (standard / 288.15) ** (9.80665 / (287.05287 * 0.0065))
        warmth = (standard if kelvin is None else kelvin) / 298
        thinness = 99000 / pressure
        return thinness ** 1.2 * warmth ** 0.6 if law == "iso1585" else 1.18 * thinness * warmth ** 0.5 - 0.18
    return correction(0.0, None) / correction(altitude, temperature)


class Engine:
    """Full-throttle torque over rpm, held below its first point."""

    def __init__(self, table: Points, rev_limit: float) -> None:
        self.first = table[0][0]
        self.rev_limit = rev_limit
        self._curve = PchipInterpolator(*np.transpose(table))
        self._knots = [rpm for rpm, _ in table]

    def torque(self, rpm: Any) -> Any:
        return self._curve(np.maximum(rpm, self.first))

    @cached_property
    def peak_power(self) -> tuple[float, float]:
        """Rpm and power of the peak up to the rev limit, at sea level."""
        return maximum(lambda rpm: self.torque(rpm) * rpm * RPM, 0.0, self.rev_limit, self._knots)


# Belt

@dataclass(frozen=True)
class Position:
    """The belt at one travel of the drive sheave."""

    travel: float
    drive_radius: float
    driven_radius: float
    drive_wrap: float
    driven_wrap: float
    opening: float

    @property
    def ratio(self) -> float:
        return self.driven_radius / self.drive_radius


class Belt:
    """A belt of constant length around two sheaves, of which travel sets the first radius."""

    def __init__(
        self, length: float, between: float, first_radius: float, contact: float, half_angle: float,
    ) -> None:
        self.length, self.between = length, between
        self.first_radius, self.contact = first_radius, contact
        self.spread = 2 * math.tan(half_angle)
        self.low_gear = self._driven_radius(first_radius)

    def at(self, travel: float) -> Position:
        drive = self.first_radius + (travel - self.contact) / self.spread
        driven = self._driven_radius(drive)
        wrap = 2 * math.acos((driven - drive) / self.between)
        return Position(travel, drive, driven, wrap, 2 * math.pi - wrap, (self.low_gear - driven) * self.spread)

    def at_ratio(self, ratio: float, full_shift: float) -> Position:
        low, high = self.at(self.contact), self.at(full_shift)
        if not high.ratio < ratio < low.ratio:
            return low if ratio >= low.ratio else high
        return self.at(root(lambda travel: self.at(travel).ratio - ratio, self.contact, full_shift))

    def _driven_radius(self, drive: float) -> float:
        """The radius at which two straight runs and two arcs are as long as the belt."""
        def too_long(driven: float) -> float:
            wrap = 2 * math.acos((driven - drive) / self.between)
            runs = 2 * math.sqrt(self.between ** 2 - (driven - drive) ** 2)
            return runs + drive * wrap + driven * (2 * math.pi - wrap) - self.length
        return root(too_long, 1e-6, drive + self.between * (1 - 1e-9))


class Capstan:
    """Tension along an active arc, dT/dθ = μₑ T, and ∫T dθ with it; the equation is linear, so it starts at 1."""

    def __init__(self, groove_friction: float) -> None:
        self._solution = solve_ivp(
            lambda _, state: [groove_friction * state[0], state[0]], (0, 2 * math.pi), [1.0, 0.0],
            method="DOP853", rtol=1e-13, atol=1e-14, max_step=0.05, dense_output=True).sol

    def __call__(self, arc: Any) -> Any:
        return self._solution(arc)


@dataclass(frozen=True)
class BeltLoad:
    """What the belt carries at one clamp and pull; tensions are net of what only holds it on its circle."""

    slack: float
    pull: float
    arc: float
    margin: float
    drive_thrust: float


class Grip:
    """The belt in both grooves at one position: idle arc at entry tension, then active arc."""

    def __init__(self, capstan: Capstan, position: Position, spread: float, locked: bool) -> None:
        self.capstan, self.position, self.spread, self.locked = capstan, position, spread, locked
        arcs = np.linspace(0, position.driven_wrap, 1500)
        self._shares, self._thrusts = self._per_clamp(arcs)

    def _per_clamp(self, arc: Any) -> tuple[Any, Any]:
        """Pull over 2 tan β · clamp, and drive thrust over clamp, where an arc is active."""
        tension, area = self.capstan(arc)
        clamp = self.position.driven_wrap - arc + area
        idle = self.position.drive_wrap - arc
        drive = tension * self.position.drive_wrap if self.locked else tension * np.maximum(idle, 0) + area
        return (tension - 1) / clamp, drive / clamp

    def load(self, clamp: float, pull: float) -> BeltLoad:
        wraps = self.position.drive_wrap, self.position.driven_wrap
        most = float(self._shares[-1])
        share = pull / (self.spread * clamp)
        slips = share > most
        arc = wraps[1] if slips else root(lambda a: float(self._per_clamp(a)[0]) - share, 0.0, wraps[1])
        tension, area = (float(value) for value in self.capstan(arc))
        slack = pull / (tension - 1) if pull > 0 else self.spread * clamp / wraps[1]
        margin = (most / share if slips else 1.0) * min(wraps) / arc if pull > 0 else math.inf
        axial = slack * tension * wraps[0] if self.locked else slack * (tension * max(wraps[0] - arc, 0.0) + area)
        return BeltLoad(slack, pull, arc, margin, axial / self.spread)

    def roughly(self, clamp: Any, pull: Any) -> Any:
        """Drive thrust to some six digits, for many loads at once."""
        share = pull / (self.spread * clamp)
        return clamp * np.interp(share, self._shares, self._thrusts) * np.maximum(share / self._shares[-1], 1)


# Clutches

class Flyweights:
    """Arms by their kinetic energy ½ J(x) ω²; thrust is its slope over travel."""

    def __init__(self, arms: int, masses: list[tuple[float, Points]]) -> None:
        self._arms = arms
        self._masses = [(mass, PchipInterpolator(*np.transpose(curve), extrapolate=False))
                        for mass, curve in masses]
        self.knots = sorted({x for _, curve in masses for x, _ in curve})
        self._slopes = [self._slope(a, b) for a, b in zip(self.knots, self.knots[1:])]

    def inertia(self, travel: Any) -> Any:
        return self._arms * sum(mass * radius(travel) ** 2 for mass, radius in self._masses)

    def thrust(self, travel: Any) -> Any:
        """½ dJ/dx, thrust over ω²."""
        piece = np.clip(np.searchsorted(self.knots, travel, side="right") - 1, 0, len(self._slopes) - 1)
        if np.ndim(travel) == 0:
            return float(self._slopes[int(piece)](travel)) / 2
        return np.array([self._slopes[k](x) for k, x in zip(piece, travel)]) / 2

    def _slope(self, a: float, b: float) -> Polynomial:
        """Between two points J is of the sixth degree, so seven energies give its slope without a remainder."""
        nodes = (a + b) / 2 - (b - a) / 2 * np.cos((np.arange(7) + 0.5) * math.pi / 7)
        return Polynomial.fit(nodes, self.inertia(nodes), 6, domain=[a, b]).deriv()


@dataclass(frozen=True)
class Parts:
    """The parts of a set, and how they are installed."""

    spring: Callable[[Any], Any]
    spring_length: float
    flyweights: Flyweights
    axial: Callable[[Any], Any]
    twist: Callable[[Any], Any]
    preload_twist: float
    helix: Points


@dataclass(frozen=True)
class Drivetrain:
    """A machine without its parts."""

    engine: Engine
    belt: Belt
    capstan: Capstan
    belt_efficiency: float
    belt_mass: float
    full_shift: float
    driven_spring_length: float
    friction_share: float
    cam_radius: float
    cam_share: float
    cam_friction: float
    locked: bool
    tyre_radius: float
    final_drive: float
    starts_by_belt: bool

    def positions(self, count: int) -> list[Position]:
        """Positions evenly by ratio, from contact to full shift."""
        first, last = self.belt.at(self.belt.contact).ratio, self.belt.at(self.full_shift).ratio
        return [self.belt.at_ratio(ratio, self.full_shift) for ratio in np.linspace(first, last, count)]

    def engagement(self, parts: Parts) -> tuple[float, float]:
        """Rpm and travel of the hardest place before contact, without anchor."""
        def needed(travel: Any) -> Any:
            return parts.spring(parts.spring_length - travel) / parts.flyweights.thrust(travel)
        travel, square = maximum(needed, 0.0, self.belt.contact, parts.flyweights.knots)
        return math.sqrt(square / (1 - self.friction_share)) / RPM, travel

    def cam_turn(self, helix: Points, opening: float) -> float:
        """∫ dy / (r tan α) from low gear, piece by piece between the points of the helix."""
        ends = [0.0, *(y for y, _ in helix if 0 < y < opening), opening]

        def slope(y: float) -> float:
            return 1 / (self.cam_radius * math.tan(helix_angle(helix, y)))
        return sum(quad(slope, a, b, epsabs=0, epsrel=1e-13)[0] for a, b in zip(ends, ends[1:]) if b > a)


def helix_angle(helix: Points, opening: float) -> float:
    return float(np.interp(opening, *np.transpose(helix)))


class Balance:
    """One set at one position: the forces over rpm, up and down."""

    def __init__(self, train: Drivetrain, parts: Parts, grip: Grip, air: float, anchor: tuple[float, float]) -> None:
        self.train, self.air, self.grip, self.position = train, air, grip, grip.position
        self.flyweight_factor, self.thrust_factor = anchor
        self.helix_angle = helix_angle(parts.helix, self.position.opening)
        self.cam_turn = train.cam_turn(parts.helix, self.position.opening)
        self.per_square = self.flyweight_factor * parts.flyweights.thrust(self.position.travel)
        self.spring_force = float(parts.spring(parts.spring_length - self.position.travel))
        self._axial = float(parts.axial(train.driven_spring_length - self.position.opening))
        self._twist = float(parts.twist(parts.preload_twist + self.cam_turn))

    def torque(self, rpm: Any) -> Any:
        return self.air * self.train.engine.torque(rpm)

    def clamp(self, rpm: Any, direction: int) -> Any:
        lever = self.train.cam_radius * math.tan(self.helix_angle + direction * self.train.cam_friction)
        belt_torque = self.train.belt_efficiency * self.torque(rpm) * self.position.ratio
        return self._axial + (self._twist + self.train.cam_share * belt_torque) / lever

    def flyweight_thrust(self, rpm: Any) -> Any:
        return self.per_square * (rpm * RPM) ** 2

    def available(self, rpm: Any, direction: int) -> Any:
        return (1 + direction * self.train.friction_share) * self.flyweight_thrust(rpm) - self.spring_force

    def load(self, rpm: float, direction: int) -> BeltLoad:
        return self.grip.load(float(self.clamp(rpm, direction)), float(self.torque(rpm)) / self.position.drive_radius)

    def net(self, rpm: float, direction: int) -> float:
        return float(self.available(rpm, direction)) - self.thrust_factor * self.load(rpm, direction).drive_thrust

    def rpm(self, engagement: float, direction: int) -> float | None:
        """The first rpm from engagement on where the drive clutch closes; None where there is none."""
        limit = self.train.engine.rev_limit
        if engagement > limit:
            return None
        first = SCAN_STEP_RPM * (math.floor(engagement / SCAN_STEP_RPM) + 1)
        steps = np.array([engagement, *np.arange(first, limit, SCAN_STEP_RPM), limit])
        available = self.available(steps, direction)
        asked = self.thrust_factor * self.grip.roughly(
            self.clamp(steps, direction), self.torque(steps) / self.position.drive_radius)
        # The rough thrust only passes over what is far from closing; the exact one decides.
        for k in np.flatnonzero(available >= asked * (1 - 1e-4)):
            if self.net(steps[k], direction) >= 0:
                return float(steps[0]) if k == 0 else root(lambda n: self.net(n, direction), steps[k - 1], steps[k])
        return None


def anchor_factors(
    train: Drivetrain, parts: Parts, air: float, engagement: float | None,
    readings: list[tuple[Position, float]], spread: float,
) -> tuple[float, float]:
    """Factors on flyweight and belt thrust that bring a measured run out, the second by least squares."""
    flyweight = 1.0
    if engagement is not None:
        flyweight = (train.engagement(parts)[0] / engagement) ** 2
    balances = [(Balance(train, parts, Grip(train.capstan, position, spread, train.locked), air, (flyweight, 1.0)), rpm)
                for position, rpm in readings]
    asked = np.array([[balance.load(rpm, UPSHIFT).drive_thrust] for balance, rpm in balances])
    available = np.array([balance.available(rpm, UPSHIFT) for balance, rpm in balances])
    return flyweight, float(lsq_linear(asked, available).x[0])
