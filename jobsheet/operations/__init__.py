"""What can be done to a piece of work: one kind a file in `kinds/`, what they share in `shared/`. Begin in `kind.py`."""
