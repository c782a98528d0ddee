"""Files are read with every problem and its line, and written the same way each time. What a value means is
not decided here. Begin in `job_file.py`.
"""
