"""Ladders of growing test cuts: what is asked, how they climb, when they are refused. What a test cut has
shown is learned in `proving/`, not here. Begin in `ladders.py`.
"""
