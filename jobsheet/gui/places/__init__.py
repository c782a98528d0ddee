"""Places beside the job: a place opens its own window on what lies on the desk, and does not know another one,
nor the window it was called from. Begin with the folder that has the place's name.
"""
