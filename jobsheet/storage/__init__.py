"""Files are read with every problem and its line, and written the same way each time. Begin in `job_file.py`."""
