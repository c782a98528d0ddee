"""The everyday units: one row a unit, with what it measures and how much of the SI unit it is.

Factors are exact by definition unless their row says otherwise (international inch 25.4 mm, 1959;
pound and standard gravity as in NIST SP 811). A revolution is counted, not measured in radians:
spindle speed is in rev/s. Units beyond this table are left to the units library, on request.
"""

from __future__ import annotations

from typing import NamedTuple

INCH = 0.0254
FOOT = 0.3048
MINUTE = 60.0
POUND = 0.45359237
GRAVITY = 9.80665
POUND_FORCE = POUND * GRAVITY


class Unit(NamedTuple):
    """One unit: its usual spelling, what it measures, its size in SI, other spellings."""

    symbol: str
    measures: str
    size: float
    spellings: tuple[str, ...] = ()


#: What a quantity is called to a person, and its SI symbol.
KINDS: dict[str, tuple[str, str]] = {
    "length": ("a length", "m"),
    "feed per tooth": ("a feed per tooth", "m"),
    "feed per turn": ("a feed per turn", "m/rev"),
    "feed": ("a table feed", "m/s"),
    "cutting speed": ("a cutting speed", "m/s"),
    "spindle speed": ("a spindle speed", "rev/s"),
    "angle": ("an angle", "rad"),
    "torque": ("a torque", "N*m"),
    "force": ("a force", "N"),
    "power": ("a power", "W"),
    "pressure": ("a stress", "Pa"),
    "time": ("a time", "s"),
    "mass": ("a mass", "kg"),
    "volume": ("a volume", "m^3"),
    "removal rate": ("a removal rate", "m^3/s"),
    "stiffness": ("a stiffness", "N/m"),
    "share": ("a share", "-"),
    "sound": ("a sound level", "dB"),
}

_LENGTHS = (
    ("mm", 1e-3, ("millimetre", "millimetres", "millimeter", "millimeters")),
    ("in", INCH, ('"', "″", "inch", "inches")),
    ("thou", INCH / 1000, ("mil", "mils")),
    ("µm", 1e-6, ("um", "μm", "micron", "microns", "micrometre", "micrometres")),
    ("cm", 1e-2, ("centimetre", "centimetres")),
    ("m", 1.0, ("metre", "metres", "meter", "meters")),
    ("ft", FOOT, ("foot", "feet", "'", "′")),
)


def _lengths(measures: str, suffixes: tuple[str, ...]) -> list[Unit]:
    """The length units again, with and without "a tooth" or "a turn" behind them."""
    rows = []
    for symbol, size, spellings in _LENGTHS[:4]:
        names = (symbol, *spellings)
        extra = tuple(f"{name}{suffix}" for suffix in suffixes for name in names)
        rows.append(Unit(symbol, measures, size, spellings + extra))
    return rows


