"""Remarks on a plan. One rule a file under `rules/`; how they see a plan in `plan/`; notes and reminders as data in `notes/`. Begin in `engine.py`."""
