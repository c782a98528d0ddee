"""Safety notes, reminders, figures of law: rows of data and when they are true. Nothing here is counted,
and nothing is a fault of the plan. Begin in `notes.py`.
"""
