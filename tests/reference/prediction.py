"""Answers a prediction request with the members that the service uses, in SI; rpm where named."""

import math

import numpy as np

from catalog import Catalog, Item, number, points
from mechanics import (BACKSHIFT, RPM, UPSHIFT, Air, Balance, Belt, Capstan, Drivetrain, Engine, Flyweights, Grip, Parts,
                       Position, anchor_factors, torque_factor)
from parts import PartSet, compression, flyweight_masses, helix_angles, torsion, twist_choices
from units import si

FLAT_RUN_POINTS = 9  # A run that held one rpm counts at so many ratios.


class Machine:
    """A machine of the catalog, and what the model makes of it."""

    def __init__(self, catalog: Catalog, machine_id: str) -> None:
        self.catalog, self.item = catalog, catalog[machine_id]
        self.drive, self.driven = (catalog[self.item[piece]] for piece in ("driveClutch", "drivenClutch"))
        engine, belt, gearing = (catalog[self.item[piece]] for piece in ("engine", "belt", "gearing"))
        half_angle = number(self.drive, "sheaveHalfAngleDeg")
        contact = number(self.drive, "contactTravel")
        self.spread = 2 * math.tan(half_angle)
        self.boosted_to = number(engine, "boostedTo") if "boostedTo" in engine else None
        self._capstans: dict[float, Capstan] = {}
        grip = points(belt["frictionByRadius"]) if "frictionByRadius" in belt else [(0.0, number(belt, "friction"))]
        self.train = Drivetrain(
            engine_of(engine),
            Belt(number(belt, "pitchLength"), number(self.item, "centreDistance"),
                 number(self.drive, "contactPitchRadius"), contact, half_angle),
            lambda radius: float(np.interp(radius, *np.transpose(grip))) / math.sin(half_angle),
            number(belt, "efficiency"), number(belt, "massPerLength"), number(self.drive, "fullShiftTravel"),
            number(self.driven, "springLength"), number(self.drive, "flyweightFrictionShare", 0.0),
            number(self.driven, "camRadius"), number(self.driven, "camTorqueShare", 0.5),
            number(self.driven, "camFrictionDeg", 0.0), self.drive.get("thrustLaw") == "locked",
            number(gearing, "tyreRadius"), number(gearing, "finalDrive"),
            self.drive.get("startDevice", "belt") == "belt")
        self.stiffens = self.driven.get("twistStiffening") == "yes"
        self.fitted = PartSet.read(self.item["fitted"])

    def parts(self, chosen: PartSet) -> Parts:
        """The parts of a set, a replaced number that states too little by the part that replaced it."""
        current = self.catalog.current
        shims = number(current(chosen.shim), "thickness") * chosen.shim_count if chosen.shim else 0.0
        driven_spring, helix = current(chosen.driven_spring), current(chosen.helix)
        only_compressed = self.driven.get("family") == "compressionOnly"
        masses = flyweight_masses(self.catalog, current(chosen.flyweight), chosen.station_masses, chosen.step)
        return Parts(
            compression(current(chosen.drive_spring)), number(self.drive, "springLength") - shims,
            Flyweights(int(self.drive["armCount"]), masses), compression(driven_spring),
            number(driven_spring, "activeCoils") if self.stiffens and "activeCoils" in driven_spring else None,
            (lambda twist: 0.0) if only_compressed else torsion(driven_spring),
            twist_choices(self.driven)[chosen.hole] + number(driven_spring, "legOffsetDeg", 0.0),
            helix_angles(helix), number(helix, "reverseDeg") if "reverseDeg" in helix else None)

    def grips(self, positions: list[Position]) -> list[Grip]:
        return [Grip(self._capstan(position.drive_radius), self._capstan(position.driven_radius), position, self.spread,
                     self.train.locked) for position in positions]

    def air(self, conditions: Item, law: str) -> float:
        """Torque in the air of a request or a run over that at sea level."""
        temperature = si(conditions["temperature"]) if "temperature" in conditions else None
        humidity = si(conditions.get("relativeHumidity", "0 %"))
        return torque_factor(Air(si(conditions.get("altitude", "0 m")), temperature, humidity), law, self.boosted_to)

    def _capstan(self, radius: float) -> Capstan:
        friction = self.train.friction(radius)
        if friction not in self._capstans:
            self._capstans[friction] = Capstan(friction)
        return self._capstans[friction]


def engine_of(item: Item) -> Engine:
    """By its table, or by the two peaks of a brochure."""
    limit = number(item, "revLimitRpm")
    if "torqueCurve" in item:
        return Engine.by_table(points(item["torqueCurve"]), limit)
    return Engine.by_peaks(number(item, "peakTorqueRpm"), number(item, "peakTorque"), number(item, "peakPowerRpm"),
                           number(item, "peakPower"), limit)


