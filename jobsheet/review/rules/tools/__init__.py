"""Rules about the cabinet. One question a file, and none knows another. Begin with `in_the_cabinet.py`."""
