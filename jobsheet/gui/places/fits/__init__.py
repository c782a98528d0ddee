"""Whether the job fits another machine, step by step, and the change itself. Begin with `fits_window.py`."""
