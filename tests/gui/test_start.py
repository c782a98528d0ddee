"""The start: what waits for the first figures, what is compiled once, and that neither changes anything."""

from __future__ import annotations

import builtins
import inspect
import marshal
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import flags, ink, look, waking
from jobsheet.gui.start import compiled

# --- before the first figures ---

FIRST_PAINTING = """
import enum, os, sys
made = enum.EnumType._create_
names = []
def create(cls, name, *rest, **named):
    names.append(str(name))
    return made(cls, name, *rest, **named)
enum.EnumType._create_ = create
from PySide6.QtCore import QTimer
import jobsheet.gui.desk.opening, jobsheet.gui.start.start as start
class Window(start.Window):
    def paintEvent(self, event):
        super().paintEvent(event)
        QTimer.singleShot(0, done)
def done():
    def of_the_toolkit():
        print(*sorted({"CursorShape", "FocusPolicy", "GlobalColor", "Key"} & set(names)))
    of_the_toolkit()
    print("yaml" in sys.modules, "dataclasses" in sys.modules)
    print(*sorted(name for name in sys.modules if name.startswith("jobsheet.gui.") and name.split(".")[2] in {"places", "edits", "pages", "papers", "margin", "strip"}))
    from PySide6.QtCore import Qt
    of_the_toolkit()
    sys.stdout.flush()
    os._exit(0)
start.Window = Window
start.run(jobsheet.gui.desk.opening.open_at_start(None))
"""


def first_painting(home):
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(home)}
    done = subprocess.run(
        [sys.executable, "-c", FIRST_PAINTING], check=True, capture_output=True, text=True, env=environment
    )
    return done.stdout.splitlines()


def test_no_constant_of_the_toolkit_is_made_before_the_first_figures(home):
    before, _, _, behind = first_painting(home)
    assert before == ""
    assert behind == "CursorShape FocusPolicy GlobalColor Key"


def test_no_place_and_no_open_row_is_loaded_before_the_first_figures(home):
    assert first_painting(home)[2] == ""


def test_the_second_start_reads_no_yaml(home):
    assert first_painting(home)[1] == "True False"
    assert first_painting(home)[1] == "False False"


def test_the_flags_are_the_toolkits():
    align = Qt.AlignmentFlag
    assert align(flags.ALIGN_LEFT) == align.AlignLeft
    assert align(flags.ALIGN_RIGHT) == align.AlignRight
    assert align(flags.ALIGN_H_CENTRE) == align.AlignHCenter
    assert align(flags.ALIGN_TOP) == align.AlignTop
    assert align(flags.ALIGN_V_CENTRE) == align.AlignVCenter
    assert int(Qt.TextFlag.TextWordWrap) == flags.WORD_WRAP
    assert align.AlignCenter.value == ink.CENTRE


@pytest.fixture(params=[1.0, 1.25, 1.5])
def now(request, qapp):
    yield look.apply("light", factor=request.param)
    waking.sleep()


def painted(paint, *, awake):
    """A picture of what is painted."""
    (waking.wake if awake else waking.sleep)()
    picture = QImage(400, 80, QImage.Format.Format_ARGB32_Premultiplied)
    picture.fill(look.look().colour("paper"))
    with QPainter(picture) as painter:
        paint(painter)
    return picture


@pytest.mark.parametrize("align", [ink.LEFT, ink.RIGHT, ink.CENTRE])
@pytest.mark.parametrize("high", [16, 22, 23, 26, 31, 36, 44])
@pytest.mark.parametrize("text", ["Face 0.4 off", "Tap 4 × M6, ⌀6.4 through", "90 %, hand pace", "x", "g̱𝟙"])
def test_an_early_text_is_the_same_to_the_pixel(now, align, high, text):
    for font, tone in ((now.body, "ink"), (now.head, "pencil"), (now.caption, "verm"), (now.bold, "onblue")):

        def paint(painter, font=font, tone=tone):
            ink.write(painter, now, QRect(7, 5, 380, high), text, font, tone, align)

        assert painted(paint, awake=False) == painted(paint, awake=True)


