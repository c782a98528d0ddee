"""Numbers as people read them: rounded for the bench, with the unit behind."""

from __future__ import annotations

from jobsheet.units.table import BY_SPELLING, INCH

MINUS = "−"


def plain(number: float, decimals: int) -> str:
    """A number with that many decimals, a real minus sign and no negative zero."""
    text = f"{number:.{decimals}f}"
    if text[0] != "-":
        return text
    if float(text) == 0:
        text = text.lstrip("-")
    return text.replace("-", MINUS)


def trimmed(number: float, decimals: int) -> str:
    """The same without noughts at the end: 12 and not 12.000."""
    text = plain(number, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def significant(number: float, digits: int = 3) -> str:
    """A number to that many significant digits, never in powers of ten: 0.0339, 3.14, 146."""
    if number == 0:
        return "0"
    from math import floor, log10

    decimals = max(0, digits - 1 - floor(log10(abs(number))))
    return plain(number, min(decimals, 9))


def shown(value: float, measures: str, unit: str, decimals: int | None = None) -> str:
    """A value in SI, in the unit asked for.

    Parameters
    ----------
    value : float
        In the SI unit of what is measured
    measures : str
        A key of `KINDS`
    unit : str
        The symbol of the unit it is shown in
    decimals : int or None
        So many decimals; None for three significant digits
    """
    number = value / BY_SPELLING[measures, unit].size
    text = significant(number) if decimals is None else plain(number, decimals)
    return f"{text}{'' if unit == '°' else ' '}{unit}"


def both_lengths(value: float) -> str:
    """A length in millimetres and inches, for the line under a field: `5.105 mm = 0.2010 in`."""
    return f"{trimmed(value * 1e3, 3)} mm = {plain(value / INCH, 4)} in"
