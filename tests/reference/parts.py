"""Catalog items as the mechanics see them: functions of length, twist and travel."""

import itertools
import math
from dataclasses import dataclass, field
from typing import Any, Callable

import numpy as np

from catalog import Catalog, Item, Points, named_curves, number, points, quantities
from units import INCH, si

Curve = Callable[[Any], Any]
STATIONS = ("pin", "heel", "middle", "tip")

# Shear and elastic modulus in GPa by wire diameter, [SHI] Table 10-5; the thinnest wire first.
WIRE_LIMITS = (0.032 * INCH, 0.063 * INCH, 0.125 * INCH)
WIRE_SHEAR: dict[str, tuple[float, ...]] = {
    "music-wire-a228": (82.7, 81.7, 81.0, 80.0),
    "hard-drawn-a227": (80.7, 80.0, 79.3, 78.6),
    "oil-tempered-a229": (77.2,) * 4,
    "chrome-vanadium-a232": (77.2,) * 4,
    "chrome-silicon-a401": (77.2,) * 4,
    "stainless-302-a313": (69.0,) * 4,
}
WIRE_ELASTIC: dict[str, tuple[float, ...]] = {
    "music-wire-a228": (203.4, 200.0, 196.5, 193.0),
    "hard-drawn-a227": (198.6, 197.9, 197.2, 196.5),
    "oil-tempered-a229": (196.5,) * 4,
    "chrome-vanadium-a232": (203.4,) * 4,
    "chrome-silicon-a401": (203.4,) * 4,
    "stainless-302-a313": (193.0,) * 4,
}


@dataclass(frozen=True)
class PartSet:
    """One choice in each slot, by id."""

    drive_spring: str
    flyweight: str
    driven_spring: str
    hole: str
    helix: str
    station_masses: dict[str, float] = field(default_factory=dict)
    step: str | None = None
    shim: str | None = None
    shim_count: int = 0

    @staticmethod
    def read(stated: Item, base: "PartSet | None" = None) -> "PartSet":
        """A set as machines and requests state it; what it leaves out comes from the set that it changes."""
        old = base or PartSet("", "", "", "none", "")
        other_body = stated.get("flyweight", old.flyweight) != old.flyweight
        other_spring = stated.get("driveSpring", old.drive_spring) != old.drive_spring
        masses = {} if other_body else old.station_masses
        if "stationMasses" in stated:
            masses = {station: si(mass) for station, mass in stated["stationMasses"].items()}
        shims = {} if other_spring else {"shim": old.shim, "count": old.shim_count}
        shims = stated.get("shims", shims)
        return PartSet(
            stated.get("driveSpring", old.drive_spring), stated.get("flyweight", old.flyweight),
            stated.get("drivenSpring", old.driven_spring), stated.get("hole", old.hole),
            stated.get("helix", old.helix), masses,
            stated.get("adjusterStep", None if other_body else old.step),
            shims.get("shim"), shims.get("count", 0))

    def wire(self) -> Item:
        """The set as a request states it, whole."""
        stated: Item = {
            "driveSpring": self.drive_spring, "flyweight": self.flyweight, "drivenSpring": self.driven_spring,
            "hole": self.hole, "helix": self.helix,
            "stationMasses": {station: f"{1000 * mass:.6g} g" for station, mass in self.station_masses.items()},
            "shims": {"shim": self.shim, "count": self.shim_count} if self.shim else {"count": 0},
        }
        return stated | ({"adjusterStep": self.step} if self.step else {})


def compression(item: Item) -> Curve:
    """Axial force over length: measured, rated or from the geometry, in this order."""
    if "loadTable" in item:
        return _table(points(item["loadTable"]))
    if "firstLength" in item:
        return _line(number(item, "firstLength"), number(item, "firstLoad"),
                     number(item, "secondLength"), number(item, "secondLoad"))
    free = number(item, "freeLength")
    if "loadLength" in item:
        return _line(free, 0.0, number(item, "loadLength"), number(item, "load"))
    rate = number(item, "rate") if "rate" in item else _wire_stiffness(item, WIRE_SHEAR) / 8 / _mean(item) ** 2
    return lambda length: rate * (free - length)