def test_an_early_text_that_is_too_long_is_shortened(now):
    def paint(painter):
        ink.write(painter, now, QRect(7, 5, 90, 31), "Break all edges 0.3, clean the holes", now.body)

    assert painted(paint, awake=False) == painted(paint, awake=True)


def test_boxes_are_the_toolkits_to_the_pixel(now):
    colour, line = now.colour("chosen"), now.colour("edge")
    box = QRect(11, 9, 200, 40)
    shape = QRectF(box).adjusted(0.5, 0.5, -0.5, -0.5)

    def with_pen(painter):
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(colour)
        painter.setBrush(colour)
        painter.drawRoundedRect(shape, 3, 3)

    def rounded(painter):
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink.rounded(painter, shape, 3, colour)

    def framed(painter):
        painter.setPen(line)
        painter.drawRect(box.adjusted(0, 0, -1, -1))

    for awake in (False, True):
        assert painted(lambda p: ink.fill(p, box, colour), awake=awake) == painted(
            lambda p: p.fillRect(box, colour), awake=True
        )
        assert painted(lambda p: ink.frame(p, box, line), awake=awake) == painted(framed, awake=True)
        assert painted(rounded, awake=awake) == painted(with_pen, awake=True)


def test_what_waits_is_done_once_and_in_its_order():
    waking.sleep()
    told = []
    first, second = (lambda: told.append(1)), (lambda: told.append(2))
    for do in (first, second, first):
        waking.when_awake(do)
    assert told == []
    waking.wake()
    waking.wake()
    assert told == [1, 2]
    waking.when_awake(second)
    assert told == [1, 2, 2]
    waking.sleep()


def test_what_a_widget_wanted_that_is_gone_is_passed_over():
    waking.sleep()
    told = []

    def gone():
        raise RuntimeError("Internal C++ object already deleted.")

    waking.when_awake(gone)
    waking.when_awake(lambda: told.append(1))
    waking.wake()
    assert told == [1]
    waking.sleep()


def test_a_button_made_early_can_be_reached_once_awake(qapp, qtbot):
    waking.sleep()
    look.apply("light")
    parent = QWidget()
    qtbot.addWidget(parent)
    button = Button("Print", parent, Manner.FILLED)
    waking.wake()
    assert button.focusPolicy() == Qt.FocusPolicy.StrongFocus
    assert button.cursor().shape() == Qt.CursorShape.PointingHandCursor


def test_a_long_sheet_has_its_scroll_bar_once_awake(show):
    window = show(size=(1440, 420))
    bar = window.bench.column.bar
    assert bar is not None
    assert bar.isVisible()
    assert bar.geometry().topLeft() != QPoint(0, 0)
    assert bar.maximum() == window.bench.column.ruled.height() - window.bench.column.view.height()


# --- what is compiled once ---

SOURCE = b"from __future__ import annotations\nX: int = 1\ndef f(a: Y) -> Z:\n    return a + X\n"
PATTERNS = [
    (r"\s*(?P<sign>[+\-−]?)\s*(?P<n>\d+(?:[.,]\d*)?)", 0),
    (r"^(yes|no)$", re.IGNORECASE),
    ("(?x) a # comment\n b+", 0),
    (r"(?P<a>x)(?:y(z)?)|[À-ɏ½¼]|\bword\b(?=!)(?<!n)", re.MULTILINE | re.DOTALL),
    (rb"^[ \t]*#.*?coding[:=]([-\w.]+)", re.ASCII),
]


@pytest.fixture
def path(tmp_path, monkeypatch):
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    return str(tmp_path / "cache" / "start")


def start(path):
    """One start: a module of the toolkit, and patterns."""
    one = compiled.Compiled(path)
    re.purge()
    with one.used():
        code = compile(SOURCE, "shibokensupport/a.py", "exec")
        patterns = [re.compile(*given) for given in PATTERNS]
    one.keep()
    re.purge()
    return one, code, patterns


