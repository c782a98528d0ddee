"""Remarks on a plan. One rule a file under `rules/`; how they see a plan in `plan/`; notes and reminders as
data in `notes/`. A rule reads and remarks; it changes nothing. Begin in `engine.py`.
"""
