"""Pages of the help for the lines of the finished part: every form of line as it is
typed, and what is understood by it.
"""

from __future__ import annotations

from jobsheet.finished.datums_line import datums_told, read_datums
from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.forms_of_line import FEATURES, SHAPES
from jobsheet.finished.lines_in_file import DATUMS
from jobsheet.finished.sizes_line import read_shape
from jobsheet.finished.told_back import shape_told, told
from jobsheet.review.pages.one_page import Page

_SORT = "field of: What the part shall be"
_LIST = (
    "Down or F4 lists the forms; what is taken stands in the line with its sizes chosen, to be typed over."
)
_MOVE = "Enter goes to the next line. Alt + Up and Alt + Down move a line; Backspace in an empty one strikes it. Several lines are pasted at once."
_LETTERS = "A: bottom, B: front, C: left"


def line_pages() -> list[Page]:
    """The letters of the datums, the sizes of the whole, the features."""
    return [_datums(), _sizes(), _features()]


def _datums() -> Page:
    lines = (
        ("What to write", f"Letter and face of each datum of the drawing, such as {_LETTERS}."),
        ("Understood", f"{datums_told(read_datums(_LETTERS))}."),
        ("Then", "A letter stands for its face in every other line: at 40 from C, 22 from A; B square to A 0.03."),
        ("Faces", "top, bottom (or base), front, rear (or back), left, right, as the stock lies in the drawing. A face has one letter."),
        ("Without", "Places count from left, front and bottom."),
        ("May stay empty", "yes"),
    )  # fmt: skip
    see = ("field:job:finished/sizes", "field:job:finished/feature")
    return Page(id=f"field:job:finished/{DATUMS.name}", sort=_SORT, title=DATUMS.title, lines=lines, see=see)


def _sizes() -> Page:
    lines = [
        ("What to write", f"Length x width x height of the finished part, then what is asked of its faces, with semicolons between. {_LIST}"),
    ]  # fmt: skip
    for form in SHAPES:
        text = form.marked("mm")[0]
        lines.append((form.title, f"{text}\n{shape_told(read_shape(text, 'mm'), 'mm')}"))
    lines += [
        ("Limits", "±0.1, +0.05/0, -0.2, or a fit such as h7; a size without any has the general limits of the drawing."),
        ("Faces", "By name or by datum letter. Square needs the face it is square to; parallel is to the opposite one."),
        ("May stay empty", "yes: then no step is compared with it"),
    ]  # fmt: skip
    see = ("field:job:finished/feature", "field:job:finished/datums")
    return Page(
        id="field:job:finished/sizes", sort=_SORT, title="Finished sizes", lines=tuple(lines), see=see
    )


def _features() -> Page:
    lines = [
        ("What to write", "One feature a line, as on a drawing: how many, what, its size with limits, how deep, where, from which face."),
        ("Keys", f"{_LIST} {_MOVE}"),
    ]  # fmt: skip
    for form in FEATURES:
        text = form.marked("mm")[0]
        lines.append((form.title, f"{text}\n{told(read_feature(text, 'mm'), 'mm')}"))
    lines += [
        ("Depth", "through, 16 deep, blind 16, or x 16. Of a hole it is that of the full diameter, without the point of the drill."),
        ("Limits", "±0.1, +0.05/0, or the fit of a hole, such as H7: capital letters. within 0.05 behind the places is how far these may be out."),
        ("Places", "x, a comma, a blank and y, with semicolons between; or a row, a grid, a circle in words."),
        ("Counted from", "The datums, else left, front and bottom; other faces stand beside the numbers, such as at 40 from C, 22 from A."),
        ("Face", "The top, where nothing else is said: from front face, into the left face."),
        ("Two readings", "What can be read in two ways is asked, with both written out; nothing is guessed."),
        ("May stay empty", "yes: what no line says is not looked for in the plan"),
    ]  # fmt: skip
    see = ("field:job:finished/sizes", "field:job:finished/datums")
    return Page(
        id="field:job:finished/feature",
        sort=_SORT,
        title="Feature, one line each",
        lines=tuple(lines),
        see=see,
    )
