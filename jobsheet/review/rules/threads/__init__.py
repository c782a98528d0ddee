"""Rules about tapping. One question a file, and none knows another. Begin with `tap_drill_before_tap.py`."""
