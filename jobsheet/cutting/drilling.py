"""Torque and thrust of a twist drill in solid metal and of every tool that enlarges a hole.

The law is Shaw and Oxford's: lips, chisel edge and the chisel's indentation each have their part. The
factor tables of the handbook are this law in closed form, so the tables serve as tests. A second,
independent set of catalogue lines and the Kienzle lines stand at the end.
"""

from __future__ import annotations

from math import pi

from jobsheet.cutting import reference
from jobsheet.cutting.formula import angle_below, formula, not_negative, positive, refuse
from jobsheet.cutting.tables import along
from jobsheet.cutting.trig import sin

STANDARD_POINT = 0.18
"""Chisel edge over diameter of a standard drill. Source: mh31 table 7, ftd."""
SPLIT_POINT = 0.03
"""Chisel edge over diameter of a split or thinned point. Source: mh31, ftd."""

_WEB = (
    (2, 0.50),
    (3, 0.70),
    (4, 0.90),
    (5, 1.05),
    (6, 1.20),
    (8, 1.50),
    (10, 1.75),
    (12, 2.00),
    (16, 2.5),
    (20, 2.9),
    (25, 3.4),
)  # diameter mm, web at the point mm of a new jobber drill. Source: mh-m, averages


def _point(chisel_ratio: float) -> None:
    if not 0 <= chisel_ratio < 1:
        refuse("chisel_ratio", chisel_ratio, "between 0 and 1")


def _pilot(pilot: float, diameter: float) -> None:
    not_negative(pilot=pilot)
    if not pilot < diameter:
        refuse("pilot", pilot, "smaller than the diameter")


# --- factors ------------------------------------------------------------------------------------------------


@formula(source="so57", symbols={"chisel_ratio": "x"}, chisel_ratio=(0.03, 0.4))
def chisel_torque_factor(chisel_ratio: float) -> float:
    """Factor A: what the chisel edge adds to the torque.

    A = (1 - x^2) / (1 + x)^0.2 + 3.2 x^1.8

    Parameters
    ----------
    chisel_ratio : float
        Chisel edge over diameter [-]

    Returns
    -------
    A : float
        Factor on the torque [-]

    Raises
    ------
    CalcError
        If the ratio is not between 0 and 1.

    Notes
    -----
    Table 7 of mh31 prints 1.080 at 0.15, which is off this curve by 2.3 %: probably a misprint for 1.056.

    Examples
    --------
    >>> round(chisel_torque_factor(0.18), 3)
    1.082
    """
    _point(chisel_ratio)
    result: float = (1 - chisel_ratio**2) / (1 + chisel_ratio) ** 0.2 + 3.2 * chisel_ratio**1.8
    return result


@formula(source="so57", symbols={"chisel_ratio": "x"}, chisel_ratio=(0.03, 0.4))
def chisel_thrust_factor(chisel_ratio: float) -> float:
    """Factor B: what the chisel edge adds to the thrust by cutting.

    B = (1 - x) / (1 + x)^0.2 + 2.2 x^0.8

    Parameters
    ----------
    chisel_ratio : float
        Chisel edge over diameter [-]

    Returns
    -------
    B : float
        Factor on the thrust [-]

    Raises
    ------
    CalcError
        If the ratio is not between 0 and 1.

    Examples
    --------
    >>> round(chisel_thrust_factor(0.18), 3)
    1.351
    """
    _point(chisel_ratio)
    result: float = (1 - chisel_ratio) / (1 + chisel_ratio) ** 0.2 + 2.2 * chisel_ratio**0.8
    return result


@formula(source="so57", symbols={"chisel_ratio": "x"}, chisel_ratio=(0.03, 0.4))
def chisel_indentation_factor(chisel_ratio: float) -> float:
    """Factor J: what the middle of the chisel adds to the thrust by being pressed in.

    J = x^2

    Parameters
    ----------
    chisel_ratio : float
        Chisel edge over diameter [-]

    Returns
    -------
    J : float
        Factor on the thrust that does not depend on feed [-]

    Raises
    ------
    CalcError
        If the ratio is not between 0 and 1.

    Examples
    --------
    >>> round(chisel_indentation_factor(0.18), 4)
    0.0324
    """
    _point(chisel_ratio)
    return chisel_ratio**2


