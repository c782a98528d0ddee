"""A job as neutral pages: what stands on the paper, in words and drawings, without ink. Begin in `job_sheet.py`."""
