"""A job becomes figures, limits and verdicts, remembered by value. Begin in `reckoner.py`; what is answered beside in `answers/`, test cuts in `ladder/`, own tools in `cabinet/`."""
