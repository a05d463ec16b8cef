"""How far an answer of the service lies from the reference, number by number."""

from dataclasses import dataclass
from typing import Any, Iterator

from catalog import Item
from units import to_si

# Places where a flat maximum is read: an error ε in its height moves the place by √ε.
FLAT_PLACES = {"engagementTravel", "peakPowerRpm"}

# A residual is the small difference of two engine speeds; it counts by the size of these, not by its own.
RESIDUAL_RPM = 1000.0


@dataclass(frozen=True)
class Deviation:
    place: str
    relative: float
    rpm: float = 0.0


def deviations(reference: Item, answer: Item) -> Iterator[Deviation]:
    """Each number of the reference against the answer; what the answer has beyond them is not looked at."""
    scales = {"powerLost": reference["peakPower"]}
    # Both start from exactly nothing in low gear, so they are measured by their greatest value.
    for name in ("openingTravel", "camTurn"):
        scales[name] = max(point[name] for point in reference["curve"])
    return _walk(reference, answer, "", scales)


def _walk(ours: Any, theirs: Any, place: str, scales: dict[str, float]) -> Iterator[Deviation]:
    name = place.rsplit("/", 1)[-1]
    if isinstance(theirs, dict) and set(theirs) == {"value", "unit"}:
        theirs = to_si(theirs["value"], theirs["unit"])
    if ours is None or theirs is None or isinstance(ours, bool):
        yield Deviation(place, 0.0 if ours is theirs else float("inf"))
    elif isinstance(ours, dict):
        for member, value in ours.items():
            if member not in theirs:
                yield Deviation(f"{place}/{member} is missing", float("inf"))
            else:
                yield from _walk(value, theirs[member], f"{place}/{member}", scales)
    elif isinstance(ours, list):
        if len(ours) != len(theirs):
            yield Deviation(f"{place} has {len(theirs)} entries, not {len(ours)}", float("inf"))
        for k, (our, their) in enumerate(zip(ours, theirs)):
            yield from _walk(our, their, f"{place}/{k}", scales)
    else:
        apart = abs(ours - theirs)
        is_rpm = name == "rpm" or name.endswith("Rpm")
        is_residual = is_rpm and "/residuals/" in place
        scale = RESIDUAL_RPM if is_residual else scales.get(name, max(abs(ours), abs(theirs)))
        yield Deviation(place, apart / scale if apart != 0 else 0.0, apart if is_rpm else 0.0)
