"""How everything looks just now: tokens, type and measures in one value, and the palette made from them.

The look is made from three choices (light or dark, the system's size of type, bench size) and replaced as
a whole when one of them changes. Sizes of type are in points, so that they grow with the system; every
other measure is a number of pixels at 100 % and goes through `px`.
"""

from __future__ import annotations

from PySide6.QtGui import QColor, QFont, QFontDatabase, QFontMetrics, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from jobsheet import paths
from jobsheet.gui.ink.tokens import DARK, LIGHT, Tokens

FAMILY = "DejaVu Sans"
#: Everything larger, for a touch screen or a tablet beside the mill.
BENCH_SIZE = 1.5
#: Below these widths [px at 100 %] the narrower layouts begin.
MEDIUM_BELOW = 1200
NARROW_BELOW = 900
#: The system's own size of type that counts as 100 % [pt]; larger ones make the window larger.
USUAL_POINTS = 12.0


class Look:
    """Tokens, fonts and measures that belong together."""

    def __init__(self, tokens: Tokens, factor: float = 1.0, dots_per_inch: float = 96.0) -> None:
        self.tokens = tokens
        self.factor = factor
        self.scale = factor * dots_per_inch / 96
        self.body = self._font(13)
        self.bold = self._font(13, bold=True)
        self.label = self._font(12)
        self.caption = self._font(11)
        self.caption_bold = self._font(11, bold=True)
        self.head = self._font(15, bold=True)
        self.title = self._font(20, bold=True)
        #: Read at arm's length, beside the machine.
        self.plain_head = self._font(15)
        self.middle = self._font(17)
        self.large = self._font(20)
        self.dial = self._font(27, bold=True)
        self.dial_unit = self._font(14, bold=True)
        self._colours: dict[str, QColor] = {}
        self._metrics: dict[int, QFontMetrics] = {}

    def _font(self, pixels: float, *, bold: bool = False) -> QFont:
        """A font of so many pixels at 100 %, set in points."""
        font = QFont(FAMILY)
        font.setPointSizeF(pixels * 0.75 * self.factor)
        if bold:
            font.setWeight(QFont.Weight.Bold)
        return font

    def px(self, pixels: float) -> int:
        """A measure of the drawing, grown with the type."""
        return round(pixels * self.scale)

    def colour(self, token: str) -> QColor:
        """The colour of a token, made once."""
        found = self._colours.get(token)
        if found is None:
            found = self._colours[token] = QColor(getattr(self.tokens, token))
        return found

    def metrics(self, font: QFont) -> QFontMetrics:
        """The measures of one of this look's own fonts, made once."""
        font_metrics = self._metrics.get(id(font))
        if font_metrics is None:
            font_metrics = self._metrics[id(font)] = QFontMetrics(font)
        return font_metrics

    def width(self, text: str, font: QFont) -> int:
        """How wide a text is [px]."""
        return self.metrics(font).horizontalAdvance(text)

    def form(self, width: int) -> str:
        """Which of the three layouts a window of that width takes: wide, medium or narrow."""
        at_100 = width / self.scale
        if at_100 < NARROW_BELOW:
            return "narrow"
        return "medium" if at_100 < MEDIUM_BELOW else "wide"


_now: list[Look] = []
_system: list[bool] = []


def look() -> Look:
    """The look of the moment."""
    return _now[0]


def load_fonts() -> None:
    """Add the shipped faces where the system has none; asking costs nothing, reading them does."""
    if not QFontDatabase.hasFamily(FAMILY):
        for name in ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"):
            QFontDatabase.addApplicationFont(str(paths.resources() / "fonts" / name))


def system_factor() -> float:
    """How much larger than usual the system's own type is; never smaller than 100 %."""
    points = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont).pointSizeF()
    return max(1.0, points / USUAL_POINTS)


def system_is_dark() -> bool:
    """Whether the system asks for dark windows: as its palette was before ours, or as it has told since."""
    if not _system:
        ground = QGuiApplication.palette().color(QPalette.ColorRole.Window)
        _system.append(ground.lightness() < 128)
    return _system[0]


def system_changed(*, dark: bool) -> None:
    """The system has gone dark or light while the program runs."""
    _system[:] = [dark]


def apply(scheme: str = "system", *, bench: bool = False, factor: float | None = None) -> Look:
    """Make the look of these choices and give it to the application."""
    by_system = system_is_dark()
    dark = scheme == "dark" or (scheme == "system" and by_system)
    screen = QGuiApplication.primaryScreen()
    new = Look(
        DARK if dark else LIGHT,
        (factor if factor is not None else system_factor()) * (BENCH_SIZE if bench else 1.0),
        screen.logicalDotsPerInch() if screen else 96.0,
    )
    _now[:] = [new]
    QApplication.setFont(new.body)
    QApplication.setPalette(palette(new))
    return new


def palette(now: Look) -> QPalette:
    """The tokens as the toolkit's own roles, for menus and dialogs."""
    made = QPalette()
    role = QPalette.ColorRole
    for name, token in (
        (role.Window, "bench"),
        (role.Base, "field"),
        (role.AlternateBase, "paper"),
        (role.Button, "field"),
        (role.Text, "ink"),
        (role.WindowText, "ink"),
        (role.ButtonText, "ink"),
        (role.PlaceholderText, "pencil"),
        (role.Highlight, "chosen"),
        (role.HighlightedText, "ink"),
        (role.Link, "blue"),
        (role.Accent, "bluemark"),
        (role.ToolTipBase, "field"),
        (role.ToolTipText, "ink"),
        (role.Mid, "edge"),
        (role.Dark, "edge"),
        (role.Light, "paper"),
        (role.Midlight, "rule"),
    ):
        made.setColor(name, now.colour(token))
    disabled = QPalette.ColorGroup.Disabled
    for name in (role.Text, role.WindowText, role.ButtonText):
        made.setColor(disabled, name, now.colour("pencil"))
    return made
