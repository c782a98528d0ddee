"""Rules on what the drawing asks: what the steps leave, what they make that nobody asked for, and whether it is measured."""
