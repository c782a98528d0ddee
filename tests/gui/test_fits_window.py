"""What a list of dials leaves out is said where the machines are compared."""

from jobsheet.gui.places.fits.fits_window import FitsWindow
from jobsheet.paths import sample_jobs


def test_the_same_job_on_another_machine_is_one_edit(show, qtbot):
    """HM-102 on B-1: travel fits, and every dial is redone (demo scenario, section 8, story 4)."""
    window = show(str(sample_jobs() / "hm-102-slide-plate.yaml"))
    fitting = FitsWindow(window.parts.visit)
    qtbot.addWidget(fitting)
    index = fitting.machines.findData("bench-mill-b-1")
    fitting.machines.setCurrentIndex(index)
    assert "dial reading" in fitting.more.text()
    assert not any(limit.name == "travel" for _, limit in fitting.table.fit.beyond)
    fitting.take.click()
    assert window.desk.job.machine == "bench-mill-b-1"
    window.parts.edits.history.undo()
    assert window.desk.job.machine == "knee-mill-k-2"
