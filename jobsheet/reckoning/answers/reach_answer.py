"""What a machine takes in a metal, all in one: passes of usual cutters, the largest drill, tap
and face mill, and what stops each.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.model.machine import Machine
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.operations import written
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.answers.inverse import DEEPEST, Answer, deepest_pass, widest_pass, with_depth
from jobsheet.reckoning.answers.largest import Largest, largest_drill, largest_tap, widest_face_mill
from jobsheet.reckoning.answers.usual_work import setting_of

#: Cuts that are asked about: their words, kind, cutter and what else is typed; a
#: name of a size stands for the answer.
_CUTS = {
    "mm": (
        ("side cut 6 mm wide", "depth", written.SIDE, "end mill 12 mm, 4 teeth, 30 mm out", {"width": "6 mm", "depth": "1 mm"}),
        ("slot", "depth", written.SLOT, "slot drill 10 mm, 30 mm out", {"ends": "10 mm, 25 mm; 70 mm, 25 mm", "depth": "1 mm"}),
        ("facing 30 mm wide", "depth", written.FACE, "face mill 50 mm, 4 teeth, carbide", {"width": "30 mm", "depth": "0.5 mm"}),
        ("facing 0.5 mm deep", "width", written.FACE, "face mill 50 mm, 4 teeth, carbide", {"depth": "0.5 mm"}),
    ),
    "in": (
        ("side cut 1/4 in wide", "depth", written.SIDE, "end mill 1/2 in, 4 teeth, 1-1/4 in out", {"width": "1/4 in", "depth": "0.04 in"}),
        ("slot", "depth", written.SLOT, "slot drill 3/8 in, 1-1/4 in out", {"ends": "1/2 in, 1 in; 2-3/4 in, 1 in", "depth": "0.04 in"}),
        ("facing 1-1/4 in wide", "depth", written.FACE, "face mill 2 in, 4 teeth, carbide", {"width": "1-1/4 in", "depth": "0.02 in"}),
        ("facing 0.02 in deep", "width", written.FACE, "face mill 2 in, 4 teeth, carbide", {"depth": "0.02 in"}),
    ),
}  # fmt: skip


class Pass(Struct, frozen=True, kw_only=True):
    """The deepest or widest pass of one usual cutter."""

    words: str
    cutter: str
    feed: str
    answer: Answer
    step: Operation


class Reach(Struct, frozen=True, kw_only=True):
    """Everything that was asked of a machine in a metal; `held` says what held the work."""

    machine: Machine
    setting: Setting
    held: str
    passes: tuple[Pass, ...]
    tools: tuple[Largest, ...]


def _recommended(kind: str, texts: dict[str, str], setting: Setting) -> Operation:
    """The step at the speed and feed of its best cut, as wide as it was asked about;
    as deep as the cutter may be asked.
    """
    found = kind_of(kind)
    fields = fields_from(found.fields, found.entries, texts, setting.units)
    step = Operation(key=kind, number=10, kind=kind, fields=fields)
    cutter = fields.cutter
    deep = min(one for one in (DEEPEST * cutter.diameter, cutter.stick_out, cutter.flutes) if one is not None)
    # A width that is asked about is part of the question: all that is chosen beside it is speed and feed.
    asked = with_depth(fields, deep) if "width" in texts or not hasattr(fields, "width") else fields
    advised = best_cut(replace(step, fields=asked), setting)
    if advised is None:
        return step
    chosen = {name: getattr(advised.fields, name) for name in ("spindle", "feed_per_tooth")}
    return replace(step, fields=replace(fields, **chosen))


def reach(
    machine: Machine, material: str, *, units: str = "mm", fluid: str = "brushed", shop: Shop | None = None
) -> Reach:
    """What this machine takes in this metal; each answer with what stops it."""
    setting = setting_of(machine, material, units=units, fluid=fluid, shop=shop)
    passes = []
    for words, name, kind, cutter, texts in _CUTS[units]:
        step = _recommended(kind, {"cutter": cutter, "feed_per_tooth": "0.05 mm", **texts}, setting)
        asked = deepest_pass if name == "depth" else widest_pass
        feed = step.fields.feed_per_tooth.text
        passes.append(
            Pass(words=words, cutter=cutter, feed=f"{feed} a tooth", answer=asked(step, setting), step=step)
        )
    tools = (
        largest_drill(setting),
        largest_drill(setting, pilot=True),
        largest_tap(setting),
        widest_face_mill(setting),
    )
    held = machine.vices[0].name if machine.vices and setting.grip is not None else ""
    return Reach(machine=machine, setting=setting, held=held, passes=tuple(passes), tools=tools)
