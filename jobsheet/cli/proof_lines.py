"""What a machine's proof log holds and what it taught, as lines of a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from jobsheet.cli.output import columns, say

if TYPE_CHECKING:
    from jobsheet.model.capacity import Capacity
    from jobsheet.model.machine import Machine
    from jobsheet.model.trials import Trial
    from jobsheet.storage.records.proof_log import Log


def percent(share: float) -> str:
    """A share in hundredths."""
    return f"{share * 100:.0f} %"


def asked_words(trial: Trial) -> str:
    """What a trial asked of each learned limit."""
    from jobsheet.operations.names import show

    words = []
    for asked in trial.asked:
        if asked.limit == "chatter":
            words.append(f"{percent(asked.share)} of what its class carries")
        else:
            words.append(f"{show('torque', asked.demand, trial.units)} ({percent(asked.share)} of the peak)")
    return ", ".join(words)


def odd(taught: Any, log: Log) -> tuple[Any, ...]:
    """The trials that do not fit the others."""
    from jobsheet.reckoning.odd_trials import odd_trials

    return odd_trials(taught, log)


def known(machine: str, log: Log) -> Any:
    """What the standing trials teach; None without any."""
    if not log.standing:
        return None
    from jobsheet.clock import today
    from jobsheet.reckoning.known_capacity import snapshot_of
    from jobsheet.storage.shop_file import workshop

    return snapshot_of(machine, log.teaching, today(), workshop())


def show_log(card: Machine, log: Log) -> None:
    """The trials, those that were struck out and the marks that the machine changed."""
    invented = ", invented" if log.shipped else ""
    say(
        f"{card.title}: {len(log.standing)} trials{invented}"
        if log.trials
        else f"{card.title}: no trials yet."
    )
    struck = log.struck
    rows: list[tuple[str, ...]] = []
    under: list[tuple[str, ...]] = []
    for trial in log.trials:
        sizes = trial.one_cut()
        size = ", ".join(sizes[name] for name in ("width", "depth", "hole") if name in sizes)
        rows.append(
            (
                trial.id,
                trial.date,
                trial.process,
                trial.cutter,
                size,
                trial.material,
                trial.outcome,
                asked_words(trial),
            )
        )
        beside = []
        if trial.id in struck:
            beside.append(f"struck out {struck[trial.id].date}: {struck[trial.id].note or 'no reason given'}")
        elif trial.note or trial.role:
            beside.append(": ".join(part.replace("\n", " / ") for part in (trial.role, trial.note) if part))
        under.append(tuple(beside))
    columns(rows, "  ", under)
    for mark in log.marks:
        if mark.changed and mark.id not in struck:
            say(f"{mark.id}, {mark.date}: the machine changed ({mark.changed}): {mark.note or 'no note'}")


def _trials(count: int) -> str:
    return "1 trial" if count == 1 else f"{count} trials"


def show_capacity(capacity: Capacity, log: Log) -> None:
    """A capacity in words; shares are of the card's peak or of what its class carries, under
    them sizes of the newest such cut.
    """
    from jobsheet.reckoning.ladder.usual_cut import in_sizes

    of = "the card's peak torque" if capacity.limit == "spindle-torque" else "what its class carries"
    name = "torque" if capacity.limit == "spindle-torque" else "chatter"
    what = (
        f"{capacity.process} with {capacity.cutter_kind}"
        if capacity.process and capacity.cutter_kind != capacity.process
        else capacity.process
    )
    what = what or "anything else"
    say(
        f"{name}, {what}: gives {percent(capacity.median)} of {of} (nine in ten: {percent(capacity.low)} to {percent(capacity.high)}); "
        f"plan to {percent(capacity.planned)}, {len(capacity.good)} good and {len(capacity.bad)} bad"
        f"{f', newest {capacity.newest}' if capacity.newest else ''}"
    )
    sizes = in_sizes(capacity, log.standing)
    if sizes is not None:
        say(f"  {sizes.words()}")


def show_odd(machine: str, found: tuple[Any, ...]) -> None:
    """The trials that do not fit the others, and what may be done."""
    for one in found:
        when = " ".join(word for word in (one.trial.date, one.trial.time) if word)
        say(f"{one.trial.id}, {when}, {one.trial.process}, does not fit the others. {one.sentence}")
        say(
            f"  If it is wrong: jobsheet prove strike {machine} {one.trial.id[:6]} --note …; if it was so: prove keep; "
            "if the machine changed then: prove changed."
        )


def show_needs(found: tuple[Any, ...]) -> None:
    """What a job needs proved, ladder by ladder."""
    if not found:
        say("Nothing of this job needs proving: every step was cut before or is expected.")
    for one in found:
        steps = ", ".join(str(number) for number in sorted(one.steps))
        many = "step" if len(one.steps) == 1 else "steps"
        rungs = one.ladder.rungs if one.ladder is not None else ()
        cuts = f": {'one cut' if len(rungs) == 1 else f'{len(rungs)} cuts'}" if rungs else ""
        if rungs and one.ladder.inside:
            cuts = f": {len(rungs)} growing layers of step {one.steps[0]}, in the part itself (its sheet: prove in-step)"
        say(f"{one.process} with {one.cutter_kind}, {many} {steps}{cuts}.")
        for rung in rungs:
            say(
                f"  {rung.number}  {rung.size}  {rung.spindle}, {rung.position}; ends badly in {percent(rung.chance)}"
            )
        words = one.why or (one.ladder.ends if one.ladder is not None else "")
        if words:
            say(f"  {words}")
