"""Lessons: a job as an exercise in the order of work. No window, no paper here; nothing of it changes a job.

Begin with `needed_order.py`: which steps must stand before which, and why. `precedence.py` is the bare logic
of it; `marking.py` says how far an answer is from a right one.
"""
