"""What the part is made of: a shape a file in `shapes/`, each with its sizes, its box and its solid. Begin in `all_shapes.py`."""
