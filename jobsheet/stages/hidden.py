"""Exact hidden lines of a solid: which parts of its edges are seen from a direction, without sampling.

An edge is drawn where its two faces meet at more than 25°, or where it bounds what is seen. Each is cut
against the triangles that face the eye: inside the three sides of a triangle and behind its plane are four
linear conditions on the edge's parameter, so the hidden stretch follows at once.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

#: Faces that meet at less are one curved surface (facets of a circle lie 7.5° apart, 15° on small holes).
SHARP = math.cos(math.radians(25))
#: Relative to the size of the solid.
EPS = 1e-6
#: So many edges are compared with triangles at once.
CHUNK = 48


class Lines:
    """Stretches on the picture plane, an array of (x1, y1, x2, y2) each [mm]; y grows upward.

    `seen` and `hidden`, and for each stretch whether it bounds a surface that the step cut.
    """

    __slots__ = ("fresh_hidden", "fresh_seen", "hidden", "seen")

    def __init__(self, seen: Any, hidden: Any, fresh_seen: Any, fresh_hidden: Any) -> None:
        self.seen, self.hidden = seen, hidden
        self.fresh_seen, self.fresh_hidden = fresh_seen, fresh_hidden


def hidden_lines(points: Any, triangles: Any, fresh: Any, view: Any) -> Lines:
    """The edges of a mesh from a direction.

    Parameters
    ----------
    points : array (n, 3)
        Vertices [mm]
    triangles : array (m, 3)
        Corners of the triangles, counter-clockwise from outside
    fresh : array (m,)
        Which triangles the step cut
    view : array (3, 3)
        Rows: right on the picture, up on the picture, towards the eye
    """
    empty = np.zeros((0, 4))
    if not len(triangles):
        return Lines(empty, empty, np.zeros(0, bool), np.zeros(0, bool))
    seen_points = points @ np.asarray(view).T
    size = float(np.ptp(seen_points, axis=0).max()) or 1.0
    eps = EPS * size
    corners = seen_points[triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    lengths = np.linalg.norm(normals, axis=1)
    real = lengths > (eps * eps)
    unit = np.where(real[:, None], normals / np.where(lengths, lengths, 1)[:, None], 0.0)
    facing = unit[:, 2] > 1e-7
    pairs, faces = _edges(triangles, real)
    one, other = faces[:, 0], faces[:, 1]
    alone = other < 0
    other = np.where(alone, one, other)
    flat = np.einsum("ij,ij->i", unit[one], unit[other])
    kept = alone | (flat < SHARP) | (facing[one] != facing[other])
    pairs, one, other = pairs[kept], one[kept], other[kept]
    start, end = seen_points[pairs[:, 0]], seen_points[pairs[:, 1]]
    # An edge seen end-on is a point.
    long = np.hypot(*(end - start)[:, :2].T) > eps
    pairs, one, other, start, end = pairs[long], one[long], other[long], start[long], end[long]
    marked = fresh[one] | fresh[other]
    behind = ~(facing[one] | facing[other])
    covered = _covered(start, end, corners[facing & real], eps, behind)
    return _split(start, end, covered, marked, eps)


def _edges(triangles: Any, real: Any) -> tuple[Any, Any]:
    """Every edge once, with the triangles on both sides; −1 where there is only one."""
    index = np.flatnonzero(real)
    half = np.concatenate(
        [triangles[index][:, [0, 1]], triangles[index][:, [1, 2]], triangles[index][:, [2, 0]]]
    )
    owner = np.tile(index, 3)
    ordered = np.sort(half, axis=1)
    keys = ordered[:, 0] * (int(triangles.max()) + 1) + ordered[:, 1]
    order = np.argsort(keys, kind="stable")
    keys, ordered, owner = keys[order], ordered[order], owner[order]
    first = np.flatnonzero(np.r_[True, keys[1:] != keys[:-1]])
    counts = np.diff(np.r_[first, len(keys)])
    second = np.where(counts > 1, owner[np.minimum(first + 1, len(owner) - 1)], -1)
    return ordered[first], np.column_stack([owner[first], second])


def _covered(start: Any, end: Any, front: Any, eps: float, behind: Any) -> list[list[tuple[float, float]]]:
    """For each edge the stretches of its parameter that triangles cover."""
    covered: list[list[tuple[float, float]]] = [[] for _ in range(len(start))]
    for index in np.flatnonzero(behind):
        covered[index].append((0.0, 1.0))
    rest = np.flatnonzero(~behind)
    if not len(rest) or not len(front):
        return covered
    low, high = front[:, :, :2].min(axis=1), front[:, :, :2].max(axis=1)
    near = front[:, :, 2].max(axis=1)
    a, b, c = front[:, 0], front[:, 1], front[:, 2]
    normal = np.cross(b - a, c - a)
    # Plane as depth over the picture: z = gx x + gy y + g0.
    slope = -normal[:, :2] / normal[:, 2:3]
    offset = a[:, 2] - np.einsum("ij,ij->i", slope, a[:, :2])
    # Inside its three sides, and behind its plane: four conditions on a place, each A x + B y + C
    # (and the plane's less z) above nought. The rim of a nearer face covers too: what lies exactly
    # behind an outline is not drawn twice.
    rows = []
    for p, q in ((a, b), (b, c), (c, a)):
        way = q[:, :2] - p[:, :2]
        length = np.hypot(way[:, 0], way[:, 1])
        across, up = -way[:, 1] / length, way[:, 0] / length
        rows.append((across, up, eps - across * p[:, 0] - up * p[:, 1]))
    rows.append((slope[:, 0], slope[:, 1], offset - 4 * eps))
    by_x, by_y, alone = (np.ascontiguousarray([row[at] for row in rows]) for at in range(3))
    found: list[tuple[Any, Any, Any]] = []
    middle = (start + end)[rest, :2] / 2
    rest = rest[np.lexsort((middle[:, 1], np.round(middle[:, 0] / (np.ptp(middle[:, 0]) / 6 + 1e-12))))]
    for begin in range(0, len(rest), CHUNK):
        chunk = rest[begin : begin + CHUNK]
        p, q = start[chunk], end[chunk]
        box_low, box_high = np.minimum(p, q), np.maximum(p, q)
        whole_low, whole_high = box_low.min(axis=0), box_high.max(axis=0)
        some = np.flatnonzero(
            (low[:, 0] < whole_high[0])
            & (high[:, 0] > whole_low[0])
            & (low[:, 1] < whole_high[1])
            & (high[:, 1] > whole_low[1])
            & (near > whole_low[2])
        )
        if not len(some):
            continue
        meets = (
            (low[some][None, :, 0] < box_high[:, None, 0] - eps)
            & (high[some][None, :, 0] > box_low[:, None, 0] + eps)
        ) | (
            (box_high[:, 0] - box_low[:, 0] < 2 * eps)[:, None]
            & (low[some][None, :, 0] < box_high[:, None, 0])
            & (high[some][None, :, 0] > box_low[:, None, 0])
        )
        meets &= (low[some][None, :, 1] < box_high[:, None, 1] + eps) & (
            high[some][None, :, 1] > box_low[:, None, 1] - eps
        )
        meets &= near[some][None, :] > box_low[:, None, 2]
        edge, place = np.nonzero(meets)
        if not len(edge):
            continue
        tri = some[place]
        at, way = p[edge].T, (q - p)[edge].T
        x_of, y_of = by_x[:, tri], by_y[:, tri]
        value, rate = x_of * at[0] + y_of * at[1] + alone[:, tri], x_of * way[0] + y_of * way[1]
        value[3] -= at[2]
        rate[3] -= way[2]
        rising, falling = rate > 1e-15, rate < -1e-15
        root = -value / np.where(rising | falling, rate, 1.0)
        lows = np.where(rising, root, 0.0).max(axis=0)
        highs = np.where(falling, root, 1.0).min(axis=0)
        np.maximum(lows, 0.0, out=lows)
        np.minimum(highs, 1.0, out=highs)
        hides = (highs > lows) & ((value > 0) | rising | falling).all(axis=0)
        found.append((chunk[edge[hides]], lows[hides], highs[hides]))
    if found:
        for index, low_end, high_end in zip(
            *(one.tolist() for one in _merged(found, start, end, eps)), strict=True
        ):
            covered[index].append((low_end, high_end))
    return covered


def _tiny(start: Any, end: Any, eps: float) -> Any:
    """The share of each edge that is too short to be a line."""
    flat = (end - start)[:, :2]
    return 4 * eps / np.maximum(np.hypot(flat[:, 0], flat[:, 1]), eps)


def _merged(found: list[tuple[Any, Any, Any]], start: Any, end: Any, eps: float) -> tuple[Any, Any, Any]:
    """Edges with their stretches, those that overlap as one, in the order of both: an
    edge lies behind dozens of facets.
    """
    edges, lows, highs = (np.concatenate([one[at] for one in found]) for at in range(3))
    long = highs - lows > _tiny(start, end, eps)[edges]
    edges, lows, highs = edges[long], lows[long], highs[long]
    order = np.lexsort((lows, edges))
    edges, lows, highs = edges[order], lows[order], highs[order]
    # The parameter goes from 0 to 1: with twice the edge's number added, no stretch
    # reaches into those of another edge.
    far = np.maximum.accumulate(highs + 2.0 * edges)
    begins = np.ones(len(edges), bool)
    begins[1:] = lows[1:] + 2.0 * edges[1:] > far[:-1]
    first = np.flatnonzero(begins)
    return edges[first], lows[first], np.maximum.reduceat(highs, first) if len(first) else highs


def _split(start: Any, end: Any, covered: list[list[tuple[float, float]]], marked: Any, eps: float) -> Lines:
    """Seen and hidden stretches of every edge."""
    seen: list[tuple[float, ...]] = []
    hidden: list[tuple[float, ...]] = []
    fresh: tuple[list[bool], list[bool]] = ([], [])
    flat = (end - start)[:, :2]
    shares = _tiny(start, end, eps).tolist()
    # Lists of plain numbers: most edges have one piece, and taking single numbers out of
    # arrays cost more than all the rest.
    of_all = zip(start[:, :2].tolist(), flat.tolist(), shares, marked.tolist(), covered, strict=True)
    for p, way, tiny, mark, spans in of_all:
        at = 0.0
        pieces: list[tuple[float, float, bool]] = []
        for low, high in sorted(spans):
            if high - low <= tiny:
                continue
            if low > at + tiny:
                pieces.append((at, low, True))
            if high > at:
                pieces.append((max(at, low), high, False))
                at = high
        if at < 1 - tiny:
            pieces.append((at, 1.0, True))
        for low, high, open_ in pieces:
            if high - low <= tiny:
                continue
            stretch = (p[0] + low * way[0], p[1] + low * way[1], p[0] + high * way[0], p[1] + high * way[1])
            (seen if open_ else hidden).append(stretch)
            fresh[0 if open_ else 1].append(mark)
    return Lines(
        np.array(seen, float).reshape(-1, 4),
        np.array(hidden, float).reshape(-1, 4),
        np.array(fresh[0], bool),
        np.array(fresh[1], bool),
    )


def chained(stretches: Any, size: float) -> list[list[tuple[float, float]]]:
    """Stretches that meet end to end as polylines; where three meet a line ends."""
    step = max(size, 1e-9) * 1e-5
    ends: dict[tuple[int, int], list[int]] = {}
    keys = []
    all_ = stretches.tolist()
    for index, (x1, y1, x2, y2) in enumerate(all_):
        pair = ((round(x1 / step), round(y1 / step)), (round(x2 / step), round(y2 / step)))
        keys.append(pair)
        for key in pair:
            ends.setdefault(key, []).append(index)
    used = [False] * len(keys)
    lines: list[list[tuple[float, float]]] = []
    starts = sorted(range(len(keys)), key=lambda one: all(len(ends[key]) == 2 for key in keys[one]))
    for first in starts:
        if used[first]:
            continue
        used[first] = True
        x1, y1, x2, y2 = all_[first]
        line = [(x1, y1), (x2, y2)]
        for side in (1, 0):
            key = keys[first][side]
            while len(ends[key]) == 2:
                following = next((end for end in ends[key] if not used[end]), None)
                if following is None:
                    break
                used[following] = True
                a, b = keys[following]
                x1, y1, x2, y2 = all_[following]
                forward = a == key
                place = (x2, y2) if forward else (x1, y1)
                if side:
                    line.append(place)
                else:
                    line.insert(0, place)
                key = b if forward else a
        lines.append(line)
    return lines
