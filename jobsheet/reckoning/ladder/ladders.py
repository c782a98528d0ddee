"""Ladders of test cuts: planned, growing cuts that teach what a machine will
carry, and what each of them showed.

The first rung is as light as the chance of ending badly asks; each later one asks at most 1.25 times the
last clean one of any limit that is learned. A ladder ends at the first soft sign, and before a rung at which
another limit gives out: hand, holding, strength of the cutter are kept, never tried.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date as calendar

from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.clock import today
from jobsheet.errors import CalcError, CommandError
from jobsheet.holdings.all_holdings import words_of
from jobsheet.holdings.placed import own_vice
from jobsheet.limits.each.chatter import is_measured
from jobsheet.model.capacity import Snapshot
from jobsheet.model.held_work import Holding
from jobsheet.model.job import Operation
from jobsheet.model.machine import Machine
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.model.trials import MILLING, OUTCOMES, SLIPPED, Asked, Trial
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.written import PROVED, process_of
from jobsheet.reckoning.answers.stopwatch_answer import stopwatch
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.grip import grip_of
from jobsheet.reckoning.known_capacity import capacities_of, last_clean, snapshot_of
from jobsheet.reckoning.ladder import ladder_refused as refused_by
from jobsheet.reckoning.ladder.ladder_attempt import attempt, base_texts, listed_texts
from jobsheet.reckoning.ladder.ladder_climb import climbed, finished
from jobsheet.reckoning.ladder.ladder_expected import out_of_reach, with_expected
from jobsheet.reckoning.ladder.rung import Ladder, Rung
from jobsheet.reckoning.worked_anew import at_tachometer
from jobsheet.storage.card_files import find_card
from jobsheet.storage.shop_file import workshop

__all__ = ["Ladder", "Rung", "plan", "rung_at", "today", "trial_of"]

#: So many rungs fit one sheet, and one afternoon.
MOST_RUNGS = 6
#: The work of a test cut where nothing is said: a usual piece in the vice [m].
_WORK = (0.08, 0.05, 0.04)
START_WORDS = (
    "Scrap of the same metal, held as the part will be held; machine warm, slides snug, idle ones locked.",
    "Start with the lowest rung. The next one only after a clean cut, in this order, none left out.",
)
#: The stop rule and its signs, one by one, as the note `proving-stop-rule` has them.
STOP_WORDS = (
    "Stop at the first of these and do not repeat the step.",
    "Spindle slows or belt squeals",
    "ringing or ripple",
    "work, clamp or cutter has moved",
    "handle suddenly heavy or light",
    "smoke, or chips change colour",
    "you do not like it",
)


def plan(
    machine: Machine | str,
    *,
    cutter: str,
    material: str,
    kind: str,
    units: str = "mm",
    grow: str = "",
    texts: Mapping[str, str] | None = None,
    fluid: str = "brushed",
    holding: Holding | str = "",
    chance: float | None = None,
    growth: float = 1.25,
    snapshot: Snapshot | None = None,
    trials: Sequence[Trial] | None = None,
    date: str = "",
    shop: Shop | None = None,
    most: int = MOST_RUNGS,
    finer: bool = False,
    up_to: Mapping[str, float] | None = None,
) -> Ladder:
    """A ladder for this machine, cutter, metal and kind of cut; with a reason
    instead of rungs where none is made.

    Parameters
    ----------
    kind : str
        `face`, `side` or `side-mill`, `slot`, `drill`, `tap`
    grow : str, optional
        `depth` or `width` of a milling cut; without it its depth
    texts : mapping, optional
        Fields of the cut as typed that stay as they are: `width`, `feed_per_tooth`, `spindle` …
    holding : Holding or str, optional
        What holds the work; without it the machine's own vice
    chance : float, optional
        With which a rung may end badly; without it the workshop's own
    up_to : mapping, optional
        Shares of learned limits that are asked in earnest: there the ladder ends
    finer : bool, optional
        After a ladder has ended a second one in smaller steps, which narrows what is known
    snapshot, trials : optional
        What is known of the machine; without either its proof log is read

    Raises
    ------
    JobsheetError
        If there is no such machine, metal or kind, or what was typed cannot be read.
    """
    card = find_card(machine) if isinstance(machine, str) else machine
    process = process_of(kind)
    if process not in PROVED:
        raise CommandError(_no_kind(kind))
    day = date or today()
    held = _held(holding, card)
    tool = read_cutter(cutter, units)
    numbers = shop or workshop()
    early = refused_by.by_name(material)
    try:
        metal = find_material(material)
    except Exception:
        if not early:
            raise
        metal = find_material("S235")
    wide = tool.diameter or 0.0
    extent = (max(_WORK[0], wide), max(_WORK[1], wide), _WORK[2])
    setting = Setting(
        machine=card, material=metal, shop=numbers, units=units, fluid=fluid, extent=extent, thickness=extent[2],
        grip=grip_of(held, card, metal, numbers),
    )  # fmt: skip
    grows = ("width" if grow == "width" else "depth") if process in MILLING else "size"
    bare = Ladder(
        machine=card, process=process, kind=PROVED[process], cutter=tool, material=material, units=units,
        setting=setting, date=day, holding=words_of(held), grows=grows, texts=tuple((texts or {}).items()), start=START_WORDS,
        stop=STOP_WORDS, chance=numbers.proof_chance if chance is None else chance, growth=growth, finer=finer,
        up_to=tuple((up_to or {}).items()),
    )  # fmt: skip
    refused = (
        early or refused_by.by_material(metal) or refused_by.by_machine(card, process)
        or refused_by.by_cutter(tool) or refused_by.by_holding(setting)
    )  # fmt: skip
    if refused:
        return replace(bare, refused=refused)
    _fits(process, tool, grow)
    known = snapshot if snapshot is not None else snapshot_of(card.name, trials, day, numbers)
    ladder = replace(bare, capacities=capacities_of(known, process, tool.kind, measured=is_measured(card)))
    made = climbed(ladder, most)
    why = out_of_reach(made) if len(made.rungs) < most else ""
    return replace(made, rungs=(), refused=why) if why else with_expected(made)


def _no_kind(kind: str) -> str:
    if "hold" in kind.casefold() or kind.casefold() in ("vice", "clamp"):
        return "Holding is never learned by slipping: there is no ladder for it. Reckon it, with its factor."
    return f"“{kind}” is no kind of test cut; there are {', '.join(PROVED)}."


def _fits(process: str, cutter: Cutter, grow: str) -> None:
    """Whether such a cutter makes such cuts at all. Raises CommandError."""
    entry = kind_of(PROVED[process]).entry("cutter")
    kinds = entry.choices if entry is not None else ()
    if cutter.kind not in kinds:
        raise CommandError(f"A {cutter.kind} makes no {process} cuts; write a {' or '.join(kinds)}.")
    if grow and (
        process not in MILLING or grow not in ("depth", "width") or (process, grow) == ("slot", "width")
    ):
        choices = {"slot": "depth", "face": "depth or width", "side": "depth or width"}.get(
            process, "its size"
        )
        raise CommandError(f"What grows in {process} cuts is {choices}, not “{grow}”.")


def _held(holding: Holding | str, machine: Machine) -> Holding:
    if isinstance(holding, Holding):
        return holding
    return own_vice(machine, holding)


def rung_at(ladder: Ladder, texts: Mapping[str, str], size: str = "") -> Rung:
    """A rung of a person's own: the ladder's cut with these fields typed, also where the ladder has ended.

    Parameters
    ----------
    texts : mapping
        Fields as typed: `{"depth": "2 mm"}`
    size : str, optional
        What grew, as the sheet has it: a depth or width, or the name of a drill or thread

    Raises
    ------
    CommandError
        If no such cuts are proved at all, or it cannot be reckoned.
    """
    from jobsheet.proving.chance import chance_over

    if not ladder.capacities:
        raise CommandError(ladder.refused)
    if ladder.milled:
        base = base_texts(ladder)
        if size:
            base[ladder.grows] = size
    else:
        base = listed_texts(ladder, size)
    if "feed" in texts and "feed_per_tooth" not in texts:
        base.pop("feed_per_tooth", None)
    whole = {**base, **texts}
    made = attempt(ladder, whole, size or whole.get(ladder.grows, ""))
    if made.found.figures is None:
        raise CommandError(made.found.problem)
    capacities = {capacity.limit: capacity for capacity in ladder.capacities}
    clean = {name: last_clean(capacity) for name, capacity in capacities.items()}
    number = next((rung.number for rung in ladder.rungs if rung.fields == made.found.fields), 0)
    return finished(ladder, made, number, capacities, clean, chance_over)


def trial_of(
    ladder: Ladder,
    rung: Rung,
    *,
    outcome: str,
    seconds: float | None = None,
    length: float | None = None,
    tachometer: float | None = None,
    slipped: str = "",
    note: str = "",
    role: str = "",
    date: str = "",
    time: str = "",
) -> Trial:
    """What happened on a rung, ready for the log.

    Parameters
    ----------
    outcome : str
        One of `OUTCOMES`, or its digit from 1 up
    seconds : float, optional
        On the watch, over the length [s]; the feed, and with it the demand, is then the real one
    length : float, optional
        How far it went in that time [m]; without it the rung's own length
    tachometer : float, optional
        The spindle speed as it was measured under load [rev/s]; it replaces the marked one
    slipped : str, optional
        `vice`, `holder` or `shank`, where the outcome is `slipped`

    Raises
    ------
    CommandError
        If the outcome is none of the list, or what slipped is missing.
    CalcError
        If a number has no meaning: a time that no hand winds, a speed the machine has not.
    """
    happened = _outcome(outcome)
    if (happened == "slipped") != bool(slipped):
        raise CommandError(
            f"Say what slipped: {', '.join(SLIPPED)}."
            if happened == "slipped"
            else f"“{slipped}” slipped, but the outcome is {happened}: write slipped, or leave out what."
        )
    if slipped and slipped not in SLIPPED:
        raise CommandError(f"“{slipped}” is nothing that slips; it is one of {', '.join(SLIPPED)}.")
    day = date or today()
    try:
        calendar.fromisoformat(day)
    except ValueError:
        raise CommandError(f"“{day}” is no date; write it as 2026-11-25.") from None
    speed = rung.figures.value("spindle_speed")
    asked, far = rung.asked, length if length is not None else rung.length
    if tachometer is not None:
        _plausible(tachometer, speed)
    if seconds is not None or tachometer is not None:
        asked = _really(ladder, rung, seconds, far, tachometer)
    return Trial(
        machine=ladder.machine.name, date=day, time=time, role=role, process=ladder.process, kind=ladder.kind,
        cutter=rung.cutter.text, cutter_kind=rung.cutter.kind, stick_out=rung.cutter.stick_out, material=ladder.material,
        holding=ladder.holding, units=ladder.units, step=tuple((name, text) for name, text in rung.texts if name != "cutter"),
        speed=speed, tachometer=tachometer, length=far if seconds is not None else None, seconds=seconds,
        asked=asked, outcome=happened, slipped=slipped, note=note,
    )  # fmt: skip


def _outcome(text: str) -> str:
    word = text.strip().casefold()
    if word.isdigit() and 1 <= int(word) <= len(OUTCOMES):
        return OUTCOMES[int(word) - 1]
    if word not in OUTCOMES:
        listed = ", ".join(f"{digit} {one}" for digit, one in enumerate(OUTCOMES, 1))
        raise CommandError(f"“{text}” is no outcome; write one of {listed}.")
    return word


#: A spindle under load turns so much slower or faster than marked at most
#: (estimate); beyond it is a slip of the pen.
_TACHOMETER = (0.5, 1.2)


def _plausible(tachometer: float, speed: float | None) -> None:
    if speed is not None and not _TACHOMETER[0] <= tachometer / speed <= _TACHOMETER[1]:
        raise CalcError(
            "tachometer", f"{tachometer * 60:.0f} rpm", f"near the {speed * 60:.0f} rpm that were set"
        )


def _really(
    ladder: Ladder, rung: Rung, seconds: float | None, length: float | None, tachometer: float | None
) -> tuple[Asked, ...]:
    """What the cut asked with the feed of the watch and the speed of the tachometer."""
    tried = rung.figures
    speed = tried.value("spindle_speed")
    if seconds is not None and hasattr(rung.fields, "feed") and length is not None:
        step = Operation(key="rung", number=rung.number or 1, kind=ladder.kind, fields=rung.fields)
        tried = stopwatch(step, ladder.setting, seconds=seconds, length=length).found
    if tachometer is not None and speed is not None and hasattr(rung.fields, "feed"):
        tried = at_tachometer(ladder.kind, tried, ladder.setting, speed, tachometer)
    if tried.figures is None:
        raise CommandError(tried.problem)
    return asked_of(tried.figures, ladder.setting, tachometer) or rung.asked
