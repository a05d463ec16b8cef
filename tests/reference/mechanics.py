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


# Air, [ISO 2533], [SAE J1349], [ISO 1585], [SON]

@dataclass(frozen=True)
class Air:
    """Where, how warm and how humid; no temperature is that of the standard day, no humidity is none."""

    altitude: float = 0.0
    temperature: float | None = None
    humidity: float = 0.0


def standard_temperature(altitude: float) -> float:
    return 288.15 - 0.0065 * altitude


def saturation_pressure(kelvin: float) -> float:
    """Pressure of saturated vapour over water: d ln e / dT integrated from the triple point, where it is known."""
    def slope(t: float) -> float:
        return 6096.9385 / t ** 2 - 2.711193e-2 + 2 * 1.673952e-5 * t + 2.433502 / t
    at_zero = -6096.9385 / 273.15 + 21.2409642 - 2.711193e-2 * 273.15 + 1.673952e-5 * 273.15 ** 2
    rise = quad(slope, 273.15, kelvin, epsabs=0, epsrel=1e-13)[0] if kelvin != 273.15 else 0.0
    return math.exp(at_zero + rise) * 273.15 ** 2.433502


def torque_factor(air: Air, law: str, boosted_to: float | None = None) -> float:
    """Torque in this air over torque at sea level in standard air; boost holds it whole up to its altitude."""
    def correction(at: Air) -> float:
        standard = standard_temperature(at.altitude)
        kelvin = standard if at.temperature is None else at.temperature
        pressure = 101325 * (standard / 288.15) ** (9.80665 / (287.05287 * 0.0065))
        thinness = 99000 / (pressure - at.humidity * saturation_pressure(kelvin))
        warmth = kelvin / 298
        return thinness ** 1.2 * warmth ** 0.6 if law == "iso1585" else 1.18 * thinness * warmth ** 0.5 - 0.18
    if boosted_to is None:
        return correction(Air()) / correction(air)
    if air.altitude <= boosted_to:
        return 1.0
    # Where boost ends the day is as much off the standard one as here.
    off = None if air.temperature is None else air.temperature - standard_temperature(air.altitude)
    there = None if off is None else standard_temperature(boosted_to) + off
    return min(1.0, correction(Air(boosted_to, there, air.humidity)) / correction(air))


class Engine:
    """Full-throttle torque over rpm by a table, held below its first point, or by the two peaks of a brochure."""

    def __init__(self, torque: Callable[[Any], Any], knots: list[float], rev_limit: float) -> None:
        self.torque, self._knots, self.rev_limit = torque, knots, rev_limit

    @staticmethod
    def by_table(table: Points, rev_limit: float) -> "Engine":
        curve = PchipInterpolator(*np.transpose(table))
        return Engine(lambda rpm: curve(np.maximum(rpm, table[0][0])), [rpm for rpm, _ in table], rev_limit)

    @staticmethod
    def by_peaks(torque_rpm: float, most: float, power_rpm: float, power: float, rev_limit: float) -> "Engine":
        """A parabola from half the torque, a power of the rpm that puts the peak of rpm · torque in place, its tangent."""
        at_power = power / (power_rpm * RPM)
        fall = most - at_power

        def between(rpm: Any, exponent: float) -> Any:
            return most - fall * (np.clip(rpm - torque_rpm, 0, None) / (power_rpm - torque_rpm)) ** exponent

        def growth_of_power(exponent: float) -> float:
            return at_power - power_rpm * fall * exponent / (power_rpm - torque_rpm)
        exponent = root(growth_of_power, 1e-3, 1e3)
        rising = Polynomial([most / 2, most / torque_rpm, -most / (2 * torque_rpm ** 2)])
        tangent = Polynomial([2 * at_power, -at_power / power_rpm])

        def torque(rpm: Any) -> Any:
            return np.where(rpm <= torque_rpm, rising(rpm), np.where(rpm < power_rpm, between(rpm, exponent), tangent(rpm)))
        return Engine(torque, [torque_rpm, power_rpm], rev_limit)

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
    drive_arc: float
    margin: float
    drive_thrust: float


