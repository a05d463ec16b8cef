"""Questions to compare over: the sample requests, the fitted sets, and seeded random sets."""

import json
import random
from pathlib import Path
from typing import Iterator

from catalog import Catalog, Item, number
from parts import PartSet, flyweight_choices, twist_choices
from prediction import Machine

SWAP_SHARE = 0.6


def sample_requests(folder: Path, kind: str) -> dict[str, Item]:
    """The ready-made requests of the catalog folder, for a prediction or a pick."""
    files = sorted((folder / "requests").glob(f"*-{kind}.json"))
    return {file.stem: json.loads(file.read_text("utf-8")) for file in files}


def random_requests(catalog: Catalog, machine: Machine, seed: int) -> Iterator[Item]:
    """Sets of any parts of the catalog, in any air, anchored or not, without end."""
    draw = random.Random(f"{seed} {machine.item['id']}")
    while True:
        request: Item = {
            "machine": machine.item["id"],
            "parts": _random_set(catalog, machine, draw).wire(),
            "altitude": f"{draw.uniform(-400, 3500):.0f} m",
            "airLaw": draw.choice(["saeJ1349", "iso1585"]),
            "ratioPoints": draw.randint(3, 13),
            "anchor": draw.random() < 0.75,
        }
        if draw.random() < 0.5:
            request["temperature"] = f"{draw.uniform(-30, 40):.1f} °C"
        if draw.random() < 0.5:
            request["relativeHumidity"] = f"{draw.uniform(0, 100):.1f} %"
        baseline = draw.choice(machine.item["baselines"])
        if request["anchor"] and baseline is not machine.item["baselines"][0]:
            request["baseline"] = baseline
        yield request


def _random_set(catalog: Catalog, machine: Machine, draw: random.Random) -> PartSet:
    fitted = machine.fitted

    def any_of(kind: str, now: str) -> str:
        return draw.choice(catalog.proposed(kind))["id"] if draw.random() < SWAP_SHARE else now

    body = any_of("flyweights", fitted.flyweight)
    masses, step = draw.choice(flyweight_choices(catalog, catalog[body]) or [({}, None)])
    shim_limit = int(number(machine.drive, "shimLimit", 0))
    shims = draw.randint(0, shim_limit)
    return PartSet(
        any_of("drive-springs", fitted.drive_spring), body, any_of("driven-springs", fitted.driven_spring),
        draw.choice(list(twist_choices(machine.driven))), any_of("helices", fitted.helix), masses, step,
        draw.choice(catalog.proposed("shims"))["id"] if shims else None, shims)
