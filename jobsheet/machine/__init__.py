"""What a machine card can do: speeds and torque, handles and their dials, headroom, dividing. Begin in `spindle.py`."""
