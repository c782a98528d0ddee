"""A lock where the file system has none. Begin with `lock_file.py`."""
