"""Rules about thin, soft or stressed work. One question a file, and none knows another. Begin with
`back_up_thin_sheet.py`.
"""