UNITS: tuple[Unit, ...] = (
    *(Unit(symbol, "length", size, spellings) for symbol, size, spellings in _LENGTHS),
    *_lengths("feed per tooth", ("/tooth", " a tooth", " per tooth")),
    *_lengths("feed per turn", ("/rev", "/turn", " a turn", " per turn", " per rev", " a rev")),
    Unit("mm/min", "feed", 1e-3 / MINUTE, ("mm a minute", "mm per minute", "mm per min")),
    Unit("in/min", "feed", INCH / MINUTE, ("ipm", "inch/min", "in a minute", "in per minute")),
    Unit("mm/s", "feed", 1e-3),
    Unit("m/min", "cutting speed", 1 / MINUTE, ("m a minute", "m per minute", "m per min")),
    Unit(
        "ft/min",
        "cutting speed",
        FOOT / MINUTE,
        ("sfm", "fpm", "sfpm", "ft a minute", "feet a minute", "surface feet"),
    ),
    Unit("m/s", "cutting speed", 1.0),
    Unit(
        "rpm",
        "spindle speed",
        1 / MINUTE,
        ("rev/min", "1/min", "r/min", "turns/min", "turns a minute", "revs"),
    ),
    Unit("rev/s", "spindle speed", 1.0, ("turns/s", "turns a second", "1/s")),
    Unit("°", "angle", 0.017453292519943295, ("deg", "degree", "degrees")),
    Unit("rad", "angle", 1.0),
    Unit("N·m", "torque", 1.0, ("Nm", "N m", "N*m", "N.m", "newton metre", "newton metres")),
    Unit(
        "lbf·ft",
        "torque",
        POUND_FORCE * FOOT,
        ("ft·lbf", "ft lbf", "lbf ft", "ft-lbf", "ft lb", "ft-lb", "lb ft"),
    ),
    Unit("lbf·in", "torque", POUND_FORCE * INCH, ("in·lbf", "in lbf", "lbf in", "in-lbf", "in lb", "in-lb")),
    Unit("N", "force", 1.0, ("newton", "newtons")),
    Unit("kN", "force", 1e3),
    Unit("lbf", "force", POUND_FORCE, ("pound-force",)),
    Unit("kgf", "force", GRAVITY, ("kp",)),
    Unit("W", "power", 1.0, ("watt", "watts")),
    Unit("kW", "power", 1e3),
    Unit("hp", "power", 550 * FOOT * POUND_FORCE, ("HP",)),
    Unit("MPa", "pressure", 1e6, ("N/mm²", "N/mm2", "N/mm^2")),
    Unit("GPa", "pressure", 1e9),
    Unit("Pa", "pressure", 1.0),
    Unit("psi", "pressure", POUND_FORCE / INCH**2, ("lbf/in²", "lbf/in2")),
    Unit("min", "time", MINUTE, ("minute", "minutes")),
    Unit("s", "time", 1.0, ("sec", "second", "seconds")),
    Unit("h", "time", 3600.0, ("hour", "hours")),
    Unit("kg", "mass", 1.0),
    Unit("g", "mass", 1e-3),
    Unit("lb", "mass", POUND, ("lbs", "pound", "pounds")),
    Unit("cm³", "volume", 1e-6, ("cm3", "cc", "cm^3")),
    Unit("mm³", "volume", 1e-9, ("mm3", "mm^3")),
    Unit("in³", "volume", INCH**3, ("in3", "cu in", "in^3")),
    Unit("cm³/min", "removal rate", 1e-6 / MINUTE, ("cm3/min", "cc/min", "cm^3/min")),
    Unit("mm³/s", "removal rate", 1e-9, ("mm3/s",)),
    Unit("in³/min", "removal rate", INCH**3 / MINUTE, ("in3/min",)),
    Unit("N/µm", "stiffness", 1e6, ("N/um", "N/μm")),
    Unit("N/mm", "stiffness", 1e3),
    Unit("%", "share", 0.01, ("percent", "per cent")),
    Unit("dB(A)", "sound", 1.0, ("dBA", "dB")),
)

#: (measures, spelling) -> unit; a spelling is unique within what it measures.
BY_SPELLING: dict[tuple[str, str], Unit] = {
    (unit.measures, spelling): unit for unit in UNITS for spelling in (unit.symbol, *unit.spellings)
}

#: The unit a bare number takes, by the job's units.
BARE: dict[str, dict[str, str]] = {
    "mm": {
        "length": "mm", "feed per tooth": "mm", "feed per turn": "mm", "feed": "mm/min",
        "cutting speed": "m/min", "spindle speed": "rpm", "angle": "°", "torque": "N·m", "force": "N",
        "power": "W", "pressure": "MPa", "time": "min", "mass": "kg", "volume": "cm³",
        "removal rate": "cm³/min", "stiffness": "N/µm", "share": "", "sound": "dB(A)",
    },
    "in": {
        "length": "in", "feed per tooth": "in", "feed per turn": "in", "feed": "in/min",
        "cutting speed": "ft/min", "spindle speed": "rpm", "angle": "°", "torque": "N·m", "force": "N",
        "power": "W", "pressure": "MPa", "time": "min", "mass": "kg", "volume": "in³",
        "removal rate": "in³/min", "stiffness": "N/µm", "share": "", "sound": "dB(A)",
    },
}  # fmt: skip


def unit(measures: str, spelling: str) -> Unit | None:
    """The unit of that spelling among those that measure this, or None."""
    return BY_SPELLING.get((measures, spelling))


def bare_unit(measures: str, system: str) -> Unit | None:
    """The unit that a number without one takes in this job, or None for a pure share."""
    symbol = BARE[system][measures]
    return BY_SPELLING[measures, symbol] if symbol else None
