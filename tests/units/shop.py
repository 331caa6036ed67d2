"""A few units and measures, as content would declare them."""

from __future__ import annotations

from generator.model.measure import Measure, Shown, Unit
from generator.units import UnitBook

UNITS = {
    "1": Unit(symbol=""),
    "percent": Unit(symbol="%", pattern="#%"),
    "loaf": Unit(symbol="loaf", plural="loaves", base=True),
    "dollar": Unit(symbol="$", pattern="$#", base=True),
    "dollar/lb": Unit(symbol="$/lb", pattern="$#/lb"),
    "dollar/kg": Unit(symbol="$/kg", pattern="$#/kg"),
    **{text: Unit(symbol=text) for text in ("kg", "g", "oz", "s", "min", "h", "m", "K", "W", "J", "Pa")},
    **{
        text: Unit(symbol=text)
        for text in ("kW", "kJ", "Btu", "Btu/h", "psi", "kPa", "kg/s", "J/K", "W/K", "kJ/kg", "J/kg")
    },
    "lb": Unit(symbol="lb", also=("lbs", "pounds")),
    "day": Unit(symbol="day", plural="days"),
    "kg/loaf": Unit(symbol="kg"),
    "oz/loaf": Unit(symbol="oz"),
    "loaf/s": Unit(symbol="loaves a second"),
    "loaf/h": Unit(symbol="loaves an hour"),
    "s/loaf": Unit(symbol="s"),
    "degC": Unit(symbol="°C"),
    "degF": Unit(symbol="°F"),
    "delta_degC": Unit(symbol="°C"),
    "delta_degF": Unit(symbol="°F"),
    "m2": Unit(symbol="m²", definition="m**2"),
    "m3": Unit(symbol="m³", definition="m**3"),
    "gal": Unit(symbol="gal", definition="gallon"),
    "L": Unit(symbol="L", definition="liter"),
    "W/m2/K": Unit(symbol="W/(m²·K)", definition="W/m**2/K"),
    "W/m2/K4": Unit(symbol="W/(m²·K⁴)", definition="W/m**2/K**4"),
    "Btu/h/ft2/delta_degF": Unit(symbol="Btu/(h·ft²·°F)", definition="Btu/h/ft**2/delta_degF"),
    "mph": Unit(symbol="mph", definition="mile/hour"),
    "m/s": Unit(symbol="m/s"),
    "ppm": Unit(symbol="ppm", definition="1e-6"),
}


def _measure(
    title: str, unit: str, us: str = "", metric: str = "", digits: tuple[int, int] = (0, 0), **more: object
) -> Measure:
    shown = Shown(unit=us or unit, digits=digits[0]), Shown(unit=metric or unit, digits=digits[1])
    return Measure.model_validate({"title": title, "unit": unit, "us": shown[0], "metric": shown[1], **more})


MEASURES = {
    "count": _measure("A number of things", "1"),
    "ratio": _measure("A ratio", "1", digits=(2, 2)),
    "people": _measure("People, and parts of them", "1", digits=(2, 2), form="parts"),
    "share": _measure("A share", "1", "percent", "percent"),
    "loaves": _measure("Loaves", "loaf"),
    "mass": _measure("Weight", "kg", "lb", "kg", (1, 1)),
    "loaf_mass": _measure("Weight of one loaf", "kg/loaf", "oz/loaf", "kg/loaf", (1, 2)),
    "temperature": _measure("Temperature", "K", "degF", "degC", point=True),
    "warming": _measure("Difference of temperature", "K", "delta_degF", "delta_degC", (1, 1)),
    "clock": _measure("Time of day", "s", "min", "min", form="clock"),
    "duration": _measure("Time taken", "s", form="duration"),
    "rate": _measure("Loaves an hour", "loaf/s", "loaf/h", "loaf/h"),
    "power": _measure("Power", "W", "Btu/h", "kW", (0, 1)),
    "volume": _measure("Volume", "m3", "gal", "L"),
    "price": _measure("Price by weight", "dollar/kg", "dollar/lb", "dollar/kg", (2, 2)),
    "money": _measure("Money", "dollar", digits=(2, 2)),
    "pressure": _measure("Pressure", "Pa", "psi", "kPa", (1, 1)),
    "heat": _measure("Heat", "J", "Btu", "kJ"),
}
BOOK = UnitBook(UNITS)
