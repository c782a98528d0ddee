"""A job as neutral pages: what stands on the paper, in words and drawings, without ink. How a page is inked
or broken is not known here. Begin in `job_sheet.py`.
"""
