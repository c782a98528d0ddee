"""What is asked beside the window and told to it later. Begin with `asked_aside.py`."""
