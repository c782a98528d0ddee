"""A lesson on paper: a worksheet that gives nothing away, and a key for whoever marks. What is right is
decided in `lessons/`. Begin with `order_worksheet.py`.
"""
