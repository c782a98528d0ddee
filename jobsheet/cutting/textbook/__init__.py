"""Formulas that no figure of a job uses: text-book examples are worked with them, by `jobsheet work` and in
the tests. No figure may rest on one; a formula that a step needs moves out of here, into the topic beside
this folder. Begin with `record.py` of the folder above, which says how a formula shows its working.
"""
