"""The printed sheets as the window has them: made from what lies on the desk, looked at before they print.
How a page is laid out belongs to `jobsheet/sheet`. Begin with `print_window.py`.
"""