def predict(machine: Machine, request: Item) -> Item:
    """The answer to a request, without what is not a number of the model."""
    law = request.get("airLaw", "saeJ1349")
    parts = machine.parts(PartSet.read(request.get("parts", {}), machine.fitted))
    baseline = request.get("baseline", machine.item["baselines"][0]) if request.get("anchor", True) else None
    answer: Item = {}
    anchor = (1.0, 1.0)
    if baseline:
        anchor, answer["anchoring"] = anchored(machine, baseline, law, machine.fitted)
    air = machine.air(request, law)
    rpm, travel = machine.train.engagement(parts)
    rpm /= math.sqrt(anchor[0])
    peak_rpm, peak = machine.train.engine.peak_power
    balances = [Balance(machine.train, parts, grip, air, anchor)
                for grip in machine.grips(machine.train.positions(request.get("ratioPoints", 9)))]
    curve = [_point(balance, rpm, air * peak) for balance in balances]
    last = curve[-1]["upshift"]
    return answer | {
        "engagementRpm": rpm if machine.train.starts_by_belt else None,
        "engagementTravel": travel,
        "shiftOutRpm": last and last["rpm"],
        "peakPowerRpm": peak_rpm, "peakPower": air * peak, "torqueFactor": air, "curve": curve,
        "reverse": _reverse(machine.train, parts.reverse_angle, curve[0]),
    }


def _reverse(train: Drivetrain, angle: float | None, low_gear: Item) -> Item | None:
    """The cam force of the belt's torque in low gear on the driving flanks, and on those that bear under reverse power."""
    if angle is None:
        return None
    driving = low_gear["helixAngle"]
    up = low_gear["upshift"]
    cam = up and train.cam_share * train.belt_efficiency * low_gear["ratio"] * up["engineTorque"] / train.cam_radius
    return {
        "angle": angle, "clampRatio": math.tan(driving) / math.tan(angle),
        "drivingClamp": cam and cam / math.tan(driving), "clamp": cam and cam / math.tan(angle),
    }


def anchored(machine: Machine, baseline: Item, law: str, fitted: PartSet) -> tuple[tuple[float, float], Item]:
    """The factors of a measured run, and how far the measured set then is from each reading."""
    train = machine.train
    if "shiftRpm" in baseline:
        readings = [(position, baseline["shiftRpm"]) for position in train.positions(FLAT_RUN_POINTS)]
    else:
        readings = [(train.belt.at_ratio(reading["ratio"], train.full_shift), reading["rpm"])
                    for reading in baseline["shiftCurve"]]
    parts = machine.parts(PartSet.read(baseline.get("parts", {}), fitted))
    air = machine.air(baseline, law)
    grips = machine.grips([position for position, _ in readings])
    anchor = anchor_factors(
        train, parts, air, baseline.get("engagementRpm"), [(grip, rpm) for grip, (_, rpm) in zip(grips, readings)])
    engagement = train.engagement(parts)[0] / math.sqrt(anchor[0])
    residuals = []
    for grip, (position, measured) in zip(grips, readings):
        model = Balance(train, parts, grip, air, anchor).rpm(engagement, UPSHIFT)
        if model is not None:
            residuals.append({"ratio": position.ratio, "rpm": model - measured})
    return anchor, {"flyweightFactor": anchor[0], "thrustFactor": anchor[1], "residuals": residuals}


def _point(balance: Balance, engagement: float, peak: float) -> Item:
    position = balance.position
    return {
        "ratio": position.ratio, "travel": position.travel, "openingTravel": position.opening,
        "driveRadius": position.drive_radius, "drivenRadius": position.driven_radius,
        "driveWrap": position.drive_wrap, "drivenWrap": position.driven_wrap,
        "helixAngle": balance.helix_angle, "camTurn": balance.cam_turn,
        "upshift": _direction(balance, engagement, peak, UPSHIFT),
        "backshift": _direction(balance, engagement, peak, BACKSHIFT),
    }


def _direction(balance: Balance, engagement: float, peak: float, direction: int) -> Item | None:
    rpm = balance.rpm(engagement, direction)
    if rpm is None:
        return None
    train, position = balance.train, balance.position
    speed, torque = rpm * RPM, float(balance.torque(rpm))
    load = balance.load(rpm, direction)
    belt_speed = speed * position.drive_radius
    held = train.belt_mass * belt_speed ** 2
    return {
        "rpm": rpm, "engineTorque": torque, "power": torque * speed, "powerLost": peak - torque * speed,
        "drivenClamp": float(balance.clamp(rpm, direction)), "driveThrust": balance.thrust_factor * load.drive_thrust,
        "flyweightThrust": float(balance.flyweight_thrust(rpm)), "springForce": balance.spring_force,
        "tightTension": load.slack + load.pull + held, "slackTension": load.slack + held,
        "tightTensionNet": load.slack + load.pull, "slackTensionNet": load.slack,
        "activeArc": load.arc, "driveActiveArc": load.drive_arc, "slipMargin": load.margin, "slips": load.margin < 1,
        "beltSpeed": belt_speed, "vehicleSpeed": speed * train.tyre_radius / (position.ratio * train.final_drive),
    }