@formula(source="mh31", symbols={"feed": "f"}, feed=(0.01e-3, 1.25e-3))
def drill_feed_factor(feed: float) -> float:
    """Feed factor of the drilling laws.

    F_f = (f / 1 mm)^0.8

    Parameters
    ----------
    feed : float
        Feed in one turn [m/rev]

    Returns
    -------
    F_f : float
        Feed factor, 1 at 1 mm [-]

    Raises
    ------
    CalcError
        If the feed is not above zero.

    Examples
    --------
    >>> round(drill_feed_factor(0.25e-3), 3)
    0.33
    """
    positive(feed=feed)
    result: float = (feed / reference.FEED) ** 0.8
    return result


@formula(source="mh31", symbols={"diameter": "D"}, diameter=(1.6e-3, 25.5e-3))
def drill_thrust_diameter_factor(diameter: float) -> float:
    """Diameter factor of the thrust.

    F_T = (D / 1 mm)^0.8

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    F_T : float
        Diameter factor, 1 at 1 mm [-]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Notes
    -----
    Table 9 of mh31 prints 5.96 at 8.8 mm; the law gives 5.70, and so do its neighbours: a misprint.

    Examples
    --------
    >>> round(drill_thrust_diameter_factor(16e-3), 2)
    9.19
    """
    positive(diameter=diameter)
    result: float = (diameter / reference.DIAMETER) ** 0.8
    return result


@formula(source="mh31", symbols={"diameter": "D"}, diameter=(1.6e-3, 25.5e-3))
def drill_torque_diameter_factor(diameter: float) -> float:
    """Diameter factor of the torque.

    F_M = (D / 1 mm)^1.8

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    F_M : float
        Diameter factor, 1 at 1 mm [-]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Examples
    --------
    >>> round(drill_torque_diameter_factor(16e-3))
    147
    """
    positive(diameter=diameter)
    result: float = (diameter / reference.DIAMETER) ** 1.8
    return result


@formula(source="so57", symbols={"edges": "z"}, edges=(2, 6))
def edges_factor(edges: float) -> float:
    """Factor for more than two cutting edges at the same feed a turn.

    k_z = (z / 2)^0.2

    Parameters
    ----------
    edges : float
        Cutting edges [-]

    Returns
    -------
    k_z : float
        Factor on thrust and torque [-]

    Raises
    ------
    CalcError
        If the number is not above zero.

    Examples
    --------
    >>> round(edges_factor(4), 2)
    1.15
    """
    positive(edges=edges)
    result: float = (edges / 2) ** 0.2
    return result


