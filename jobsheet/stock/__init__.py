"""What the part is made of: a shape a file in `shapes/`, each with its sizes, its box and its solid. How
the work lies in a set-up is the model's. Begin in `all_shapes.py`.
"""
