"""The rules, one a file, in a folder by what they are about; no rule knows another. How a plan is seen is
said in `plan/`, how it is mended in `mending/`. Begin with `hands/pace_the_hand_can_hold.py`, the only one
of its folder.
"""