class Grip:
    """The belt in both grooves at one position: idle arc at entry tension, then active arc, each groove by its friction."""

    def __init__(
        self, drive: Capstan, driven: Capstan, position: Position, spread: float, locked: bool,
    ) -> None:
        self.drive, self.driven, self.position, self.spread, self.locked = drive, driven, position, spread, locked
        arcs = np.linspace(0, position.driven_wrap, 1500)
        tension, clamp = self._driven_side(arcs)
        self._shares = (tension - 1) / clamp
        self._thrusts = self._thrust(tension, self._drive_arcs(arcs)) / clamp

    def _driven_side(self, arc: Any) -> tuple[Any, Any]:
        """Entry tension, and 2 tan β · clamp, over slack tension, where an arc of the driven groove is active."""
        tension, area = self.driven(arc)
        return tension, self.position.driven_wrap - arc + area

    def _thrust(self, tension: Any, drive_arc: Any) -> Any:
        """2 tan β · drive thrust over slack tension."""
        if self.locked:
            return tension * self.position.drive_wrap
        return tension * np.maximum(self.position.drive_wrap - drive_arc, 0) + self.drive(drive_arc)[1]

    def _drive_arc(self, arc: float) -> float:
        """The arc of the drive groove along which tension grows as much as along an arc of the driven groove."""
        if self.drive is self.driven:
            return arc
        tension = float(self.driven(arc)[0])
        return root(lambda a: float(self.drive(a)[0]) - tension, 0.0, 2 * math.pi)

    def _drive_arcs(self, arcs: Any) -> Any:
        """The same for many arcs, to some six digits."""
        if self.drive is self.driven:
            return arcs
        tried = np.linspace(0, 2 * math.pi, 5000)
        return np.interp(self.driven(arcs)[0], self.drive(tried)[0], tried)

    def load(self, clamp: float, pull: float) -> BeltLoad:
        wraps = self.position.drive_wrap, self.position.driven_wrap
        most = float(self._shares[-1])
        share = pull / (self.spread * clamp)
        slips = share > most
        arc = wraps[1] if slips else root(lambda a: self._share(a) - share, 0.0, wraps[1])
        drive_arc = self._drive_arc(arc)
        tension = float(self.driven(arc)[0])
        slack = pull / (tension - 1) if pull > 0 else self.spread * clamp / wraps[1]
        reserve = min(wraps[0] / drive_arc, wraps[1] / arc) if pull > 0 else math.inf
        thrust = slack * float(self._thrust(tension, drive_arc)) / self.spread
        return BeltLoad(slack, pull, arc, drive_arc, reserve * (most / share if slips else 1.0), thrust)

    def _share(self, arc: float) -> float:
        tension, clamp = self._driven_side(arc)
        return float((tension - 1) / clamp)

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
    stiffening_coils: float | None  # Coils over which twist stiffens the push; None where it does not.
    twist: Callable[[Any], Any]
    preload_twist: float
    helix: Points
    reverse_angle: float | None


@dataclass(frozen=True)
class Drivetrain:
    """A machine without its parts."""

    engine: Engine
    belt: Belt
    friction: Callable[[float], float]  # Of the belt in the groove, over pitch radius.
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
        twist = parts.preload_twist + self.cam_turn
        coils = parts.stiffening_coils
        stiffening = 1.0 if coils is None else (1 + twist / (2 * math.pi) / coils) ** 2
        self._axial = stiffening * float(parts.axial(train.driven_spring_length - self.position.opening))
        self._twist = float(parts.twist(twist))

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
    train: Drivetrain, parts: Parts, air: float, engagement: float | None, readings: list[tuple[Grip, float]],
) -> tuple[float, float]:
    """Factors on flyweight and belt thrust that bring a measured run out, the second by least squares."""
    flyweight = 1.0
    if engagement is not None:
        flyweight = (train.engagement(parts)[0] / engagement) ** 2
    balances = [(Balance(train, parts, grip, air, (flyweight, 1.0)), rpm) for grip, rpm in readings]
    asked = np.array([[balance.load(rpm, UPSHIFT).drive_thrust] for balance, rpm in balances])
    available = np.array([balance.available(rpm, UPSHIFT) for balance, rpm in balances])
    return flyweight, float(lsq_linear(asked, available).x[0])
