"""What a machine card can do: speeds and torque, handles and their dials, headroom, dividing. Nothing of a
job is known here. Begin in `spindle.py`.
"""
