"""History and edits as frozen values, without the toolkit. Every edit gives a new job; none reckons or
judges. Begin in `history.py`; steps and set-ups in `step_commands.py`.
"""
