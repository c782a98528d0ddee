"""What the panel of machines shows of the job on each machine: how many steps would
not fit, and which, the worst first.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.errors import JobsheetError
from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.choosing.machine_panel import Looked, Misfit
from jobsheet.gui.desk.desk import Desk
from jobsheet.operations import registry
from jobsheet.reckoning.answers.fits_answer import Fit, StepFit, fits
from jobsheet.storage.card_files import card_names, find_card

translate = QCoreApplication.translate
_FITS, _NOT, _UNKNOWN = ("verdict-expected", "pencil"), ("verdict-beyond", "vermmark"), ("", "")


def machines() -> tuple[Listed, ...]:
    """Every card; one that cannot be used is shown by its name, and says why when it is looked at."""
    found = []
    for name in card_names():
        try:
            card = find_card(name)
            found.append(Listed(key=name, title=card.title, under=card.kind))
        except JobsheetError:
            found.append(Listed(key=name, title=name, under=translate("Choosing", "its card cannot be read")))
    return tuple(found)


class MachineLook:
    """Looks at the job on machines; what is reckoned once is kept, since planning it takes the very same."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._job = desk.job
        self.fits: dict[str, Fit] = {}

    def __call__(self, name: str) -> Looked:
        """What comes of the job on that machine."""
        title = name
        try:
            title = find_card(name).title
            fit = self.fits[name] = fits(self._job, name)
        except JobsheetError as error:
            sentence = str(error).replace("\n", " ")
            words = translate("Choosing", "cannot be looked at")
            return Looked(title=title, row=words, sign=_UNKNOWN, head=title, more=sentence, why_not=sentence)
        own = name == self._job.machine
        same = own and not fit.card_changed
        return Looked(
            title=title,
            row=_row(fit, own=own),
            sign=_NOT if _misfits(fit) else _FITS,
            head=_head(fit, title),
            more=_more(fit, own=own),
            misfits=tuple(self._misfit(step) for step in _misfits(fit)),
            why_not=translate("Choosing", "The job is planned for this machine already.") if same else "",
        )

    def _misfit(self, step: StepFit) -> Misfit:
        _, operation = self._job.find(step.key)
        before = step.before
        worst = max(step.after.beyond, key=lambda limit: limit.share, default=None)
        why = f"{worst.title} {worst.shown}" if worst is not None else step.after.problem
        return Misfit(
            number=step.number,
            icon=f"op-{registry.kind(operation.kind).icon}",
            title=step.title,
            planned=before.spindle if before is not None else "",
            why=f"{why[:1].lower()}{why[1:]}".rstrip("."),
        )


def _misfits(fit: Fit) -> list[StepFit]:
    """The steps that cannot be cut there, what cannot even be reckoned first,
    then by how far they are beyond.
    """
    step_fits = [step for step in fit.steps if step.after.beyond or step.after.problem]
    return sorted(
        step_fits,
        key=lambda step: -max((limit.share for limit in step.after.beyond), default=float("inf")),
    )


def _row(fit: Fit, *, own: bool) -> str:
    lost, every = len(_misfits(fit)), len(fit.steps)
    if own and not lost:
        return translate("Choosing", "planned for it")
    if not lost:
        return translate("Choosing", "all {all} fit").format(all=every)
    words = (
        translate("Choosing", "planned, {lost} of {all} do not fit")
        if own
        else translate("Choosing", "{lost} of {all} no longer fit")
    )
    return words.format(lost=lost, all=every)


def _head(fit: Fit, title: str) -> str:
    lost, every = len(_misfits(fit)), len(fit.steps)
    if lost:
        words = translate("Choosing", "On {machine}: {lost} of {all} steps do not fit")
    elif every:
        words = translate("Choosing", "On {machine}: all {all} steps fit")
    else:
        words = translate("Choosing", "{machine}: no step is planned yet")
    return words.format(machine=title, lost=lost, all=every)


def _more(fit: Fit, *, own: bool) -> str:
    said = []
    if _misfits(fit):
        said.append(translate("Choosing", "the worst first"))
    if fit.card_changed and own:
        said.append(translate("Choosing", "its card was changed since it was planned"))
    elif not own and fit.dials_change and fit.steps:
        said.append(translate("Choosing", "every dial reading is redone"))
    retyped = sum(bool(step.retyped) for step in fit.steps)
    if retyped:
        said.append(translate("Choosing", "{count} speeds become the nearest it has").format(count=retyped))
    return "; ".join(said)
