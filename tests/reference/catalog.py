"""Reads a catalog folder: CSV files of parts and JSON files of machines, each item by its id."""

import csv
import json
import re
from pathlib import Path
from typing import Any

from units import si

Item = dict[str, Any]
Points = list[tuple[float, float]]

PART_FILES = ("drive-springs", "flyweights", "driven-springs", "helices", "shims", "kits", "belts")
MACHINE_PARTS = {
    "driveSprings": "drive-springs", "flyweights": "flyweights", "drivenSprings": "driven-springs",
    "helices": "helices", "shims": "shims", "kits": "kits", "belts": "belts",
}


# A replaced number that states any of these can be computed by its own data.
ENOUGH = {"rate", "firstLoad", "loadTable", "activeCoils", "radiusCurve", "helixDeg", "anglePoints", "thickness"}


class Catalog:
    """The items of a folder; values stay text, and whoever uses one says what it is."""

    def __init__(self, folder: Path) -> None:
        self.items: dict[str, Item] = {}
        self.kinds: dict[str, list[str]] = {}
        for kind in PART_FILES:
            for row in _rows(folder / f"{kind}.csv"):
                self._add(kind, row)
        for file in sorted((folder / "machines").glob("*.json")):
            for kind, items in json.loads(file.read_text("utf-8")).items():
                for item in items:
                    self._add(MACHINE_PARTS.get(kind, kind), {k: _bare(v) for k, v in item.items()})
        self.offers = {file.stem: _rows(file) for file in sorted((folder / "outlets").glob("*.csv"))}

    def __getitem__(self, item_id: str) -> Item:
        return self.items[item_id]

    def current(self, item_id: str) -> Item:
        """The item where it states enough to compute with, or the first that does of those that replaced it."""
        item = self[item_id]
        bare = "supersededBy" in item and not item.keys() & ENOUGH
        return self.current(item["supersededBy"]) if bare else item

    def proposed(self, kind: str) -> list[Item]:
        """The parts of a kind that no other replaced, by id."""
        return [self[i] for i in sorted(self.kinds[kind]) if "supersededBy" not in self[i]]

    def _add(self, kind: str, item: Item) -> None:
        self.items[item["id"]] = item
        self.kinds.setdefault(kind, []).append(item["id"])


def number(item: Item, field: str, default: float | None = None) -> float:
    """A quantity of an item in SI; an angle named `…Deg` becomes radians."""
    if field not in item:
        if default is None:
            raise KeyError(f"{item['id']} does not state {field}, which the reference needs")
        return default
    text = item[field]
    return si(f"{text} deg") if field.endswith("Deg") else si(text)


def points(curve: str | list[list[Any]]) -> Points:
    """A curve, `x: y; x: y` in CSV and pairs in JSON, in SI."""
    pairs = [point.split(":") for point in curve.split(";")] if isinstance(curve, str) else curve
    return [(si(x), si(y)) for x, y in pairs]


def named_curves(curves: str | dict[str, Any]) -> dict[str, Points]:
    """Curves by name, `1 = x: y; x: y | 2 = …` in CSV."""
    if isinstance(curves, str):
        curves = dict(re.split(r"\s*=\s*", curve.strip(), maxsplit=1) for curve in curves.split("|"))
    return {name: points(curve) for name, curve in curves.items()}


def quantities(values: str | list[Any]) -> list[float]:
    """A list of quantities, `0 g; 4 g` in CSV, in SI."""
    return [si(value) for value in (values.split(";") if isinstance(values, str) else values)]


def _rows(file: Path) -> list[Item]:
    """The rows of a CSV file without their empty cells; a unit in a column's head goes to each of its cells."""
    with file.open(encoding="utf-8-sig", newline="") as text:
        rows = []
        for row in csv.DictReader(text):
            item: Item = {}
            for head, cell in row.items():
                if not cell:
                    continue
                name, _, unit = head.partition(" [")
                item[name] = f"{cell} {unit.rstrip(']')}" if unit else cell
            rows.append(item)
    return rows


def _bare(value: Any) -> Any:
    """A value of a machine file without the note of where it comes from."""
    return value["value"] if isinstance(value, dict) and set(value) == {"value", "origin"} else value
