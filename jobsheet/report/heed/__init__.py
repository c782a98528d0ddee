"""What is to be heeded: notes, stop notes, boxes to tick, what was set aside; begin reading at `safety.py`."""
