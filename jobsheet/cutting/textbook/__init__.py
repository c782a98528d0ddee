"""Formulas that no figure of a job uses: text-book examples are worked with them, by `jobsheet work` and in the tests.

A formula that a step needs moves out of here, into the topic beside this folder.
"""
