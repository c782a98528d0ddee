"""A lesson on paper: a worksheet that gives nothing away, and a key for whoever marks. Begin with `order_worksheet.py`."""
