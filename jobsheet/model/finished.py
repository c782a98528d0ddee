"""What the part shall be, as far as a person cares to say: sizes with their limits, form
of faces, features in one line each.

The job keeps the lines as they were typed (`Finished`): a line that nobody can read yet is kept like any
other. What a line means (`Shape`, `Feature`) is read from it when it is asked for, and remembered by value.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.quantity import Place, Places, Quantity, Size, Thread

#: What a feature can be; the word is what a line of it is told back with.
KINDS = ("hole", "tapped hole", "slot", "keyway", "pocket", "window", "step", "chamfer", "T-slot", "dovetail")
#: What widens a hole at its mouth.
MOUTHS = ("counterbore", "spot face", "countersink")
#: The three sizes of a box in their order: left to right, front to rear, height.
SIZES = ("length", "width", "height")


class Finished(Struct, frozen=True, kw_only=True):
    """The lines as they are typed: one for the sizes of the whole, one for each feature."""

    sizes: str = ""
    features: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        """Whether anything is said."""
        return bool(self.sizes.strip()) or bool(self.features)


class FaceForm(Struct, frozen=True, kw_only=True):
    """What is asked of the form of one face: `square` or `parallel` to
    others, or `flat`, within so much [m].
    """

    face: str
    form: str
    to: tuple[str, ...]
    within: float


class Shape(Struct, frozen=True, kw_only=True):
    """The whole: its three sizes where they are said, the form of its faces, and
    faces that stay as they are bought.

    A size whose limits are its nominal has none of its own: general limits hold for it.
    """

    text: str
    length: Size | None = None
    width: Size | None = None
    height: Size | None = None
    forms: tuple[FaceForm, ...] = ()
    as_bought: tuple[str, ...] = ()
    #: Ra of faces [m].
    finishes: tuple[tuple[str, float], ...] = ()

    @property
    def sizes(self) -> tuple[Size | None, Size | None, Size | None]:
        """Length, width, height."""
        return self.length, self.width, self.height


class Mouth(Struct, frozen=True, kw_only=True):
    """How a hole is wider at its mouth: diameter, depth from the face (None: just
    cleaned up), or the cone's angle [rad].
    """

    what: str
    size: Size
    depth: Size | None = None
    angle: float | None = None

    @property
    def kind(self) -> str:
        """One of `MOUTHS`: what it is, for those that read no words."""
        return self.what


class OnCircle(Struct, frozen=True, kw_only=True):
    """Holes on a pitch circle: its diameter, where the first lies [rad, from X towards Y], its
    middle; None is the middle of the face.
    """

    diameter: Quantity
    first: float = 0.0
    middle: Place | None = None


class Feature(Struct, frozen=True, kw_only=True):
    """One feature as its line says it. Lengths are `Size`: without limits of their
    own, low and high are the nominal.

    `size` is the diameter of a hole, the width of a slot, keyway, T-slot, dovetail (at its bottom) or
    step, one side of a pocket, the leg of a chamfer; `other` the other side of a pocket or the recess of a
    T-slot; `opens` are the side faces at which a slot is open, or on which a step lies. `counted` are the
    faces from which the two numbers of a place are measured; where a line does not say them they are the
    datums on the axes of the face, else left, front and bottom. `across` is the distance of the middle
    line of a slot that runs to an edge.
    """

    text: str
    what: str
    face: str = "top"
    count: int = 1
    size: Size | None = None
    thread: Thread | None = None
    through: bool = False
    depth: Size | None = None
    #: Of a blind thread: how deep the hole below it is, where that is said.
    hole_depth: Size | None = None
    mouth: Mouth | None = None
    other: Size | None = None
    recess_depth: Size | None = None
    length: Size | None = None
    #: Whether a length counts to the round ends or between their centres; None
    #: where that makes no difference.
    over_all: bool | None = None
    radius: Size | None = None
    angle: float | None = None
    #: The shaft that a keyway is cut into.
    shaft: Size | None = None
    opens: tuple[str, ...] = ()
    #: Of a chamfer: `all`, or the faces round which its edges run.
    edges: tuple[str, ...] = ()
    places: Places | None = None
    circle: OnCircle | None = None
    across: Size | None = None
    counted: tuple[str, ...] = ()
    #: How far a place may be out either way [m], where that is said.
    within: float | None = None
    #: Ra [m].
    finish: float | None = None
    note: str = ""

    @property
    def kind(self) -> str:
        """One of `KINDS`: what it is, for those that read no words."""
        return self.what
