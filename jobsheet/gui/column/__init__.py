"""The ruled column: closed rows, set-up headings and notices, and the one that is open with its form.
Everything here is shown what to show and reports what was done; it may not know the desk. Begin with
`ruled_list.py`.
"""
