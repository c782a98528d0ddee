"""What is kept for a person beside the job itself: the last jobs, what stood in a file before, materials of their own begun."""
