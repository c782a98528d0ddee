"""What a person does to the job by menu, key or mouse, one file for each thing that is edited.
Edits go through the desk's history; nothing is painted here. Begin with `step_edits.py`, or
the file named after what is edited.
"""
