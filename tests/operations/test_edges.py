"""State, rake and lead of an edge, and a second opinion on drilling, through the kinds that use them."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner


def figures(job, key, **texts):
    for name, text in texts.items():
        job = SetField(key, name, text).apply(job)
    return Reckoner().reckon(job).operations[key].figures


MILL = "face mill 50 mm, 4 teeth, carbide"


def test_a_sharp_edge_asks_less_and_a_dull_one_more(hm100):
    """Unit-power wear factors (remembered): 1.0 sharp, 1.1 usual in milling,
    up to 1.3; drilling 1.3 and 1.5.
    """
    usual, sharp, dull = (
        figures(hm100, "face-rough", cutter=f"{MILL}{state}").value("torque")
        for state in ("", ", sharp", ", dull")
    )
    assert sharp / usual == pytest.approx(1 / 1.1)
    assert dull / usual == pytest.approx(1.3 / 1.1)
    usual, sharp, dull = (
        figures(hm100, "drill", cutter=f"drill 5{state}").value("thrust")
        for state in ("", ", sharp", ", dull")
    )
    assert sharp / usual == pytest.approx(1 / 1.3)
    assert dull / usual == pytest.approx(1.5 / 1.3)


def test_one_degree_of_rake_is_one_per_cent(hm100):
    """Cutting-data section 1.3: kc quoted for 0°, about 1 % less a degree."""
    plain = figures(hm100, "face-rough", cutter=MILL).value("torque")
    assert figures(hm100, "face-rough", cutter=f"{MILL}, rake 10°").value("torque") / plain == pytest.approx(
        0.90
    )
    assert figures(hm100, "face-rough", cutter=f"{MILL}, rake -10°").value("torque") / plain == pytest.approx(
        1.10
    )


def test_a_lead_angle_thins_the_chip(hm100):
    """h = fz sin(kappa) (cutting-data section 1.2)."""
    plain = figures(hm100, "face-rough", cutter=MILL).value("chip_thickness")
    led = figures(hm100, "face-rough", cutter=f"{MILL}, entering 45°").value("chip_thickness")
    assert led / plain == pytest.approx(2**-0.5)


def test_the_nose_leaves_marks_of_f_squared_over_8_r(hm100):
    """Maker's formula, read: f 0.2 and r 0.8 leave 6.25 µm (row A28); here 0.05 leaves a sixteenth."""
    found = figures(hm100, "face-rough", cutter=f"{MILL}, nose 0.8 mm")
    assert found.value("finish") * 1e6 == pytest.approx(6.25 / 16)
    assert found.value("finish_run_out") * 1e6 == pytest.approx(6.25)


def test_two_methods_for_the_same_drill(hm100):
    """Section 1.5, worked: 12 mm, 0.14, Kd 20 000 against K 2.22, both sharp:
    9.83 and 9.55 N·m, ratio 0.97.
    """
    found = figures(hm100, "drill", cutter="drill 12, sharp", feed="0.14", spindle="320 rpm")
    assert found.value("torque") == pytest.approx(9.83, abs=0.005)
    assert found.value("second_torque") == pytest.approx(9.55, abs=0.005)
    assert found.value("method_ratio") == pytest.approx(0.97, abs=0.005)
    assert not any("disagree" in caveat for caveat in found.caveats)


def test_the_second_method_for_milling_goes_by_the_feed_a_tooth(hm100):
    """Unit-power tables: 1.40 at 0.05 mm a tooth, whatever the width; a cut from the side
    thins only the first method's chip.
    """
    wide, thin = (
        figures(hm100, "face-rough", cutter=MILL, feed_per_tooth="0.05", width=width)
        for width in ("40", "0.3")
    )
    for found in (wide, thin):
        (step,) = (one for one in found.working if one.figure == "second_power")
        assert dict(step.inputs)["feed_factor"] == pytest.approx(1.40)
        assert found.value("method_ratio") == pytest.approx(
            found.value("power") / found.value("second_power")
        )
    assert wide.value("second_power") / wide.value("removal_rate") == pytest.approx(
        thin.value("second_power") / thin.value("removal_rate")
    )
    assert thin.value("method_ratio") > wide.value("method_ratio")
    assert any(
        f"power is {thin.value('method_ratio'):.2f} of that by unit power" in words for words in thin.caveats
    )
