"""Ranks every set of a narrow question by the reference's own balance, score, price and order."""

import itertools
import math
from dataclasses import dataclass
from typing import Any, Iterator

import numpy as np

from catalog import Catalog, Item, number
from mechanics import UPSHIFT, Balance
from parts import PartSet, flyweight_choices, twist_choices
from prediction import Machine, anchored

# What is asked of stock, grouping and road speed is not computed here.
NOT_RANKED = {"inStockOnly", "group"}
DRIVEN_SIDE = ["drivenSpring", "hole", "helix"]
SLOTS = {"driveSpring": "drive_spring", "flyweight": "flyweight", "drivenSpring": "driven_spring", "helix": "helix"}


@dataclass(frozen=True)
class Ranked:
    chosen: PartSet
    miss: float
    changes: int
    price: int | None
    order: tuple[Any, ...]


def narrowed(catalog: Catalog, request: Item) -> Item | None:
    """The question with few sets and without shims; None where it is not ranked here."""
    if NOT_RANKED & request.keys() or "speedCurve" in request["targets"] or "shims" in request.get("fitted", {}):
        return None
    keep = request.get("keep", [])
    keep = keep if len(keep) > 1 else DRIVEN_SIDE
    if not {"driveSpring", "flyweight"} & set(keep):
        keep = DRIVEN_SIDE
    shims = [shim["id"] for shim in catalog.proposed("shims")]
    return request | {"keep": keep, "exclude": request.get("exclude", []) + shims, "count": 50, "refusals": 500}


