"""One kind of holding a file. Nothing here knows another kind, a rule or a drawing; what several ask stands
in `shared_facts.py` above. Begin with `hand_vice.py`, the shortest.
"""
