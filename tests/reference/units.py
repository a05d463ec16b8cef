"""Text with a unit, as `5.4 mm`, `2 1/4 in` or `178 lbf·in`, becomes a number in SI."""

import math
from fractions import Fraction

INCH = 0.0254
POUND = 0.45359237
POUND_FORCE = POUND * 9.80665

TO_SI: dict[str, float] = {
    "": 1.0,
    "rpm": 1.0,  # Engine speeds stay in rpm, as their names say.
    "m": 1.0, "mm": 1e-3, "in": INCH, "ft": 12 * INCH,
    "kg": 1.0, "g": 1e-3,
    "N": 1.0, "lbf": POUND_FORCE,
    "N·m": 1.0, "lbf·in": POUND_FORCE * INCH,
    "N/m": 1.0, "N/mm": 1e3, "lbf/in": POUND_FORCE / INCH,
    "N·m/rad": 1.0,
    "kg/m": 1.0,
    "rad": 1.0, "deg": math.pi / 180,
    "W": 1.0, "kW": 1e3,
    "m/s": 1.0, "km/h": 1 / 3.6, "mph": 1609.344 / 3600,
    "%": 0.01,
    "J": 1.0, "Pa": 1.0, "MPa": 1e6,
}


def to_si(value: float, unit: str) -> float:
    """A number in a unit, in SI; an unknown unit is an error, never a guess."""
    if unit == "K":
        return value
    if unit == "°C":
        return value + 273.15
    if unit == "°F":
        return (value + 459.67) / 1.8
    return value * TO_SI[unit]


def si(text: str | float) -> float:
    """A text with its unit, or a bare number, in SI."""
    if not isinstance(text, str):
        return float(text)
    words = text.split()
    numbers = [word for word in words if word[0].isdigit() or word[0] in "+-."]
    return to_si(float(sum(Fraction(number) for number in numbers)), " ".join(words[len(numbers):]))
