"""History and edits as frozen values, without the toolkit. Begin in `history.py`; steps and set-ups in `step_commands.py`."""