class Question:
    """One pick request: its pools, what it wants, and what each set costs."""

    def __init__(self, machine: Machine, request: Item, refusals: list[Item]) -> None:
        self.machine, self.request, self.catalog = machine, request, machine.catalog
        self.fitted = PartSet.read(request.get("fitted", {}), machine.fitted)
        self.refused = {(refusal["slot"], refusal["part"]) for refusal in refusals}
        own = machine.item["baselines"][0]
        law = request.get("airLaw", "saeJ1349")
        base = self.fitted if "baseline" in request else machine.fitted
        self.anchor, _ = anchored(machine, request.get("baseline", own), law, base)
        self.air = machine.air(request, law)
        self.grips = machine.grips(machine.train.positions(request.get("ratioPoints", 9)))
        self.wanted = self._wanted()

    def sets(self) -> Iterator[PartSet]:
        """Every set that keeps what is kept and that no refusal names."""
        fitted = self.fitted
        bodies = self._pool("flyweight", "flyweights")
        flyweights = [(body, masses, step) for body in bodies
                      for masses, step in flyweight_choices(self.catalog, self.catalog[body])]
        holes = sorted(twist_choices(self.machine.driven))
        if "flyweight" in self.request["keep"]:
            flyweights = [(body, fitted.station_masses, fitted.step) for body in bodies]
        if "hole" in self.request["keep"]:
            holes = [fitted.hole]
        word = "setting" if "adjusterFromDeg" in self.machine.driven else "hole"
        for spring, (body, masses, step), driven, hole, helix in itertools.product(
                self._pool("driveSpring", "drive-springs"), flyweights,
                self._pool("drivenSpring", "driven-springs"), holes, self._pool("helix", "helices")):
            if ("drivenSpring", f"{driven}, {word} {hole}, {helix}") not in self.refused:
                yield PartSet(spring, body, driven, hole, helix, masses, step)

    def ranked(self) -> list[Ranked]:
        """Every set that shifts and keeps the limits of the request, best first."""
        found = (self._rank(place, chosen) for place, chosen in enumerate(self.sets()))
        return sorted((set_ for set_ in found if set_), key=lambda set_: set_.order)

    def _pool(self, slot: str, kind: str) -> list[str]:
        kept = getattr(self.fitted, SLOTS[slot])
        if slot in self.request["keep"]:
            return [self.catalog.current(kept)["id"]]
        ids = {part["id"] for part in self.catalog.proposed(kind)} | {self.catalog.current(kept)["id"]}
        return [i for i in sorted(ids - set(self.request["exclude"])) if (slot, i) not in self.refused]

    def _wanted(self) -> Any:
        targets, ratios = self.request["targets"], [grip.position.ratio for grip in self.grips]
        if "shiftCurve" in targets:
            points = sorted((point["ratio"], point["rpm"]) for point in targets["shiftCurve"])
            return np.interp(ratios, *np.transpose(points))
        flat = self.machine.train.engine.peak_power[0] if targets.get("peakPower") else targets["shiftRpm"]
        return np.full(len(ratios), flat)

    def _rank(self, place: int, chosen: PartSet) -> Ranked | None:
        request, train = self.request, self.machine.train
        parts = self.machine.parts(chosen)
        engagement = train.engagement(parts)[0] / math.sqrt(self.anchor[0])
        if "launchRpm" in request and engagement < request["launchRpm"] + request.get("launchMarginRpm", 100):
            return None
        rpm = []
        for grip in self.grips:
            balance = Balance(train, parts, grip, self.air, self.anchor)
            at = balance.rpm(engagement, UPSHIFT)
            if at is None or balance.load(at, UPSHIFT).margin < request.get("slipMargin", 0):
                return None
            rpm.append(at)
        price = self._price(chosen)
        if "priceCeilingMinor" in request and (price is None or price > request["priceCeilingMinor"]):
            return None
        miss, within = self._miss(engagement, np.array(rpm))
        changes, rounded = self._changes(chosen), math.floor(1000 * miss + 0.5)
        cost = math.inf if price is None else price
        least_work = request.get("rankBy") == "leastWork"
        order = (not within, changes, cost, rounded) if least_work else (rounded, changes, cost)
        return Ranked(chosen, miss, changes, price, (*order, place))

    def _miss(self, engagement: float, rpm: Any) -> tuple[float, bool]:
        tolerances, weights = self.request.get("tolerances", {}), self.request.get("weights", {})
        errors = (rpm - self.wanted) / tolerances.get("shiftRpm", 100)
        asked = self.request["targets"].get("engagementRpm")
        first = 0.0 if asked is None else (engagement - asked) / tolerances.get("engagementRpm", 100)
        weight = 0.0 if asked is None else weights.get("engagement", 0.3)
        miss = math.sqrt(weight * first ** 2 + (1 - weight) * float(np.mean(errors ** 2)))
        return miss, max(abs(first), float(np.max(np.abs(errors)))) <= 1

    def _changes(self, chosen: PartSet) -> int:
        def slots(of: PartSet) -> list[Any]:
            placed = {station: round(1e6 * mass) for station, mass in of.station_masses.items() if mass > 0}
            current = {name: self.catalog.current(getattr(of, attribute))["id"] for name, attribute in SLOTS.items()}
            return [current["driveSpring"], (current["flyweight"], placed, of.step), current["drivenSpring"],
                    of.hole, current["helix"]]
        return sum(new != old for new, old in zip(slots(chosen), slots(self.fitted)))

    def _price(self, chosen: PartSet) -> int | None:
        """The least known price of what is not fitted, over every choice of kits."""
        if "outlet" not in self.request:
            return None
        offers = {row["partId"]: int(row["priceMinor"]) if "priceMinor" in row else None
                  for row in self.catalog.offers[self.request["outlet"]]}
        needed = {}
        for attribute in SLOTS.values():
            part, has = getattr(chosen, attribute), self.catalog.current(getattr(self.fitted, attribute))["id"]
            if part != has:
                needed[part] = self._packs(self.catalog[part], attribute == "flyweight")
        kits = [(kit["id"], _contents(kit)) for kit in self.catalog.proposed("kits")
                if offers.get(kit["id"]) is not None]
        kits = [(kit, contents) for kit, contents in kits if contents.keys() & needed.keys()]
        prices = []
        for bought in itertools.chain.from_iterable(itertools.combinations(kits, k) for k in range(len(kits) + 1)):
            singly = {part: packs for part, packs in needed.items()
                      if not any(contents.get(part, 0) >= packs for _, contents in bought)}
            if all(offers.get(part) is not None for part in singly):
                prices.append(sum(offers[kit] for kit, _ in bought) + sum(offers[p] * n for p, n in singly.items()))
        return min(prices, default=None)

    def _packs(self, part: Item, is_flyweight: bool) -> int:
        arms = int(self.machine.drive["armCount"])
        in_pack = {"pair": 2, "each": 1}.get(part.get("soldAs", ""), arms if is_flyweight else 1)
        if is_flyweight and part.get("soldAs", "set") == "set":
            in_pack = int(number(part, "setCount", arms))
        return math.ceil((arms if is_flyweight else 1) / number(part, "packQuantity", in_pack))


def _contents(kit: Item) -> dict[str, int]:
    lines = [line.split(" x") for line in kit["contents"].split(";")]
    return {line[0].strip(): int(line[1]) if len(line) > 1 else 1 for line in lines}
