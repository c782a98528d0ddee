"""Places beside the job, found by walking this folder: a folder, or a file, with a `PLACE` is one. A place
opens its own window on a visit; it may not know another place, nor the window it was called from. Begin with
`desk/place.py`, which says what a place is.
"""
