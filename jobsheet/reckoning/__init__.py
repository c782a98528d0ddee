"""A job becomes figures, limits and verdicts, remembered by value. Nothing here judges a plan or says what
to do in what order. Begin in `reckoner.py`; what is answered beside in `answers/`, test cuts in `ladder/`,
own tools in `cabinet/`.
"""
