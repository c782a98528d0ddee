"""What is kept for a person beside the job itself: the last jobs, what stood in a file before, materials of
their own begun. None of it is needed to read a job. Begin in `recent.py`.
"""
