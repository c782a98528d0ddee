"""The workshop's own numbers; a person may change each."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.prints import PRINTS, Prints, prints


class Shop(Struct, frozen=True, kw_only=True):
    """The workshop's own numbers; a person may change each.

    Sources: pace, pushes and wrench forces are cutting-data sections 1.13, 1.15 and 1.6
    (common practice, published levels for levers); wear is 1.3 and 1.4. Holding is 1.14, the crank 1.15,
    a chuck's grip on a tap 1.6 (estimate). Length of a holder, run-in and times are common practice.
    `proof_ageing` is what a year adds to the spread of a learned capacity (of its logarithm:
    about a tenth; common practice, no source), `proof_chance` that with which the next test
    cut may end badly (design, Proving).

    Numbers of the review are common practice without a source, but for pecks (a tap and drill maker's printed
    tips): `pecks_solid` and `pecks_opening` in diameters, `close_place` the ± place that spot and drill can
    hold [m], `stands_above` what may stand over the jaws, in depths of grip. Words are choices where the
    trade disagrees: `resources/opinions.yaml` has both opinions with their sources.
    """

    slowest_pace: float = 8 / 60
    fastest_pace: float = 50 / 60
    easy_push: float = 100.0
    strong_push: float = 200.0
    lever_efficiency: float = 0.85
    easy_wrench: float = 30.0
    strong_wrench: float = 60.0
    wear_milling: float = 1.1
    wear_drilling: float = 1.3
    holding_factor: float = 2.5
    holding_factor_high: float = 4.0
    friction: float = 0.12
    stiff_crank: float = 45.0
    stuck_crank: float = 90.0
    holder_length: float = 0.06
    chuck_torque: float = 4.0
    run: float = 0.005
    set_up_time: float = 15 * 60.0
    tool_change_time: float = 2 * 60.0
    measuring_time: float = 90.0
    proof_ageing: float = 0.10
    proof_chance: float = 0.10
    #: What the review asks by (sequencing rules, section 5; common practice, no source): roughing
    #: of one block [s], close and very close limits in all, allowance of a finishing pass, skin
    #: of black stock and of a casting [m].
    bulk_minutes: float = 45 * 60.0
    close_limits: float = 0.1e-3
    very_close_limits: float = 0.05e-3
    least_finish: float = 0.1e-3
    most_finish: float = 0.6e-3
    scale_skin: float = 0.5e-3
    casting_skin: float = 1.0e-3
    #: Layer of a slot as a share of its cutter: hard metals, soft ones, and any
    #: on a bench machine (same place).
    slot_layer: float = 0.5
    slot_layer_soft: float = 1.0
    slot_layer_bench: float = 0.25
    #: Height without support over width; thin sheet [m]; thin plate over its span; height
    #: of a thin wall over its thickness.
    tall_work: float = 3.0
    thin_sheet: float = 5e-3
    thin_plate: float = 0.1
    thin_wall: float = 8.0
    #: Days after which a tram check is old; a gauge reads to this share of the limits.
    tram_days: float = 90.0
    gauge_share: float = 0.25
    pecks_solid: float = 3.0
    pecks_opening: float = 5.0
    close_place: float = 0.05e-3
    stands_above: float = 2.0
    third_side: str = "opposite face"
    reamer_speed: str = "half"
    thread_height: str = "60 to 75 %"
    spot_angle: str = "at least 90°"
    counterbore_order: str = "hole first"
    climb_milling: str = "never"
    #: Where the workshop stands, for figures of law and advice (`resources/legal.yaml`), and what is
    #: true of the place: an air line at the machines, a voice that must be raised at 2 m, a person
    #: who works alone. No sources: facts.
    country: str = "none"
    air_line: str = "no"
    raised_voices: str = "no"
    works_alone: str = "no"
    #: What is printed where nobody says otherwise (`model/prints.PRINTS`), and on which
    #: paper. No sources: choices of the place.
    print_whole: str = "yes"
    print_route: str = "no"
    print_positions: str = "no"
    print_step: str = "no"
    print_blank: str = "no"
    paper: str = "a4"
    #: How the revisions of a plan are called: `numbers`, or `letters` without
    #: those that are taken for others.
    plan_marks: str = "numbers"

    @property
    def prints(self) -> Prints:
        """The pages that this workshop always wants."""
        return prints([name for name in PRINTS if getattr(self, f"print_{name}") == "yes"])

    def out_of_hand(self, pace: float) -> int:
        """1 where a handle turns faster than a hand keeps even [rev/s], −1 where slower, 0 between.

        A bound itself is between, also where it was reached by way of inches and is off by a rounding.
        """
        if pace > self.fastest_pace * (1 + 1e-9):
            return 1
        return -1 if pace < self.slowest_pace * (1 - 1e-9) else 0