def test_the_second_start_compiles_nothing(path, monkeypatch):
    start(path)
    one = compiled.Compiled(path)
    re.purge()
    with monkeypatch.context() as none, one.used():
        none.setattr(re._parser, "parse", None)
        none.setattr(one, "_compile", None)
        code = compile(SOURCE, "shibokensupport/a.py", "exec")
        for given in PATTERNS:
            re.compile(*given)
    re.purge()
    assert not one.new
    names = {}
    exec(code, names)
    assert names["f"](2) == 3


def test_what_is_kept_is_what_python_makes(path):
    plain = compile(SOURCE, "shibokensupport/a.py", "exec", 0, True)
    for _ in range(2):
        _, code, patterns = start(path)
        assert code == plain
        for (text, given), found in zip(PATTERNS, patterns, strict=True):
            made = re.compile(text, given)
            assert (found.pattern, found.flags, found.groups) == (made.pattern, made.flags, made.groups)
            assert dict(found.groupindex) == dict(made.groupindex)
            assert found == made
        sign = patterns[0].match(" - 12,5 mm")
        assert sign.groupdict() == {"sign": "-", "n": "12,5"}
        assert patterns[1].match("YES")
        assert patterns[2].fullmatch("abbb")


def test_a_changed_source_is_compiled_anew(path):
    start(path)
    one = compiled.Compiled(path)
    with one.used():
        code = compile(SOURCE.replace(b"= 1", b"= 5"), "shibokensupport/a.py", "exec")
    names = {}
    exec(code, names)
    assert names["X"] == 5
    assert one.new


def test_the_future_of_the_caller_is_handed_down(path):
    one = compiled.Compiled(path)
    with one.used():  # this module has annotations from the future, so what it compiles has too
        code = compile(b"def f(a: Unknown): pass", "shibokensupport/b.py", "exec")
    names = {}
    exec(code, names)
    assert names["f"].__annotations__ == {"a": "Unknown"}


def test_other_modules_go_their_usual_way(path):
    one = compiled.Compiled(path)
    with one.used():
        assert eval(compile("1 + 1", "<a>", "eval")) == 2
        compile(b"x = 1", "other.py", "exec")
        compile(SOURCE, "shibokensupport/a.py", "exec", dont_inherit=True)
    assert not one.new


def test_everything_is_put_back(path):
    before = builtins.compile, re._compiler.compile, re._compiler._sre
    with pytest.raises(ZeroDivisionError), compiled.Compiled(path).used():
        raise ZeroDivisionError
    with pytest.raises(re.error), compiled.Compiled(path).used():
        re.compile("(")
    assert (builtins.compile, re._compiler.compile, re._compiler._sre) == before


@pytest.mark.parametrize(
    "damage",
    [
        lambda raw: b"",
        lambda raw: raw[:5],
        lambda raw: raw[:-1],
        lambda raw: raw[:100] + b"\x00" + raw[101:],
        lambda raw: os.urandom(500),
        lambda raw: sealed(marshal.dumps(None)),
        lambda raw: sealed(marshal.dumps(("another Python", {}, {}))),
        lambda raw: sealed(b"?"),
    ],
    ids=["empty", "short", "cut", "a byte", "noise", "shape", "another Python", "no marshal"],
)
def test_damage_is_as_good_as_nothing(path, damage):
    start(path)
    Path(path).write_bytes(damage(Path(path).read_bytes()))
    one, code, patterns = start(path)
    assert one.new is False
    assert code == compile(SOURCE, "shibokensupport/a.py", "exec", 0, True)
    assert patterns[1].match("no")
    assert start(path)[1] == code


def sealed(body):
    return compiled.source_hash(body) + body


def test_where_it_cannot_be_written_nothing_happens(tmp_path, path, monkeypatch):
    (tmp_path / "cache").write_text("in the way")
    assert start(path)[1] is not None
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    start(str(tmp_path / "start"))
    assert [one.name for one in tmp_path.iterdir()] == ["cache"]


def test_a_python_that_makes_patterns_another_way_makes_them_itself(path, monkeypatch):
    one = compiled.Compiled(path)
    one._make = None
    with one.used():
        assert re.compile("a+b").match("aab")
    assert not one.new


def test_it_lies_beside_our_own_compiled_modules():
    assert Path(compiled.place()).parent == Path(inspect.getfile(compiled)).parent / "__pycache__"
