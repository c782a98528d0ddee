"""One limit a file: demand, capacity, verdict; no limit knows another. Each says what it reads of a setting
and where it stands; adding the file is the registration. Begin with `torsion.py`, a short one.
"""
