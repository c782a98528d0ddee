"""What people see and touch, and the only place that knows the toolkit. Every folder is one place on the
bench, and the folders stand on each other in this order: `start` opens the `window`; the window passes what
a person does to `edits` and opens `places`; places print by `pages`; all of them ask the `desk`. Below it
stand panels that know no job: `column` (the ruled list and its open row), `strip`, `margin`, `forms`, and
at the bottom `ink`, which only paints. A limit's bar is painted by `ink/bar_painter.py`; a row by
`column/row_painter.py`. Begin with `window/window.py`.
"""
