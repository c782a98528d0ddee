"""The check code of a plan: ten signs and a check sign that tell whether paper and file are the same plan.

The first 50 bits of the SHA-256 of the file's bytes, five at a time, and a check by the hybrid
scheme of ISO/IEC 7064 on 32 signs (the standard has 10, 26 and 36): it finds every single slip
and nearly every swap of neighbours.
"""

from __future__ import annotations

from hashlib import sha256

#: Digits and letters without those that are taken for others: I and L read as 1, O as 0, U is left out.
SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_READ = str.maketrans({"I": "1", "L": "1", "O": "0"})
_BITS, _COUNT = 50, 10


def check_code(data: bytes) -> str:
    """The code of a file's bytes, as it is printed: `D495-6QV9-7Y6`."""
    number = int.from_bytes(sha256(data).digest()[:8], "big") >> (64 - _BITS)
    values = [number >> shift & 31 for shift in range(_BITS - 5, -1, -5)]
    signs = "".join(SIGNS[value] for value in (*values, check_of(values, len(SIGNS))))
    return f"{signs[:4]}-{signs[4:8]}-{signs[8:]}"


def typed_code(text: str) -> str | None:
    """A code as it was typed, brought to the form that is printed; None where
    it is none or its check fails.
    """
    signs = "".join(text.upper().translate(_READ).replace("-", "").split())
    if len(signs) != _COUNT + 1 or any(sign not in SIGNS for sign in signs):
        return None
    values = [SIGNS.index(sign) for sign in signs]
    if check_of(values[:-1], len(SIGNS)) != values[-1]:
        return None
    return f"{signs[:4]}-{signs[4:8]}-{signs[8:]}"


def check_of(values: list[int], signs: int) -> int:
    """The check of some values by the hybrid scheme of ISO/IEC 7064, modulus so many signs and one more."""
    product = signs
    for value in values:
        product = 2 * ((product + value) % signs or signs) % (signs + 1)
    return (signs + 1 - product) % signs