# --- solid metal --------------------------------------------------------------------------------------------


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def drill_torque(
    kd: float,
    feed: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Torque of a twist drill in solid metal.

    M = t_3 K_d (f / 1 mm)^0.8 (D / 1 mm)^1.8 A W;
    t_3 = 0.000025 N*m;  A = (1 - x^2) / (1 + x)^0.2 + 3.2 x^1.8

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    chisel_ratio : float, optional
        Chisel edge over diameter: 0.18 standard, 0.03 split point [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    M : float
        Torque at the drill [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Examples
    --------
    >>> round(drill_torque(kd=20000, feed=0.08e-3, diameter=5e-3, wear=1.3), 2)
    1.69
    """
    positive(kd=kd, wear=wear)
    return (
        reference.DRILL_TORQUE
        * kd
        * drill_feed_factor(feed)
        * drill_torque_diameter_factor(diameter)
        * chisel_torque_factor(chisel_ratio)
        * wear
    )


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def drill_thrust(
    kd: float,
    feed: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Thrust of a twist drill in solid metal.

    T = t_1 K_d (f / 1 mm)^0.8 (D / 1 mm)^0.8 B W + t_2 K_d (D / 1 mm)^2 x^2 W;
    t_1 = 0.05 N;  t_2 = 0.007 N;  B = (1 - x) / (1 + x)^0.2 + 2.2 x^0.8

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    chisel_ratio : float, optional
        Chisel edge over diameter: 0.18 standard, 0.03 split point [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    T : float
        Force along the drill [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Notes
    -----
    Kienzle lines for thinned carbide points give half or less: they leave the chisel out and must not be used
    for a
    quill that is pushed by hand.

    Examples
    --------
    >>> round(drill_thrust(kd=20000, feed=0.08e-3, diameter=5e-3, wear=1.3))
    991
    """
    positive(kd=kd, wear=wear)
    cutting = (
        reference.DRILL_LIPS
        * drill_feed_factor(feed)
        * drill_thrust_diameter_factor(diameter)
        * chisel_thrust_factor(chisel_ratio)
    )
    return kd * wear * (cutting + chisel_indentation(kd=1.0, diameter=diameter, chisel_ratio=chisel_ratio))


@formula(
    source="so57",
    symbols={"kd": "K_d", "diameter": "D", "chisel_ratio": "x", "wear": "W"},
    diameter=(1.6e-3, 40e-3),
    chisel_ratio=(0.03, 0.4),
)
def chisel_indentation(
    kd: float,
    diameter: float,
    chisel_ratio: float = STANDARD_POINT,
    wear: float = 1.0,
) -> float:
    """Thrust below which a drill in solid metal does not bite.

    T_J = t_2 K_d (D / 1 mm)^2 x^2 W;  t_2 = 0.007 N

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    diameter : float
        Diameter of the drill [m]
    chisel_ratio : float, optional
        Chisel edge over diameter: 0.18 standard, 0.03 split point [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    T_J : float
        Part of the thrust that presses the chisel in, at any feed [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the ratio not between 0 and 1.

    Examples
    --------
    >>> round(chisel_indentation(kd=20000, diameter=10e-3, wear=1.3))
    590
    """
    positive(kd=kd, diameter=diameter, wear=wear)
    size = (diameter / reference.DIAMETER) ** 2
    return reference.DRILL_CHISEL * kd * size * chisel_indentation_factor(chisel_ratio) * wear


# --- a hole that is there -----------------------------------------------------------------------------------


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "pilot": "d_1", "edges": "z", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    edges=(2, 6),
)
def pilot_torque(
    kd: float,
    feed: float,
    diameter: float,
    pilot: float,
    *,
    edges: float = 2,
    wear: float = 1.0,
) -> float:
    """Torque of a drill, core drill, counterbore or reamer in a hole that is there.

    M = t_3 K_d (f / 1 mm)^0.8 (D / 1 mm)^1.8 (z/2)^0.2 (1 - y^2) / (1 + y)^0.2 W;
    t_3 = 0.000025 N*m;  y = d_1 / D

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the tool [m]
    pilot : float
        Diameter of the hole that is there, at least as wide as the chisel edge [m]
    edges : float, optional
        Cutting edges [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    M : float
        Torque at the tool [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the tool.

    Examples
    --------
    >>> round(pilot_torque(kd=20000, feed=0.14e-3, diameter=12e-3, pilot=4e-3, wear=1.3), 2)
    9.91
    """
    positive(kd=kd, diameter=diameter, wear=wear)
    _pilot(pilot, diameter)
    y = pilot / diameter
    lips = (1 - y**2) / (1 + y) ** 0.2
    size = drill_torque_diameter_factor(diameter)
    force = kd * wear * drill_feed_factor(feed) * edges_factor(edges) * lips
    result: float = reference.DRILL_TORQUE * size * force
    return result


@formula(
    source="so57",
    symbols={"kd": "K_d", "feed": "f", "diameter": "D", "pilot": "d_1", "edges": "z", "wear": "W"},
    feed=(0.01e-3, 1.25e-3),
    diameter=(1.6e-3, 40e-3),
    edges=(2, 6),
)
def pilot_thrust(
    kd: float,
    feed: float,
    diameter: float,
    pilot: float,
    *,
    edges: float = 2,
    wear: float = 1.0,
) -> float:
    """Thrust of a drill, core drill, counterbore or reamer in a hole that is there.

    T = t_1 K_d (f / 1 mm)^0.8 (D / 1 mm)^0.8 (z/2)^0.2 (1 - y) / (1 + y)^0.2 W;  t_1 = 0.05 N;  y = d_1 / D

    Parameters
    ----------
    kd : float
        Drilling constant of the work, the number as printed in inches [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the tool [m]
    pilot : float
        Diameter of the hole that is there, at least as wide as the chisel edge [m]
    edges : float, optional
        Cutting edges [-]
    wear : float, optional
        Factor for wear: 1 sharp, 1.3 usual, 1.5 dull [-]

    Returns
    -------
    T : float
        Force along the tool [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the tool.

    Examples
    --------
    >>> round(pilot_thrust(kd=20000, feed=0.14e-3, diameter=12e-3, pilot=4e-3, wear=1.3), -1)
    1240.0
    """
    positive(kd=kd, diameter=diameter, wear=wear)
    _pilot(pilot, diameter)
    y = pilot / diameter
    lips = (1 - y) / (1 + y) ** 0.2
    size = drill_thrust_diameter_factor(diameter)
    result: float = (
        reference.DRILL_LIPS * kd * drill_feed_factor(feed) * size * edges_factor(edges) * lips * wear
    )
    return result


# --- the drill itself ---------------------------------------------------------------------------------------


@formula(source="mh-m", symbols={"diameter": "D"}, diameter=(2e-3, 25e-3))
def web_thickness(diameter: float) -> float:
    """Web at the point of a new jobber drill, for choosing a pilot.

    w = w(D), a table: 0.50 mm at 2 mm, 1.75 mm at 10 mm, 3.4 mm at 25 mm

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    w : float
        Thickness of the web at the point [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.

    Examples
    --------
    >>> round(web_thickness(10e-3) * 1e3, 2)
    1.75
    """
    positive(diameter=diameter)
    return along(_WEB, diameter / reference.DIAMETER) * reference.DIAMETER


@formula(source="ftd", symbols={"web": "w"})
def chisel_edge(web: float) -> float:
    """Length of the chisel edge that a web makes.

    c = 1.15 w

    Parameters
    ----------
    web : float
        Thickness of the web at the point [m]

    Returns
    -------
    c : float
        Length of the chisel edge [m]

    Raises
    ------
    CalcError
        If the web is not above zero.

    Examples
    --------
    >>> round(chisel_edge(0.155), 2)
    0.18
    """
    positive(web=web)
    return 1.15 * web


# --- catalogue lines, an independent check ------------------------------------------------------------------


@formula(
    source="tun-d",
    symbols={"k": "K", "feed": "f", "diameter": "D"},
    feed=(0.05e-3, 0.6e-3),
    diameter=(3e-3, 40e-3),
)
def twist_drill_torque(k: float, feed: float, diameter: float) -> float:
    """Torque of a twist drill by a maker's lines, as a second method.

    M = K (D / 1 mm)^2 (0.630 + 16.84 f / 1 mm) q;  q = 0.01 N*m

    Parameters
    ----------
    k : float
        Material number of this set, 1 for grey iron of 177 HB [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    M : float
        Torque of a sharp drill [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    The range of feed and diameter is our estimate: the page prints none.

    Examples
    --------
    >>> round(twist_drill_torque(k=2.22, feed=0.14e-3, diameter=12e-3), 2)
    9.55
    """
    positive(k=k, feed=feed, diameter=diameter)
    size = (diameter / reference.DIAMETER) ** 2
    return k * size * (0.630 + 16.84 * feed / reference.FEED) * reference.TWIST_TORQUE


@formula(
    source="tun-d",
    symbols={"k": "K", "feed": "f", "diameter": "D"},
    feed=(0.05e-3, 0.6e-3),
    diameter=(3e-3, 40e-3),
)
def twist_drill_thrust(k: float, feed: float, diameter: float) -> float:
    """Thrust of a twist drill by a maker's lines, as a second method.

    T = 570 N K (D / 1 mm) (f / 1 mm)^0.85

    Parameters
    ----------
    k : float
        Material number of this set, 1 for grey iron of 177 HB [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    T : float
        Force along a sharp drill [N]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Examples
    --------
    >>> round(twist_drill_thrust(k=2.22, feed=0.3e-3, diameter=10e-3), -1)
    4550.0
    """
    positive(k=k, feed=feed, diameter=diameter)
    result: float = (
        reference.TWIST_THRUST * k * (diameter / reference.DIAMETER) * (feed / reference.FEED) ** 0.85
    )
    return result


@formula(
    source="tun-d",
    symbols={"k": "K", "feed": "f", "diameter": "D", "spindle_speed": "n"},
    feed=(0.05e-3, 0.6e-3),
    diameter=(3e-3, 40e-3),
)
def twist_drill_power(k: float, feed: float, diameter: float, spindle_speed: float) -> float:
    """Power of a twist drill by a maker's lines, as a second method.

    P = K (D / 1 mm)^2 n (0.647 + 17.29 f / 1 mm) e;  e = 0.06 W*s a turn

    Parameters
    ----------
    k : float
        Material number of this set, 1 for grey iron of 177 HB [-]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    spindle_speed : float
        Spindle speed [rev/s]

    Returns
    -------
    P : float
        Power at a sharp drill [W]

    Raises
    ------
    CalcError
        If an input is not above zero.

    Notes
    -----
    Within 2 % of the same maker's torque line times the angular speed.

    Examples
    --------
    >>> round(twist_drill_power(k=2.22, feed=0.3e-3, diameter=10e-3, spindle_speed=10))
    777
    """
    positive(k=k, feed=feed, diameter=diameter, spindle_speed=spindle_speed)
    size = (diameter / reference.DIAMETER) ** 2
    return k * size * spindle_speed * (0.647 + 17.29 * feed / reference.FEED) * reference.TWIST_ENERGY


# --- Kienzle lines, for drills of carbide -------------------------------------------------------------------


@formula(source="tsch", symbols={"feed": "f", "point_angle": "phi"})
def drill_chip_thickness(feed: float, point_angle: float) -> float:
    """Chip thickness of a drill with two lips.

    h = f / 2 sin(phi / 2)

    Parameters
    ----------
    feed : float
        Feed in one turn [m/rev]
    point_angle : float
        Included angle of the point [rad]

    Returns
    -------
    h : float
        Undeformed chip thickness [m]

    Raises
    ------
    CalcError
        If the feed is not above zero, or the angle not between 0 and 180 degrees.

    Examples
    --------
    >>> from math import radians
    >>> round(drill_chip_thickness(feed=0.2e-3, point_angle=radians(118)) * 1e3, 4)
    0.0857
    """
    positive(feed=feed)
    angle_below(pi * (1 + 1e-9), point_angle=point_angle)
    return feed / 2 * sin(point_angle / 2)


@formula(source="isc-d", symbols={"kc": "k_c", "feed": "f", "diameter": "D", "pilot": "d_1"})
def kienzle_drill_torque(kc: float, feed: float, diameter: float, pilot: float = 0.0) -> float:
    """Torque of a drill by the specific cutting force, lips only.

    M = k_c f (D^2 - d_1^2) / 8

    Parameters
    ----------
    kc : float
        Specific cutting force at the drill's chip thickness [Pa]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    pilot : float, optional
        Diameter of the hole that is there; 0 in solid metal [m]

    Returns
    -------
    M : float
        Torque at the drill [N*m]

    Raises
    ------
    CalcError
        If an input is not above zero, or the pilot not smaller than the drill.

    Notes
    -----
    Leaves out the chisel edge; 0.5 to 0.65 of `drill_torque` for standard high speed steel drills.

    Examples
    --------
    >>> round(kienzle_drill_torque(kc=2200e6, feed=0.15e-3, diameter=22e-3), 1)
    20.0
    """
    positive(kc=kc, feed=feed, diameter=diameter)
    _pilot(pilot, diameter)
    return kc * feed * (diameter**2 - pilot**2) / 8


@formula(
    source="isc-d",
    symbols={"kc": "k_c", "feed": "f", "diameter": "D", "point_angle": "phi", "factor": "b"},
)
def kienzle_drill_thrust(
    kc: float,
    feed: float,
    diameter: float,
    point_angle: float,
    factor: float = 0.63,
) -> float:
    """Thrust of a thinned carbide drill by the specific cutting force.

    T = b (D / 2) f k_c sin(phi / 2)

    Parameters
    ----------
    kc : float
        Specific cutting force at the drill's chip thickness [Pa]
    feed : float
        Feed in one turn [m/rev]
    diameter : float
        Diameter of the drill [m]
    point_angle : float
        Included angle of the point [rad]
    factor : float, optional
        Share of the feed force, 0.5 to 0.7 by different makers [-]

    Returns
    -------
    T : float
        Force along the drill [N]

    Raises
    ------
    CalcError
        If an input is not above zero, or the angle not between 0 and 180 degrees.

    Notes
    -----
    For carbide drills with thinned points only; a standard point asks two to three times as much.

    Examples
    --------
    >>> from math import pi
    >>> round(kienzle_drill_thrust(kc=2200e6, feed=0.15e-3, diameter=22e-3, point_angle=pi))
    2287
    """
    positive(kc=kc, feed=feed, diameter=diameter, factor=factor)
    angle_below(pi * (1 + 1e-9), point_angle=point_angle)
    return factor * diameter / 2 * feed * kc * sin(point_angle / 2)