def torsion(item: Item) -> Curve:
    """Torque over twist: measured, rated or from the geometry, in this order."""
    if "torqueTable" in item:
        return _table([(math.radians(twist), torque) for twist, torque in points(item["torqueTable"])])
    if "firstTwistDeg" in item:
        return _line(number(item, "firstTwistDeg"), number(item, "firstTorque"),
                     number(item, "secondTwistDeg"), number(item, "secondTorque"))
    rate = number(item, "twistRate") if "twistRate" in item else _wire_stiffness(item, WIRE_ELASTIC) / 64
    return lambda twist: rate * twist


def flyweight_masses(
    catalog: Catalog, body: Item, masses: dict[str, float], step: str | None,
) -> list[tuple[float, Points]]:
    """The masses of one arm, each with the points of its radius over travel."""
    profile = catalog[body["armProfile"]] if "armProfile" in body else {}
    own = named_curves(body["adjusterCurves"])[step] if step else points((profile | body)["radiusCurve"])
    placed = [(number(body, "bodyMass") + masses.get("pin", 0.0), own)]
    placed += [(mass, points((profile | body)[f"{station}Curve"])) for station, mass in masses.items()
               if station != "pin" and mass > 0]
    return placed


def flyweight_choices(catalog: Catalog, body: Item) -> list[tuple[dict[str, float], str | None]]:
    """Every choice of station masses and step that a flyweight has; none where its rpm cannot be known."""
    profile = catalog[body["armProfile"]] if "armProfile" in body else {}
    if not {"radiusCurve", "adjusterCurves"} & set(profile | body) or "bodyMass" not in body:
        return []
    fitting = {station: [mass for mass in quantities(body[f"{station}Masses"])
                         if mass <= number(body, f"{station}MassLimit", math.inf) + 1e-9]
               for station in STATIONS if f"{station}Masses" in body}
    steps: list[str | None] = list(named_curves(body["adjusterCurves"])) if "adjusterCurves" in body else [None]
    return [(dict(zip(fitting, masses)), step) for step in steps for masses in itertools.product(*fitting.values())]


def helix_angles(helix: Item) -> Points:
    """Helix angle over opening travel; one point is a straight helix."""
    if "anglePoints" in helix:
        return [(travel, math.radians(angle)) for travel, angle in points(helix["anglePoints"])]
    start = (0.0, number(helix, "helixDeg"))
    return [start, (number(helix, "finishTravel"), number(helix, "finishDeg"))] if "finishDeg" in helix else [start]


def twist_choices(driven_clutch: Item) -> dict[str, float]:
    """Twist in low gear by hole, pair of holes or setting."""
    holes = driven_clutch.get("holes")
    if isinstance(holes, dict):
        return {name: math.radians(twist) for name, twist in holes.items()}
    if holes:
        return {f"{hole['sheave']}-{hole['helix']}": math.radians(hole["twistDeg"]) for hole in holes}
    if "adjusterFromDeg" not in driven_clutch:
        return {"none": 0.0}
    first, last, step = (driven_clutch[f"adjuster{which}Deg"] for which in ("From", "To", "Step"))
    settings = [first + step * k for k in range(round((last - first) / step) + 1)]
    return {f"{setting:g}": math.radians(setting) for setting in settings}


def _wire_stiffness(item: Item, moduli: dict[str, tuple[float, ...]]) -> float:
    """Modulus · d⁴ / (D · coils): what the rates of a coil have in common, [SHI] ch. 10."""
    wire = number(item, "wireDiameter")
    thicker_than = sum(wire > limit + 1e-9 for limit in WIRE_LIMITS)
    return moduli[item["material"]][thicker_than] * 1e9 * wire ** 4 / (_mean(item) * number(item, "activeCoils"))


def _mean(item: Item) -> float:
    return number(item, "outsideDiameter") - number(item, "wireDiameter")


def _line(x0: float, y0: float, x1: float, y1: float) -> Curve:
    return lambda x: y0 + (x - x0) * (y1 - y0) / (x1 - x0)


def _table(table: Points) -> Curve:
    xs, ys = np.transpose(table)
    return lambda x: np.interp(x, xs, ys)
