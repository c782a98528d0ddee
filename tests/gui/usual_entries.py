"""Forty usual entries of every kind of field, as people at a machine write them, and where each is typed.

`SPOTS` names a field of the drilled plate for each kind: owner, field, entries for a job in
millimetres, entries for one in inches. All of the entries can be read; the beginnings of many
cannot, or mean sizes that nobody meant.
"""

from __future__ import annotations

from itertools import product

from jobsheet.catalog.metals.materials import names


def _each(numbers: str, *behind: str) -> list[str]:
    """Every number with every ending, a blank between where the ending does not bring its own."""
    return [f"{number}{end}" for number, end in product(numbers.split(), behind)]


_MM_LENGTHS = [
    *_each("3 12.5 30 47,5 5.5 20 22 8.75 15", "", " mm", "mm"),
    "1/2 in", "3/4 in", "1-1/4 in", "0.75 in", "500 thou", "1 1/8 in", "7/16 in", "2.5 cm", '1.25"', "12.70 mm", "012", "1e1", "6.350",
]  # fmt: skip
_IN_LENGTHS = [
    *_each("0.5 .75 1/2 7/8 1-1/4 1.000", "", " in", "in", '"'),
    "1 1/8", "250 thou", "12 mm", "12.7mm", "20,5 mm", "½", "1-½ in", "¾ in", "5/16", "0.3125", "11/32 in", "0.0625 in", "150 thou",
    "100 thou", "1.5", "1.25 in",
]  # fmt: skip
_DEPTHS = ["through", "thru", "Through", "THROUGH", " through ", "Thru"]
_SMALL = [
    *_each("0.05 0.08 0.1 0.12 0.04", "", " mm", "mm"), *_each("2 3 4 5 1.5", " thou", "thou"),
    "0.002 in", "0.003in", "0,05", "0,06 mm", ".05", "0.050", "5e-2", "0.004 in", "0.0025 in", "50 µm", "80 µm", "0.15", "0.11 mm",
    "0.001 in", "0.09 mm",
]  # fmt: skip
_SMALL_IN = [
    *_each(".002 0.003 0.0015 .004 .0035", "", " in", "in"), *_each("2 3 4 1.5 2.5", " thou", "thou"),
    "0.05 mm", "0.08mm", "0,1 mm", "0.12 mm", ".0020", "50 µm", "0.06 mm", "0.07 mm", "0.09 mm", "0.11 mm", ".001", "0.0045", "0.15 mm",
    "0.0025 in", "1 thou",
]  # fmt: skip
_FEEDS = [
    *_each("60 80 100 120 150 47.5", "", " mm/min", "mm/min", " mm/min "),
    "4 in/min", "3.5 in/min", "6 ipm", "2 mm/s", "100,5", "90 mm/min", "110", "5 ipm", "75", "85 mm/min", "1e2", "200 mm/min", "130", "140",
    "160 mm/min", "3 in/min",
]  # fmt: skip
_FEEDS_IN = [
    *_each("4 3.5 6 2 5 2.25 3 7.5", "", " in/min", "in/min", " ipm"),
    "100 mm/min", "60 mm/min", "150mm/min", "2 mm/s", "4.0", "120 mm/min", "80 mm/min", ".5 in/min",
]  # fmt: skip
_CUTTERS = [
    f"{kind} {size}{more}"
    for kind, size, more in (
        *product(("end mill", "slot drill"), ("10 mm", "6", "1/2 in", "12.5 mm"), (", 4 teeth, HSS", ", 2 flutes, carbide")),
        *product(("drill",), ("5 mm", "#7", "H", "8.5", "1/4 in", "13/64 in"), ("", ", drawer 3 no. 1", ", 135°, cobalt")),
    )
] + [
    "spot drill 10 mm, 90°", "centre drill 3.15 mm", "reamer 16 H7, 6 teeth", "edge finder, 10 mm tip", "face mill 50 mm, 4 teeth, carbide, marked 12000 rpm",
    "countersink 20.5 mm, 90°, 3 flutes", "tap M6, spiral point",
]  # fmt: skip
_PLACES = [
    "40, 25; 20, 20", "14, 12; 66, 12; 66, 38; 14, 38", "10, 10", "0, 0", "12.5, 7.25", "12,5, 7,25", "40 | 25", "-5, 10", "10, -5; 20, -5",
    "1/2 in, 3/4 in", "10 mm, 20 mm", "10mm, 20mm; 30mm, 20mm", "5, 5;10, 10", "5, 5 ; 10, 10 ;", "40, 25;", "8, 8; 8, 16; 8, 24; 8, 32",
    "100, 50", "33.3, 16.65", "0.5 in, 12 mm", "7, 9; 9, 7", "15,  20", " 15, 20", "15, 20 ", "+5, +6", "20, 30; 30, 20; 20, 10",
    "6.35, 6.35", "25 thou, 50 thou", "1-1/4 in, 1/2 in", "70, 40; 60, 40", "14 , 12", "12, 12; 12, 38", "40, 12.0", "40.00, 25.00",
    "5,5, 6,5; 7,5, 8,5", "11, 13; 17, 19; 23, 29", "2, 3", "3 cm, 2 cm", "66|12", "66 | 12; 14 | 12", "9, 1",
]  # fmt: skip
_PATTERNS = [
    *(f"row of {count} from {x}, {y}, step {step}" for count, x, y, step in ((5, 10, 10, 15), (2, 0, 0, 7.5), (3, 8, 25, "12 mm"), (4, 5, 5, "10,5"), (6, 12, 12, 8), (3, "1/2 in", "1/2 in", "1/2 in"))),
    *(f"row of {count} from 10, 10, step 12 at {angle}" for count, angle in ((3, "30°"), (4, "90°"), (2, "45 deg"), (5, "15°"))),
    *(f"row of {count} from 10, 10 to {end}" for count, end in ((5, "70, 40"), (3, "40, 10"), (4, "10, 40"), (2, "66, 12"), (6, "72.5, 10"))),
    *(f"grid of {a} {sign} {b} from 10, 10, step {s} {sign} {t}" for a, b, s, t, sign in ((3, 2, 20, 15, "×"), (2, 2, 52, 26, "x"), (4, 3, 12.5, 10, "×"), (2, 5, 40, 6, "x"), (3, 3, "15 mm", "12 mm", "×"), (2, 3, 30, 12, "x"))),
    *(f"circle of {count} on {size} around {x}, {y}" for count, size, x, y in ((6, 40, 50, 30), (4, 30, 40, 25), (3, "25 mm", 40, 25), (8, 44, 40, 25), (5, 20, 30, 20), (12, 45, 40, 25), (2, 10, 15, 15))),
    *(f"circle of {count} on 40 around 50, 30, first at {angle}" for count, angle in ((6, "15°"), (4, "45°"), (3, "90°"), (8, "22.5°"))),
    *(f"circle on 40 around 50, 30 at {angles}" for angles in ("0°, 90°, 200°", "0°, 45°", "10°", "0°, 120°, 240°", "30°, 60°, 90°, 120°")),
    "row of 2 from 14, 12, step 52; row of 2 from 14, 38, step 52", "circle of 4 on 30 around 40, 25; 40, 25", "40, 25; row of 3 from 10, 10, step 10",
]  # fmt: skip
_THREADS = [
    "M6", "M8", "M10", "M5", "M4", "M3", "M12", "M16", "M2.5", "m6", "M6x1", "M8x1", "M10x1", "M10x1.25", "M12x1.5", "M8 x 1", "M6 ", " M6", "M6×0.75", "M16x1.5",
    "1/4-20 UNC", "5/16-18 UNC", "3/8-16 UNC", "1/2-13 UNC", "1/4-28 UNF", "5/16-24 UNF", "3/8-24 UNF", "1/2-20 UNF", "#10-24 UNC", "#10-32 UNF",
    "#8-32 UNC", "#6-32 UNC", "1/4-20 unc", "10-32 UNF", "M20", "M14", "M5x0.5", "M4x0.5", "M3x0.35", "M24",
]  # fmt: skip
_SIZES = [
    "40 ±0.03", "16 H7", "12 ±0.1", "11.5 ±0.1", "20 h6", "8 H8", "10 +0.02/-0", "25", "25 mm", "6 H7", "10 H7", "12 H7", "20 H7", "25 H7", "30 h7", "40 h6", "50 ±0.05",
    "12.5 ±0.02", "7 ±0,1", "80 ±0.2", "16 H7 ", "16H7", "8 ±0.015", "5 ±0.05 mm", "19.05 ±0.05", "12 h7", "14 H8", "18 H7", "22 ±0.1", "24", "35 ±0.1", "45", "0.5 in",
    "1/2 in ±0.002 in", "9 ±0.2", "15 H7", "28 h6", "32 H7", "3 H7", "4 ±0.1",
]  # fmt: skip
_SIZES_IN = [
    *(f"{size}{limits}" for size, limits in product(("0.5", "1/2 in", "0.75 in", "1.250", "0.4375"), ("", " ±0.001", " ±0.002 in", " +0.001/-0", " +0.002/-0.001"))),
    "16 mm H7", "12 mm ±0.1 mm", "0.5 H7", "0.75 H7", "1 H7", "0.625 ±0.001", "3/8 in ±0.002 in", "0.375", "11.5 mm", "1-1/4 in", "0.3125 ±0.0005", "2.000 ±0.005",
    "1.5 ±.005", "0.25 H7", "7/8 in",
]  # fmt: skip
_TOLERANCES = [
    "square 0.03; finish 1.6; gauge micrometer", *(f"{word} {size}" for word, size in product(("square", "parallel", "flat", "position"), ("0.02", "0.05 mm", "0,1", "0.001 in", "±0.2"))),
    *(f"finish {size}" for size in ("1.6", "3.2", "Ra 0.8", "Ra 6.3", "12.5")), *(f"gauge {words}" for words in ("micrometer", "plug gauge", "depth gauge and paper", "height gauge")),
    "flat 0.02; parallel 0.03", "square 0.05; gauge square and light", "finish 1.6; flat 0.05; gauge straight edge", "position 0.1; gauge pin", "Square 0.03",
    "square 0.03;", "; square 0.03", "flat 0.02 ; finish 3.2 ;", "parallel 0.02 mm; position 0.2 mm", "square 0.03; square 0.04",
]  # fmt: skip
_HOLES = [
    *_each("5 6.8 8.5 10.2 5,1", "", " mm", "mm"), *(f"#{number}" for number in (7, 21, 29, 36, 43, 1, 3, 10, 25, 40)), *"FHIQUBE", "1/4 in", "13/64 in", "17/64 in",
    "0.201 in", "5/16 in", "27/64 in", "0.25 in", "#8",
]  # fmt: skip
_HOLES_IN = [
    *_each(".201 0.257 0.25 1/4 5/16 27/64", "", " in", "in"), *(f"#{number}" for number in (7, 21, 29, 36, 43, 1, 3, 10)), *"FHIQUBE", "5 mm", "6.8 mm", "8.5mm", "10,2 mm", "0.1285",
    "#8", "13/64 in",
]  # fmt: skip
_METALS = ["s235", "S235 ", "1045 ", *names()[:: max(1, len(names()) // 37)][:37]]
_WORDS = [
    "measure before the next step", "wipe vice and parallels, 20 N·m", "half the tip is 5.00 = 2 turns", "look again at both", "tap down; parallels tight", "A", "-", "12", "0.5 mm deep, no more",
    "“as drawn”", "50 % slower", "see drawing HM-100, view B", "don't push", "x: +5", "(twice)", "# one", "yes", "no", "null", "~", "1e3", "[14, 12]", "{a}", "a: b", "- a", "'", '"', "\\", "%s {0}",
    "two blanks  here", " blank first", "blank last ", "é ü ß ñ", "Ø12 ±0.1", "10 × 15", "45°", "µm", "=1+1", "a/b", "& more",
]  # fmt: skip
_SPEEDS = [*_each("560 900 350 1200 180 2000 75 1500 450 700", "", " rpm", "rpm", " rev/min")]
_CUTTING_SPEEDS = [
    *_each("25 30 18 12.5 60 22,5 40 100", "", " m/min", "m/min"),
    *_each("80 100 60 150 90 250 300 70", " ft/min", " sfm"),
]
_TIMES = [*_each("5 12 20 2.5 1 45 30 7,5 90 10", " min", "min", ""), *_each("30 90 45 20 600", " s", "s")]
_COUNTS = [
    str(number)
    for number in (
        1,
        2,
        3,
        4,
        5,
        6,
        8,
        10,
        12,
        15,
        16,
        20,
        24,
        25,
        30,
        36,
        40,
        48,
        50,
        60,
        64,
        70,
        75,
        80,
        90,
        96,
        99,
        100,
        120,
        144,
        150,
        200,
        250,
        300,
        400,
        500,
        600,
        800,
    )
] + ["04", " 7", "9 "]
_TORQUES = [*_each("20 25 12.5 30 15 18 40 10 8 35", "", " N·m", " Nm", "Nm")]

#: Kind of field -> owner, field, entries in millimetres, entries in inches.
SPOTS: dict[str, tuple[str, str, list[str], list[str]]] = {
    "length": ("face-rough", "width", _MM_LENGTHS, _IN_LENGTHS),
    "depth": ("drill", "depth", _MM_LENGTHS[5:] + _DEPTHS, _IN_LENGTHS[6:] + _DEPTHS),
    "feed per tooth": ("face-rough", "feed_per_tooth", _SMALL, _SMALL_IN),
    "feed per turn": ("drill", "feed", _SMALL, _SMALL_IN),
    "feed": ("face-rough", "feed", _FEEDS, _FEEDS_IN),
    "cutter": ("find-zero", "cutter", _CUTTERS, _CUTTERS),
    "drill": ("drill", "cutter", [one for one in _CUTTERS if one.startswith("drill")], _CUTTERS[16:34]),
    "places": ("drill", "at", _PLACES, _PLACES),
    "pattern": ("spot", "at", _PATTERNS, _PATTERNS),
    "thread": ("tap", "thread", _THREADS, _THREADS),
    "size": ("face-finish", "measure", _SIZES, _SIZES_IN),
    "tolerances": ("drill", "tolerances", _TOLERANCES, _TOLERANCES),
    "hole": ("tap", "hole", _HOLES, _HOLES_IN),
    "material": ("job", "material", _METALS, _METALS),
    "text": ("drill", "note", _WORDS, _WORDS),
    "lines": ("clamp", "what", _WORDS, _WORDS),
    "spindle speed": ("drill", "spindle", _SPEEDS, _SPEEDS),
    "cutting speed": ("drill", "cutting_speed", _CUTTING_SPEEDS, _CUTTING_SPEEDS),
    "time": ("clamp", "minutes", _TIMES, _TIMES),
    "count": ("job:part", "quantity", _COUNTS, _COUNTS),
    "torque": ("holding:set-up-1", "tighten", _TORQUES, _TORQUES),
    "length of the stock": ("job:stock", "length", _MM_LENGTHS, _IN_LENGTHS),
    "above the jaws": ("holding:set-up-1", "above_jaws", _MM_LENGTHS, _IN_LENGTHS),
}


def every() -> list[tuple[str, str, str]]:
    """All of them: units, kind of field, entry."""
    return [
        (units, kind, text)
        for kind, (_, _, metric, inch) in SPOTS.items()
        for units, texts in (("mm", metric), ("in", inch))
        for text in dict.fromkeys(texts)
    ]
