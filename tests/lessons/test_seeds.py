"""Draws that are the same on every computer: the published hash, and every order as likely."""

from __future__ import annotations

from collections import Counter

from jobsheet.lessons.seeds import Draws


def test_every_order_of_three_is_as_likely():
    """6,000 shuffles: each of six orders a thousand times; the share of one is out by
    more than 120 once in 40,000 tries.
    """
    counted = Counter("".join(Draws("x", str(seed)).shuffled("abc")) for seed in range(6000))
    assert len(counted) == 6
    assert all(abs(count - 1000) < 120 for count in counted.values())


def test_the_stream_is_that_of_the_published_hash():
    """The first draw from below 2^64 is the first eight bytes of SHA-256 of the
    seed's SHA-256 and a counter of nought.
    """
    from hashlib import sha256

    seed = sha256(b"one\x1ftwo").digest()
    assert Draws("one", "two").below(1 << 64) == int.from_bytes(sha256(seed + bytes(8)).digest()[:8], "big")
