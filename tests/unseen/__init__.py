"""Plans that were written without sight of the rules: good ones, and each spoilt one
beside its twin, with one fact changed.
"""
